//! A width that was assumed is no width, wherever it was written down.

use super::{bad, feature, good, good_given, one};
use crate::fixture::texts::collection;

const GUESS: &str = r#"{"name":"A","gap_m":6,"gap_assumed":true}"#;

#[test]
fn a_width_that_was_assumed_counts_as_not_given() {
    for truth in ["true", r#""true""#, r#""True""#] {
        let properties = format!(r#"{{"gap_m":6,"gap_max_m":7,"gap_assumed":{truth}}}"#);
        let refused = bad(&one(&properties)).join("\n");
        assert!(
            refused.starts_with("error[gap-not-given]: 1 zone gives no gap width"),
            "{truth}: {refused}"
        );
    }
    let text = collection(&[
        feature(GUESS),
        feature(r#"{"gap_m":4}"#),
        feature(r#"{"gap_m":9,"gap_min_m":8,"gap_assumed":true}"#),
    ]);
    let want = "error[gap-not-given]: 2 zones give no gap width: feature 1 \"A\" (by `gap_assumed` the width there was only assumed), feature 3 (by `gap_assumed` the width there was only assumed)\n  at: z.geojson, `gap_m`\n  do: give each polygon a property `gap_m` in the map editor, the width of the widest gap expected, in metres, or say what to assume with `gap_m` of the trip, such as `gap_m = 6`; where you write a width that somebody saw, take `gap_assumed` out";
    assert_eq!(bad(&text), [want]);
    let read = good_given(&text, Some(5.0)).value;
    let gaps: Vec<_> = read.iter().map(|z| (z.gap.max_m, z.gap.assumed)).collect();
    assert_eq!(
        gaps,
        [(5.0, true), (4.0, false), (8.0, true)],
        "assumed anew, and no less than the lower end that somebody gave"
    );
}

#[test]
fn a_width_that_was_not_assumed_is_a_width_and_nothing_is_said() {
    for truth in ["false", r#""false""#, "null", r#""""#] {
        let read = good(&one(&format!(r#"{{"gap_m":6,"gap_assumed":{truth}}}"#)));
        assert_eq!(
            (read.value[0].gap.max_m, read.value[0].gap.assumed),
            (6.0, false)
        );
        assert!(read.notes.is_empty(), "{truth}: {:?}", read.notes);
        assert!(
            read.value[0].other.is_empty(),
            "understood, so not passed through"
        );
    }
}

#[test]
fn what_is_neither_true_nor_false_is_refused() {
    for truth in ["1", r#""perhaps""#, "[true]"] {
        let refused = bad(&one(&format!(r#"{{"gap_m":6,"gap_assumed":{truth}}}"#))).join("\n");
        assert!(
            refused.contains("`gap_assumed`")
                && refused.contains(r#"do: write one of "false", "true""#),
            "{truth}: {refused}"
        );
    }
}

#[test]
fn schema_readme_and_reader_have_the_same_properties() {
    let schema: serde_json::Value =
        serde_json::from_str(include_str!("../../../data/zones.schema.json")).expect("JSON");
    let known = &schema["$defs"]["feature"]["properties"]["properties"]["properties"];
    let known: Vec<&String> = known.as_object().expect("properties").keys().collect();
    assert!(known.len() > 10, "{known:?}");
    let readme = include_str!("../../../README.md");
    let table = readme
        .split_once("| property | unit | meaning |")
        .expect("the table")
        .1;
    let table = table.split_once("\n\n").expect("its end").0;
    for property in known {
        assert!(
            table.contains(&format!("`{property}`")),
            "{property} in the README"
        );
        let properties = format!(r#"{{"{property}":null}}"#);
        let read = good_given(&one(&properties), Some(4.0)).value;
        assert!(read[0].other.is_empty(), "{property} is understood");
    }
}
