//! What is found of falls: held or not, hauled or not, and coils that are a burden.

use crate::{
    fault::Level,
    judge::{place::place_at, steepest::steepest},
    physics::haul::Can,
    plan::{
        fact::Fact,
        fall::{Arrest, HaulAnswer, Held, HeldRun, OrderAdvice},
        finding::{At, Finding, LegPlace},
        leg::TeamSetup,
        name::PersonName,
    },
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
};

/// The findings of one team on one leg.
pub(super) fn findings(
    leg: &RopedLeg<'_>,
    setup: &TeamSetup,
    rules: &Rules,
    at: &LegPlace,
) -> Vec<Finding> {
    let mut found = held(leg, setup, rules, at);
    let whole = [haul_too_weak(setup), coil(setup, rules)];
    let whole = whole.into_iter().flatten();
    found.extend(whole.map(|fact| Finding::new(At::Leg(at.clone()), fact)));
    found
}

/// Where falls are not held.
fn held(leg: &RopedLeg<'_>, setup: &TeamSetup, rules: &Rules, at: &LegPlace) -> Vec<Finding> {
    let Some(arrest) = &setup.arrest else {
        return Vec::new();
    };
    let told = alarms(&arrest.runs, setup.spacing_m, rules).into_iter();
    told.map(|(alarm, places)| {
        let told = Told {
            falls: falls(setup, arrest, &places.worst),
            order: alarm.order(arrest),
        };
        let team = at.team;
        let at = steepest(leg, places.worst.from_m, places.worst.to_m);
        let place = LegPlace {
            team,
            ..place_at(leg, at.from_m, at.to_m)
        };
        Finding::new(At::Leg(place), alarm.fact(told, &places))
    })
    .collect()
}

/// What is told beside an alarm.
struct Told {
    falls: PersonName,
    order: Vec<PersonName>,
}

/// Whose fall it is: that of the plan's own answer at its place, elsewhere that of whoever is held so there.
fn falls(setup: &TeamSetup, arrest: &Arrest, run: &HeldRun) -> PersonName {
    let answered = run.from_m <= arrest.from_m && arrest.to_m <= run.to_m;
    let elsewhere = run.falls.filter(|_| !answered);
    PersonName::at(elsewhere.unwrap_or(arrest.falls), &setup.persons)
}

/// The gravest level that the falls of a team come to on a leg.
pub(super) fn level(runs: &[HeldRun], spacing_m: f64, rules: &Rules) -> Option<Level> {
    let all = alarms(runs, spacing_m, rules).into_iter();
    all.map(|(alarm, _)| alarm.level()).min()
}

/// Every place where the falls of a team raise an alarm, with its code.
pub(super) fn places(setup: &TeamSetup, rules: &Rules) -> Vec<(Level, &'static str, HeldRun)> {
    let Some(arrest) = &setup.arrest else {
        return Vec::new();
    };
    let all = alarms(&arrest.runs, setup.spacing_m, rules).into_iter();
    let of_alarm = all.flat_map(|(alarm, places)| {
        let told = Told {
            falls: falls(setup, arrest, &places.worst),
            order: Vec::new(),
        };
        let code = alarm.fact(told, &places).code();
        let runs = places.runs.into_iter();
        runs.map(move |run| (alarm.level(), code, run))
    });
    of_alarm.collect()
}

/// What the answers along a leg are an alarm for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Alarm {
    InNone,
    InNoneOnce,
    OffCentre,
    SteepIce,
    SlipPullsAll,
}

impl Alarm {
    /// What one run alone is an alarm for.
    fn of(run: &HeldRun, rules: &Rules) -> Option<Self> {
        let steeper = |deg: f64| run.steepest_deg().is_some_and(|steep| steep > deg);
        match run.held {
            Held::None if !run.in_sight => Some(Self::InNone),
            Held::None if steeper(rules[Rule::BareStopDeg]) => Some(Self::SteepIce),
            Held::None if steeper(rules[Rule::BareSlipDeg]) => Some(Self::SlipPullsAll),
            Held::Depends if !run.in_sight && !run.in_centre => Some(Self::OffCentre),
            _ => None,
        }
    }

    /// The order that was tried and ends the alarm, if any: one that is better and leaves it is no cure.
    fn order(self, arrest: &Arrest) -> Vec<PersonName> {
        let ends_it = |advice: &&OrderAdvice| match self {
            Self::InNone | Self::InNoneOnce => advice.not_held[0] == 0,
            Self::OffCentre => advice.not_held == [0, 0],
            Self::SteepIce | Self::SlipPullsAll => false,
        };
        let better = arrest.order.as_ref().filter(|advice| advice.worth_it);
        let better = better.filter(ends_it);
        better.map_or_else(Vec::new, |advice| advice.order.clone())
    }

    fn level(self) -> Level {
        match self {
            Self::InNone | Self::SteepIce => Level::Stop,
            Self::InNoneOnce | Self::OffCentre | Self::SlipPullsAll => Level::Look,
        }
    }

    fn fact(self, told: Told, places: &Places) -> Fact {
        let Told { falls, order } = told;
        let gap_given = places.worst.gap_given;
        let (snow, length_m) = (places.worst.snow, places.length_m);
        let down_deg = places.worst.down_deg;
        let steepest_deg = places.worst.steepest_deg().unwrap_or_default();
        match self {
            Self::InNone => Fact::HeldInNone {
                falls,
                snow,
                length_m,
                down_deg,
                gap_given,
                order,
            },
            Self::InNoneOnce => Fact::HeldInNoneOnce {
                falls,
                snow,
                length_m,
                down_deg,
                gap_given,
                order,
            },
            Self::OffCentre => Fact::HeldOffCentre {
                falls,
                snow,
                length_m,
                down_deg,
                order,
            },
            Self::SteepIce => Fact::SteepBareIce {
                slope_deg: steepest_deg,
                length_m,
            },
            Self::SlipPullsAll => Fact::SlipPullsAll {
                slope_deg: steepest_deg,
                length_m,
            },
        }
    }
}

/// Each alarm with the places that raise it, taken together. Held in none on no more than one spacing is looked at.
fn alarms(runs: &[HeldRun], spacing_m: f64, rules: &Rules) -> Vec<(Alarm, Places)> {
    let kinds = [
        Alarm::InNone,
        Alarm::SteepIce,
        Alarm::OffCentre,
        Alarm::SlipPullsAll,
    ];
    let places = kinds.into_iter().filter_map(|kind| {
        let of_kind = runs
            .iter()
            .filter(|run| Alarm::of(run, rules) == Some(kind));
        Some((kind, Places::of(of_kind)?))
    });
    let briefly = |(kind, places): (Alarm, Places)| match kind {
        Alarm::InNone if places.length_m <= spacing_m + 1e-9 => (Alarm::InNoneOnce, places),
        kind => (kind, places),
    };
    places.map(briefly).collect()
}

/// Runs of a leg that are told together.
struct Places {
    /// The steepest; of equals the longest.
    worst: HeldRun,
    /// Of all of them, metres.
    length_m: f64,
    /// All of them.
    runs: Vec<HeldRun>,
}

impl Places {
    fn of<'r>(runs: impl Iterator<Item = &'r HeldRun>) -> Option<Self> {
        let runs: Vec<HeldRun> = runs.copied().collect();
        let steep = |r: &HeldRun| r.steepest_deg().unwrap_or_default();
        let worse = |a: &&HeldRun, b: &&HeldRun| {
            steep(a)
                .total_cmp(&steep(b))
                .then(a.length_m().total_cmp(&b.length_m()))
        };
        Some(Self {
            worst: *runs.iter().max_by(worse)?,
            length_m: runs.iter().map(HeldRun::length_m).sum(),
            runs,
        })
    }
}

fn haul_too_weak(setup: &TeamSetup) -> Option<Fact> {
    let table = setup.haul.as_ref()?;
    let reach = setup.reach.iter().find(|r| r.person == table.person);
    if reach.is_some_and(|r| r.short_m().is_some()) {
        return None; // found already: the drop loop does not reach them
    }
    let can = match table.answer {
        HaulAnswer::Best { can, .. } => can,
        HaulAnswer::TooShort { .. } | HaulAnswer::AnchorTooNear { .. } => Can::No,
    };
    (can == Can::No).then(|| Fact::HaulTooWeak {
        falls: PersonName::at(table.person, &setup.persons),
        haul: table.answer,
    })
}

fn coil(setup: &TeamSetup, rules: &Rules) -> Option<Fact> {
    let (most_m, most_kg) = (rules[Rule::CoilMostM], rules[Rule::CoilMostKg]);
    let burden = setup.coil_carried_m > most_m + 1e-9 || setup.coil_kg > most_kg + 1e-9;
    burden.then_some(Fact::CoilHeavy {
        coil_m: setup.coil_carried_m,
        coil_kg: setup.coil_kg,
        most_m,
        most_kg,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::set::Source;

    /// Held in none of the cases on ice so steep, in sight.
    fn on_ice(run: HeldRun, down_deg: f64) -> HeldRun {
        HeldRun {
            held: Held::None,
            in_sight: true,
            down_deg: Some(down_deg),
            ..run
        }
    }

    fn example() -> (TeamSetup, Arrest) {
        let plan = crate::plan(&crate::example::job().unwrap()).unwrap();
        let setup = plan.legs[1].teams[0].clone();
        let arrest = setup.arrest.clone().unwrap();
        (setup, arrest)
    }

    #[test]
    fn bare_ice_that_is_as_steep_as_a_limit_is_on_the_milder_side_of_it() {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let (_, arrest) = example();
        // 15 and 25° (our judgement), up or down.
        let of = |deg: f64| Alarm::of(&on_ice(arrest.runs[0], deg), &rules);
        assert_eq!([15.0, -15.0].map(of), [None; 2]);
        assert_eq!([15.1, 25.0, -25.0].map(of), [Some(Alarm::SlipPullsAll); 3]);
        assert_eq!(of(-25.1), Some(Alarm::SteepIce));
    }

    #[test]
    fn whose_fall_it_is_stands_with_the_answer_only_where_the_run_holds_its_whole_place() {
        let (setup, mut arrest) = example();
        (arrest.from_m, arrest.to_m, arrest.falls) = (100.0, 110.0, 1);
        let falls = |from_m: f64, to_m: f64| {
            let run = HeldRun {
                from_m,
                to_m,
                falls: Some(2),
                ..arrest.runs[0]
            };
            falls(&setup, &arrest, &run).position
        };
        assert_eq!([falls(100.0, 110.0), falls(90.0, 120.0)], [1; 2]);
        assert_eq!(
            [falls(90.0, 105.0), falls(105.0, 120.0)],
            [2; 2],
            "a part of it"
        );
        assert_eq!(
            [falls(50.0, 60.0), falls(150.0, 160.0)],
            [2; 2],
            "elsewhere"
        );
    }
}
