//! Practice sets by the command line: printed, edited, handed over again.

use std::fs;

use tempfile::tempdir;

use crate::fixture::program::{root, schrund, text};

const SETS: [&str; 4] = ["arm-span", "short-alpine", "constant", "club-coils"];

fn printed(name: &str) -> String {
    let out = schrund(&root(), &["practice", name, "--toml"]);
    assert!(out.status.success(), "{}", text(&out.stderr));
    text(&out.stdout)
}

/// The example's plan under a set.
fn plan(practice: &str) -> String {
    let folder = root().join("examples/vordalen");
    let args = [
        "plan",
        "route.gpx",
        "zones.geojson",
        "--party",
        "3",
        "--format",
        "json",
        "--practice",
        practice,
    ];
    let out = schrund(&folder, &args);
    assert!(
        matches!(out.status.code(), Some(0 | 5)),
        "{}",
        text(&out.stderr)
    );
    text(&out.stdout)
}

#[test]
fn a_set_printed_and_handed_over_plans_the_same_to_the_byte() {
    let folder = tempdir().unwrap();
    for name in SETS {
        let file = folder.path().join("mine.toml").display().to_string();
        fs::write(&file, printed(name)).unwrap();
        assert_eq!(plan(&file), plan(name), "{name}");
        let again = schrund(&root(), &["practice", &file, "--toml"]);
        assert_eq!(text(&again.stdout), printed(name), "{name}");
        let checked = schrund(&root(), &["check", &file]);
        assert!(checked.status.success(), "{}", text(&checked.stderr));
    }
}

#[test]
fn a_set_printed_and_edited_changes_the_plan() {
    let folder = tempdir().unwrap();
    let file = folder.path().join("mine.toml").display().to_string();
    let wider = printed("constant").replace("value = 13.7", "value = 17.0");
    let margin = wider.replace(
        "# [margin_m]\n# value = 20.0\n# standing",
        "[margin_m]\nvalue = 35.0\nstanding",
    );
    assert_ne!(margin, wider, "the default stands in the file");
    fs::write(&file, margin).unwrap();
    let plan = plan(&file);
    let plan: serde_json::Value = serde_json::from_str(&plan).unwrap();
    let value = |name: &str| {
        let all = plan["assumptions"].as_array().unwrap();
        all.iter().find(|a| a["name"] == name).unwrap()["value"].as_f64()
    };
    assert_eq!(
        (value("spacing_3_m"), value("margin_m")),
        (Some(17.0), Some(35.0))
    );
}

#[test]
fn a_set_says_where_it_comes_from_and_when_it_is_used() {
    for name in SETS {
        let out = text(&schrund(&root(), &["practice", name]).stdout);
        for title in ["\nComes from\n", "\nUsed\n"] {
            let (_, after) = out
                .split_once(title)
                .unwrap_or_else(|| panic!("{name}: {out}"));
            let mut lines = after.lines();
            assert!(
                lines.next().is_some_and(|l| l.len() > 40),
                "{name}: a sentence after {title}"
            );
            assert!(
                lines.next().is_some_and(|l| l.starts_with("  standing: ")),
                "{name}: its standing"
            );
        }
    }
}

#[test]
fn the_schema_knows_everything_that_a_set_can_hold() {
    let schema = text(&schrund(&root(), &["schema", "practice"]).stdout);
    let schema: serde_json::Value = serde_json::from_str(&schema).unwrap();
    let properties = schema["properties"].as_object().unwrap();
    let entry = schema["$defs"]["FigureEntry"]["properties"]
        .as_object()
        .unwrap();
    let about = schema["$defs"]["AboutSet"]["properties"]
        .as_object()
        .unwrap();
    let printed = SETS.map(printed);
    for text in &printed {
        let table: toml::Table = text.parse().unwrap();
        for needed in schema["required"].as_array().unwrap() {
            assert!(table.contains_key(needed.as_str().unwrap()), "{needed}");
        }
        for (name, value) in &table {
            let known = properties
                .get(name)
                .unwrap_or_else(|| panic!("{name} is not in the schema"));
            let Some(members) = value.as_table() else {
                continue;
            };
            let (of, bounds) = match known["properties"]["value"].as_object() {
                Some(bounds) => (entry, Some(bounds)),
                None => (about, None),
            };
            assert!(
                members.keys().all(|m| of.contains_key(m)),
                "{name}: {members:?}"
            );
            let within = |b: &serde_json::Map<String, serde_json::Value>| {
                let value = members["value"].as_float().unwrap();
                b["minimum"].as_f64().unwrap() <= value && value <= b["maximum"].as_f64().unwrap()
            };
            assert!(bounds.is_none_or(within), "{name}: {bounds:?}");
        }
    }
    // And the other way round: every figure of the schema stands in the file, if behind a `#`.
    let figures = properties
        .iter()
        .filter(|(_, p)| p["properties"]["value"].is_object());
    for (name, _) in figures {
        assert!(
            printed[0].contains(&format!("[{name}]")),
            "{name} stands nowhere"
        );
    }
}

#[test]
fn a_set_printed_for_reading_is_told_once_with_the_call_that_writes_a_file() {
    let folder = tempdir().unwrap();
    for name in SETS {
        let file = folder.path().join("mine.toml");
        fs::write(&file, schrund(&root(), &["practice", name]).stdout).unwrap();
        let example = root().join("examples/vordalen");
        let mine = file.display().to_string();
        let plan = [
            "plan",
            "route.gpx",
            "zones.geojson",
            "--party",
            "3",
            "--practice",
            &mine,
        ];
        for args in [&plan[..], &["check", &mine]] {
            let out = schrund(&example, args);
            let says = text(&out.stderr);
            assert_eq!(out.status.code(), Some(4), "{says}");
            assert_eq!(says.matches("error[").count(), 1, "{says}");
            let call = format!("`schrund practice {name} --toml > ");
            assert!(
                says.contains(&call) && says.contains("mine-2.toml"),
                "{says}"
            );
        }
    }
}
