//! `schrund zone`: a zone more in a file of the leader's, and nothing else of it touched.

use std::{fs, path::PathBuf};

use serde_json::Value;
use tempfile::{TempDir, tempdir};

use crate::fixture::{
    close,
    program::{root, schrund, schrund_fed, text},
};

/// The example in a folder of its own.
fn example() -> (TempDir, PathBuf) {
    let folder = tempdir().expect("a folder");
    for name in ["route.gpx", "zones.geojson", "trip.toml"] {
        let from = root().join("examples/vordalen").join(name);
        fs::copy(from, folder.path().join(name)).expect("a copy");
    }
    let inside = folder.path().to_owned();
    (folder, inside)
}

fn words(call: &str) -> Vec<&str> {
    call.split_whitespace().collect()
}

#[test]
fn a_zone_of_a_guidebook_is_planned_as_asked() {
    let (_whole, folder) = example();
    let call = "zone route.gpx 5.9-8.3 --gap 4 --snow 1.2 --strike 130 --strike-uncertainty 10 --name Icefall --into mine.geojson";
    let ran = schrund(&folder, &words(call));
    let says = text(&ran.stderr);
    assert_eq!(
        (ran.status.code(), ran.stdout.len()),
        (Some(0), 0),
        "{says}"
    );
    let told = "mine.geojson: zone 1 \"Icefall\", 5.90–8.30 km: 2.40 km of the line, 150 m to either side (our judgement; `--half-width` sets it), 0.72 km²; gaps up to 4 m, 1.2 m of snow\nmine.geojson holds 1 zone now\n";
    assert_eq!(says, told);
    let planned = schrund(
        &folder,
        &words("plan route.gpx mine.geojson --party 3 --format json"),
    );
    let plan: Value = serde_json::from_slice(&planned.stdout).expect("a plan");
    let zone = &plan["zones"][0];
    let crossings = zone["crossings"].as_array().expect("a list");
    assert_eq!(crossings.len(), 1, "{crossings:?}");
    close(
        "enter",
        crossings[0]["enter_m"].as_f64().unwrap(),
        5900.0,
        0.1,
    );
    close(
        "exit",
        crossings[0]["exit_m"].as_f64().unwrap(),
        8300.0,
        0.1,
    );
    let given = [
        "gap_m",
        "snow_depth_m",
        "strike_deg",
        "strike_uncertainty_deg",
    ];
    assert_eq!(
        given.map(|name| zone[name].as_f64()),
        [4.0, 1.2, 130.0, 10.0].map(Some)
    );
    assert_eq!(
        zone["source"],
        "strip along route.gpx, 5.90–8.30 km, 150 m to either side"
    );
}

#[test]
fn the_zones_of_the_leader_stay_to_the_byte() {
    let (_whole, folder) = example();
    let zones = folder.join("zones.geojson");
    let before = fs::read_to_string(&zones).unwrap();
    let call = "zone route.gpx 5,9 - 6,2 7.9-8.3 --gap 3-5 --half-width 80 --source guidebook --into zones.geojson -q";
    let ran = schrund(&folder, &words(call));
    assert_eq!(
        (ran.status.code(), text(&ran.stderr)),
        (Some(0), String::new())
    );
    let after = fs::read_to_string(&zones).unwrap();
    let end = before.rfind("\n]}").unwrap();
    assert!(after.starts_with(&before[..end]) && after.ends_with(&before[end..]));
    let added = &after[end..after.len() - (before.len() - end)];
    assert_eq!(added.lines().count(), 3, "a line each: {added}");
    assert_eq!(
        added
            .matches(r#"{"gap_min_m": 3, "gap_max_m": 5, "source": "guidebook"}"#)
            .count(),
        2
    );
    let left = fs::read_dir(&folder).unwrap().count();
    assert_eq!(left, 3, "nothing else is left in the folder");
}

#[test]
fn without_a_width_the_plan_asks() {
    let (_whole, folder) = example();
    let ran = schrund(
        &folder,
        &words("zone route.gpx 5-6 --into mine.geojson --lang de"),
    );
    let says = text(&ran.stderr);
    assert_eq!(ran.status.code(), Some(0), "{says}");
    assert!(
        says.contains("Zone 1, 5,00–6,00 km") && says.contains("keine Spaltenbreite"),
        "{says}"
    );
    let planned = schrund(&folder, &words("plan route.gpx mine.geojson --party 3"));
    let says = text(&planned.stderr);
    assert!(
        planned.status.code() == Some(4) && says.starts_with("error[gap-not-given]"),
        "{says}"
    );
}

/// Calls that are refused, with the exit code and what is told.
const REFUSED: [(&str, i32, &str); 24] = [
    (
        "zone route.gpx 5-18 --gap 4 --into zones.geojson",
        4,
        "error[bad-number]",
    ),
    (
        "zone route.gpx 8.3-5.9 --gap 4 --into zones.geojson",
        4,
        "error[range-order]",
    ),
    (
        "zone route.gpx 5-5 --gap 4 --into zones.geojson",
        4,
        "error[bad-number]",
    ),
    (
        "zone route.gpx NaN-6 --gap 4 --into zones.geojson",
        4,
        "error[bad-number]",
    ),
    (
        "zone route.gpx 5-6 7-x --gap 4 --into zones.geojson",
        4,
        "error[bad-number]",
    ),
    (
        "zone route.gpx 5-6 --gap NaN --into zones.geojson",
        4,
        "error[bad-number]",
    ),
    (
        "zone route.gpx 5-6 --gap 101 --into zones.geojson",
        4,
        "error[bad-number]",
    ),
    (
        "zone route.gpx 5-6 --gap 5-3 --into zones.geojson",
        4,
        "error[range-order]",
    ),
    (
        "zone route.gpx 5-6 --half-width 5 --into zones.geojson",
        4,
        "error[bad-number]",
    ),
    (
        "zone route.gpx 5-6 --half-width wide --into zones.geojson",
        2,
        "error[usage]",
    ),
    (
        "zone route.gpx 5-6 --surface ice --into zones.geojson",
        2,
        "error[usage]",
    ),
    (
        "zone two.gpx 0.1-0.5 --gap 4 --into zones.geojson",
        4,
        "error[unknown-name]",
    ),
    (
        "zone two.gpx 0.1-0.5 --gap 4 --stage 9 --into zones.geojson",
        4,
        "error[unknown-name]",
    ),
    (
        "zone none.gpx 5-6 --gap 4 --into zones.geojson",
        3,
        "error[unreadable]",
    ),
    (
        "zone zones.geojson 5-6 --gap 4 --into mine.geojson",
        4,
        "error[wrong-kind]",
    ),
    (
        "zone route.gpx 5-6 --gap 4 --into route.gpx",
        4,
        "error[would-overwrite]",
    ),
    (
        "zone route.gpx 5-6 --gap 4 --into trip.toml",
        4,
        "error[wrong-kind]",
    ),
    (
        "zone route.gpx 5-6 --gap 4 --into feature.geojson",
        4,
        "error[bad-geojson]",
    ),
    (
        "zone route.gpx 5-6 --gap 4 --into cut.geojson",
        4,
        "error[broken-text]",
    ),
    (
        "zone route.gpx 5-6 --gap 4 --into .",
        4,
        "error[would-overwrite]",
    ),
    (
        "zone route.gpx 5-6 --gap 4 --into none/mine.geojson",
        1,
        "error[unwritable]",
    ),
    (
        "zone route.gpx 5-6 --gap 4 --into mine.kml",
        2,
        "error[usage]",
    ),
    ("zone route.gpx 5-6 --gap 4 --into -", 2, "error[usage]"),
    (
        "zone route.gpx 5-6 --gap 4 --into https://maps.example/z.geojson",
        2,
        "error[usage]",
    ),
];

#[test]
fn nothing_is_written_where_anything_is_wrong() {
    let (_whole, folder) = example();
    fs::write(
        folder.join("feature.geojson"),
        r#"{"type": "Feature", "properties": null, "geometry": null}"#,
    )
    .unwrap();
    fs::write(
        folder.join("cut.geojson"),
        r#"{"type": "FeatureCollection", "features": ["#,
    )
    .unwrap();
    let two = root().join("tests/cases/two-stages/route.gpx");
    fs::copy(two, folder.join("two.gpx")).unwrap();
    let held = || {
        let files = fs::read_dir(&folder)
            .unwrap()
            .map(|file| file.unwrap().path());
        let mut files: Vec<_> = files
            .map(|path| (path.clone(), fs::read(path).unwrap()))
            .collect();
        files.sort();
        files
    };
    let before = held();
    for (call, code, says) in REFUSED {
        let ran = schrund(&folder, &words(call));
        let told = text(&ran.stderr);
        assert_eq!(ran.status.code(), Some(code), "{call}: {told}");
        assert!(
            told.contains(says) && told.contains("\n  do: "),
            "{call}: {told}"
        );
        assert_eq!(held(), before, "{call}");
    }
}

#[test]
fn all_that_is_wrong_is_told_at_once() {
    let (_whole, folder) = example();
    let call = "zone route.gpx 8-5 5-6 --gap 400 --half-width 5 --into trip.toml";
    let told = text(&schrund(&folder, &words(call)).stderr);
    for code in ["range-order", "bad-number", "wrong-kind"] {
        assert!(told.contains(&format!("error[{code}]")), "{told}");
    }
    assert_eq!(told.matches("error[bad-number]").count(), 2, "{told}");
}

#[test]
fn the_line_may_come_from_standard_input() {
    let (_whole, folder) = example();
    let line = fs::read(folder.join("route.gpx")).unwrap();
    let ran = schrund_fed(
        &folder,
        &words("zone - 5-6 --gap 4 --into mine.geojson"),
        &line,
    );
    assert_eq!(ran.status.code(), Some(0), "{}", text(&ran.stderr));
    assert!(
        fs::read_to_string(folder.join("mine.geojson"))
            .unwrap()
            .contains("\"gap_m\": 4")
    );
}

#[cfg(unix)]
#[test]
fn a_link_stays_one_and_who_may_read_the_file_stays() {
    use std::os::unix::fs::{PermissionsExt, symlink};

    let (_whole, folder) = example();
    let zones = folder.join("zones.geojson");
    fs::set_permissions(&zones, fs::Permissions::from_mode(0o640)).unwrap();
    symlink("zones.geojson", folder.join("link.geojson")).unwrap();
    let ran = schrund(
        &folder,
        &words("zone route.gpx 5-6 --gap 4 --into link.geojson"),
    );
    assert_eq!(ran.status.code(), Some(0), "{}", text(&ran.stderr));
    assert!(folder.join("link.geojson").is_symlink());
    assert!(fs::read_to_string(&zones).unwrap().contains("5.00–6.00 km"));
    assert_eq!(
        fs::metadata(&zones).unwrap().permissions().mode() & 0o777,
        0o640
    );
    fs::set_permissions(&zones, fs::Permissions::from_mode(0o440)).unwrap();
    let ran = schrund(
        &folder,
        &words("zone route.gpx 5-6 --gap 4 --into zones.geojson"),
    );
    assert_eq!(
        ran.status.code(),
        Some(1),
        "a file that nobody may write: {}",
        text(&ran.stderr)
    );
}
