//! Zones that the route does not meet do not look like those that it meets, and many of them are left out of maps.

use super::kml::texts;
use crate::fixture::{
    planned::Planned,
    trip::{SNOW, Trip},
};

/// One zone that is met, and so many far beside the line.
fn beside(count: u32) -> Planned {
    let mut trip = Trip::straight(&[SNOW]).ropes(&[60.0]);
    for i in 0..count {
        let east = 2000.0 + 300.0 * f64::from(i);
        trip = trip.zone((east, 0.0), (east + 200.0, 200.0), SNOW);
    }
    trip.planned()
}

fn map(planned: &Planned) -> (serde_json::Value, Vec<serde_json::Value>) {
    let map: serde_json::Value = serde_json::from_str(&planned.written("geojson")).expect("JSON");
    let features = map["features"].as_array().expect("features").iter();
    let zones = features.map(|f| f["properties"].clone());
    let zones = zones.filter(|p| p["role"] == "zone").collect();
    (map, zones)
}

#[test]
fn few_zones_that_are_not_met_are_faint_and_say_so() {
    let planned = beside(12);
    let (map, zones) = map(&planned);
    assert_eq!(zones.len(), 13);
    assert!(map.get("left_out").is_none(), "all are there");
    assert_eq!(
        (&zones[0]["met"], &zones[0]["title"]),
        (&true.into(), &"Zone 1: gaps up to 4 m".into())
    );
    let opacity = |zone: &serde_json::Value| zone["fill-opacity"].as_f64().expect("a number");
    assert!(opacity(&zones[0]) > 0.5, "the one that is met");
    for (number, zone) in (1..).zip(&zones).skip(1) {
        assert_eq!(zone["met"], false);
        let title = format!("Zone {number}, not met: gaps up to 4 m");
        assert_eq!(zone["title"], title);
        assert!(opacity(zone) < 0.2, "{title}");
    }
    let globe = planned.written("kml");
    assert_eq!(
        globe.matches("<styleUrl>#zone-not-met</styleUrl>").count(),
        12
    );
    assert_eq!(globe.matches("<styleUrl>#zone1</styleUrl>").count(), 1);
}

#[test]
fn many_zones_that_are_not_met_are_left_out_and_counted() {
    let planned = beside(13);
    let (map, zones) = map(&planned);
    assert_eq!(zones.len(), 1, "the one that is met");
    assert_eq!(map["left_out"]["zones"], 13);
    let says = map["says"].as_str().expect("text");
    assert!(
        says.ends_with("13 zones that the route does not meet are left out."),
        "{says}"
    );
    let globe = planned.written("kml");
    assert_eq!(globe.matches("<Polygon>").count(), 1);
    assert_eq!(texts(&globe, "description")[0], says);
    let east = map["bbox"][2].as_f64().expect("a number");
    let corners = planned.job.zones[0].outline.polygons[0].outer.iter();
    let met = corners.map(|p| p.lon_deg).fold(f64::MIN, f64::max);
    assert!((east - met).abs() < 1e-6, "the box is round what is there");
    let plan: serde_json::Value = serde_json::from_str(&planned.written("json")).expect("JSON");
    assert_eq!(
        plan["zones"].as_array().expect("zones").len(),
        14,
        "the plan keeps all"
    );
}

#[test]
fn a_balloon_has_the_name_and_whole_sentences() {
    let zone = r#"{"name":"Upper <b>","gap_m":4,"snow_depth_m":2,"observed_on":"2026-07-04","source":"invented","note":"every gap in sight"}"#;
    let planned = Trip::straight(&[zone]).ropes(&[60.0]).planned();
    let says = &texts(&planned.written("kml"), "description")[1];
    assert_eq!(
        says,
        "<b>Zone 1 \"Upper &lt;b>\": gaps up to 4 m</b><br/>Gaps up to 4 m, hidden under snow, snow 2 m. Observed 2026-07-04. Source: invented. Note: every gap in sight."
    );
}
