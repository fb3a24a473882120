//! Where the rope goes, line by line, and which length sold holds it.

use crate::{
    plan::leg::{KnotSet, Ledger},
    practice::{Rule, Rules, SOLD_LENGTHS_M},
};

use super::reserve;
use crate::legs::knots;

/// The ledger of a rope team.
#[must_use]
#[expect(clippy::cast_precision_loss, reason = "knots are few")]
pub fn ledger(people: usize, spacing_m: f64, knots: &KnotSet, rules: &Rules) -> Ledger {
    with_knots(
        people,
        spacing_m,
        knots.count as f64 * knots.rope_each_m,
        rules,
    )
}

#[expect(clippy::cast_precision_loss, reason = "people are few")]
fn with_knots(people: usize, spacing_m: f64, knots_m: f64, rules: &Rules) -> Ledger {
    let spans_m = people.saturating_sub(1) as f64 * spacing_m;
    let tie_ins_m = people as f64 * rules[Rule::TieInM];
    let coils_m = 2.0 * reserve::coil_m(people, spacing_m, rules);
    Ledger {
        spans_m,
        knots_m,
        tie_ins_m,
        coils_m,
        total_m: spans_m + knots_m + tie_ins_m + coils_m,
    }
}

/// Rope asked for by another spacing of the same team with the same wish for knots, metres.
#[must_use]
pub fn total_at_m(people: usize, spacing_m: f64, knots: &KnotSet, rules: &Rules) -> f64 {
    at(people, spacing_m, knots, rules).total_m
}

/// The ledger at another spacing of the same team with the same wish for knots.
#[must_use]
#[expect(clippy::cast_precision_loss, reason = "knots are few")]
pub(crate) fn at(people: usize, spacing_m: f64, knots: &KnotSet, rules: &Rules) -> Ledger {
    let each_end = if knots.count == 0 {
        0
    } else {
        knots::fitting(people, spacing_m, rules)
    };
    let knots_m = (2 * each_end) as f64 * knots.rope_each_m;
    with_knots(people, spacing_m, knots_m, rules)
}

/// The next length sold that holds so much rope; `None` above the longest.
#[must_use]
pub fn sold_length_m(total_m: f64) -> Option<f64> {
    SOLD_LENGTHS_M
        .into_iter()
        .find(|&sold_m| total_m <= sold_m + 1e-9)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        plan::{
            leg::Bite,
            why::{KnotsWanted, KnotsWhy},
        },
        practice::{Origin, set::Source},
    };

    fn knots(count: usize) -> KnotSet {
        KnotSet {
            count,
            each_end: count / 2,
            first_m: 3.0,
            step_m: 2.0,
            rope_each_m: 1.2,
            bite: Bite::Yes,
            why: KnotsWhy::Tied {
                wanted: KnotsWanted::OneAlone,
                fewer: None,
            },
        }
    }

    #[test]
    fn the_worked_ledgers() {
        // Trade rules, section 9, common practice, totals without tie-ins.
        let mut rules = Rules::with_practice(&Source::Named("short-alpine")).unwrap();
        rules.set(Rule::TieInM, 0.0, Origin::Trip).unwrap();
        for (people, spacing_m, tied, total_m, sold_m) in [
            (2, 15.0, 6, 67.2, 70.0),
            (3, 12.0, 6, 43.2, 50.0),
            (4, 20.0, 0, 60.0, 60.0),
        ] {
            let got = ledger(people, spacing_m, &knots(tied), &rules);
            assert!(
                (got.total_m - total_m).abs() < 1e-9,
                "{people} people: {got:?}"
            );
            assert_eq!(sold_length_m(got.total_m), Some(sold_m), "{people} people");
        }
    }

    #[test]
    fn the_chest_coil_method_stays_within_its_fifty_metres() {
        // [trekmountain], as excerpted: 50 m rope, 8 m gaps, 12/9/6 coils for 2/3/4.
        let rules = Rules::with_practice(&Source::Named("club-coils")).unwrap();
        for (people, bare_m) in [(2, 48.8), (3, 46.6), (4, 44.4)] {
            let got = ledger(people, 8.0, &knots(0), &rules);
            assert!(
                (got.total_m - got.tie_ins_m - bare_m).abs() < 1e-9,
                "{people} people: {got:?}"
            );
            assert_eq!(sold_length_m(got.total_m), Some(50.0), "{people} people");
        }
    }
}
