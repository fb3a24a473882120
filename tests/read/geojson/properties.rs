//! What the properties of a zone say, and what is answered where they do not.

use schrund::read::geojson::{Given, zones};

use super::{bad, feature, good_given, noted, one, refused};
use crate::fixture::texts::collection;

#[test]
fn widths_are_read_as_people_write_them() {
    for (written, want) in [
        ("3.5", 3.5),
        ("0", 0.0),
        ("100", 100.0),
        (r#""3.5""#, 3.5),
        (r#"" 3,5 ""#, 3.5),
        (r#""3.5 m""#, 3.5),
        (r#""3.5m""#, 3.5),
        (r#""12 metres""#, 12.0),
        (r#""3,50""#, 3.5),
        (r#""0,500""#, 0.5),
        (r#""3.500""#, 3.5),
    ] {
        let read = noted(&one(&format!(r#"{{"gap_m":{written}}}"#)), &[]);
        assert_eq!(
            (read[0].gap.min_m, read[0].gap.max_m),
            (None, want),
            "{written}"
        );
    }
}

#[test]
fn the_upper_end_of_a_range_counts_and_is_noted() {
    for (written, low, high) in [
        ("2-4", 2.0, 4.0),
        ("2 – 4 m", 2.0, 4.0),
        ("2m-4m", 2.0, 4.0),
        ("2 to 4", 2.0, 4.0),
        ("1,5—2,5 m", 1.5, 2.5),
    ] {
        let read = noted(
            &one(&format!(r#"{{"gap_m":"{written}"}}"#)),
            &[&format!(
                "warning[worse-end-counts]: of the gap width \"{written}\" the upper end counts: {high} m\n  at: z.geojson, line 2 column 41, feature 1, `gap_m`"
            )],
        );
        assert_eq!(
            (read[0].gap.min_m, read[0].gap.max_m),
            (Some(low), high),
            "{written}"
        );
    }
}

#[test]
fn of_a_range_of_snow_the_lower_end_counts_since_knots_hang_on_it() {
    let read = noted(
        &one(r#"{"gap_m":1,"snow_depth_m":"0.5-1.5"}"#),
        &[
            "warning[worse-end-counts]: of the snow depth \"0.5-1.5\" the lower end counts: 0.5 m\n  at: z.geojson, line 2 column 58, feature 1, `snow_depth_m`",
        ],
    );
    assert_eq!(read[0].snow_depth_m, Some(0.5));
}

#[test]
fn a_gap_narrower_than_a_hand_is_asked_about_and_counted_as_given() {
    let asked = |property: &str, width_m: &str| {
        format!(
            "warning[perhaps-no-metres]: a gap of {width_m} m is narrower than a hand: is that in metres?\n  at: z.geojson, line 2 column 1, feature 1, `{property}`\n  do: write metres, 0 where there is no gap; nothing, if it is meant so"
        )
    };
    let read = noted(&one(r#"{"gap_m":0.025}"#), &[&asked("gap_m", "0.025")]);
    assert_eq!(read[0].gap.max_m, 0.025);
    let read = noted(
        &one(r#"{"gap_max_m":0.079}"#),
        &[&asked("gap_max_m", "0.079")],
    );
    assert_eq!(read[0].gap.max_m, 0.079);
    for wide_enough in ["0", "0.08", "0.5"] {
        noted(&one(&format!(r#"{{"gap_m":{wide_enough}}}"#)), &[]);
    }
}

#[test]
fn of_several_widths_the_widest_counts() {
    let read = noted(&one(r#"{"gap_min_m":2,"gap_max_m":5}"#), &[]);
    assert_eq!(
        (read[0].gap.min_m, read[0].gap.max_m),
        (Some(2.0), 5.0),
        "a range"
    );
    let read = noted(
        &one(r#"{"gap_m":6,"gap_max_m":5}"#),
        &[
            "warning[worse-end-counts]: `gap_m` and `gap_max_m` differ: the wider one counts, 6 m\n  at: z.geojson, line 2 column 1, feature 1, `gap_max_m`",
        ],
    );
    let widths = (read[0].gap.min_m, read[0].gap.max_m);
    assert_eq!(widths, (None, 6.0), "the wider one");
    refused(
        &one(r#"{"gap_min_m":7,"gap_max_m":5}"#),
        &[
            "error[range-order]: the lower gap width 7 m is above the upper one, 5 m\n  at: z.geojson, line 2 column 1, feature 1, `gap_min_m`\n  do: correct the one that is wrong",
        ],
    );
}

#[test]
fn unclear_numbers_are_refused_with_place_value_and_cure() {
    let width = "write one plain number in metres, 0 to 100, or null where it is not known";
    let assume = "where it is not known `null`, and what to assume with `gap_m` of the trip, such as `gap_m = 6`";
    let widest = format!(
        "write the widest you expect in metres as a plain number, 0 to 100, without words or signs; {assume}"
    );
    let three = format!("write the widest you expect in metres, `3` if that is it; {assume}");
    for (written, says) in [
        (r#""3,500""#, r#"gap width "3,500" can mean 3.5 or 3500"#),
        (r#""ca. 3""#, r#"gap width "ca. 3" is not a plain number"#),
        (r#"">3""#, r#"gap width ">3" is not a plain number"#),
        (r#""3?""#, r#"gap width "3?" is not a plain number"#),
        (
            r#""1.234,5""#,
            r#"gap width "1.234,5" is not a plain number"#,
        ),
        (r#""2-4-6""#, r#"gap width "2-4-6" is not a plain number"#),
        (r#""12 ft""#, r#"gap width "12 ft" is in "ft", not in m"#),
        ("-3", "gap width -3 is outside 0 to 100 m"),
        (r#""-3""#, r#"gap width "-3" is outside 0 to 100 m"#),
        ("3500", "gap width 3500 is outside 0 to 100 m"),
        (r#""2-350""#, r#"gap width "2-350" is outside 0 to 100 m"#),
        ("NaN", "gap width NaN is not a finite number"),
        ("Infinity", "gap width Infinity is not a finite number"),
        ("-Infinity", "gap width -Infinity is not a finite number"),
        (r#""nan""#, r#"gap width "nan" is not a finite number"#),
        ("true", "gap width true is not a plain number"),
        ("[3]", "gap width [3] is not a plain number"),
        (r#"{"m":3}"#, r#"gap width {"m":3} is not a plain number"#),
    ] {
        let text = one(&format!(r#"{{"name":"Icefall","gap_m":{written}}}"#));
        let cure = match says {
            _ if says.contains("can mean") => "write `3.5`",
            _ if !says.contains("not a plain number") => width,
            _ if written.contains('3') && !written.contains(',') => three.as_str(),
            _ => widest.as_str(),
        };
        let place = "z.geojson, line 2 column 58, feature 1 \"Icefall\", `gap_m`";
        refused(
            &text,
            &[&format!(
                "error[bad-number]: {says}\n  at: {place}\n  do: {cure}"
            )],
        );
    }
    refused(
        &one(r#"{"gap_m":"4-2"}"#),
        &[
            "error[range-order]: the range \"4-2\" of the gap width runs downwards\n  at: z.geojson, line 2 column 41, feature 1, `gap_m`\n  do: write the smaller number first",
        ],
    );
    refused(
        &one(r#"{"gap_m":1e999}"#),
        &[
            "error[bad-number]: 1e999 cannot be read as a value\n  at: z.geojson, line 2 column 41, feature 1, `gap_m`\n  do: it is too large for a number, or nested too deeply: correct it or take it out",
        ],
    );
}

#[test]
fn the_other_quantities_keep_their_bounds() {
    refused(
        &one(r#"{"gap_m":1,"snow_depth_m":51,"strike_deg":361,"strike_uncertainty_deg":91}"#),
        &[
            "error[bad-number]: snow depth 51 is outside 0 to 50 m\n  at: z.geojson, line 2 column 58, feature 1, `snow_depth_m`\n  do: write one plain number in metres, 0 to 50, or null where it is not known",
            "error[bad-number]: strike uncertainty 91 is outside 0 to 90 °\n  at: z.geojson, line 2 column 103, feature 1, `strike_uncertainty_deg`\n  do: write one plain number in degrees, 0 to 90, or null where it is not known",
            "error[bad-number]: strike 361 is outside -360 to 360 °\n  at: z.geojson, line 2 column 74, feature 1, `strike_deg`\n  do: write one plain number in degrees, -360 to 360, or null where it is not known",
        ],
    );
    refused(
        &one(r#"{"gap_m":1,"strike_deg":"30-50"}"#),
        &[
            "error[bad-number]: a strike is one direction, not a range from 30 to 50\n  at: z.geojson, line 2 column 1, feature 1, `strike_deg`\n  do: write `strike_deg` 40 and `strike_uncertainty_deg` 10 if that is what you mean",
        ],
    );
    noted(
        &one(r#"{"gap_m":1,"strike_uncertainty_deg":5}"#),
        &[
            "warning[strike-missing]: an uncertainty without a strike says nothing and was not used\n  at: z.geojson, line 2 column 1, feature 1, `strike_uncertainty_deg`\n  do: add `strike_deg`, the direction in which the gaps run",
        ],
    );
    for (given, want) in [
        ("-10", 170.0),
        ("180", 0.0),
        ("\"45°\"", 45.0),
        ("-1e-20", 0.0),
        ("360", 0.0),
    ] {
        let strike = noted(&one(&format!(r#"{{"gap_m":1,"strike_deg":{given}}}"#)), &[])[0].strike;
        assert_eq!(
            strike.map(|s| (s.deg, s.uncertainty_deg)),
            Some((want, None)),
            "{given}"
        );
    }
}

#[test]
fn wrong_words_are_answered_with_the_right_ones() {
    refused(
        &one(r#"{"gap_m":1,"surface":"ice","rope":true}"#),
        &[
            "error[bad-word]: \"ice\" is no word for `surface`\n  at: z.geojson, line 2 column 53, feature 1, `surface`\n  do: write one of \"snow\", \"bare\"",
            "error[bad-word]: true is no word for `rope`\n  at: z.geojson, line 2 column 66, feature 1, `rope`\n  do: write one of \"auto\", \"always\", \"never\"",
        ],
    );
}

#[test]
fn zones_without_a_width_are_all_named_in_one_error() {
    let text = collection(&[
        feature(r#"{"name":"A","gap_m":null}"#),
        feature(r#"{"gap_m":""}"#),
        feature(r#"{"gap_m":3}"#),
        feature(r#"{"name":"D","gap_n":4}"#),
        feature(r#"{"gap_min_m":8}"#),
    ]);
    refused(
        &text,
        &[
            "error[gap-not-given]: 4 zones give no gap width: feature 1 \"A\", feature 2, feature 4 \"D\" (`gap_n` is no name; write `gap_m`), feature 5 (at least 8 m by `gap_min_m`)\n  at: z.geojson, `gap_m`\n  do: rename `gap_n` to `gap_m`; for the others give each polygon a property `gap_m` in the map editor, the width of the widest gap expected, in metres, or say what to assume with `gap_m` of the trip, such as `gap_m = 6`",
        ],
    );
    let read = good_given(&text, Some(6.0));
    let gaps: Vec<_> = read
        .value
        .iter()
        .map(|z| (z.gap.max_m, z.gap.assumed))
        .collect();
    assert_eq!(
        gaps,
        [
            (6.0, true),
            (6.0, true),
            (3.0, false),
            (6.0, true),
            (8.0, true)
        ],
        "assumed"
    );
    let warning = read
        .notes
        .iter()
        .map(ToString::to_string)
        .find(|n| n.contains("assumed"));
    let want = "warning[gap-assumed]: 6 m, or the lower end given where that is wider, assumed as the gap width of 4 of 5 zones, which give none: feature 1 \"A\", feature 2, feature 4 \"D\" (`gap_n` is no name; write `gap_m`), feature 5 (at least 8 m by `gap_min_m`)\n  at: z.geojson, `gap_m`\n  do: write `gap_m` into the file where the ice is known";
    assert_eq!(warning.as_deref(), Some(want), "the warning");
}

#[test]
fn the_list_of_zones_without_a_width_ends_somewhere() {
    let many: Vec<String> = (0..60).map(|_| feature("{}")).collect();
    let shown = bad(&collection(&many)).remove(0);
    let named = (1..=10)
        .map(|n| format!("feature {n}"))
        .collect::<Vec<_>>()
        .join(", ");
    let start = format!("error[gap-not-given]: 60 zones give no gap width: {named} and 50 more\n");
    assert!(shown.starts_with(&start), "{shown}");
}

#[test]
fn an_assumed_width_keeps_the_bounds_too() {
    for gap_m in [-1.0, 101.0, f64::NAN] {
        let Err(problems) = zones("z", one("{}").as_bytes(), &Given { gap_m: Some(gap_m) }) else {
            panic!("--gap {gap_m} should be refused")
        };
        let want = format!(
            "error[bad-number]: a gap width of {gap_m} m is outside 0 to 100 m\n  at: flags, `gap_m`\n  do: give it in metres, for zones that give none"
        );
        assert_eq!(problems[0].to_string(), want, "for {gap_m}");
    }
}

#[test]
fn near_misses_are_answered_with_the_right_name() {
    for (given, right) in [
        ("Gap-M", "gap_m"),
        ("GAP_M", "gap_m"),
        ("gap m", "gap_m"),
        ("gapm", "gap_m"),
        ("gap", "gap_m"),
        ("gpa_m", "gap_m"),
        ("gap_width", "gap_m"),
        ("gap_max", "gap_max_m"),
        ("strike", "strike_deg"),
        ("snowdepth", "snow_depth_m"),
        ("snow_depth", "snow_depth_m"),
        ("strike_unc", "strike_uncertainty_deg"),
        ("Surface", "surface"),
        ("Rope", "rope"),
        ("obsreved_on", "observed_on"),
    ] {
        let column = 50 + given.len();
        noted(
            &one(&format!(r#"{{"gap_max_m":1,"{given}":1}}"#)),
            &[&format!(
                "warning[near-miss]: the property `{given}` means nothing here and was not used\n  at: z.geojson, line 2 column {column}, feature 1, `{given}`\n  do: the name is `{right}`"
            )],
        );
    }
    let others = r##"{"gap_m":1,"stroke":"#fff","role":"zone","title":"x","area":1,"slope":3,"map":1,"type":"g","effective_gap_m":2}"##;
    noted(&one(others), &[]);
}

#[test]
fn of_very_many_near_misses_only_the_first_are_told() {
    let near: Vec<String> = (0..30_000).map(|i| format!("\"gap_m{i}\":1")).collect();
    let text = one(&format!("{{\"gap_max_m\":1,{}}}", near.join(",")));
    let read = zones("z", text.as_bytes(), &Given::default()).unwrap();
    assert_eq!(read.notes.len(), 20, "told one by one");
    assert_eq!(read.notes[19].more, 29_980);
    assert!(read.notes[..19].iter().all(|note| note.more == 0));
}

#[test]
fn words_that_are_no_numbers_do_no_harm_where_nothing_depends_on_them() {
    let read = noted(
        &one(r#"{"gap_m":1,"area":NaN,"text":"NaN Infinity -Infinity","name":NaN}"#),
        &[
            "warning[not-a-number]: NaN or Infinity is no JSON and was read as null\n  at: z.geojson, line 2 column 50, feature 1, `area`",
        ],
    );
    let other = serde_json::Value::Object(read[0].other.clone());
    assert_eq!(
        other,
        serde_json::json!({"area": null, "text": "NaN Infinity -Infinity"}),
        "the rest"
    );
    assert_eq!(read[0].name, None, "the name");
}
