//! How long the walking takes, and how much effort it is.
//!
//! *Model:* one of three rules of thumb. `din`: time for the way and time for the heights, the longer of the
//! two plus half the shorter `[din33466]`. `munter`: kilometres and hundreds of metres added up, divided by a
//! rate for the way up, one for down and flat, one for skis (common practice, no source). `naismith`: time for
//! the way plus time for the climb `[naismith1892]`. Who is roped on skis comes down no faster than on foot (our
//! judgement). *Valid:* for planning; rope changes and breaks come on top. *Checked:* below, worked figures of the same
//! sources.

use crate::{
    ground::climb::Climb,
    practice::{Pace, Rule, Rules, Travel},
};

/// Minutes for a distance with its ups and downs, roped or not, by the rule in force.
#[must_use]
pub fn walking_min(length_m: f64, climb: Climb, roped: bool, rules: &Rules) -> f64 {
    let hours = match rules.choices.pace.value {
        Pace::Din => din_h(length_m, climb, roped, rules),
        Pace::Munter => munter_h(length_m, climb, roped, rules),
        Pace::Naismith => {
            length_m / 1000.0 / rules[Rule::NaismithKmh]
                + climb.ascent_m / rules[Rule::NaismithMPerH]
        }
    };
    let factor = match rules.choices.travel.value {
        Travel::Snowshoe => rules[Rule::SnowshoeFactor],
        Travel::Foot | Travel::Ski => 1.0,
    };
    60.0 * hours * factor
}

fn din_h(length_m: f64, climb: Climb, roped: bool, rules: &Rules) -> f64 {
    let descend_m_per_h = match rules.choices.travel.value {
        Travel::Ski if roped => rules[Rule::DescendRopedOnSkisMPerH],
        Travel::Ski => rules[Rule::DescendOnSkisMPerH],
        Travel::Foot | Travel::Snowshoe => rules[Rule::DescendMPerH],
    };
    let flat_h = length_m / 1000.0 / rules[Rule::WalkKmh];
    let steep_h = climb.ascent_m / rules[Rule::ClimbMPerH] + climb.descent_m / descend_m_per_h;
    flat_h.max(steep_h) + flat_h.min(steep_h) / 2.0
}

/// The way up, the way down, and what is neither, each at its rate.
fn munter_h(length_m: f64, climb: Climb, roped: bool, rules: &Rules) -> f64 {
    let units = |way_m: f64, height_m: f64| way_m / 1000.0 + height_m / 100.0;
    let down_rate = match rules.choices.travel.value {
        Travel::Ski if roped => rules[Rule::MunterSkiDownRoped],
        Travel::Ski => rules[Rule::MunterSkiDown],
        Travel::Foot | Travel::Snowshoe => rules[Rule::MunterDown],
    };
    let flat_m = (length_m - climb.rising_m - climb.falling_m).max(0.0);
    units(climb.rising_m, climb.ascent_m) / rules[Rule::MunterUp]
        + units(climb.falling_m, climb.descent_m) / down_rate
        + units(flat_m, 0.0) / rules[Rule::MunterDown]
}

/// Effort kilometres `[baspo]`: the way, the climb, and what goes steeply down.
#[must_use]
pub fn effort_km(length_m: f64, ascent_m: f64, steep_descent_m: f64, rules: &Rules) -> f64 {
    length_m / 1000.0
        + ascent_m / rules[Rule::EffortClimbM]
        + steep_descent_m / rules[Rule::EffortDescentM]
}

/// Minutes of rest that go with this much walking.
#[must_use]
pub fn break_min(walking_min: f64, rules: &Rules) -> f64 {
    walking_min / 60.0 * rules[Rule::BreakMinPerH]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::{Origin, set::Source};

    fn rules(pace: Pace, travel: Travel) -> Rules {
        let mut rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        rules.choices.pace.set(Some(pace), Origin::Trip);
        rules.choices.travel.set(Some(travel), Origin::Trip);
        rules
    }

    fn up(ascent_m: f64) -> Climb {
        Climb {
            ascent_m,
            ..Climb::default()
        }
    }

    #[track_caller]
    fn close(what: &str, got: f64, want: f64, tolerance: f64) {
        assert!(
            (got - want).abs() <= tolerance,
            "{what}: got {got}, want {want}"
        );
    }

    #[test]
    fn eight_kilometres_with_nine_hundred_and_twelve_hundred_metres_up() {
        let rules = rules(Pace::Din, Travel::Foot);
        for (ascent_m, hours) in [(900.0, 4.0), (1200.0, 5.0)] {
            let got = walking_min(8000.0, up(ascent_m), false, &rules);
            close(&format!("{ascent_m} m up"), got, 60.0 * hours, 1e-9);
        }
    }

    #[test]
    fn three_miles_and_two_thousand_feet_are_an_hour_each() {
        let rules = rules(Pace::Naismith, Travel::Foot);
        close(
            "4.82 km, 600 m up",
            walking_min(4820.0, up(600.0), false, &rules),
            120.0,
            1e-9,
        );
    }

    /// 9.5 km with 500 m up and down are in print as 5 h 05. The bare rates give at most 19.5 units / 4 =
    /// 4 h 53, so breaks are in that figure. Half the way up and half down is 4 h 04 of walking, and with a
    /// quarter of an hour of rest for each hour 5 h 05, to the minute: this is our reading.
    #[test]
    fn the_printed_example_of_effort_units_holds_breaks() {
        let mut rules = rules(Pace::Munter, Travel::Foot);
        let there_and_back = Climb {
            ascent_m: 500.0,
            descent_m: 500.0,
            rising_m: 4750.0,
            falling_m: 4750.0,
        };
        let walking = walking_min(9500.0, there_and_back, false, &rules);
        close("walking", walking, 60.0 * (9.75 / 4.0 + 9.75 / 6.0), 1e-9);
        rules.set(Rule::BreakMinPerH, 15.0, Origin::Trip).unwrap();
        let all = walking + break_min(walking, &rules);
        close("with breaks", all.round(), 305.0, 0.0);
    }

    #[test]
    fn skis_go_down_faster_and_snowshoes_go_slower_by_every_rule() {
        let round = Climb {
            ascent_m: 800.0,
            descent_m: 800.0,
            rising_m: 5000.0,
            falling_m: 5000.0,
        };
        for pace in [Pace::Din, Pace::Munter] {
            let time = |travel| walking_min(11_000.0, round, false, &rules(pace, travel));
            let roped = |travel| walking_min(11_000.0, round, true, &rules(pace, travel));
            assert!(time(Travel::Ski) < time(Travel::Foot), "{pace:?}");
            close(
                "roped on skis",
                roped(Travel::Ski),
                roped(Travel::Foot),
                1e-9,
            );
            close("on foot", roped(Travel::Foot), time(Travel::Foot), 1e-9);
            assert!(time(Travel::Snowshoe) > time(Travel::Foot), "{pace:?}");
        }
    }

    #[test]
    fn effort_counts_the_climb_and_what_goes_steeply_down() {
        let rules = rules(Pace::Din, Travel::Foot);
        let got = effort_km(15_000.0, 900.0, 1100.0, &rules);
        close(
            "15 km, 900 m up, 1100 m down",
            (got * 10.0).round() / 10.0,
            31.3,
            1e-9,
        );
    }
}
