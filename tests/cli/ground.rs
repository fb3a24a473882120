//! The program itself: `height`, `check`, `plan --terrain`.

use std::{fs, path::Path};

use schrund::geometry::{LonLat, Utm};
use tempfile::TempDir;

use crate::fixture::{
    ground,
    program::{folder_of_example, schrund, schrund_fed, text},
    texts::collection,
    trip::{NORTHWARD, Trip, rectangle},
};

/// A folder with a terrain model, a route and zones in it.
fn folder() -> TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    let save = |file: &str, bytes: &[u8]| fs::write(dir.path().join(file), bytes).expect("saved");
    let heights = ground::raster(10.0, |_, north| 3000.0 + north / 4.0);
    save("heights.tif", &heights);
    let trip = Trip::along(&NORTHWARD).middle(r#"{"gap_m":6}"#);
    save("route.gpx", trip.gpx().as_bytes());
    save("zones.geojson", trip.geojson().as_bytes());
    let ice = rectangle((-300.0, -700.0), (300.0, 700.0), r#"{"name":"ice"}"#);
    save("ice.geojson", collection(&[ice]).as_bytes());
    dir
}

#[test]
fn heights_are_printed_by_flag_and_from_standard_input() {
    let folder = folder();
    let dir = folder.path();
    let out = schrund_fed(
        dir,
        &[
            "height",
            "heights.tif",
            "--at",
            "9,46.5",
            "--at",
            "-",
            "--at",
            "9.5,46.5",
        ],
        b"9.0001 46.5\n\n9.0,46.501\n",
    );
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    let printed = text(&out.stdout);
    let rows: Vec<Vec<&str>> = printed.lines().map(|l| l.split('\t').collect()).collect();
    assert_eq!(rows.len(), 4, "{printed}");
    assert_eq!(rows[0][..2], ["9", "46.5"], "as given");
    let height = |row: &[&str]| row[3].parse::<f64>().expect("a height");
    assert!((height(&rows[0]) - 3000.0).abs() < 0.01, "{printed}");
    // A thousandth of a degree north is 111.2 m, a quarter of it up.
    assert!((height(&rows[2]) - 3027.8).abs() < 0.05, "{printed}");
    assert_eq!(rows[3], ["9.5", "46.5", "void", "void"]);
}

#[test]
fn a_place_may_be_told_in_the_grid_that_plans_print() {
    let folder = folder();
    let heights = |at: &str| {
        let out = schrund(folder.path(), &["height", "heights.tif", "--at", at]);
        assert_eq!(out.status.code(), Some(0), "{at}: {}", text(&out.stderr));
        let line = text(&out.stdout);
        let numbers: Vec<f64> = line
            .split('\t')
            .map(|n| n.trim().parse().expect("a number"))
            .collect();
        numbers
    };
    // The middle of a metre, so that a metre cut off leads to the same one.
    let at = LonLat::new(9.0004, 46.5003);
    let grid = Utm::of(at).expect("a place of the grid").to_string();
    let (by_degrees, by_grid) = (heights("9.0004,46.5003"), heights(&grid));
    assert!((by_degrees[0] - by_grid[0]).abs() < 1e-5 && (by_degrees[1] - by_grid[1]).abs() < 1e-5);
    // The ground rises a metre in four.
    assert!(
        (by_degrees[3] - by_grid[3]).abs() < 0.5,
        "{by_degrees:?} {by_grid:?}"
    );
    let north = grid.replacen('T', "N", 1);
    let refused = schrund(folder.path(), &["height", "heights.tif", "--at", &north]);
    let says = text(&refused.stderr);
    assert_eq!(
        refused.status.code(),
        Some(4),
        "a hemisphere is no band: {says}"
    );
    assert!(
        says.contains("the letter `N`") && says.contains("do: `--at \"32T "),
        "{says}"
    );
}

#[test]
fn height_ends_with_the_promised_codes() {
    let folder = folder();
    let dir = folder.path();
    let code = |args: &[&str]| schrund(dir, args).status.code();
    assert_eq!(code(&["height", "heights.tif"]), Some(2), "no place");
    assert_eq!(code(&["height", "nowhere.tif", "--at", "9,46"]), Some(3));
    assert_eq!(code(&["height", "heights.tif", "--at", "9;46"]), Some(4));
    assert_eq!(code(&["height", "heights.tif", "--at", "9,96"]), Some(4));
    assert_eq!(
        code(&["height", "route.gpx", "--at", "9,46"]),
        Some(4),
        "no terrain"
    );
}

#[test]
fn check_knows_a_terrain_model() {
    let folder = folder();
    let dir = folder.path();
    let out = schrund(dir, &["check", "heights.tif"]);
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    assert!(
        text(&out.stderr).contains("heights.tif: a terrain model with cells of 10.0 m"),
        "{}",
        text(&out.stderr)
    );
    fs::write(dir.join("cut.tif"), b"II*\0").expect("saved");
    assert!(
        text(&out.stderr).contains("note[terrain-note]"),
        "what is assumed of its heights"
    );
    let cut = schrund(dir, &["check", "cut.tif"]);
    assert_eq!(cut.status.code(), Some(4));
    assert!(
        text(&cut.stderr).contains("error[terrain-broken]"),
        "{}",
        text(&cut.stderr)
    );
    let other = schrund(dir, &["height", "zones.geojson", "--at", "9,46.5"]);
    assert_eq!(other.status.code(), Some(4));
    assert!(
        text(&other.stderr).contains("error[terrain-refused]"),
        "{}",
        text(&other.stderr)
    );
}

/// The plan as JSON.
#[track_caller]
fn planned(dir: &Path, args: &str) -> serde_json::Value {
    let args: Vec<&str> = args.split_whitespace().collect();
    let out = schrund(dir, &args);
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    serde_json::from_slice(&out.stdout).expect("JSON")
}

#[test]
fn a_plan_takes_its_ground_from_flags_and_from_the_trip_file() {
    let folder = folder();
    let dir = folder.path();
    let flags = planned(
        dir,
        "plan route.gpx zones.geojson --party 3 --terrain heights.tif --glaciers ice.geojson \
         --undrawn-ice tell --start 04:30 --pace munter --format json",
    );
    let trip = "party = 3\nterrain = [\"heights.tif\"]\nglaciers = \"ice.geojson\"\nundrawn_ice = \"tell\"\nstart = \"04:30\"\npace = \"munter\"\n";
    let beside = dir.join("beside");
    fs::create_dir_all(&beside).expect("a folder");
    fs::write(dir.join("trip.toml"), trip).expect("saved");
    let trip = planned(
        &beside,
        "plan ../route.gpx ../zones.geojson --trip ../trip.toml --format json",
    );
    assert_eq!(
        flags["legs"], trip["legs"],
        "paths of the trip file start in its folder"
    );
    assert_eq!(
        flags["route"]["heights_from"],
        serde_json::json!(["terrain-model"])
    );
    assert_eq!(flags["legs"][0]["start_clock"], "04:30");
    assert!(flags["legs"][0]["ice_without_zone"][0]["from_m"].is_number());
    let slope = flags["legs"][1]["ground_steepest_deg"]
        .as_f64()
        .expect("a slope");
    assert!(
        (slope - 0.25_f64.atan().to_degrees()).abs() < 0.01,
        "{slope}"
    );
}

#[test]
fn the_table_gives_changes_times_and_the_ground() {
    let folder = folder();
    let dir = folder.path();
    let out = schrund(
        dir,
        &[
            "plan",
            "route.gpx",
            "zones.geojson",
            "--party",
            "3",
            "--terrain",
            "heights.tif",
            "--start",
            "04:30",
            "--detail",
        ],
    );
    let table = text(&out.stdout);
    for words in [
        "Changes\n",
        "rope up at 0.67 km",
        "32T ",
        "° N 9.00000° E",
        "then 000° true",
        "km on the flat",
        "04:30 to ",
    ] {
        assert!(table.contains(words), "{words} is missing:\n{table}");
    }
    assert!(table.lines().all(|l| l.chars().count() <= 100), "{table}");
}

#[test]
fn a_wrong_time_and_bridges_without_a_start_are_told() {
    let folder = folder();
    let dir = folder.path();
    let plan = |more: &[&str]| {
        let args = [
            &["plan", "route.gpx", "zones.geojson", "--party", "3"],
            more,
        ]
        .concat();
        schrund(dir, &args)
    };
    assert_eq!(plan(&["--start", "25:00"]).status.code(), Some(2));
    let out = plan(&["--bridges-until", "10:00"]);
    assert_eq!(out.status.code(), Some(4));
    assert!(
        text(&out.stderr).contains("nobody said when the party starts"),
        "{}",
        text(&out.stderr)
    );
    assert_eq!(plan(&["--terrain", "zones.geojson"]).status.code(), Some(4));
    assert_eq!(
        plan(&["--terrain", "http://127.0.0.1:9/a.tif"])
            .status
            .code(),
        Some(6),
        "nobody listens there"
    );
}

/// A tile of the sea, or one whose heights somebody cut away: there is no relief then, and no fault.
#[test]
fn a_model_without_a_height_is_told_and_everything_is_written() {
    let folder = folder_of_example();
    let voids = i16::MIN.to_be_bytes().repeat(1201 * 1201);
    std::fs::write(folder.path().join("N66E002.hgt"), voids).unwrap();
    let call = [
        "route.gpx",
        "zones.geojson",
        "--party",
        "3",
        "--terrain",
        "N66E002.hgt",
    ];
    let set = schrund(
        folder.path(),
        &[&["plan"], &call[..], &["--out", "set"]].concat(),
    );
    let told = text(&set.stdout);
    assert_eq!(set.status.code(), Some(0), "{}", text(&set.stderr));
    assert!(
        told.contains("the terrain model has no height here"),
        "{told}"
    );
    let report = std::fs::read_to_string(folder.path().join("set/report.html")).unwrap();
    assert!(report.contains("the terrain model has no height here"));
    let page = schrund(
        folder.path(),
        &[&["draw"], &call[..], &["-o", "draw.html"]].concat(),
    );
    assert_eq!(page.status.code(), Some(0), "{}", text(&page.stderr));
}
