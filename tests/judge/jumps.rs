//! Jumps of the line and gaps between stages that pass over ice.

use schrund::{
    plan::{
        finding::{At, Finding},
        leg::Verdict,
    },
    read::gpx,
};

use crate::fixture::{
    planned::{findings, said},
    trip::{Spot, Trip},
};

const JUMP: &str = "jump-over-ice";
const GAP: &str = "stage-gap-over-ice";
const ICEFALL: &str = r#"{"name":"Icefall","gap_m":4,"snow_depth_m":2}"#;

/// North through 400 m of ice, and then a jump from here to there and on.
fn jumping(from_north: f64, to_north: f64) -> Trip {
    let mut trip = Trip::northward();
    trip.segments = vec![
        vec![(0.0, -900.0), (0.0, from_north)],
        vec![(0.0, to_north), (0.0, 2000.0)],
    ];
    trip
}

#[test]
fn a_jump_over_a_zone_is_told_with_its_name_and_makes_the_leg_one_to_look_at() {
    let trip = jumping(600.0, 1000.0);
    let dry = trip.plan();
    assert!(
        said(findings(&dry), JUMP).is_empty(),
        "nothing lies under it"
    );
    let plan = trip.zone((-50.0, 700.0), (50.0, 800.0), ICEFALL).plan();
    assert_eq!(
        said(findings(&plan), JUMP),
        [
            "the line jumps 400 m near 1.50 km, straight over zone 2 \"Icefall\": nothing is planned for that ice"
        ]
    );
    let found: Vec<&Finding> = findings(&plan).filter(|f| f.code() == JUMP).collect();
    let leg = found[0].at.leg().expect("it belongs to a leg");
    let leg = &plan.legs[leg - 1];
    assert!(
        !leg.roped && leg.verdict == Verdict::Look,
        "{:?}",
        leg.verdict
    );
}

#[test]
fn what_a_jump_passes_beside_or_hardly_leaves_is_not_told() {
    let beside = jumping(600.0, 1000.0).zone((50.0, 700.0), (150.0, 800.0), ICEFALL);
    assert!(said(findings(&beside.plan()), JUMP).is_empty(), "beside");
    // 15 m inside the ice: both ends lie on it, and the leg is roped there anyway.
    assert!(
        said(findings(&jumping(0.0, 15.0).plan()), JUMP).is_empty(),
        "within the margin"
    );
    assert_eq!(
        said(findings(&jumping(0.0, 25.0).plan()), JUMP).len(),
        1,
        "beyond it"
    );
}

#[test]
fn known_ice_counts_as_drawn_ice_does_and_several_jumps_are_one_finding() {
    let trip = jumping(600.0, 1000.0).inventory((-50.0, 700.0), (50.0, 800.0));
    assert_eq!(
        said(findings(&trip.plan()), JUMP),
        [
            "the line jumps 400 m near 1.50 km, straight over glacier 1 of the inventory: nothing is planned for that ice"
        ]
    );
    let mut twice = trip;
    twice.segments.push(vec![(0.0, 2500.0), (0.0, 3000.0)]);
    let twice = twice.zone((-50.0, 2200.0), (50.0, 2300.0), ICEFALL);
    assert_eq!(
        said(findings(&twice.plan()), JUMP),
        [
            "the line jumps 2 times, 900 m in all, straight over zone 2 \"Icefall\", glacier 1 of the inventory; \
          the longest jump is 500 m near 2.50 km: nothing is planned for that ice"
        ]
    );
}

/// The line of one trip as the first stage, that of another as the second.
fn in_two_stages(first: &[Spot], second: &[Spot]) -> Trip {
    Trip::along(first).then(second)
}

#[test]
fn a_gap_between_stages_is_told_with_the_ice_that_it_passes_over() {
    let stages = |begins: f64| {
        let (first, second) = (
            [(0.0, -900.0), (0.0, 900.0)],
            [(0.0, begins), (0.0, 2000.0)],
        );
        in_two_stages(&first, &second)
            .middle(r#"{"gap_m":6,"snow_depth_m":1.5}"#)
            .zone((-50.0, 950.0), (50.0, 1050.0), ICEFALL)
    };
    let plan = stages(1100.0).plan();
    assert_eq!(
        said(findings(&plan), GAP),
        [
            "from the end of stage 1 to the beginning of stage 2 it is 200 m straight over zone 2 \"Icefall\": nothing is planned for that ice"
        ]
    );
    let found: Vec<&Finding> = plan.findings.iter().filter(|f| f.code() == GAP).collect();
    assert!(
        matches!(&found[0].at, At::Stage(place) if place.stage == 1),
        "{found:?}"
    );
    let joined = stages(900.0).plan();
    assert!(
        said(findings(&joined), GAP).is_empty(),
        "one begins where the other ends"
    );
}

#[test]
fn a_stage_planned_alone_has_no_gap() {
    let trip = in_two_stages(
        &[(0.0, -900.0), (0.0, 900.0)],
        &[(0.0, 1100.0), (0.0, 2000.0)],
    );
    let route = gpx::route("route.gpx", trip.gpx().as_bytes())
        .expect("a route")
        .value;
    assert_eq!(route.stages.len(), 2);
    assert!(
        route.stages[0]
            .gap_to(&route.stages[1])
            .is_some_and(|gap| gap.length_m > 190.0)
    );
    assert_eq!(
        route.stages[0].jumps().count(),
        0,
        "the gap is no jump of a stage"
    );
}
