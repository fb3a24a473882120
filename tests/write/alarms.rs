//! A place that stops is called so, with its reason and what to do, on maps and devices.

use std::collections::BTreeSet;

use schrund::{
    plan::leg::Verdict,
    say::voice::Voice,
    trip::language::Language,
    write::parts::look::{LookPoint, LookSort, looks},
};

use super::kml::texts;
use crate::fixture::{
    planned::Planned,
    trip::{SNOW, Trip},
};

const SHALLOW: &str = r#"{"gap_m":4,"snow_depth_m":2}"#;

/// Down a slope that no team is roped together on without anchors.
fn too_steep() -> Planned {
    Trip::straight(&[SHALLOW])
        .ropes(&[60.0])
        .falling(1.0)
        .planned()
}

fn properties(planned: &Planned) -> Vec<serde_json::Value> {
    let map: serde_json::Value = serde_json::from_str(&planned.written("geojson")).expect("JSON");
    let features = map["features"].as_array().expect("features");
    features.iter().map(|f| f["properties"].clone()).collect()
}

#[test]
fn a_place_that_is_too_steep_stops_with_its_own_reason_and_what_to_do() {
    let planned = too_steep();
    let looks = looks(&planned.sheet());
    let steep = looks
        .iter()
        .find(|look| look.sort == LookSort::Steep)
        .expect("45° is too steep");
    assert!(steep.stops());
    let voice = Voice::default();
    assert_eq!(
        steep.title(voice).to_string(),
        "Stop: too steep without anchors"
    );
    let says = steep.description(voice).to_string();
    assert!(
        says.starts_with("Stop on leg 2: up to 45° steep")
            && says.ends_with("→ belay from anchors, or another line."),
        "{says}"
    );
    let code = steep.code(voice);
    assert_eq!(code, format!("STOP 2.{}", steep.number));
    let device = gpx::read(planned.written("gpx").as_bytes()).expect("GPX");
    let waypoint = device
        .waypoints
        .iter()
        .find(|w| w.name.as_deref() == Some(&code))
        .expect("a waypoint");
    let line = waypoint.comment.as_deref().expect("a line");
    assert_eq!(
        line,
        "Stop: too steep without anchors → belay from anchors, or another line"
    );
    assert_eq!(waypoint.description.as_deref(), Some(says.as_str()));
    let high = planned.plan.legs[1].start_height_m.expect("heights")
        - (steep.at_m - planned.plan.legs[1].start_m);
    let shown = waypoint.elevation.expect("its height");
    assert!((shown - high).abs() < 0.2, "{shown} m, not {high} m");
    let drawn = properties(&planned)
        .into_iter()
        .find(|p| p["look"] == code.as_str())
        .expect("on the map");
    assert_eq!(
        (&drawn["level"], &drawn["code"]),
        (&"stop".into(), &"too-steep-to-rope-without-anchors".into())
    );
    assert_eq!(drawn["title"], "Stop: too steep without anchors");
}

/// It was put in the middle of what was found: who stood there was in it.
#[test]
fn a_place_to_look_at_stands_where_what_was_found_begins() {
    let planned = too_steep();
    for look in looks(&planned.sheet())
        .into_iter()
        .filter(|look| look.named)
    {
        let Some(schrund::plan::finding::At::Leg(place)) = look.finding.map(|found| &found.at)
        else {
            continue;
        };
        assert!((look.at_m - place.from_m).abs() < 1e-9);
        assert!((look.at.lat_deg - place.lon_lat[1]).abs() < 1e-9);
        assert_eq!(look.height_m, place.height_m);
    }
}

/// A finding names its worst place only, so a device showed three of fourteen places that stop.
#[test]
fn every_place_of_a_leg_that_stops_is_a_place_for_maps_and_devices() {
    const STEPS: [f64; 3] = [200.0, 700.0, 1200.0];
    let down = |north: f64| {
        STEPS
            .map(|step| (north - step).clamp(0.0, 120.0))
            .iter()
            .sum::<f64>()
    };
    let planned = Trip::along(&[(0.0, -400.0), (0.0, 1900.0)])
        .zone((-300.0, 0.0), (300.0, 1500.0), SNOW)
        .ropes(&[60.0])
        .model(10.0, move |_, north| 3000.0 - 1.2 * down(north))
        .planned();
    let leg = planned
        .plan
        .legs
        .iter()
        .find(|leg| leg.roped)
        .expect("roped");
    let pieces = leg.pieces().into_iter();
    let pieces: Vec<_> = pieces
        .filter(|piece| piece.verdict == Verdict::Stop)
        .collect();
    assert!(pieces.len() >= STEPS.len(), "{pieces:?}");
    let looks = looks(&planned.sheet());
    for piece in &pieces {
        let within = |m: f64| m >= piece.from_m - 1e-6 && m <= piece.to_m + 1e-6;
        let here: Vec<_> = looks
            .iter()
            .filter(|look| look.stops() && within(look.at_m))
            .collect();
        assert!(!here.is_empty(), "nothing stops at {piece:?}");
        assert!(here.iter().all(|look| look.height_m.is_some()), "{here:?}");
    }
    let further: Vec<_> = looks
        .iter()
        .filter(|look| look.stops() && !look.named)
        .collect();
    assert!(!further.is_empty(), "the findings name one place each");
    let device = gpx::read(planned.written("gpx").as_bytes()).expect("GPX");
    for look in further {
        let says = look.description(Voice::default()).to_string();
        let km = (look.at_m / 10.0).round() / 100.0;
        let begins = format!("Stop on leg 2 at {km:.2} km: ");
        assert!(says.starts_with(&begins) && says.contains(" → "), "{says}");
        let named = |w: &&gpx::Waypoint| w.name.as_deref() == Some(&look.code(Voice::default()));
        let waypoint = device.waypoints.iter().find(named).expect("a waypoint");
        assert_eq!(waypoint.description.as_deref(), Some(says.as_str()));
    }
}

#[test]
fn names_of_places_are_short_and_their_own_however_many_there_are() {
    let planned = too_steep();
    let mut leg = planned.plan.legs[1].clone();
    for language in [Language::English, Language::German] {
        let voice = Voice {
            language,
            ..Voice::default()
        };
        let (mut names, mut asked) = (BTreeSet::new(), 0);
        for number in [1, 99, 1000, 99_999] {
            leg.leg = number;
            let found = looks(&planned.sheet());
            let first = found
                .into_iter()
                .find(LookPoint::stops)
                .expect("it is too steep");
            for number in [1, 10, 100] {
                let place = LookPoint {
                    number,
                    leg: &leg,
                    ..first.clone()
                };
                names.insert(place.code(voice));
                asked += 1;
            }
        }
        assert_eq!(names.len(), asked, "unique: {names:?}");
        let short = |name: &String| name.is_ascii() && name.len() <= 10;
        assert!(names.iter().all(short), "{names:?}");
    }
}

#[test]
fn a_leg_that_stops_says_so_first_on_a_watch_and_then_why() {
    let planned = too_steep();
    assert_eq!(planned.plan.legs[1].verdict, Verdict::Stop);
    let device = gpx::read(planned.written("gpx").as_bytes()).expect("GPX");
    let up = &device.waypoints[0];
    let (line, says) = (
        up.comment.as_deref().expect("cmt"),
        up.description.as_deref().expect("desc"),
    );
    assert!(
        line.starts_with("STOP. 3 people ") && !line.contains('\n'),
        "{line}"
    );
    assert_eq!(line.matches("STOP").count(), 1, "{line}");
    assert!(says.starts_with("Stop: up to 45° steep along "), "{says}");
    let first = says.split(". ").next().expect("a sentence");
    assert!(
        first.ends_with("→ belay from anchors, or another line"),
        "{first}"
    );
    assert_eq!(
        says.matches("too steep for a rope").count(),
        1,
        "told once: {says}"
    );
}

#[test]
fn a_leg_that_is_outside_says_so_first_on_a_watch() {
    let planned = Trip::straight(&[SNOW]).ropes(&[20.0]).planned();
    assert_eq!(planned.plan.legs[1].verdict, Verdict::Outside);
    let device = gpx::read(planned.written("gpx").as_bytes()).expect("GPX");
    let line = device.waypoints[0].comment.as_deref().expect("cmt");
    assert!(line.starts_with("OUTSIDE. 3 people "), "{line}");
}

/// A popup is read on a telephone: the word, where, the set-up, then what was found with what to do, and no note.
#[test]
fn popups_hold_the_word_the_set_up_and_what_to_do_and_no_note() {
    let planned = too_steep();
    let legs: Vec<_> = properties(&planned)
        .into_iter()
        .filter(|p| p["role"] == "leg")
        .collect();
    let says = legs[1]["description"].as_str().expect("text");
    let places = [
        "Stop",
        "Leg 2: ",
        "3 people, ",
        "Gaps up to 4 m.",
        "Up to 45° steep",
        "→ belay from anchors, or another line.",
    ];
    let places: Vec<usize> = places
        .iter()
        .map(|part| {
            says.find(part)
                .unwrap_or_else(|| panic!("no {part}: {says}"))
        })
        .collect();
    assert!(places.is_sorted() && places[0] == 0, "{says}");
    let notes = planned.plan.legs[1]
        .findings
        .iter()
        .filter(|f| f.level() == schrund::fault::Level::Note);
    let notes: Vec<String> = notes
        .map(|f| schrund::say::finding::says(f, Voice::default()).to_string())
        .collect();
    assert!(!notes.is_empty(), "there are notes to leave out");
    for note in notes {
        assert!(
            !says.to_lowercase().contains(&note.to_lowercase()),
            "{note}: {says}"
        );
    }
}

/// What a device says of the whole file.
fn first_of_device(planned: &Planned) -> String {
    let device = gpx::read(planned.written("gpx").as_bytes()).expect("GPX");
    let metadata = device.metadata.expect("metadata");
    metadata.description.expect("its description")
}

#[test]
fn every_map_and_device_begins_with_how_many_legs_stop_and_where() {
    let planned = too_steep();
    let first = first_of_device(&planned);
    assert!(first.starts_with("1 leg with a stop"), "{first}");
    assert!(first.contains(". Stop: leg 2 at "), "{first}");
    let map: serde_json::Value = serde_json::from_str(&planned.written("geojson")).expect("JSON");
    assert_eq!(map["says"], first.as_str());
    assert_eq!(texts(&planned.written("kml"), "description")[0], first);
    let quiet = Trip::straight(&[SNOW])
        .ropes(&[60.0])
        .falling(0.05)
        .planned();
    let first = first_of_device(&quiet);
    assert!(quiet.plan.verdict() < Verdict::Look, "{first}");
}

/// Two stages on one leg each that are late on bridges: each has a latest start of its own.
#[test]
fn an_hour_to_start_by_is_told_of_its_own_stage_alone() {
    let trip = Trip::straight(&[SNOW]).then(&[(0.0, 9000.0), (0.0, 3000.0)]);
    let trip = trip
        .zone((-200.0, 4000.0), (200.0, 4400.0), SNOW)
        .ropes(&[60.0]);
    let trip = trip.heights(|_, _| 2500.0);
    let planned = trip
        .rules("start = \"09:00\"\nbridges_until = \"09:10\"")
        .planned();
    let page = planned.first_page().written("table");
    let hours = page.matches("→ start by ").count();
    assert_eq!(hours, 2, "{page}");
}
