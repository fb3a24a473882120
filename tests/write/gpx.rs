//! GPX for devices, read back by our own reader and by the `gpx` crate's.

use std::collections::BTreeSet;

use schrund::{
    geometry::LonLat,
    read,
    trip::route::{Route, Stage},
    write::parts::look::looks,
};

use crate::fixture::{
    planned::{Planned, over_the_pass},
    trip::Trip,
};

fn foreign(text: &str) -> ::gpx::Gpx {
    ::gpx::read(text.as_bytes()).unwrap()
}

#[test]
fn the_line_read_back_crosses_the_zones_where_the_planned_one_does() {
    let trip = over_the_pass(3);
    let text = trip.written("gpx");
    let again = read::gpx::route("again.gpx", text.as_bytes())
        .unwrap()
        .value;
    let mut job = Trip::over_the_pass().job();
    job.route = again;
    let replanned = Planned::of(job);
    assert_eq!(trip.plan.zones.len(), replanned.plan.zones.len());
    let mut compared = 0;
    for (was, is) in trip.plan.zones.iter().zip(&replanned.plan.zones) {
        assert_eq!(was.crossings.len(), is.crossings.len());
        for (a, b) in was.crossings.iter().zip(&is.crossings) {
            let off_m = (a.enter_m - b.enter_m)
                .abs()
                .max((a.exit_m - b.exit_m).abs());
            assert!(off_m < 1e-3, "{off_m} m off");
            compared += 1;
        }
    }
    assert!(compared >= 3, "every zone is crossed");
    assert_eq!(
        trip.job.route.stages[0].heights_m(),
        replanned.job.route.stages[0].heights_m()
    );
    assert_eq!(
        trip.job.route.stages[0].segments().count(),
        2,
        "with its jump"
    );
    assert_eq!(
        replanned.job.route.stages[0].segments().count(),
        2,
        "the jump is kept"
    );
}

#[test]
fn each_change_is_a_waypoint_with_a_short_name_of_its_own() {
    let trip = over_the_pass(3);
    let read = foreign(&trip.written("gpx"));
    let roped = trip.plan.legs.iter().filter(|l| l.roped).count();
    assert!(roped >= 2, "legs to tell apart");
    let looks = looks(&trip.sheet()).len();
    assert_eq!(read.waypoints.len(), 2 * roped + looks);
    let names: BTreeSet<&str> = read
        .waypoints
        .iter()
        .filter_map(|w| w.name.as_deref())
        .collect();
    assert_eq!(names.len(), 2 * roped + looks, "unique");
    for name in names {
        assert!(name.is_ascii() && name.len() <= 10, "{name}");
    }
    for waypoint in &read.waypoints {
        assert!(
            waypoint.symbol.is_some() && waypoint.type_.is_some(),
            "{waypoint:?}"
        );
        assert!(
            waypoint.comment.is_some() && waypoint.description.is_some(),
            "{waypoint:?}"
        );
        let look = waypoint.type_.as_deref() == Some("look");
        assert!(look || waypoint.elevation.is_some(), "the line has heights");
    }
    let first = trip.plan.legs.iter().find(|l| l.roped).unwrap();
    let point = read.waypoints[0].point();
    let off_m =
        LonLat::new(point.x(), point.y()).distance_m(LonLat::new(first.start[0], first.start[1]));
    assert!(off_m < 1e-3, "{off_m} m off");
}

#[test]
fn tracks_and_no_routes_one_track_a_stage() {
    let trip = over_the_pass(3);
    let read = foreign(&trip.written("gpx"));
    assert_eq!(
        (read.tracks.len(), read.routes.len()),
        (trip.job.route.stages.len(), 0)
    );
    let points: usize = read.tracks[0].segments.iter().map(|s| s.points.len()).sum();
    assert_eq!(points, trip.job.route.stages[0].points().len());
}

/// A stand-in for the schema where it is not at hand: `.ci/schemas` validates against it.
#[test]
fn elements_come_in_the_order_of_the_schema() {
    let text = over_the_pass(3).written("gpx");
    let order = |names: &[&str], text: &str| {
        let places: Vec<usize> = names
            .iter()
            .map(|n| text.find(n).unwrap_or_else(|| panic!("{n}")))
            .collect();
        assert!(places.is_sorted(), "{names:?} at {places:?}");
    };
    order(&["<metadata>", "<wpt", "<trk>"], &text);
    let waypoint = &text[text.find("<wpt").unwrap()..text.find("</wpt>").unwrap()];
    order(
        &["<ele>", "<name>", "<cmt>", "<desc>", "<sym>", "<type>"],
        waypoint,
    );
    let last_waypoint = text.rfind("<wpt").unwrap();
    assert!(
        last_waypoint < text.find("<trk>").unwrap(),
        "all waypoints come first"
    );
}

#[test]
fn longitudes_stay_below_180() {
    let mut stage = Stage::new(None);
    for lon in [179.99, 180.0, 180.01] {
        stage.push(LonLat::new(lon, 10.0), None);
    }
    let mut trip = Trip::over_the_pass().planned();
    trip.job.route = Route::new(None, vec![stage]);
    let read = foreign(&trip.written("gpx"));
    let lons: Vec<f64> = read.tracks[0].segments[0]
        .points
        .iter()
        .map(|p| p.point().x())
        .collect();
    assert_eq!(lons, [179.99, -180.0, -179.99]);
}
