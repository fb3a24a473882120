//! Where the set-up changes, told in kilometres: nobody ropes up later than was worked out, or unropes earlier.

use proptest::prelude::*;
use schrund::{
    plan::leg::Leg,
    say::{units::Units, voice::Voice},
    write::parts::{
        change::{ChangeKind, changes},
        look::looks,
    },
};

use crate::fixture::{
    planned::Planned,
    trip::{SNOW, Trip},
};

/// The formats in which people read where a leg begins and ends.
const READ: [&str; 6] = ["table", "text", "gpx", "kml", "geojson", "html"];

/// Every `0.97–1.45` of a text, in hundredths.
fn spans(text: &str) -> Vec<(i64, i64)> {
    let text = text.replace('-', "–");
    let hundredths = |number: &str| {
        let (whole, rest) = number.split_once('.')?;
        let digits = rest.len() == 2
            && [whole, rest]
                .iter()
                .all(|d| d.chars().all(|c| c.is_ascii_digit()));
        digits.then(|| format!("{whole}{rest}").parse().ok())?
    };
    let is_part = |c: char| c.is_ascii_digit() || c == '.' || c == '–';
    let pairs = text.split(|c| !is_part(c)).filter_map(|token| {
        let (from, to) = token.split_once('–')?;
        Some((hundredths(from)?, hundredths(to)?))
    });
    pairs.collect()
}

/// Every place after these words, in hundredths.
fn places(text: &str, before: &str) -> Vec<i64> {
    let after = text.split(before).skip(1);
    let number = |rest: &str| {
        let number: String = rest
            .chars()
            .take_while(|c| c.is_ascii_digit() || *c == '.')
            .collect();
        number.replace('.', "").parse().expect("a number follows")
    };
    after.map(number).collect()
}

/// The chainages of the rows of the report's table of changes, in hundredths.
fn rows(html: &str) -> Vec<i64> {
    let rows = html.split("<tr data-change=").skip(1);
    let cell = |row: &str| {
        let cells = row.split("<td class=\"n\">").skip(1);
        let texts = cells.filter_map(|cell| cell.split_once('<').map(|(text, _)| text.to_owned()));
        let number = texts
            .into_iter()
            .find(|text| text.contains('.'))
            .expect("a chainage");
        number.replace('.', "").parse().expect("hundredths")
    };
    rows.map(cell).collect()
}

/// To which hundredths a leg may be told, by its chainage alone.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a few hundred hundredths of a kilometre"
)]
fn told(leg: &Leg, long_m: f64, length_m: f64) -> (i64, i64) {
    let (from, to) = (leg.start_m / long_m * 100.0, leg.end_m / long_m * 100.0);
    // A micrometre is noise.
    let (down, up) = (
        |x: f64| (x + 1e-7).floor() as i64,
        |x: f64| (x - 1e-7).ceil() as i64,
    );
    match leg.roped {
        true => (down(from), up(to)),
        false if leg.end_m < length_m => (up(from), down(to)),
        false => (up(from), to.round() as i64),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_change_is_never_told_later_than_roping_up_or_earlier_than_unroping(
        south in -400.0..0.0_f64, long in 20.0..400.0_f64, more in 700.0..760.0_f64, margin in 0.0..60.0_f64,
        imperial in any::<bool>(),
    ) {
        let zone = |from: f64, to: f64, trip: Trip| trip.zone((-50.0, from), (50.0, to), r#"{"gap_m":4,"snow_depth_m":2}"#);
        let trip = Trip::along(&[(0.0, -900.0), (0.0, 1234.5)]).rules(&format!("[assume]\nmargin_m = {margin}"));
        let trip = zone(more, more + 50.0, zone(south, south + long, trip));
        let units = if imperial { Units::Imperial } else { Units::Metric };
        let planned: Planned = trip.planned().spoken(Voice { units, ..Voice::default() });
        let (legs, length_m) = (&planned.plan.legs, planned.plan.route.length_m);
        let want: Vec<(i64, i64)> = legs.iter().map(|l| told(l, units.long_m(), length_m)).collect();
        for format in READ {
            let text = planned.written(format);
            let found = spans(&text);
            for (leg, want) in legs.iter().zip(&want).filter(|(leg, _)| leg.roped) {
                prop_assert!(found.contains(want), "leg {} as {want:?} in {format}: {found:?}", leg.leg);
            }
            // Nothing else is told of any leg, least of all the nearest hundredth.
            let strange: Vec<_> = found.iter().filter(|pair| !want.contains(pair)).collect();
            prop_assert!(strange.is_empty(), "{strange:?} in {format}, not of {want:?}");
        }
        let table = planned.written("table");
        let roped = || legs.iter().zip(&want).filter(|(leg, _)| leg.roped);
        let (ups, offs): (Vec<i64>, Vec<i64>) = roped().map(|(_, pair)| *pair).unzip();
        prop_assert_eq!(places(&table, " rope up at "), ups);
        prop_assert_eq!(places(&table, " unrope at "), offs);
        let both: Vec<i64> = roped().flat_map(|(_, (up, off))| [*up, *off]).collect();
        prop_assert_eq!(rows(&planned.written("html")), both);
    }
}

/// Halts stand in the table only, and no device or map knew of them.
#[test]
fn a_halt_is_a_place_for_maps_and_devices() {
    let trip = Trip::straight(&[SNOW])
        .ropes(&[60.0])
        .rules("start = \"06:00\"\n[[halt]]\nat_km = 0.1\nminutes = 20\nname = \"Spring\"")
        .planned();
    let title = "Halt \"Spring\", 20 min";
    for format in ["geojson", "gpx", "kml"] {
        let text = trip.written(format);
        let shown = text.replace("\\\"", "\"").replace("&quot;", "\"");
        assert!(shown.contains(title), "{format}: {shown}");
        assert!(
            shown.contains("0.10 km") && shown.contains(" to 06:"),
            "{format}: {shown}"
        );
    }
    assert!(trip.written("gpx").contains("<name>HALT 1</name>"));
    let page = trip.written("geojson");
    assert!(
        page.contains("\"role\":\"halt\"") && page.contains("\"halt_min\":20"),
        "{page}"
    );
}

/// A watch shows the first line of a waypoint: the set-up comes first, and what is worth a look has waypoints of its own.
#[test]
fn a_waypoint_begins_with_the_set_up_and_places_to_look_at_are_places_for_maps_and_devices() {
    let along = r#"{"gap_m":4,"snow_depth_m":2,"strike_deg":0}"#;
    let trip = Trip::straight(&[along]).ropes(&[60.0]).planned();
    let device = gpx::read(trip.written("gpx").as_bytes()).expect("GPX");
    let up = device
        .waypoints
        .iter()
        .find(|w| w.name.as_deref() == Some("A UP 2"));
    let (line, rest) = up
        .and_then(|w| Some((w.comment.as_deref()?, w.description.as_deref()?)))
        .expect("the first change");
    let setup = &trip.plan.legs[1].teams[0];
    let (spacing, coil) = (setup.spacing_m, setup.coil_carried_m);
    let begins = format!("{} people {spacing} m no knots coil {coil} m", setup.people);
    assert!(
        line.starts_with(&begins) && line.is_ascii() && line.len() < 120,
        "{line}"
    );
    assert!(rest.contains("A. Rope up"), "{rest}");

    let looks = looks(&trip.sheet());
    assert!(!looks.is_empty(), "the line runs along the crevasses");
    let map: serde_json::Value = serde_json::from_str(&trip.written("geojson")).expect("JSON");
    for look in &looks {
        let code = look.code(Voice::default());
        let named = |w: &&gpx::Waypoint| w.name.as_deref() == Some(code.as_str());
        let point = device
            .waypoints
            .iter()
            .find(named)
            .expect("a waypoint")
            .point();
        assert!(
            (point.y() - look.at.lat_deg).abs() < 1e-8,
            "{code}: {point:?}"
        );
        let drawn = map["features"]
            .as_array()
            .expect("features")
            .iter()
            .filter(|f| f["properties"]["look"] == code.as_str());
        assert_eq!(drawn.count(), 1, "{code}");
        assert!(
            trip.written("kml")
                .contains(&look.description(Voice::default()).to_string()),
            "{code}"
        );
        assert!(code.len() <= 10 && code.is_ascii(), "{code}");
    }
}

/// Legs are numbered, so changes are lettered, and alike everywhere.
#[test]
fn changes_are_lettered_in_every_output() {
    let trip = Trip::straight(&[SNOW]).ropes(&[60.0]).planned();
    for format in ["geojson", "gpx", "kml"] {
        let text = trip.written(format);
        assert!(
            text.contains("A. Rope up") && text.contains("B. Unrope"),
            "{format}"
        );
    }
    assert!(trip.written("gpx").contains("<name>A UP 2</name>"));
    assert!(
        trip.written("table").contains("\n   A "),
        "{}",
        trip.written("table")
    );
    assert!(trip.written("html").contains(">A</th>"));
}

/// Inside a leg a place had neither hour nor height.
#[test]
fn ice_without_a_rope_has_its_hour_and_its_height_in_every_output() {
    let never = r#"{"gap_m":4,"snow_depth_m":2,"rope":"never"}"#;
    let trip = Trip::straight(&[never])
        .heights(|_, north| 3000.0 - 0.1 * north)
        .rules("start = \"06:00\"")
        .planned();
    let changes = changes(&trip.sheet());
    let [onto] = &changes[..] else {
        panic!("{changes:?}")
    };
    assert_eq!((onto.kind, onto.leg.leg), (ChangeKind::OntoIce, 1));
    assert!((onto.at_m - 400.0).abs() < 1.0, "{onto:?}");
    let height_m = onto.height_m.expect("between two heights");
    assert!((height_m - 2960.0).abs() < 0.5, "{height_m}");
    let clock = onto.clock.expect("between two hours").to_string();
    assert_eq!(
        clock, "06:09",
        "6 min, half of 4.8 min for 40 m down, rest of 5 min an hour"
    );
    for format in ["table", "geojson", "gpx", "kml", "html", "json"] {
        let text = trip.written(format);
        assert!(
            text.contains(&clock) && text.contains("2960"),
            "{format}: {text}"
        );
    }
}
