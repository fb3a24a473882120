//! A file with one zone more: all that was there is there still, to the byte.

use proptest::prelude::*;
use schrund::{
    fault::Code,
    geometry::LonLat,
    read::geojson::{Given, zones},
    strip::{
        LineStrip, StripWanted,
        append::{Appended, to},
        asked::stretch,
        strips,
    },
};

use crate::fixture::any::{at, route};

fn strip() -> LineStrip {
    let line: Vec<LonLat> = (0..20).map(|i| at(0.0, 100.0 * f64::from(i))).collect();
    let typed = vec![("gap_m", "4".to_owned()), ("name", "Eis \"é\"".to_owned())];
    let wanted = StripWanted {
        typed,
        ..StripWanted::default()
    };
    let made = strips(&route(&line), &[stretch("0.5-1.2").unwrap()], &wanted);
    made.unwrap().value.remove(0)
}

fn appended(file: &str) -> Appended {
    to("zones.geojson", Some(file.as_bytes().to_vec()), &[strip()])
        .unwrap_or_else(|f| panic!("{file}: {f:?}"))
}

/// What was put in, and what stands before and behind it.
fn put_in<'t>(before: &str, after: &'t str) -> &'t str {
    let same = before
        .bytes()
        .zip(after.bytes())
        .take_while(|(a, b)| a == b)
        .count();
    let mut same = same.min(before.len());
    while !before.ends_with(&after[after.len() - (before.len() - same)..]) {
        same -= 1;
    }
    &after[same..after.len() - (before.len() - same)]
}

const ICE: &str = r#"{"type":"Feature","properties":{"gap_m":3,"x":"features ]} é \" ["},"geometry":{"type":"Polygon","coordinates":[[[7,46],[7.1,46],[7.1,46.1],[7,46]]]}}"#;
const HUT: &str = r#"{"type":"Feature","properties":null,"geometry":null}"#;

#[test]
fn features_stand_as_those_before_them() {
    let feature = strip().feature();
    for (file, want) in [
        (
            format!("{{\"type\":\"FeatureCollection\",\"features\":[\n  {ICE}\n]}}\n"),
            format!(",\n  {feature}"),
        ),
        (
            format!("{{\"features\":[{ICE}, {HUT}],\"type\":\"FeatureCollection\"}}"),
            format!(",{feature}"),
        ),
        (
            format!(
                "{{\r\n\t\"type\": \"FeatureCollection\",\r\n\t\"features\": [\r\n\t\t{HUT}\r\n\t],\r\n\t\"mine\": [1]\r\n}}\r\n"
            ),
            format!(",\r\n\t\t{feature}"),
        ),
        (
            "{\"type\": \"FeatureCollection\", \"features\": []}\n".to_owned(),
            format!("\n  {feature}\n"),
        ),
        (
            "{\n  \"type\": \"FeatureCollection\",\n  \"features\": []\n}\n".to_owned(),
            format!("\n    {feature}\n  "),
        ),
        (
            format!(
                "\u{feff}{{\"a\":{{\"features\":[1]}},\"type\":\"FeatureCollection\",\"features\":[ {ICE} ]}}"
            ),
            format!(", {feature}"),
        ),
    ] {
        let Appended { text, zones } = appended(&file);
        assert_eq!(put_in(&file, &text), want, "{text}");
        let ice = usize::from(file.contains("Polygon"));
        assert_eq!(zones, Some(1 + ice), "{text}");
    }
}

#[test]
fn an_empty_list_over_lines_has_its_bracket_at_the_end() {
    let file = "{\n \"type\": \"FeatureCollection\",\n \"features\": [\n ]\n}";
    let text = appended(file).text;
    let feature = strip().feature();
    assert_eq!(
        text,
        format!("{{\n \"type\": \"FeatureCollection\",\n \"features\": [\n   {feature}\n ]\n}}")
    );
}

#[test]
fn a_file_that_is_not_there_is_made() {
    let Appended { text, zones: held } = to("zones.geojson", None, &[strip(), strip()]).unwrap();
    assert_eq!(held, Some(2));
    assert!(text.ends_with("}}\n  ]\n}\n"), "{text}");
    let read = zones("zones.geojson", text.as_bytes(), &Given::default()).unwrap();
    assert_eq!(read.notes, [], "nothing odd about it");
    assert_eq!(read.value[1].name.as_deref(), Some("Eis \"é\""));
}

#[test]
fn twice_is_twice() {
    let once = appended(&format!(
        "{{\"type\":\"FeatureCollection\",\"features\":[{HUT}]}}"
    ))
    .text;
    let twice = appended(&once);
    assert_eq!(
        (twice.zones, twice.text.matches("\"gap_m\": 4").count()),
        (Some(2), 2)
    );
}

#[test]
fn what_is_wrong_with_other_zones_is_left_to_their_leader() {
    let file = format!(
        "{{\"type\":\"FeatureCollection\",\"features\":[{}]}}",
        ICE.replace("\"gap_m\":3", "\"gap_m\":\"ca. 3\"")
    );
    assert_eq!(
        appended(&file).zones,
        None,
        "and how many there are is not said"
    );
    let file = format!(
        "{{\"type\":\"FeatureCollection\",\"features\":[{}]}}",
        ICE.replace("\"gap_m\":3", "\"gap_m\":null")
    );
    assert_eq!(
        appended(&file).zones,
        Some(2),
        "a width that nobody gave yet"
    );
}

#[test]
fn what_is_no_collection_is_refused() {
    let collection = format!("{{\"type\":\"FeatureCollection\",\"features\":[{ICE}]}}");
    for (file, code) in [
        ("", Code::WrongKind),
        ("party = 3\n", Code::WrongKind),
        ("<gpx></gpx>", Code::WrongKind),
        (ICE, Code::BadGeojson),
        (HUT, Code::BadGeojson),
        ("[]", Code::BadGeojson),
        ("null", Code::BadGeojson),
        ("{\"type\":\"FeatureCollection\"}", Code::BadGeojson),
        (
            "{\"type\":\"FeatureCollection\",\"features\":{}}",
            Code::BadGeojson,
        ),
        (
            "{\"type\":\"FeatureCollection\",\"features\":[",
            Code::BrokenText,
        ),
        (
            "{\"type\":\"FeatureCollection\",\"features\":[]",
            Code::BrokenText,
        ),
        (&format!("{collection}\n{collection}"), Code::BadGeojson),
        (&format!("{ICE}\n{ICE}\n"), Code::BadGeojson),
        (
            &collection.replace("[7,46]", "[700000,46]"),
            Code::ProjectedPosition,
        ),
        (
            &collection.replace(
                "\"features\"",
                "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"EPSG:2056\"}},\"features\"",
            ),
            Code::ForeignCrs,
        ),
    ] {
        let faults =
            to("zones.geojson", Some(file.as_bytes().to_vec()), &[strip()]).expect_err(file);
        assert_eq!(faults[0].kind(), code, "{file}: {}", faults[0]);
        assert_eq!(
            faults[0].at.file.as_deref(),
            Some("zones.geojson"),
            "{file}"
        );
    }
    let latin = b"{\"type\":\"FeatureCollection\",\"mine\":\"Gr\xfcn\",\"features\":[]}".to_vec();
    to("zones.geojson", Some(latin), &[strip()]).expect_err("no UTF-8");
}

proptest! {
    #[test]
    fn nothing_else_of_a_file_is_touched(
        before in prop::sample::select(vec!["", "\u{feff}", "\n", "  "]),
        space in prop::sample::select(vec!["", " ", "\n", "\r\n\t", "\n    "]),
        features in prop::collection::vec(prop::sample::select(vec![ICE, HUT]), 0..5),
        members in prop::sample::select(vec!["", r#""features of mine":["features",{"features":[]}],"#, r#""bbox":[7,46,8,47],"name":"a\\\"b","#]),
        behind in prop::sample::select(vec!["", "\n", "\r\n\r\n"]),
    ) {
        let list = features.join(&format!(",{space}"));
        let file = format!("{before}{{{members}{space}\"type\":\"FeatureCollection\",{space}\"features\":[{space}{list}{space}]{space}}}{behind}");
        let text = appended(&file).text;
        let added = strip().feature();
        let at = text.find(&added).unwrap();
        let spaceless = |text: &str| text.split_whitespace().collect::<String>();
        let (head, tail) = (&text[..at], &text[at + added.len()..]);
        let head = head.trim_end_matches([' ', '\n', '\r', '\t']);
        let head = head.strip_suffix(',').filter(|_| !features.is_empty()).unwrap_or(head);
        prop_assert!(file.starts_with(head), "{file}\n{text}");
        let tail = tail.trim_start_matches([' ', '\n', '\r', '\t']);
        prop_assert!(file.ends_with(tail), "{file}\n{text}");
        prop_assert_eq!(spaceless(&file), spaceless(head) + &spaceless(tail));
    }

    #[test]
    fn no_file_makes_it_fall_over(bytes in prop::collection::vec(any::<u8>(), 0..60), at in any::<prop::sample::Index>(), byte in any::<u8>()) {
        let _ = to("zones.geojson", Some(bytes), &[strip()]);
        let mut file = format!("{{\"type\":\"FeatureCollection\",\"features\":[{ICE}]}}").into_bytes();
        let at = at.index(file.len());
        file[at] = byte;
        let _ = to("zones.geojson", Some(file), &[strip()]);
    }
}
