//! Brake knots: whether to tie them, how far apart a team walks for a whole layout, and whether the snow lets them work.

use crate::{
    legs::over::Over,
    plan::{
        leg::{Bite, KnotSet},
        why::{FewerKnots, KnotsWanted, KnotsWhy},
    },
    practice::{Knots, Rule, Rules},
    trip::party::RopeTeam,
};

/// What makes holding harder for three.
///
/// ```
/// use schrund::legs::{knots::{self, Hardship}, over::Over};
///
/// let job = schrund::example::job()?;
/// let team = &job.party.rope_teams()[0];
/// let tied = |steepest_descent_deg| {
///     let hardship = Hardship { steepest_descent_deg };
///     knots::choose(team, 13.0, Over::drawn(&[&job.zones[0]]), hardship, &job.rules).count
/// };
/// // Three tie knots from a descent of 20° on (our judgement).
/// assert_eq!([tied(None), tied(Some(15.0)), tied(Some(25.0))], [0, 0, 6]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hardship {
    /// Steepest descent on the leg, degrees; `None` where no heights are known.
    pub steepest_descent_deg: Option<f64>,
}

/// The knots of one rope team on a leg.
#[must_use]
pub fn choose(
    team: &RopeTeam,
    spacing_m: f64,
    over: Over<'_>,
    hardship: Hardship,
    rules: &Rules,
) -> KnotSet {
    let bite = over.bite(rules);
    let wanted = match wanted(team, over, || hardship, rules) {
        Ok(wanted) => wanted,
        Err(why) => return set(0, bite, rules, why),
    };
    let (tied, asked) = (fitting(team.size(), spacing_m, rules), asked(rules));
    let why = if tied == 0 {
        KnotsWhy::NoRoom { wanted, spacing_m }
    } else {
        let fewer = FewerKnots {
            tied,
            asked,
            spacing_m,
        };
        let fewer = (tied < asked).then_some(fewer);
        KnotsWhy::Tied { wanted, fewer }
    };
    set(tied, bite, rules, why)
}

/// What they are wanted for, or why they are not.
fn wanted(
    team: &RopeTeam,
    over: Over<'_>,
    hardship: impl FnOnce() -> Hardship,
    rules: &Rules,
) -> Result<KnotsWanted, KnotsWhy> {
    if !over.may_bite(rules) {
        return Err(KnotsWhy::WouldNotBite);
    }
    let (word, people) = (&rules.choices.knots, team.size());
    match (word.value, people) {
        (Knots::Never, _) => Err(KnotsWhy::Unwanted { by: word.origin }),
        (_, 4..) => Err(KnotsWhy::Many),
        (Knots::Always, _) => Ok(KnotsWanted::Word { by: word.origin }),
        (Knots::Auto, ..=2) => Ok(KnotsWanted::OneAlone),
        (Knots::Auto, _) => wanted_by_three(team, hardship, rules),
    }
}

/// Three tie knots only where holding is harder (common practice, no source).
fn wanted_by_three(
    team: &RopeTeam,
    hardship: impl FnOnce() -> Hardship,
    rules: &Rules,
) -> Result<KnotsWanted, KnotsWhy> {
    if let Some(person) = team.heavier_by(rules[Rule::HeavierFactor]) {
        let who = person.called.clone();
        return Ok(KnotsWanted::Heavier { who });
    }
    match hardship().steepest_descent_deg {
        Some(deg) if deg >= rules[Rule::SteepDescentDeg] => Ok(KnotsWanted::SteepDescent { deg }),
        known => Err(KnotsWhy::Three {
            heights_known: known.is_some(),
        }),
    }
}

/// Knots in a set, as asked for.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "bounded to 0..=8 by data/rules.toml"
)]
#[must_use]
pub fn asked(rules: &Rules) -> usize {
    rules[Rule::KnotCount].round() as usize
}

/// The least spacing for a whole layout, metres: two sets share the span of a pair, one set has a span of three.
#[expect(clippy::cast_precision_loss, reason = "few knots")]
#[must_use]
pub fn layout_m(people: usize, rules: &Rules) -> f64 {
    let steps = asked(rules).saturating_sub(1) as f64;
    let set_m = rules[Rule::KnotFirstM] + steps * rules[Rule::KnotStepM];
    sets_in_span(people) * set_m + rules[Rule::KnotClearM]
}

/// The least spacing that the knots of a team ask for on a leg, metres; 0 where it ties none. A layout is never cut
/// short to save half a metre (common practice, no source).
#[must_use]
pub fn least_m(
    team: &RopeTeam,
    over: Over<'_>,
    hardship: impl FnOnce() -> Hardship,
    rules: &Rules,
) -> f64 {
    let tied = wanted(team, over, hardship, rules).is_ok() && asked(rules) > 0;
    if tied {
        layout_m(team.size(), rules)
    } else {
        0.0
    }
}

fn sets_in_span(people: usize) -> f64 {
    if people == 2 { 2.0 } else { 1.0 }
}

/// How many knots a set can have in so much room.
#[must_use]
pub fn fitting(people: usize, spacing_m: f64, rules: &Rules) -> usize {
    let room_m =
        (spacing_m - rules[Rule::KnotClearM]) / sets_in_span(people) - rules[Rule::KnotFirstM];
    let mut fit = 0;
    let mut reach_m = 0.0;
    while fit < asked(rules) && reach_m <= room_m + 1e-9 {
        fit += 1;
        reach_m += rules[Rule::KnotStepM];
    }
    fit
}

fn set(each_end: usize, bite: Bite, rules: &Rules, why: KnotsWhy) -> KnotSet {
    KnotSet {
        count: 2 * each_end,
        each_end,
        first_m: rules[Rule::KnotFirstM],
        step_m: rules[Rule::KnotStepM],
        rope_each_m: rules[Rule::KnotRopeM],
        bite,
        why,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        practice::{Origin, set::Source},
        trip::party::Party,
    };

    #[test]
    fn the_layouts_in_use_fit_as_they_are_taught() {
        let mut rules = Rules::with_practice(&Source::Named("short-alpine")).unwrap();
        // 15 m with 3 m / 2 m / three leaves exactly 1 m in the middle (trade rules, section 6).
        assert_eq!(fitting(2, 15.0, &rules), 3, "as taught");
        assert_eq!(
            fitting(2, 14.5, &rules),
            2,
            "half a metre less leaves no metre in the middle"
        );
        assert_eq!(fitting(3, 12.0, &rules), 3, "one set in each span");
        assert_eq!(
            fitting(3, 7.0, &rules),
            2,
            "3 + 2 ≤ 7 − 1, 3 + 2 + 2 is not"
        );
        rules.set(Rule::KnotFirstM, 2.0, Origin::Trip).unwrap();
        rules.set(Rule::KnotStepM, 1.0, Origin::Trip).unwrap();
        assert_eq!(
            fitting(2, 9.0, &rules),
            3,
            "the closer layout: 2 × 4 = 9 − 1"
        );
    }

    /// Ice whose snow nobody gave.
    const OVER: Over<'_> = Over {
        zones: &[],
        undrawn: true,
    };

    fn pair() -> RopeTeam {
        Party::weighing(&[80.0; 2]).split_into(1).remove(0)
    }

    /// What the knots of a pair are tied for or not.
    fn pair_why(spacing_m: f64) -> KnotsWhy {
        let rules = Rules::with_practice(&Source::Named("short-alpine")).unwrap();
        choose(&pair(), spacing_m, OVER, Hardship::default(), &rules).why
    }

    #[test]
    fn fewer_knots_than_a_layout_are_told_where_fewer_are_tied_and_none_where_none_has_room() {
        // Each end has (d − 1 m) / 2 for 3 m to its first knot and 2 m to each further one (common practice).
        let wanted = KnotsWanted::OneAlone;
        let tied = |fewer| KnotsWhy::Tied {
            wanted: KnotsWanted::OneAlone,
            fewer,
        };
        assert_eq!(pair_why(15.0), tied(None), "3 + 2 + 2 = 7");
        let two = FewerKnots {
            tied: 2,
            asked: 3,
            spacing_m: 14.5,
        };
        assert_eq!(pair_why(14.5), tied(Some(two)), "3 + 2 < 6.75");
        let spacing_m = 6.5;
        assert_eq!(
            pair_why(spacing_m),
            KnotsWhy::NoRoom { wanted, spacing_m },
            "2.75 < 3"
        );
    }

    #[test]
    fn a_layout_of_no_knots_asks_for_no_room() {
        let mut rules = Rules::with_practice(&Source::Named("short-alpine")).unwrap();
        let asked_m = |rules: &Rules| least_m(&pair(), OVER, Hardship::default, rules);
        assert!((asked_m(&rules) - 15.0).abs() < 1e-9, "2 × (3 + 2 + 2) + 1");
        rules.set(Rule::KnotCount, 0.0, Origin::Trip).unwrap();
        assert!(asked_m(&rules).abs() < 1e-9, "{}", asked_m(&rules));
    }
}
