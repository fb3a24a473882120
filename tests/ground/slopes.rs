//! Slopes of the line, of the ground, and toward the lip, on planes whose answer is known.

use proptest::prelude::*;
use schrund::{
    ground::{profile::Profile, samples::Sample},
    plan::leg::Leg,
    practice::Rule,
    trip::route::Stretch,
};

use crate::fixture::{
    close_to as close,
    ground::tilted,
    planned::{only_roped, said},
    trip::{EASTWARD, NORTHWARD, Trip, rules},
};

const ZONE: &str = r#"{"gap_m":6,"snow_depth_m":1.5}"#;

/// The roped leg of a line through the middle on ground tilted so, from the model alone.
fn leg_on(slope_deg: f64, aspect_deg: f64, line_m: &[(f64, f64)]) -> Leg {
    let ground = tilted(slope_deg, aspect_deg);
    let plan = Trip::along(line_m).middle(ZONE).model(20.0, ground).plan();
    only_roped(&plan).clone()
}

#[test]
fn a_tilted_plane_gives_its_slope_to_the_lip_in_walking_direction() {
    let down = leg_on(25.0, 180.0, &[(0.0, 900.0), (0.0, -900.0)]);
    close("straight down", down.lip_slope_deg, 25.0, 0.01);
    close("and behind", down.lip_slope_behind_deg, 0.0, 1e-12);
    let up = leg_on(25.0, 180.0, &NORTHWARD);
    close("straight up", up.lip_slope_deg, 0.0, 1e-12);
    close(
        "the last one falls down",
        up.lip_slope_behind_deg,
        25.0,
        0.01,
    );
    let traverse = leg_on(25.0, 180.0, &EASTWARD);
    close("across", traverse.lip_slope_deg, 0.0, 0.05);
    let slant = leg_on(25.0, 180.0, &[(-900.0, 900.0), (900.0, -900.0)]);
    let want = (25.0_f64.to_radians().tan() * 45.0_f64.to_radians().cos()).atan();
    close("slanting", slant.lip_slope_deg, want.to_degrees(), 0.01);
}

#[test]
fn the_ground_is_as_steep_as_it_is_whichever_way_the_line_goes() {
    let traverse = leg_on(33.0, 200.0, &EASTWARD);
    close("steepest ground", traverse.ground_steepest_deg, 33.0, 0.01);
    close("facing", traverse.ground_aspect_deg, 200.0, 0.02);
    let place = traverse.ground_steepest_at.expect("a place");
    assert!(
        (place[0] - 9.0).abs() < 0.01 && (place[1] - 46.5).abs() < 0.01,
        "{place:?}"
    );
    let says = said(&traverse.findings, "avalanche-terrain");
    assert!(
        says.len() == 1 && says[0].contains("the ground has 33° near"),
        "{says:?}"
    );
    assert!(said(&traverse.findings, "too-steep-to-rope-without-anchors").is_empty());
    let wall = leg_on(43.0, 180.0, &EASTWARD);
    assert_eq!(
        said(&wall.findings, "too-steep-to-rope-without-anchors").len(),
        1,
        "{:?}",
        wall.findings
    );
}

#[test]
fn a_model_that_flattens_a_step_relaxes_nothing() {
    // The route file knows a step of 40 m in 50 m; the model of 60 m cells says the ground is level.
    let step = |_: f64, north: f64| 3000.0 - (north.clamp(-25.0, 25.0) + 25.0) / 50.0 * 40.0;
    let line: Vec<(f64, f64)> = (-36..=36).map(|i| (0.0, 25.0 * f64::from(i))).collect();
    let trip = Trip::along(&line).middle(ZONE).heights(step);
    let alone = trip.plan();
    let plan = trip.model(60.0, |_, _| 2980.0).plan();
    let (alone, leg) = (only_roped(&alone), only_roped(&plan));
    assert!(alone.steepest_deg > Some(38.0), "{:?}", alone.steepest_deg);
    assert!(
        leg.steepest_deg >= alone.steepest_deg,
        "the steeper source counts"
    );
    assert!(
        leg.lip_slope_deg >= alone.lip_slope_deg,
        "toward the lip too"
    );
    assert_eq!(
        leg.teams[0].knots, alone.teams[0].knots,
        "the steep descent still asks for knots"
    );
    let says = said(&plan.findings, "terrain-flattens");
    assert!(
        says.len() == 1 && says[0].contains("cells of 60 m"),
        "{says:?}"
    );
}

#[test]
fn a_straight_leg_has_a_bearing_and_a_bent_one_has_none() {
    let straight = leg_on(5.0, 180.0, &[(-900.0, -900.0), (10.0, 0.0), (900.0, 900.0)]);
    close("north-east", straight.bearing_deg, 45.0, 0.7);
    let bent = leg_on(5.0, 180.0, &[(-900.0, 0.0), (0.0, 0.0), (0.0, 900.0)]);
    assert_eq!(bent.bearing_deg, None);
}

#[test]
fn roll_overs_on_the_ice_are_marked_and_a_plane_has_none() {
    let plane = leg_on(20.0, 180.0, &NORTHWARD);
    assert!(plane.look_here.is_empty(), "{:?}", plane.look_here);
    // Level north of the middle, 20° south of it: it rolls over along the line north = 0.
    let roll = |_: f64, north: f64| 3000.0 + north.min(0.0) * 20.0_f64.to_radians().tan();
    let plan = Trip::northward().model(20.0, roll).plan();
    let leg = only_roped(&plan);
    assert_eq!(leg.look_here.len(), 1, "{:?}", leg.look_here);
    close("at the edge", Some(leg.look_here[0].at_m), 900.0, 15.0);
    // The bend lies between two cell centres, so the model cuts it by a quarter of a cell of its fall: the
    // piece above seems to fall by that much, the piece below by that much less.
    let (over_m, cut_m) = (rules()[Rule::ConvexOverM], 20.0 / 4.0);
    let fall = 20.0_f64.to_radians().tan();
    let below = ((over_m - cut_m) * fall / over_m).atan();
    let above = (cut_m * fall / over_m).atan();
    let want = (below - above).to_degrees();
    close(
        "by the bend",
        Some(leg.look_here[0].steepens_deg),
        want,
        0.3,
    );
    assert_eq!(said(&leg.findings, "convex-ground").len(), 1);
}

/// Steps of a walk, metres on and up: close together, so that many heights lie in a window.
fn walk() -> impl Strategy<Value = Vec<Sample>> {
    let step = (0.05..8.0_f64, -3.0..3.0_f64);
    prop::collection::vec(step, 2..200).prop_map(|steps| {
        let mut here = Sample {
            at_m: 0.0,
            height_m: 2000.0,
        };
        let on = |(on_m, up_m)| {
            here = Sample {
                at_m: here.at_m + on_m,
                height_m: here.height_m + up_m,
            };
            here
        };
        steps.into_iter().map(on).collect()
    })
}

proptest! {
    #[test]
    fn no_window_is_steeper_than_the_steepest(
        samples in walk(),
        from in 0.0..0.6_f64,
        length in 0.01..1.0_f64,
        over_m in 2.0..80.0_f64,
    ) {
        let profile = Profile::of_samples(&samples);
        let (first_m, last_m) = (samples[0].at_m, samples[samples.len() - 1].at_m);
        let from_m = first_m + from * (last_m - first_m);
        let stretch = Stretch { from_m, to_m: from_m + length * (last_m - from_m) };
        let over_m = over_m.min(stretch.to_m - stretch.from_m);
        let starts = samples.iter().flat_map(|s| [s.at_m, s.at_m - over_m]);
        // Over all of a stretch there is one window, whatever was rounded.
        let last_start_m = (stretch.to_m - over_m).max(stretch.from_m);
        let starts = starts.chain([stretch.from_m, last_start_m]);
        let within = starts.filter(|s| (stretch.from_m..=last_start_m).contains(s));
        let rises: Vec<f64> = within
            .filter_map(|from_m| profile.rise_m(Stretch { from_m, to_m: from_m + over_m }))
            .collect();
        let deg = |rise_m: f64| (rise_m / over_m).atan().to_degrees();
        let up_or_down = rises.iter().map(|rise_m| rise_m.abs()).fold(0.0, f64::max);
        let down = rises.iter().map(|rise_m| -rise_m).fold(0.0, f64::max);
        let steepest = profile.steepest(stretch, over_m).expect("heights");
        close("steepest", Some(steepest.deg.abs()), deg(up_or_down), 1e-6);
        let descent_deg = profile.steepest_descent_deg(stretch, over_m).expect("heights");
        close("down", Some(descent_deg), deg(down), 1e-6);
        // It is where it is said to be.
        let from_m = (steepest.at_m - over_m / 2.0).max(first_m);
        let there = Stretch { from_m, to_m: (from_m + over_m).min(last_m) };
        let rise_m = over_m * steepest.deg.to_radians().tan();
        close("there", profile.rise_m(there), rise_m, 1e-6);
    }
}
