//! Flags in words, and what is said when they are wrong.

use std::fs;

use schrund::fault::{Fault, Place, trip::InTrip};

use crate::fixture::program::{root, schrund, text};

/// Plans the example with more flags: exit code, standard output, standard error.
fn plan(more: &[&str]) -> (Option<i32>, String, String) {
    let mut args = vec!["plan", "route.gpx", "zones.geojson", "--trip", "trip.toml"];
    args.extend(more);
    let ran = schrund(&root().join("examples/vordalen"), &args);
    (ran.status.code(), text(&ran.stdout), text(&ran.stderr))
}

fn assumption(plan: &str, name: &str) -> serde_json::Value {
    let plan: serde_json::Value = serde_json::from_str(plan).expect("a plan is JSON");
    let all = plan["assumptions"].as_array().expect("a list");
    let found = all.iter().find(|a| a["name"] == name);
    found
        .unwrap_or_else(|| panic!("{name} is not listed"))
        .clone()
}

#[test]
fn words_are_assumed_like_figures() {
    let words = [
        "cover=anyone",
        "knots=never",
        "rope_on_bare=false",
        "travel=ski",
        "snow=firm",
    ];
    let mut flags = vec!["--format", "json"];
    flags.extend(words.iter().flat_map(|w| ["--assume", w]));
    let (_, out, err) = plan(&flags);
    for word in words {
        let (name, want) = word.split_once('=').unwrap();
        let listed = assumption(&out, name);
        let value = listed["value"]
            .as_str()
            .map_or(listed["value"].to_string(), str::to_owned);
        assert_eq!(
            (value.as_str(), &listed["origin"]),
            (want, &"flag".into()),
            "{err}"
        );
    }
}

#[test]
fn a_word_that_is_not_there_is_told_with_those_that_are() {
    let (code, _, err) = plan(&["--assume", "knots=newer", "--assume", "margin_m=wide"]);
    assert_eq!(code, Some(4));
    assert!(
        err.contains("knots does not take the word \"newer\""),
        "{err}"
    );
    assert!(err.contains("use one of auto, always, never"), "{err}");
    assert!(
        err.contains("margin_m takes a number, and \"wide\" is none"),
        "{err}"
    );
}

#[test]
fn a_trip_file_assumes_words_too() {
    let folder = tempfile::tempdir().unwrap();
    let name = folder.path().join("trip.toml").display().to_string();
    fs::write(
        &name,
        "party = 3\n[assume]\ncover = \"anyone\"\nrope_on_bare = false\n",
    )
    .unwrap();
    let (_, out, err) = plan(&["--trip", &name, "--format", "json"]);
    assert!(out.is_empty(), "a flag is given once: {err}");
    let args = [
        "plan",
        "route.gpx",
        "zones.geojson",
        "--format",
        "json",
        "--trip",
        &name,
    ];
    let ran = schrund(&root().join("examples/vordalen"), &args);
    let listed = assumption(&text(&ran.stdout), "cover");
    assert_eq!(
        (&listed["value"], &listed["origin"]),
        (&"anyone".into(), &"trip file".into())
    );
}

#[test]
fn what_was_given_is_listed_with_who_gave_it() {
    let (_, out, _) = plan(&["--party", "82,75", "--rope", "60", "--format", "json"]);
    let (second, rope) = (assumption(&out, "party.2"), assumption(&out, "rope.1"));
    assert_eq!(
        (&second["value"], &second["origin"]),
        (&75.0.into(), &"flag".into())
    );
    assert_eq!((&rope["value"], &rope["unit"]), (&60.0.into(), &"m".into()));
    assert!(
        assumption(&out, "sold_lengths_m")["value"]
            .as_str()
            .unwrap()
            .contains(", ")
    );
    assert_eq!(plan(&["--assume", "party.2=80"]).0, Some(4));
}

#[test]
fn a_wrong_party_is_told_for_what_it_is() {
    let (code, _, err) = plan(&["--party", "0"]);
    assert!(
        code == Some(4) && err.contains("do: name who goes"),
        "{err}"
    );
    let (code, _, err) = plan(&["--party", "82,abc"]);
    let says = "`abc` is no number: give a head count, `--party 3`, or masses with pack in kg";
    assert!(code == Some(2) && err.contains(says), "{err}");
    let (code, _, err) = plan(&["--party", "99999999999999999999"]);
    assert!(code == Some(4) && err.contains("planned for"), "{err}");
    assert!(!err.contains("weighs"), "{err}");
}

#[test]
fn swapped_files_are_one_fault() {
    let folder = root().join("examples/vordalen");
    let ran = schrund(
        &folder,
        &["plan", "zones.geojson", "route.gpx", "--party", "3"],
    );
    let err = text(&ran.stderr);
    assert_eq!(ran.status.code(), Some(4), "{err}");
    assert_eq!(err.matches("error[").count(), 1, "{err}");
    assert!(err.contains("the two files look swapped"), "{err}");
}

#[test]
fn files_in_the_way_are_one_fault() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().display().to_string();
    for name in ["plan.json", "legs.csv"] {
        fs::write(folder.path().join(name), "mine").unwrap();
    }
    let (code, _, err) = plan(&["--out", &out]);
    assert_eq!((code, err.matches("error[").count()), (Some(4), 1), "{err}");
    assert!(
        err.contains("plan.json, ") && err.contains("legs.csv"),
        "{err}"
    );
}

#[test]
fn words_of_a_practice_set_stand_where_they_come_from() {
    let printed = text(&schrund(&root(), &["practice", "arm-span"]).stdout);
    let (given, left) = printed
        .split_once("\nLeft to the defaults")
        .expect("two parts");
    assert!(
        !given.contains("  snow ") && left.contains("  snow "),
        "{printed}"
    );
}

#[test]
fn what_the_columns_of_heights_are_is_said_beside_them() {
    let folder = root().join("examples/vordalen");
    let args = ["height", "terrain.tif", "--at", "0,0"];
    let told = schrund(&folder, &args);
    let quiet = schrund(&folder, &[&args[..], &["-q"]].concat());
    let header = "longitude, latitude, nearest m, bilinear m\n";
    assert!(
        text(&told.stderr).ends_with(header),
        "{}",
        text(&told.stderr)
    );
    assert_eq!(
        (text(&quiet.stderr).as_str(), text(&quiet.stdout).as_str()),
        ("", "0\t0\tvoid\tvoid\n")
    );
    assert_eq!(told.stdout, quiet.stdout);
}

#[test]
fn the_command_line_speaks_of_flags_and_the_library_does_not() {
    let folder = root().join("examples/vordalen");
    let ran = schrund(&folder, &["plan", "route.gpx", "zones.geojson"]);
    let err = text(&ran.stderr);
    assert!(
        err.contains("do: `--party 3`, or their masses with pack"),
        "{err}"
    );
    let nobody = Fault::new(InTrip::NobodySaid, Place::default());
    let told = nobody.to_string();
    assert!(
        told.ends_with("do: `party = 3`, or their masses with pack: `party = [82, 75, 90]`"),
        "{told}"
    );
}
