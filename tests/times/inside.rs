//! Where inside a leg the team is when.

use proptest::prelude::*;
use schrund::{plan::clock::Backwards, trip::clock::Clock};

use crate::{
    fixture::{
        planned::codes,
        trip::{BARE, SNOW, Trip},
    },
    times::backwards::{any_trip, with},
};

/// A kilometre of hidden gaps with 300 m up, then two flat ones over bare ice, all of it one leg. By DIN 33466 it takes
/// 60 + 22.5 min; its pieces alone 67.5 and 30, so the first kilometre has 82.5 · 67.5 / 97.5 = 57.1 of them, with rest 61.9,
/// and 15 min to rope up: the hidden gaps are left at 05:17, and not at 04:45 as at an even pace.
#[test]
fn who_climbs_over_the_gaps_first_leaves_them_late() {
    let line = [(0.0, -1000.0), (0.0, 0.0), (0.0, 1000.0), (0.0, 2000.0)];
    let trip = Trip::along(&line)
        .zone((-300.0, -1200.0), (300.0, 0.0), SNOW)
        .zone((-300.0, 0.0), (300.0, 2200.0), BARE)
        .heights(|_, north| 2800.0 + 0.3 * north.min(0.0));
    let words = |until: &str| {
        format!(
            "start = \"04:00\"\nbridges_until = \"{until}\"\n[assume]\nbelay_min = 0\nbelay_each_min = 0"
        )
    };
    let plan = trip.clone().rules(&words("05:15")).plan();
    assert_eq!(plan.legs.len(), 1);
    assert!(codes(&plan.legs[0].findings).contains(&"bridges-late"));
    let clock = plan.clock.expect("a start is given").first;
    let latest = clock.as_planned.latest_start.expect("hidden gaps");
    let by_hand = "05:15".parse::<Clock>().expect("a time").after(-76.875);
    let off_min = by_hand.min() - latest.min();
    assert!((-1.0..1.0).contains(&off_min), "{latest} for {by_hand}");
    let plan = trip.rules(&words("05:17")).plan();
    assert!(!codes(&plan.legs[0].findings).contains(&"bridges-late"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Who stops for no time is nowhere later or earlier.
    #[test]
    fn a_halt_of_no_minutes_changes_no_hour(made in any_trip()) {
        let trip = made.trip();
        let stops: Vec<(f64, f64)> = made.halts.iter().map(|(km, _)| (*km, 0.0)).collect();
        let times = |halts: &[(f64, f64)]| {
            let plan = trip.clone().rules(&with(halts, "05:00")).plan();
            let clock = plan.clock.expect("a start is given").first;
            let lasts: Vec<Option<f64>> = plan.legs.iter().map(|l| Some(l.end_clock?.min())).collect();
            (clock.as_planned, clock.slower.expect("slower"), lasts)
        };
        let (without, stopped) = (times(&[]), times(&stops));
        same(without.0, stopped.0)?;
        same(without.1, stopped.1)?;
        prop_assert_eq!(without.2, stopped.2);
    }
}

/// But for what sums of minutes leave.
pub(super) fn same(a: Backwards, b: Backwards) -> Result<(), TestCaseError> {
    let hours = |b: Backwards| [b.arrival, b.latest_start].map(|at| at.map(|at| at.to_string()));
    prop_assert_eq!(hours(a), hours(b));
    let turns = |b: Backwards| [b.turn_round, b.turn_round_back_by];
    for (a, b) in turns(a).into_iter().zip(turns(b)) {
        prop_assert_eq!(
            a.map(|t| (t.by, t.leg, t.kind)),
            b.map(|t| (t.by, t.leg, t.kind))
        );
        let at_m = |t: Option<schrund::plan::clock::TurnRound>| t.map_or(0.0, |t| t.at_m);
        prop_assert!((at_m(a) - at_m(b)).abs() < 1e-6, "{:?} {:?}", a, b);
    }
    let places = [a, b].map(|b| b.at_bridges_until_m.unwrap_or(-1.0));
    prop_assert!((places[0] - places[1]).abs() < 1e-6, "{:?}", places);
    Ok(())
}
