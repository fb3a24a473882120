//! Where a team turns that cannot go on: not soon behind the begin of hidden gaps, where nobody waits and talks.

use schrund::plan::clock::TurnKind;

use crate::fixture::trip::{SNOW, Trip};

/// Four kilometres on level ground, gaps under snow from 700 to 1100 m and from 2000 to 3900 m. The farthest place from which
/// the way back is done in time moves along the line as the hour is later.
#[test]
fn the_last_place_to_turn_is_where_hidden_gaps_begin_unless_that_is_far_off() {
    let line: Vec<(f64, f64)> = (0..=40).map(|i| (0.0, 100.0 * f64::from(i))).collect();
    let trip = Trip::along(&line)
        .heights(|_, _| 2500.0)
        .zone((-300.0, 700.0), (300.0, 1100.0), SNOW)
        .zone((-300.0, 2000.0), (300.0, 3900.0), SNOW);
    let (mut at_begin, mut far_in, mut in_first) = (0, 0, 0);
    for min in 20..190 {
        let (hour, min) = (9 + min / 60, min % 60);
        let rules = format!("start = \"09:00\"\nback_by = \"{hour:02}:{min:02}\"");
        let plan = trip.clone().rules(&rules).plan();
        let roped: Vec<_> = plan.legs.iter().filter(|leg| leg.roped).collect();
        let clock = plan.clock.as_ref().expect("a start").first.clone();
        let Some(turn) = clock.as_planned.turn_round else {
            continue;
        };
        assert_eq!(turn.kind, TurnKind::OffTheLine);
        let [first, second] = roped[..] else {
            panic!("{roped:?}");
        };
        let into_m = turn.at_m - second.start_m;
        assert!(
            !(1e-6..=1000.0).contains(&into_m),
            "{rules}: {into_m} m among the gaps"
        );
        at_begin += u32::from(into_m.abs() < 1e-6);
        far_in += u32::from(into_m > 1000.0);
        in_first += u32::from(first.start_m < turn.at_m && turn.at_m < first.end_m);
    }
    assert!(
        at_begin > 5 && far_in > 5 && in_first > 2,
        "{at_begin} {far_in} {in_first}"
    );
}
