//! Positions that are no degrees on WGS 84.

use super::{bad, feature, noted, outer, refused, ring};
use crate::fixture::texts::{feature_of, polygon};

#[test]
fn positions_that_are_no_degrees_are_refused_with_the_test_that_showed_it() {
    let place = "z.geojson, line 2 column 55, feature 1";
    for (points, code, says, cure) in [
        (
            "[[2600000,1200000],[2600001,1200000],[2600001,1200001]]",
            "projected-position",
            "[2600000, 1200000] cannot be degrees, for a number lies beyond ±360; it looks like metres of a map grid (position 1, outer ring)",
            "save it again from the map editor, with WGS 84 (EPSG:4326) as its coordinate system; if it still lies far from the route then, it is of another tour",
        ),
        (
            "[[7,46],[190,46],[7,47]]",
            "bad-position",
            "[190, 46] has a longitude beyond ±180° (position 2, outer ring)",
            "longitudes run from -180 to 180: add or take away 360 where the map was scrolled on",
        ),
        (
            "[[7,46],[8,46],[8,47],[7,46]],[[1,2],[3,4],[46,120]]",
            "bad-position",
            "[46, 120] has a latitude beyond ±90°; the other way round it would be a position (position 3, hole 1)",
            "GeoJSON has the longitude first: swap the two numbers",
        ),
        (
            "[[100,91],[8,46],[8,47]]",
            "bad-position",
            "[100, 91] has a latitude beyond ±90° (position 1, outer ring)",
            "a position is [longitude, latitude] in degrees",
        ),
    ] {
        refused(
            &ring(points),
            &[&format!(
                "error[{code}]: {says}\n  at: {place}\n  do: {cure}"
            )],
        );
    }
}

#[test]
fn rounding_beyond_the_edge_of_the_map_is_no_fault() {
    let zone = &noted(
        &ring(
            "[[180.0000000001,-90.0000000001],[170,-89],[170,-80]],[[171,-86],[172,-86],[172,-85],[171,-86]]",
        ),
        &["note[ring-closed]: 1 ring closed: the last point was not the first\n  at: z.geojson"],
    )[0];
    assert_eq!(outer(zone)[0], (180.0, -90.0), "drawn back to the edge");
}

#[test]
fn longitudes_that_just_miss_the_antimeridian_are_taken_back_and_noted() {
    let text = ring("[[-180.0000153,46],[-179,46],[-179,47],[-180.001,47],[-180.0000153,46]]");
    let zone = &noted(
        &text,
        &[
            "note[longitude-taken-back]: 3 longitudes just beyond 180 degrees are taken as 180 degrees\n  at: z.geojson",
        ],
    )[0];
    assert_eq!(outer(zone)[0], (-180.0, 46.0));
    assert_eq!(outer(zone)[3], (-180.0, 47.0));
    let beyond = ring("[[-180.0011,46],[-179,46],[-179,47],[-180.0011,46]]");
    let faults = bad(&beyond);
    assert!(
        faults[0].contains("has a longitude beyond ±180°"),
        "{faults:?}"
    );
}

#[test]
fn wgs84_passes_in_any_spelling_and_other_systems_bring_their_command() {
    let with = |crs: &str| {
        let feature = feature(r#"{"gap_m":1}"#);
        format!(r#"{{"type":"FeatureCollection","crs":{crs},"features":[{feature}]}}"#)
    };
    let named = |name: &str| {
        with(&format!(
            r#"{{"type":"name","properties":{{"name":"{name}"}}}}"#
        ))
    };
    for name in [
        "urn:ogc:def:crs:OGC:1.3:CRS84",
        "urn:ogc:def:crs:OGC::CRS84",
        "OGC:CRS84",
        "EPSG:4326",
        "epsg:4326",
        "urn:ogc:def:crs:EPSG::4326",
        "http://www.opengis.net/def/crs/EPSG/0/4326",
    ] {
        noted(&named(name), &[]);
    }
    noted(&with("null"), &[]);
    let cure = "save it again from the map editor with WGS 84 (EPSG:4326) as its coordinate system, or convert it with GDAL, another program: `ogr2ogr -t_srs EPSG:4326 -lco RFC7946=YES z-wgs84.geojson z.geojson`";
    for name in [
        "urn:ogc:def:crs:EPSG::2056",
        "EPSG:14326",
        "CRS84h",
        "urn:ogc:def:crs:OGC:1.3:CRS83",
    ] {
        let want = format!(
            "error[foreign-crs]: the file says its coordinates are in \"{name}\"\n  at: z.geojson, line 1 column 35, `crs`\n  do: {cure}"
        );
        refused(&named(name), &[&want]);
    }
    let want = format!(
        "error[foreign-crs]: the file has a `crs` that names no known system: \"x\"\n  at: z.geojson, line 1 column 35, `crs`\n  do: {cure}"
    );
    refused(&with("\"x\""), &[&want]);
    let metres = feature_of(
        r#"{"gap_m":1}"#,
        &polygon("[[2600000,1200000],[2600001,1200000],[2600001,1200001]]"),
    );
    let text = format!(
        r#"{{"type":"FeatureCollection","features":[{metres}],"crs":{{"properties":{{"name":"EPSG:2056"}}}}}}"#
    );
    assert_eq!(
        bad(&text).len(),
        1,
        "the system explains the metres: {:?}",
        bad(&text)
    );
}
