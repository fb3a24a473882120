//! One noisy height decides nothing, and a step that several heights know stays as steep as it is.

use schrund::{
    plan::{Plan, leg::Leg, verdict::Verdict},
    practice::Rule,
};

use crate::fixture::{
    close_to as close,
    planned::{only_roped, setup},
    trip::{Trip, rules},
};

/// A line of 1200 m to the north over hidden gaps, a height every so many metres on ground that falls so; some of the
/// heights, by their number, are off.
fn track(step_m: f64, fall_deg: f64, off_m: &'static [(i32, f64)]) -> Trip {
    let line: Vec<(f64, f64)> = (0..=(1200.0 / step_m) as i32)
        .map(|i| (0.0, f64::from(i) * step_m))
        .collect();
    let height_m = move |_: f64, north: f64| {
        let number = (north / step_m).round() as i32;
        let off = off_m.iter().find(|off| off.0 == number);
        3000.0 - north * fall_deg.to_radians().tan() + off.map_or(0.0, |off| off.1)
    };
    Trip::along(&line)
        .zone(
            (-300.0, 100.0),
            (300.0, 1100.0),
            r#"{"gap_m":4,"snow_depth_m":2}"#,
        )
        .ropes(&[60.0])
        .rules("snow = \"firm\"")
        .heights(height_m)
}

/// With every height taken as it is.
fn believed(trip: &Trip) -> Plan {
    trip.clone().rules("[assume]\nlone_height_m = 0").plan()
}

#[track_caller]
fn as_steep(what: &str, got: &Leg, want: &Leg) {
    for (got, want) in [
        (got.steepest_deg, want.steepest_deg),
        (got.lip_slope_deg, want.lip_slope_deg),
        (got.lip_slope_behind_deg, want.lip_slope_behind_deg),
    ] {
        close(what, got, want.expect("heights"), 0.01);
    }
    assert_eq!(got.verdict, want.verdict, "{what}");
}

#[test]
fn a_lone_dip_or_spike_changes_neither_slope_nor_word_nor_knots() {
    for step_m in [10.0, 20.0, 25.0] {
        for fall_deg in [0.0, 12.0] {
            let clean = track(step_m, fall_deg, &[]).plan();
            for off_m in [&[(24, -25.0)], &[(24, 25.0)]] {
                let what = format!("{off_m:?} every {step_m} m on {fall_deg}°");
                let trip = track(step_m, fall_deg, off_m);
                let plan = trip.plan();
                as_steep(&what, only_roped(&plan), only_roped(&clean));
                assert_eq!(setup(&plan).knots, setup(&clean).knots, "{what}");
                let steeper = only_roped(&believed(&trip)).steepest_deg;
                assert!(steeper > Some(fall_deg + 5.0), "{what}: {steeper:?}");
            }
        }
    }
    assert_eq!(
        only_roped(&believed(&track(25.0, 0.0, &[(24, -40.0)]))).verdict,
        Verdict::Stop,
        "or there would be nothing to mend"
    );
}

#[test]
fn a_dip_that_two_heights_know_is_believed() {
    let trip = track(20.0, 0.0, &[(24, -25.0), (25, -25.0)]);
    let plan = trip.plan();
    as_steep(
        "two in a row",
        only_roped(&plan),
        only_roped(&believed(&trip)),
    );
    assert_eq!(only_roped(&plan).verdict, Verdict::Stop);
}

#[test]
fn a_step_is_as_steep_as_its_heights_say_and_a_coarse_line_as_well() {
    // Down by 25 m between two heights, level before and behind.
    let step = |step_m: f64| {
        let heights = move |_: f64, north: f64| 3000.0 - if north > 600.0 { 25.0 } else { 0.0 };
        track(step_m, 0.0, &[]).heights(heights)
    };
    for (what, trip) in [
        ("a step", step(20.0)),
        ("a step by closer heights", step(5.0)),
        (
            "uneven, but downhill",
            track(20.0, 25.0, &[(24, -8.0), (30, 8.0)]),
        ),
        (
            "a dip of a line with a height every 60 m",
            track(60.0, 0.0, &[(10, -25.0)]),
        ),
    ] {
        let (plan, believed) = (trip.plan(), believed(&trip));
        as_steep(what, only_roped(&plan), only_roped(&believed));
        assert!(only_roped(&plan).steepest_deg > Some(20.0), "{what}");
    }
}

#[test]
fn a_model_has_no_heights_that_stand_alone() {
    // A trench of 30 m, one cell wide.
    let trench = |_: f64, north: f64| {
        3000.0
            - if (600.0..620.0).contains(&north) {
                30.0
            } else {
                0.0
            }
    };
    let trip = track(20.0, 0.0, &[]).flat().model(20.0, trench);
    let (plan, believed) = (trip.plan(), believed(&trip));
    as_steep("a trench", only_roped(&plan), only_roped(&believed));
    assert!(only_roped(&plan).steepest_deg > Some(20.0));
}

#[test]
fn how_far_its_neighbours_may_be_is_a_figure() {
    let dip = track(40.0, 0.0, &[(12, -25.0)]);
    assert!(rules()[Rule::LoneHeightM] < 39.0);
    let wider = dip.clone().rules("[assume]\nlone_height_m = 41").plan();
    close("mended", only_roped(&wider).steepest_deg, 0.0, 0.01);
    assert!(only_roped(&dip.plan()).steepest_deg > Some(20.0));
}
