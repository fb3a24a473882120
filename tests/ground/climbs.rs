//! What counts as climbing: no jump, no noise of a raster; and what is said where heights are missing or disagree.

use schrund::{
    fault::Level,
    plan::{Plan, fact::Fact, finding::Finding, leg::Leg},
};

use crate::fixture::{
    close_to as close,
    ground::tilted,
    planned::{codes, findings, only_roped, said},
    trip::{Spot, Trip, rules},
};

const ZONE: &str = r#"{"gap_m":6,"snow_depth_m":1.5}"#;

/// A line north between two places, a point every so many metres.
fn north(from_m: i32, to_m: i32, step_m: usize) -> Vec<Spot> {
    let places = (from_m..=to_m).step_by(step_m);
    places.map(|m| (0.0, f64::from(m))).collect()
}

/// Ground that rises and falls on the way north, and from `lift_at_m` on lies higher by `lift_m`.
fn rolling(lift_at_m: f64, lift_m: f64) -> impl Fn(f64, f64) -> f64 + Clone + 'static {
    move |_, north| {
        let lifted_m = if north > lift_at_m { lift_m } else { 0.0 };
        2000.0 + 0.2 * north + 40.0 * (north / 150.0).sin() + lifted_m
    }
}

fn same_leg(what: &str, got: &Leg, want: &Leg) {
    close(what, got.ascent_m, want.ascent_m.expect("heights"), 0.01);
    close(what, got.descent_m, want.descent_m.expect("heights"), 0.01);
    close(
        what,
        got.steepest_deg,
        want.steepest_deg.expect("heights"),
        0.01,
    );
    close(what, Some(got.time_min), want.time_min, 0.01);
    for (got, want) in [
        (got.lip_slope_deg, want.lip_slope_deg),
        (got.lip_slope_behind_deg, want.lip_slope_behind_deg),
        (got.ground_steepest_deg, want.ground_steepest_deg),
    ] {
        assert_eq!(got.is_some(), want.is_some(), "{what}");
        close(what, got.or(Some(0.0)), want.unwrap_or(0.0), 0.01);
    }
    assert_eq!(got.verdict, want.verdict, "{what}");
    assert_eq!(codes(&got.findings), codes(&want.findings), "{what}");
    assert_eq!(
        got.teams.first().map(|t| t.knots.count),
        want.teams.first().map(|t| t.knots.count),
        "{what}"
    );
}

#[test]
fn a_lift_between_two_segments_is_no_climb_no_slope_and_no_time() {
    for (place, ends_m, begins_m) in [("on the ice", -100, 100), ("off it", -650, -450)] {
        let trip = |lift_m: f64, model: bool| -> Plan {
            let ground = rolling(f64::from(ends_m + begins_m) / 2.0, lift_m);
            let trip = Trip::along(&north(-900, ends_m, 25)).and_on(&north(begins_m, 900, 25));
            let trip = trip.middle(ZONE);
            match model {
                true => trip.model(10.0, ground).plan(),
                false => trip.heights(ground).plan(),
            }
        };
        for model in [false, true] {
            let (without, with) = (trip(0.0, model), trip(1000.0, model));
            let what = format!("{place}, model {model}");
            let up_m = without.route.ascent_m.expect("heights");
            close(&what, with.route.ascent_m, up_m, 0.01);
            close(
                &what,
                with.route.effort_km,
                without.route.effort_km.unwrap(),
                1e-3,
            );
            close(
                &what,
                Some(with.route.time.total_min),
                without.route.time.total_min,
                0.01,
            );
            assert_eq!(with.legs.len(), without.legs.len(), "{what}");
            for (got, want) in with.legs.iter().zip(&without.legs) {
                same_leg(&format!("{what}, leg {}", got.leg), got, want);
            }
        }
    }
}

#[test]
fn cutting_a_line_changes_its_climb_by_what_the_cut_leaves_out_only() {
    let ground = rolling(0.0, 0.0);
    let whole = Trip::along(&north(-900, 900, 25))
        .middle(ZONE)
        .heights(ground.clone());
    let behind = [vec![(0.0, 1.0)], north(25, 900, 25)].concat();
    let cut = Trip::along(&north(-900, 0, 25)).and_on(&behind);
    let cut = cut.middle(ZONE).heights(ground);
    let (whole, cut) = (whole.plan(), cut.plan());
    close("up", cut.route.ascent_m, whole.route.ascent_m.unwrap(), 1.0);
    close(
        "down",
        cut.route.descent_m,
        whole.route.descent_m.unwrap(),
        1.0,
    );
}

#[test]
fn the_profile_is_drawn_in_pieces_and_two_sources_are_not_compared_across_a_jump() {
    let ground = rolling(0.0, 1000.0);
    let trip = Trip::along(&north(-900, -100, 25))
        .and_on(&north(100, 900, 25))
        .middle(ZONE);
    let mut planned = trip.heights(ground.clone()).model(10.0, ground).planned();
    let compared = said(&planned.plan.findings, "heights-compared");
    assert_eq!(compared.len(), 1, "{:?}", codes(&planned.plan.findings));
    planned.scene = schrund::Planner::new(&planned.job)
        .unwrap()
        .scene(&planned.plan)
        .unwrap();
    let page = planned.written("html");
    assert_eq!(
        page.matches(r#"<path class="ground""#).count(),
        2,
        "one line a segment"
    );
    assert_eq!(page.matches(r#"<path class="hill""#).count(), 2);
    let steep = page.split("class=\"steep\"").count() - 1;
    assert_eq!(steep, 0, "the ground itself has 25° at most");
}

/// ±40 m that look like chance, from one cell of 20 m to the next.
fn noise_m(east: f64, north: f64) -> f64 {
    let cell = |m: f64| (m / 20.0).floor();
    let mixed = (cell(east) * 12.9898 + cell(north) * 78.233).sin() * 43758.5453;
    80.0 * (mixed - mixed.floor()) - 40.0
}

/// A line over a plane of 0.1, known to the route file, and to a model with that noise.
fn noisy(step_m: usize, figures: &str) -> Trip {
    let plane = |_: f64, north: f64| 2000.0 + 0.1 * north;
    let trip = Trip::along(&north(-1800, 1800, step_m))
        .middle(ZONE)
        .heights(plane);
    let trip = trip.model(20.0, move |east, north| {
        plane(east, north) + noise_m(east, north)
    });
    trip.rules(&format!("[assume]\nheights_apart_m = 100\n{figures}"))
}

#[test]
fn noise_of_a_raster_is_not_climbing_however_dense_the_line() {
    let up_m = |step_m: usize, figures: &str| {
        let plan = noisy(step_m, figures).plan();
        plan.route.ascent_m.expect("heights")
    };
    let (raw, dense, sparse) = (up_m(2, "climb_cells = 0"), up_m(2, ""), up_m(200, ""));
    // 360 m are climbed; the rest is noise.
    let noise = |up_m: f64| up_m - 360.0;
    assert!(noise(raw) > 360.0, "{raw} m of it");
    assert!(noise(dense) < noise(raw) / 3.0, "{dense} m of {raw} m");
    assert!(
        (dense - sparse).abs() < 0.02 * 360.0,
        "{dense} m dense, {sparse} m sparse"
    );
}

#[test]
fn smoothing_relaxes_no_slope() {
    let plan = |figures: &str| noisy(5, figures).plan();
    let (as_it_is, smoothed) = (plan("climb_cells = 0"), plan("climb_cells = 20"));
    let (a, b) = (only_roped(&as_it_is), only_roped(&smoothed));
    assert_ne!(a.ascent_m, b.ascent_m);
    assert_eq!(a.steepest_deg, b.steepest_deg);
    assert_eq!(a.lip_slope_deg, b.lip_slope_deg);
    assert_eq!(a.lip_slope_behind_deg, b.lip_slope_behind_deg);
    assert_eq!(a.ground_steepest_deg, b.ground_steepest_deg);
    assert_eq!(a.teams, b.teams);
    assert_eq!(a.verdict, b.verdict);
}

#[test]
fn ascents_that_differ_by_more_than_a_tenth_are_both_shown() {
    let apart = noisy(5, "climb_cells = 0").plan();
    let told = said(&apart.findings, "ascents-apart");
    let model_m = apart.route.ascent_m.expect("heights");
    let want = format!(
        "up 360 m by the heights of the route file, up {model_m:.0} m by those of the terrain model; the terrain \
         model is used for climbs and times"
    );
    assert_eq!(told, [want]);
    let fact = apart
        .findings
        .iter()
        .find(|f| f.code() == "ascents-apart")
        .unwrap();
    assert_eq!(fact.level(), Level::Note);
    let values = serde_json::to_value(fact).unwrap()["values"].clone();
    close("file", values["file_m"].as_f64(), 360.0, 0.1);
    close("model", values["model_m"].as_f64(), model_m, 1e-3);
    assert_eq!(values["used"], "terrain-model");
    for (figures, why) in [
        (
            "climb_cells = 0\nascents_apart_share = 10",
            "the share is the leader's",
        ),
        (
            "climb_cells = 50\nascents_apart_share = 0.3",
            "nothing is left of the noise",
        ),
    ] {
        let plan = noisy(5, figures).plan();
        assert_eq!(said(&plan.findings, "ascents-apart"), [""; 0], "{why}");
    }
}

/// The partly unknown slopes of a trip whose route file has heights only where `known` says.
fn unknown(known: impl Fn(f64) -> bool + 'static, model: bool) -> (Vec<Finding>, Plan) {
    let ground = tilted(10.0, 180.0);
    let heights = move |_: f64, north: f64| match known(north) {
        true => 3000.0 - 0.1 * north,
        false => f64::NAN,
    };
    let trip = Trip::along(&north(-900, 900, 10))
        .middle(ZONE)
        .heights(heights);
    let plan = match model {
        true => trip.model(20.0, ground).plan(),
        false => trip.plan(),
    };
    let partly = findings(&plan).filter(|f| f.code() == "slope-partly-unknown");
    (partly.cloned().collect(), plan)
}

#[test]
fn heights_on_a_part_of_a_leg_leave_its_slope_unknown_on_the_rest() {
    let (told, plan) = unknown(|north| north <= -100.0, false);
    let leg = only_roped(&plan);
    let Some(Fact::SlopePartlyUnknown { unknown_m, pieces }) = told[0].fact() else {
        panic!("{told:?}");
    };
    assert_eq!(told.len(), 1);
    // From 800 m of chainage, the last height, to the end of the leg.
    close("from", Some(pieces[0].from_m), 800.0, 0.1);
    close("to", Some(pieces[0].to_m), leg.end_m, 1e-6);
    close("in all", Some(*unknown_m), leg.end_m - 800.0, 0.1);
    let says = said(&told, "slope-partly-unknown");
    assert_eq!(
        says,
        [
            "no heights are known for 0.80–1.15 km: how steep it is there is unknown; what is told of slopes and falls is \
          told of the rest"
        ]
    );
    assert!(said(&plan.findings, "slope-unknown").is_empty());
    assert!(codes(&leg.findings).contains(&"slope-partly-unknown"));
}

#[test]
fn missing_heights_are_told_only_where_they_matter_and_nothing_else_is_known() {
    let (told, _) = unknown(|north| !(-50.0..=50.0).contains(&north), false);
    assert_eq!(told.len(), 1, "a hole of 120 m on the ice");
    let (told, _) = unknown(|north| !(-10.0..=10.0).contains(&north), false);
    assert_eq!(
        told,
        [],
        "a hole of 40 m is bridged: a slope is taken over 50 m"
    );
    let (told, _) = unknown(|north| north <= 400.0, false);
    assert_eq!(told, [], "behind the last roped leg");
    let (told, plan) = unknown(|_| false, false);
    assert_eq!(told, [], "none at all: the plan says that once");
    assert_eq!(said(&plan.findings, "slope-unknown").len(), 1);
    let (told, _) = unknown(|north| north <= -100.0, true);
    assert_eq!(told, [], "the model knows the rest");
}

#[test]
fn the_threshold_stands_beside_the_ascent_wherever_that_is_the_headline() {
    let trip = Trip::northward()
        .falling(0.1)
        .rules("[assume]\nascent_threshold_m = 17");
    let planned = trip.planned();
    assert!(
        planned
            .written("table")
            .contains("up 0 m, down 180 m (rises and falls under 17 m not counted)")
    );
    let page = planned.written("html");
    let up = page.split("<dt>Up</dt>").nth(1).expect("a figure");
    let up = up.split("</dd>").next().unwrap_or_default();
    assert!(
        up.contains("rises and falls under 17 m not counted"),
        "{up}"
    );
    // The message has no ascent in its head, so nothing stands beside it.
    assert!(
        !planned
            .written("text")
            .lines()
            .next()
            .unwrap_or_default()
            .contains("up")
    );
    assert_eq!(
        rules()[schrund::practice::Rule::AscentThresholdM],
        10.0,
        "by default"
    );
}
