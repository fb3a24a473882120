//! GPX for devices, read back by our own reader and by the `gpx` crate's.

use std::collections::BTreeSet;

use schrund::{
    geometry::LonLat,
    read,
    trip::route::{Route, Stage},
    write::{json, parts::look::looks},
};
use serde_json::Value;

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
        trip.job.route.stages[0].heights_m().collect::<Vec<_>>(),
        replanned.job.route.stages[0]
            .heights_m()
            .collect::<Vec<_>>()
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
        assert!(waypoint.elevation.is_some(), "the line has heights");
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

/// Numbers of a text, as they are written.
fn numbers(text: &str) -> Vec<&str> {
    let pieces = text.split(|c: char| !c.is_ascii_digit() && c != '.');
    let trimmed = pieces.map(|piece| piece.trim_matches('.'));
    trimmed.filter(|piece| !piece.is_empty()).collect()
}

/// How a figure of the plan may be shown: whole, to the decimetre, or as a kilometre; up, down or nearest.
fn shown(figure: f64) -> Vec<String> {
    let mut all = vec![figure.to_string()];
    for (value, per) in [(figure, 1.0), (figure, 10.0), (figure / 1000.0, 100.0)] {
        let steps = [
            (value * per).floor(),
            (value * per).round(),
            (value * per).ceil(),
        ];
        let decimals = usize::from(per > 1.0) + usize::from(per > 10.0);
        all.extend(steps.map(|step| format!("{:.decimals$}", step / per)));
        all.extend(steps.map(|step| (step / per).to_string()));
    }
    all
}

/// All that a part of the plan lets a text say: its figures, and what stands in its own texts.
fn may_say(part: &Value, all: &mut BTreeSet<String>) {
    match part {
        Value::Number(figure) => all.extend(shown(figure.as_f64().unwrap().abs())),
        Value::String(text) => all.extend(numbers(text).into_iter().map(str::to_owned)),
        Value::Array(items) => items.iter().for_each(|item| may_say(item, all)),
        Value::Object(members) => members.values().for_each(|member| may_say(member, all)),
        _ => {}
    }
}

/// Holds what is said where a team ropes up against the leg and its zones; how many figures there were.
fn figures_of(point: &::gpx::Waypoint, leg: &Value, plan: &Value) -> usize {
    let line = point.comment.as_deref().unwrap();
    let first = &leg["teams"][0];
    let figure = |value: &Value| value.as_f64().unwrap();
    let coil_m = (figure(&first["coil_carried_m"]) * 10.0 + 1e-6).floor() / 10.0;
    let rope_m = (figure(&first["ledger"]["total_m"]) * 10.0 - 1e-6).ceil() / 10.0;
    let said = [
        format!(
            "{} people {} m ",
            first["people"],
            figure(&first["spacing_m"])
        ),
        if coil_m > 0.0 {
            format!("coil {coil_m} m")
        } else {
            "no coil".to_owned()
        },
        format!("rope {rope_m} m"),
    ];
    for figures in said {
        assert!(line.contains(&figures), "no \"{figures}\" in {line}");
    }
    let off_m = point.elevation.unwrap() - figure(&leg["start_height_m"]);
    assert!(off_m.abs() < 0.051, "its height");
    let mut may = BTreeSet::new();
    may_say(leg, &mut may);
    let zones = plan["zones"].as_array().unwrap().iter();
    let of_leg = |zone: &&Value| leg["zones"].as_array().unwrap().contains(&zone["zone"]);
    zones
        .filter(of_leg)
        .for_each(|zone| may_say(zone, &mut may));
    let told = point.description.as_deref().unwrap();
    let figures = numbers(line).into_iter().chain(numbers(told));
    figures
        .inspect(|number| {
            assert!(
                may.contains(*number),
                "{number} is no figure of leg {}",
                leg["leg"]
            )
        })
        .count()
}

#[test]
fn where_a_team_ropes_up_a_device_shows_the_figures_of_the_json_plan() {
    let mut compared = 0;
    for people in [2, 3, 4, 7] {
        let trip = over_the_pass(people);
        let plan: Value = serde_json::from_str(&json::plan(&trip.plan).unwrap()).unwrap();
        for point in foreign(&trip.written("gpx")).waypoints {
            let name = point.name.as_deref().unwrap();
            let words: Vec<&str> = name.split(' ').collect();
            let [_, "UP", number] = words[..] else {
                continue;
            };
            let number: usize = number.parse().unwrap();
            let mut legs = plan["legs"].as_array().unwrap().iter();
            let leg = legs.find(|leg| leg["leg"] == number).expect("its leg");
            compared += figures_of(&point, leg, &plan);
        }
    }
    assert!(compared > 100, "figures: {compared}");
}
