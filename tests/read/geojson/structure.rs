//! Texts that are no GeoJSON, or hold no ice.

use schrund::read::geojson::{Given, zones};

use super::{SQUARE, bad, feature, one, refused};
use crate::fixture::texts::{collection, feature_of, polygon};

#[test]
fn misspelt_types_are_answered_with_the_right_word() {
    let text = format!(
        r#"{{"type":"featurecollection","features":[{}]}}"#,
        feature(r#"{"gap_m":1}"#)
    );
    refused(
        &text,
        &[
            "error[bad-geojson]: \"featurecollection\" is not spelt as GeoJSON has it\n  at: z.geojson, line 1 column 1, `type`\n  do: write \"FeatureCollection\"",
        ],
    );
    let geometry = polygon(SQUARE).replace("Polygon", "polygon");
    refused(
        &collection(&[feature_of(r#"{"name":"A","gap_m":1}"#, &geometry)]),
        &[
            "error[bad-geojson]: \"polygon\" is not spelt as GeoJSON has it\n  at: z.geojson, line 2 column 82, feature 1 \"A\", `type`\n  do: write \"Polygon\"",
        ],
    );
    refused(
        &collection(&[polygon(SQUARE)]),
        &[
            "error[bad-geojson]: \"Polygon\" is no type of a feature\n  at: z.geojson, line 2 column 1, feature 1, `type`\n  do: write \"Feature\"",
        ],
    );
}

#[test]
fn every_fault_of_every_feature_is_reported_in_one_go() {
    let text = collection(&[
        feature_of(
            r#"{"name":"A","gap_m":"x"}"#,
            &polygon("[[7,46],[\"8\",46],[8,47],[7,46]]"),
        ),
        "7".to_owned(),
        feature_of("[]", &polygon(SQUARE)),
        feature(r#"{"gap_m":1,"surface":"firn"}"#),
        feature_of(r#"{"gap_m":1}"#, r#"{"type":"Polygon"}"#),
    ]);
    refused(
        &text,
        &[
            "error[bad-geojson]: ring 1, position 2 holds \"8\" where a number should stand\n  at: z.geojson, line 2 column 112, feature 1 \"A\"\n  do: a position is [longitude, latitude], two plain numbers in degrees",
            "error[bad-number]: gap width \"x\" is not a plain number\n  at: z.geojson, line 2 column 52, feature 1 \"A\", `gap_m`\n  do: write the widest you expect in metres as a plain number, 0 to 100, without words or signs; where it is not known `null`, and what to assume with `gap_m` of the trip, such as `gap_m = 6`",
            "error[bad-geojson]: a number stands where a Feature should\n  at: z.geojson, line 3 column 1, feature 2\n  do: take it out of the list",
            "error[bad-geojson]: `properties` is a list, not an object\n  at: z.geojson, line 4 column 32, feature 3\n  do: `properties` is a list of names and values in braces",
            "error[bad-word]: \"firn\" is no word for `surface`\n  at: z.geojson, line 5 column 53, feature 4, `surface`\n  do: write one of \"snow\", \"bare\"",
            "error[bad-geojson]: the Polygon has no `coordinates`\n  at: z.geojson, line 6 column 55, feature 5\n  do: add them, or take the feature out",
        ],
    );
}

#[test]
fn repeats_are_grouped() {
    let many: Vec<String> = (0..42)
        .map(|n| feature(&format!(r#"{{"gap_m":"x{n}"}}"#)))
        .collect();
    let shown = bad(&collection(&many));
    assert_eq!(shown.len(), 5, "{shown:?}");
    let last =
        "error[bad-number]: gap width \"x4\" is not a plain number (and 37 more like this)\n";
    assert!(shown[4].starts_with(last), "{}", shown[4]);
}

#[test]
fn broken_text_is_refused_where_it_breaks() {
    let cut = "save or download it again";
    let mend = "mend the text here, or save it again from the map editor";
    let draw = "draw the zones as polygons in a map editor and save them as GeoJSON";
    for (text, want) in [
        ("", format!("error[wrong-kind]: the file is empty\n  at: z.geojson\n  do: {draw}")),
        (" \n", format!("error[wrong-kind]: the file is empty\n  at: z.geojson\n  do: {draw}")),
        ("<gpx/>", "error[wrong-kind]: this is XML, not GeoJSON\n  at: z.geojson\n  do: the ice comes as GeoJSON polygons, each with its `gap_m`: draw them in a map editor".to_owned()),
        ("{\"type\":\n\"Feature", format!("error[broken-text]: the file ends in the middle: the JSON is not complete\n  at: z.geojson, line 2 column 8\n  do: {cut}")),
        ("{\"type\":\"FeatureCollection\",\"features\":[\n{\"é\":1,}]}", format!("error[broken-text]: broken JSON: trailing comma\n  at: z.geojson, line 2 column 8, feature 1\n  do: {mend}")),
        ("{\"features\":[nan]}", format!("error[broken-text]: broken JSON: expected ident\n  at: z.geojson, line 1 column 15, feature 1\n  do: {mend}")),
    ] {
        refused(text, &[&want]);
    }
    let list = "error[bad-geojson]: a list stands where a GeoJSON object should\n  at: z.geojson, line 1 column 1\n  do: a file of zones is {\"type\": \"FeatureCollection\", \"features\": [ … ]}";
    refused("[{}]", &[list]);
}

#[test]
fn a_text_cut_off_anywhere_is_told_as_cut_off() {
    let whole = r#"{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"name":"Gl\u00e9 é","gap_m":3.5,
        "x":null,"t":true,"n":-1e5,"q":NaN,"i":-Infinity},"geometry":{"type":"Polygon","coordinates":[[[7,46],[7.1,46],
        [7.1,46.1],[7,46]]]}}]}"#;
    let ends = "error[broken-text]: the file ends in the middle";
    let all = (1..whole.len()).filter(|&at| whole.is_char_boundary(at));
    for cut in all.map(|at| whole.get(..at).unwrap_or_default()) {
        // The last feature of a file that holds one on each line is as dear as the only one.
        let lines = format!("{}\n{cut}", feature(r#"{"gap_m":1}"#));
        for text in [cut, &lines] {
            let told = bad(text);
            assert!(told[0].starts_with(ends), "{text}\n{told:?}");
        }
    }
}

#[test]
fn what_stands_twice_in_a_geometry_is_a_fault_with_its_place() {
    let other = SQUARE.replace("46", "47");
    let twice = |name: &str, place: &str| {
        format!(
            "error[bad-geojson]: `{name}` stands there twice\n  at: z.geojson, {place}\n  do: keep the one that is right"
        )
    };
    let polygon = polygon(SQUARE).replace('}', &format!(",\"coordinates\":[{other}]}}"));
    let of = |geometry: &str| collection(&[feature_of(r#"{"name":"A","gap_m":1}"#, geometry)]);
    refused(
        &of(&polygon),
        &[&twice("coordinates", "line 2 column 159, feature 1 \"A\"")],
    );
    let escaped = polygon.replacen("coordinates", "coordin\\u0061tes", 1);
    refused(
        &of(&escaped),
        &[&twice("coordinates", "line 2 column 164, feature 1 \"A\"")],
    );
    let inside = format!(r#"{{"type":"GeometryCollection","geometries":[{polygon}]}}"#);
    refused(
        &of(&inside),
        &[&twice("coordinates", "line 2 column 202, feature 1 \"A\"")],
    );
    refused(
        &of(&super::polygon(SQUARE).replacen('{', r#"{"type":"Point","#, 1)),
        &[&twice("type", "line 2 column 89, feature 1 \"A\"")],
    );
    let collections = |geometry: &str, deep: usize| {
        let before = r#"{"type":"GeometryCollection","geometries":["#.repeat(deep);
        format!("{before}{geometry}{}", "]}".repeat(deep))
    };
    let told = bad(&of(&collections(&polygon, 50)));
    assert!(
        told[0].contains("`coordinates` stands there twice"),
        "{told:?}"
    );
    // The second of two lists of parts is looked for too.
    let parts = r#"{"type":"GeometryCollection","geometries":[],"geometries":[]}"#;
    let told = bad(&of(&collections(parts, 3)));
    assert!(
        told[0].contains("`geometries` stands there twice"),
        "{told:?}"
    );
    let deep = r#"{"type":"GeometryCollection","geometries":["#.repeat(20_000);
    assert!(bad(&of(&format!("{deep}{}", "]}".repeat(20_000))))[0].starts_with("error["));
}

#[test]
fn a_file_without_ice_says_what_it_holds() {
    let width = "each with a `gap_m`, the width of the widest gap you expect, in metres";
    refused(
        r#"{"type":"FeatureCollection","features":[]}"#,
        &[&format!(
            "error[no-zones]: nothing is drawn in it\n  at: z.geojson\n  do: draw the broken ice as polygons in a map editor, {width}"
        )],
    );
    refused(
        r#"{"type":"MultiPoint","coordinates":[[7,46]]}"#,
        &[&format!(
            "error[no-zones]: it holds 1 point and no polygon\n  at: z.geojson, feature 1\n  do: draw the broken ice as polygons, {width}"
        )],
    );
}

#[test]
fn a_property_that_stands_there_twice_is_a_fault() {
    refused(
        &one(r#"{"gap_m":1,"area":1,"area":2,"gap_m":30}"#),
        &[
            "error[bad-geojson]: the property stands there more than once: 1, 30\n  at: z.geojson, line 2 column 69, feature 1, `gap_m`\n  do: keep the one that is right",
        ],
    );
}

#[test]
fn all_that_stands_there_is_a_value_of_the_fault_that_it_stands_there_twice() {
    let text = one(r#"{"gap_m":1,"gap_m":"2 m"}"#);
    let faults = zones("z", text.as_bytes(), &Given::default()).unwrap_err();
    let found = &faults[0].values()["found"];
    assert_eq!(
        (&found[0]["text"], &found[1]["text"]),
        (&"1".into(), &"\"2 m\"".into())
    );
}

#[test]
fn words_that_are_no_number_are_quoted_inside_lists_too() {
    let told = bad(&one(r#"{"gap_m":[1,NaN,-Infinity]}"#));
    assert!(
        told[0].contains("gap width [1,NaN,-Infinity] is not a plain number"),
        "{told:?}"
    );
    let line = r#"{"type":"Polygon","coordinates":[[[NaN],[7,46],[7.1,46],[7.1,46.1]]]}"#;
    let told = bad(&collection(&[feature_of(r#"{"gap_m":1}"#, line)]));
    assert!(
        told[0].contains("holds NaN where a number should stand"),
        "{told:?}"
    );
}

#[test]
fn what_a_geometry_lacks_is_told_with_a_cure() {
    let deep = format!(
        "{}{}",
        r#"{"type":"GeometryCollection","geometries":["#.repeat(300),
        "]}".repeat(300)
    );
    for (geometry, cure) in [
        (
            "7",
            "a geometry is {\"type\": \"Polygon\", \"coordinates\": [ … ]}, or null where there is none",
        ),
        (r#"{"type":"Polygon"}"#, "add them, or take the feature out"),
        (
            r#"{"type":"GeometryCollection"}"#,
            "add it, or draw the zone as a Polygon or MultiPolygon",
        ),
        (
            &deep,
            "draw the zone as a Polygon or MultiPolygon, without collections inside each other",
        ),
    ] {
        let told = bad(&collection(&[feature_of(r#"{"gap_m":1}"#, geometry)]));
        assert!(told[0].ends_with(&format!("do: {cure}")), "{told:?}");
    }
}
