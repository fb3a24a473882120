//! What is read: every wrapping of a polygon, and what a zone holds then.

use schrund::{
    fault::{Item, Level},
    trip::zone::{RopeWord, Surface},
};

use super::{SQUARE, feature, good, good_given, noted, one, outer};
use crate::fixture::texts::{collection, feature_of, polygon};

#[test]
fn a_zone_holds_what_its_feature_says() {
    let text = one(
        r#"{"name":"Icefall","gap_m":3.5,"snow_depth_m":1.2,"surface":"Bare","rope":"NEVER",
        "strike_deg":190,"strike_uncertainty_deg":15,"observed_on":20240812,"source":"hut","note":null,
        "gaps_seen_by":"drone","depth":[1,{"a":null}]}"#,
    );
    let zone = noted(&one("{\"gap_m\":1}"), &[]).remove(0);
    assert_eq!(
        (zone.name, zone.surface, zone.rope),
        (None, Surface::Snow, RopeWord::Auto),
        "defaults"
    );
    let read = good(&text);
    let zone = &read.value[0];
    assert_eq!(zone.label(), "zone 1 \"Icefall\"", "the label");
    assert_eq!(
        (zone.gap.min_m, zone.gap.max_m, zone.gap.assumed),
        (None, 3.5, false),
        "the gap"
    );
    assert_eq!(zone.snow_depth_m, Some(1.2), "the depth");
    assert_eq!(
        (zone.surface, zone.rope),
        (Surface::Bare, RopeWord::Never),
        "words in any case"
    );
    let strike = zone.strike.map(|s| (s.deg, s.uncertainty_deg));
    assert_eq!(strike, Some((10.0, Some(15.0))), "a strike is an axis");
    assert_eq!(
        zone.observed_on.as_deref(),
        Some("20240812"),
        "numbers are carried as text"
    );
    assert_eq!(
        (zone.source.as_deref(), zone.note.as_deref()),
        (Some("hut"), None),
        "texts"
    );
    let other = serde_json::Value::Object(zone.other.clone());
    let untouched = serde_json::json!({"gaps_seen_by": "drone", "depth": [1, {"a": null}]});
    assert_eq!(other, untouched, "unknown properties pass through");
}

#[test]
fn every_wrapping_of_a_polygon_is_read() {
    let geometry = polygon(SQUARE);
    let multi = format!(r#"{{"type":"MultiPolygon","coordinates":[[],[{SQUARE}],[]]}}"#);
    let nested = format!(
        r#"{{"type":"GeometryCollection","geometries":[{geometry},{{"type":"GeometryCollection","geometries":[{geometry}]}}]}}"#
    );
    let feature = feature_of("null", &geometry);
    for (text, zones, polygons) in [
        (geometry.clone(), 1, 1),
        (format!("\u{feff}{geometry}\r\n"), 1, 1),
        (multi.clone(), 1, 1),
        (nested.clone(), 1, 2),
        (feature.clone(), 1, 1),
        (format!("{feature}\n{feature}\n\n{geometry}\n"), 3, 1),
        (format!("\u{1e}{feature}\n\u{1e}{feature}\n"), 2, 1),
        (feature_of("{}", &multi), 1, 1),
        (
            format!(
                r#"{{"features":[{feature}],"bbox":"?","x":{{"features":[1]}},"type":"FeatureCollection"}}"#
            ),
            1,
            1,
        ),
        (
            format!(
                "{}\n{}",
                collection(std::slice::from_ref(&feature)),
                collection(std::slice::from_ref(&feature))
            ),
            2,
            1,
        ),
        (
            format!(r#"{{"coordinates":[{SQUARE}],"type":"Polygon"}}"#),
            1,
            1,
        ),
        (
            polygon("[[7,46,3000],[7.1,46,3000.5,1],[7.1,46.1],[7,46.1],[7,46,3000]]"),
            1,
            1,
        ),
    ] {
        let read = good_given(&text, Some(4.0));
        assert_eq!(read.value.len(), zones, "zones of {text}");
        assert!(
            read.value
                .iter()
                .all(|z| z.outline.polygons.len() == polygons),
            "polygons of {text}"
        );
        assert_eq!(outer(&read.value[0]).len(), 5, "vertices of {text}");
    }
}

#[test]
fn numbers_count_zones_and_features_count_everything() {
    let point = feature_of("{}", r#"{"type":"Point","coordinates":[7,46]}"#);
    let line = feature_of(
        "{}",
        r#"{"type":"LineString","coordinates":[[7,46],[8,46]]}"#,
    );
    let zone = feature(r#"{"gap_m":1}"#);
    let text = collection(&[point, zone.clone(), line, feature_of("null", "null"), zone]);
    let read = noted(
        &text,
        &[
            "note[not-a-polygon]: 1 point, 1 line, 1 empty geometry left out: only polygons are zones\n  at: z.geojson",
        ],
    );
    let numbers: Vec<_> = read.iter().map(|z| (z.number, z.feature)).collect();
    assert_eq!(numbers, [(1, 2), (2, 5)], "number and feature");
}

/// Ice that was drawn with the wrong tool is told before anything else: nobody is roped for it.
#[test]
fn a_line_with_a_gap_width_is_ice_that_nobody_drew() {
    let line = r#"{"type":"LineString","coordinates":[[7,46],[8,46]]}"#;
    let told = |properties: &str| {
        let text = collection(&[feature(r#"{"gap_m":1}"#), feature_of(properties, line)]);
        let notes = good_given(&text, None).notes;
        let look = notes.iter().filter(|note| note.level() == Level::Look);
        look.map(|note| (note.code(), note.at.item.clone()))
            .collect::<Vec<_>>()
    };
    let second = Item::Feature {
        number: 2,
        name: None,
    };
    for properties in [
        r#"{"gap_m":4}"#,
        r#"{"gap_max_m":4}"#,
        r#"{"snow_depth_m":1}"#,
        r#"{"strike_deg":10}"#,
        r#"{"rope":"always"}"#,
    ] {
        assert_eq!(
            told(properties),
            [("ice-not-drawn", Some(second.clone()))],
            "{properties}"
        );
    }
    assert_eq!(
        told(r#"{"gap_m":null,"snow_depth_m":""}"#),
        [],
        "columns of a layer that are empty"
    );
    assert_eq!(told(r#"{"surface":"gravel"}"#), [], "a way");
    assert_eq!(
        told(r#"{"gap_m":4,"role":"leg"}"#),
        [],
        "a leg that was handed out"
    );
}

#[test]
fn the_capitalised_name_of_inventories_is_the_name() {
    let zone = noted(
        &one(r#"{"gap_m":1,"NAME":"Baltoro","RGIId":"x","Area":1.5,"Slope":12}"#),
        &[],
    )
    .remove(0);
    assert_eq!(zone.name.as_deref(), Some("Baltoro"), "the name");
    assert!(zone.other.contains_key("NAME"), "and it is passed through");
}
