//! Files: whole or not at all, never over an input, the same bytes every time.

use std::fs;

use crate::fixture::program::{command, root, schrund, schrund_fed, text};

fn example() -> Vec<String> {
    let dir = root().join("examples/vordalen");
    let path = |name: &str| dir.join(name).display().to_string();
    vec![
        "plan".into(),
        path("route.gpx"),
        path("zones.geojson"),
        "--trip".into(),
        path("trip.toml"),
    ]
}

fn with<'a>(args: &'a [String], more: &[&'a str]) -> Vec<&'a str> {
    args.iter()
        .map(String::as_str)
        .chain(more.iter().copied())
        .collect()
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let (folder, args) = (tempfile::tempdir().unwrap(), example());
    let first = schrund(folder.path(), &with(&args, &["--out", "one"]));
    let second = schrund(folder.path(), &with(&args, &["--out", "two"]));
    assert_eq!(first.stdout, second.stdout);
    let mut names = Vec::new();
    for entry in fs::read_dir(folder.path().join("one")).unwrap() {
        let name = entry.unwrap().file_name();
        let read = |dir: &str| fs::read(folder.path().join(dir).join(&name)).unwrap();
        assert!(
            read("one") == read("two"),
            "{name:?} differs from run to run"
        );
        names.push(name);
    }
    assert!(names.len() >= 3, "only {names:?} were written");
}

#[test]
fn a_file_that_is_there_is_replaced_only_with_force() {
    let (folder, args) = (tempfile::tempdir().unwrap(), example());
    let target = folder.path().join("map.geojson");
    fs::write(&target, "mine").unwrap();
    let more = ["--format", "geojson", "-o", "map.geojson"];
    let refused = schrund(folder.path(), &with(&args, &more));
    assert_eq!(refused.status.code(), Some(4), "{}", text(&refused.stderr));
    assert_eq!(
        text(&refused.stderr),
        "error[would-overwrite]: map.geojson is there already\n  at: map.geojson\n  do: write to another file: `--output map-2.geojson`\n"
    );
    assert_eq!(
        fs::read_to_string(&target).unwrap(),
        "mine",
        "a refused file is untouched"
    );
    let forced = schrund(
        folder.path(),
        &with(&args, &[&more[..], &["--force"]].concat()),
    );
    assert_eq!(forced.status.code(), Some(0), "{}", text(&forced.stderr));
    assert!(
        fs::read_to_string(&target)
            .unwrap()
            .starts_with("{\"type\":\"FeatureCollection\"")
    );
}

#[test]
fn an_input_is_never_written_over_even_with_force() {
    let folder = tempfile::tempdir().unwrap();
    let route = folder.path().join("route.gpx");
    fs::copy(root().join("examples/vordalen/route.gpx"), &route).unwrap();
    let zones = root()
        .join("examples/vordalen/zones.geojson")
        .display()
        .to_string();
    let args = [
        "plan",
        "route.gpx",
        &zones,
        "--party",
        "3",
        "-o",
        "./route.gpx",
        "--force",
    ];
    let refused = schrund(folder.path(), &args);
    assert_eq!(refused.status.code(), Some(4));
    assert!(text(&refused.stderr).contains("is an input and is never written over"));
    let kept = fs::read(&route).unwrap();
    assert!(
        kept == fs::read(root().join("examples/vordalen/route.gpx")).unwrap(),
        "the input changed"
    );
}

#[test]
fn a_place_that_cannot_be_written_is_told_without_made_up_names() {
    let (folder, args) = (tempfile::tempdir().unwrap(), example());
    let more = ["--format", "csv", "-o", "nowhere/legs.csv"];
    let refused = schrund(folder.path(), &with(&args, &more));
    assert_eq!(refused.status.code(), Some(1));
    let told = text(&refused.stderr);
    let want = "error[unwritable]: cannot write nowhere/legs.csv: there is no such file or folder\n  at: nowhere/legs.csv\n  do: make its folder first, or write to one that is there\n";
    assert!(told.ends_with(want), "{told}");
}

#[test]
fn nothing_is_written_when_one_file_of_the_set_is_refused() {
    let (folder, args) = (tempfile::tempdir().unwrap(), example());
    fs::create_dir(folder.path().join("out")).unwrap();
    fs::write(folder.path().join("out/legs.csv"), "mine").unwrap();
    let refused = schrund(folder.path(), &with(&args, &["--out", "out"]));
    assert_eq!(refused.status.code(), Some(4));
    let names: Vec<_> = fs::read_dir(folder.path().join("out")).unwrap().collect();
    assert_eq!(names.len(), 1, "{names:?}");
}

#[test]
fn standard_input_gives_one_of_the_inputs() {
    let dir = root().join("examples/vordalen");
    let route = fs::read(dir.join("route.gpx")).unwrap();
    let piped = schrund_fed(
        &dir,
        &[
            "plan",
            "-",
            "zones.geojson",
            "--party",
            "3",
            "--format",
            "csv",
        ],
        &route,
    );
    let named = schrund(
        &dir,
        &[
            "plan",
            "route.gpx",
            "zones.geojson",
            "--party",
            "3",
            "--format",
            "csv",
        ],
    );
    assert_eq!(text(&piped.stdout), text(&named.stdout));
    let twice = schrund(&dir, &["plan", "-", "-", "--party", "3"]);
    assert_eq!(twice.status.code(), Some(3));
    assert!(text(&twice.stderr).contains("standard input can give only one of the inputs"));
}

#[test]
fn colours_come_only_when_asked_for_and_the_table_fits() {
    let (dir, args) = (root(), example());
    let plain = schrund(&dir, &args.iter().map(String::as_str).collect::<Vec<_>>());
    let colour = schrund(&dir, &with(&args, &["--color", "always"]));
    let (plain, colour) = (text(&plain.stdout), text(&colour.stdout));
    assert!(!plain.contains('\u{1b}'), "escapes in a pipe");
    assert!(colour.contains("\u{1b}[1m"), "no colour although asked for");
    for line in plain.lines() {
        let width = line.chars().count();
        assert!(width <= 100, "{width} columns: {line}");
    }
}

/// What the example prints in so many columns.
fn shown(columns: usize, more: &[&str]) -> String {
    let args = ["plan", "route.gpx", "zones.geojson", "--trip", "trip.toml"];
    let output = command(&root().join("examples/vordalen"), &[&args, more].concat())
        .env("COLUMNS", columns.to_string())
        .output()
        .unwrap();
    text(&output.stdout)
}

#[test]
fn the_first_page_is_one_page_and_each_finding_a_line() {
    for (columns, most) in [(80, 60), (100, 50), (120, 50)] {
        let lines = shown(columns, &[]).lines().count();
        assert!(lines <= most, "{lines} lines at {columns} columns");
    }
    let page = shown(400, &[]);
    let (_, told) = page.split_once("? Look at this\n").expect("four legs");
    let (told, _) = told.split_once("\n\n").expect("the legs");
    let parts: Vec<&str> = told.lines().flat_map(|line| line.split(" → ")).collect();
    assert_eq!(
        parts.len(),
        2 * told.lines().count(),
        "each with its cure: {told}"
    );
    for part in parts {
        // The place stands before what is found.
        let said = part
            .trim_start()
            .split_once("  ")
            .map_or(part, |(_, said)| said);
        assert!(said.chars().count() <= 90, "long: {said}");
    }
}

#[test]
fn a_narrow_terminal_folds_the_table_and_cuts_nothing() {
    for more in [&[][..], &["--detail"]] {
        folds(more);
    }
}

fn folds(more: &[&str]) {
    let (narrow, wide) = (shown(80, more), shown(120, more));
    let long = |line: &&str| line.chars().count() > 80;
    let too_wide: Vec<&str> = narrow.lines().filter(long).collect();
    assert!(too_wide.is_empty(), "{too_wide:#?}");
    let numbers = |text: &str| {
        let words = text
            .split(|c: char| !c.is_ascii_digit() && c != '.')
            .map(|w| w.trim_matches('.').to_owned());
        let mut numbers: Vec<String> = words.filter(|w| !w.is_empty()).collect();
        numbers.sort();
        numbers.dedup();
        numbers
    };
    assert_eq!(numbers(&narrow), numbers(&wide), "a number was lost or cut");
}

#[test]
fn new_writes_a_trip_that_check_accepts_and_never_over_another() {
    let folder = tempfile::tempdir().unwrap();
    assert_eq!(
        schrund(folder.path(), &["new", "trip"]).status.code(),
        Some(0)
    );
    let checked = schrund(folder.path(), &["check", "trip/trip.toml"]);
    assert_eq!(checked.status.code(), Some(0), "{}", text(&checked.stderr));
    let empty = schrund(folder.path(), &["check", "trip/zones.geojson"]);
    assert_eq!(
        empty.status.code(),
        Some(4),
        "an empty zones file holds no zone yet"
    );
    assert_eq!(
        schrund(folder.path(), &["new", "trip"]).status.code(),
        Some(4)
    );
}

/// A link that leads nowhere was seen only while writing, and answered without what to do.
#[cfg(unix)]
#[test]
fn new_replaces_no_link_either() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("trip")).unwrap();
    let link = folder.path().join("trip/trip.toml");
    std::os::unix::fs::symlink("nowhere.toml", &link).unwrap();
    let refused = schrund(folder.path(), &["new", "trip"]);
    assert_eq!(refused.status.code(), Some(4), "{}", text(&refused.stderr));
    assert!(link.symlink_metadata().unwrap().is_symlink());
}

#[test]
fn the_ending_of_a_file_chooses_its_format_where_none_is_named() {
    let (folder, args) = (tempfile::tempdir().unwrap(), example());
    for (ending, format) in [
        ("json", "json"),
        ("csv", "csv"),
        ("GeoJSON", "geojson"),
        ("kml", "kml"),
        ("gpx", "gpx"),
        ("html", "html"),
        ("txt", "table"),
    ] {
        let [chosen, named] = ["chosen", "named"].map(|stem| format!("{stem}.{ending}"));
        schrund(folder.path(), &with(&args, &["-o", &chosen]));
        schrund(
            folder.path(),
            &with(&args, &["--format", format, "-o", &named]),
        );
        let read = |name: &str| fs::read(folder.path().join(name)).expect("it was written");
        assert!(read(&chosen) == read(&named), "{ending} is not {format}");
    }
    let csv = ["--format", "csv", "-o", "legs.json"];
    schrund(folder.path(), &with(&args, &csv));
    let text = fs::read_to_string(folder.path().join("legs.json")).unwrap();
    assert!(!text.starts_with('{'), "what is named wins: {text}");
    schrund(folder.path(), &with(&args, &["-o", "plan of 21.8"]));
    assert!(folder.path().join("plan of 21.8").exists(), "no ending");
}

#[test]
fn an_ending_that_no_format_has_is_refused_before_anything_is_written() {
    let (folder, args) = (tempfile::tempdir().unwrap(), example());
    for more in [
        &["-o", "plan.pdf"][..],
        &["--format", "html", "-o", "plan.pdf"],
    ] {
        let ran = schrund(folder.path(), &with(&args, more));
        let says = text(&ran.stderr);
        assert_eq!(ran.status.code(), Some(2), "{says}");
        assert!(says.contains("do: `--output plan.html`"), "{says}");
    }
    let left = fs::read_dir(folder.path()).unwrap().count();
    assert_eq!(left, 0, "something was written");
}
