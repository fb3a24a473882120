//! Which heights a plan uses, and what it says of them.

use schrund::{
    fault::Level,
    ground::{heights::heights, relief::Relief},
    plan::{Plan, fact::Fact, finding::Finding, heights::TerrainVoid, place::HeightsFrom},
};

use crate::fixture::{
    close_to as close,
    ground::tilted,
    planned::{codes, only_roped, said},
    trip::{NORTHWARD, Trip},
};

#[test]
fn a_ridge_between_two_points_of_the_route_is_climbed() {
    // Two points 1800 m apart at the same height, and a ridge of 100 m between them.
    let ridge = |_: f64, north: f64| 3000.0 + (100.0 - north.abs() / 4.0).max(0.0);
    let trip = Trip::northward().heights(ridge);
    let bare = trip.plan();
    close("without a model", bare.route.ascent_m, 0.0, 1e-9);
    assert_eq!(bare.route.heights_from, [HeightsFrom::RouteFile]);
    let plan = trip.model(10.0, ridge).plan();
    // The mean over 5 cells of 10 m cuts 50/4 · 1/4 = 3.1 m off a crest that falls by 1/4 on both sides [derived]; the
    // crest lies between two cell centres, which cuts up to 10/2 · 1/4 more.
    close("with it, up", plan.route.ascent_m, 96.9, 1.3);
    close("with it, down", plan.route.descent_m, 96.9, 1.3);
    assert_eq!(plan.route.heights_from, [HeightsFrom::TerrainModel]);
}

#[test]
fn two_sources_are_compared_and_far_apart_they_warn() {
    let line: Vec<(f64, f64)> = (-9..=9).map(|i| (0.0, 100.0 * f64::from(i))).collect();
    let trip = Trip::along(&line)
        .middle(r#"{"gap_m":6,"snow_depth_m":1.5}"#)
        .model(20.0, tilted(10.0, 180.0));
    for (shift_m, lies, code, level) in [
        (7.0, "7 m above", "heights-compared", Level::Note),
        (-48.0, "48 m below", "heights-far-apart", Level::Look),
        (0.0, "within a metre of", "heights-compared", Level::Note),
    ] {
        let ground = tilted(10.0, 180.0);
        let shifted = move |east: f64, north: f64| ground(east, north) - shift_m;
        let plan = trip.clone().heights(shifted).plan();
        let says = said(&plan.findings, code);
        let want = format!(
            "lies {lies} the heights of the route file in the median; at the worst {lies} them"
        );
        assert!(says.len() == 1 && says[0].contains(&want), "{says:?}");
        assert!(says[0].contains("the terrain model is used"), "{says:?}");
        let finding = plan.findings.iter().find(|f| f.code() == code);
        assert_eq!(finding.map(Finding::level), Some(level));
    }
}

fn void(plan: &Plan) -> TerrainVoid {
    let facts = plan.findings.iter().filter_map(Finding::fact);
    let mut voids = facts.filter_map(|f| match f {
        Fact::TerrainVoid { void } => Some(*void),
        _ => None,
    });
    voids.next().expect("a void")
}

#[test]
fn where_the_model_has_a_hole_the_route_file_is_used_and_nothing_is_mixed() {
    let ground = tilted(10.0, 180.0);
    let holed = |east: f64, north: f64| {
        if (300.0..500.0).contains(&north) {
            f64::NAN
        } else {
            ground(east, north) + 50.0
        }
    };
    let trip = Trip::northward().model(20.0, holed);
    let climb_m = 1800.0 * 10.0_f64.to_radians().tan();
    let with_heights = trip.clone().heights(tilted(10.0, 180.0)).plan();
    close("own heights", with_heights.route.ascent_m, climb_m, 0.5);
    assert_eq!(with_heights.route.heights_from, [HeightsFrom::RouteFile]);
    let without = trip.plan();
    close("straight across", without.route.ascent_m, climb_m, 0.5);
    for plan in [with_heights, without] {
        // 200 m of void, and up to a cell more on either side where interpolation lacks a neighbour.
        let metres = void(&plan).void_m.expect("metres");
        assert!((200.0..=260.0).contains(&metres), "{metres} m");
        let says = said(&plan.findings, "terrain-void");
        assert!(says[0].contains(&format!("{metres:.0} m")), "{says:?}");
    }
}

#[test]
fn a_route_without_any_height_still_plans_and_says_so() {
    let plan = Trip::northward().plan();
    let told = codes(&plan.findings);
    assert_eq!(told.iter().filter(|c| **c == "no-heights").count(), 1);
    let leg = only_roped(&plan);
    assert_eq!(
        (
            leg.ascent_m,
            leg.steepest_deg,
            leg.lip_slope_deg,
            plan.route.effort_km
        ),
        (None, None, None, None)
    );
    assert!(leg.time_min > 0.0, "the way itself takes time");
}

#[test]
fn heights_are_never_further_apart_than_half_a_cell() {
    let line = [(-500.0, 0.0), (-499.0, 0.0), (800.0, 3.0)];
    let job = Trip::along(&line).model(20.0, |_, _| 1000.0).job();
    let terrain = job.terrain;
    let heights = heights(&job.route.stages[0], &terrain, &job.rules).expect("readable");
    let at: Vec<f64> = heights.profile.samples().iter().map(|s| s.at_m).collect();
    assert!(at.len() > 130, "{} heights over 1300 m", at.len());
    let cell_m = terrain.models().next().expect("a model").1;
    for pair in at.windows(2) {
        assert!(pair[1] - pair[0] <= cell_m / 2.0 + 1e-6, "{pair:?}");
    }
    let void = heights.profile.missing();
    assert!(void.is_empty(), "{void:?}");
}

#[test]
fn the_relief_lies_round_the_route_with_north_on_top() {
    let trip = Trip::along(&NORTHWARD);
    let job = trip.clone().model(10.0, |_, north| 2000.0 + north).job();
    let relief = Relief::around(&job.route, &job.terrain)
        .expect("readable")
        .expect("heights");
    assert_eq!(relief.heights_m.len(), relief.columns * relief.rows);
    for place in job.route.stages[0].points().iter() {
        let inside = |low: f64, here: f64, high: f64| low < here && here < high;
        assert!(inside(
            relief.south_west.lat_deg,
            place.lat_deg,
            relief.north_east.lat_deg
        ));
        assert!(inside(
            relief.south_west.lon_deg,
            place.lon_deg,
            relief.north_east.lon_deg
        ));
    }
    let (middle, last) = (relief.columns / 2, relief.rows - 1);
    let top = relief.height_m(middle, 0).expect("a height");
    let bottom = relief.height_m(middle, last).expect("a height");
    assert!(top > bottom + 1800.0, "top {top}, bottom {bottom}");
    assert_eq!(relief.height_m(relief.columns, 0), None);
    let nowhere = trip.model(10.0, |_, _| f64::NAN).job();
    let none = Relief::around(&nowhere.route, &nowhere.terrain);
    assert_eq!(none.expect("readable"), None);
}
