//! The program itself: `height`, `check`, `plan --terrain`.

use std::{
    fs,
    io::Write,
    path::{Path, PathBuf},
    process::{Command, Output, Stdio},
};

use super::made;

/// A folder of its own for each test, with a terrain model, a route and zones in it.
fn folder(name: &str) -> PathBuf {
    let dir = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::create_dir_all(&dir).expect("a folder");
    let ground = |_: f64, north: f64| 3000.0 + north / 4.0;
    let save = |file: &str, bytes: &[u8]| fs::write(dir.join(file), bytes).expect("saved");
    save("heights.tif", &made::raster(10.0, ground));
    let point = |&(e, n): &(f64, f64)| {
        let p = made::at(e, n);
        format!("<trkpt lat=\"{}\" lon=\"{}\"/>", p.lat_deg, p.lon_deg)
    };
    let points: String = made::NORTHWARD.iter().map(point).collect();
    let gpx =
        format!("<gpx version=\"1.1\" creator=\"hand\"><trk><trkseg>{points}</trkseg></trk></gpx>");
    save("route.gpx", gpx.as_bytes());
    let zone = made::rectangle((-200.0, -200.0), (200.0, 200.0), "{\"gap_m\":6}");
    save("zones.geojson", made::collection(&[zone]).as_bytes());
    let ice = made::rectangle((-300.0, -700.0), (300.0, 700.0), "{\"name\":\"ice\"}");
    save("ice.geojson", made::collection(&[ice]).as_bytes());
    dir
}

fn run(dir: &Path, args: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_schrund"))
        .args(args)
        .current_dir(dir)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("runs");
    // A program that refuses its flags may end before it reads.
    let _ = child
        .stdin
        .take()
        .expect("stdin")
        .write_all(input.as_bytes());
    child.wait_with_output().expect("ends")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("UTF-8")
}

#[test]
fn heights_are_printed_by_flag_and_from_standard_input() {
    let dir = folder("height");
    let out = run(
        &dir,
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
        "9.0001 46.5\n\n9.0,46.501\n",
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
fn height_ends_with_the_promised_codes() {
    let dir = folder("height_codes");
    let code = |args: &[&str]| run(&dir, args, "").status.code();
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
    let dir = folder("check");
    let out = run(&dir, &["check", "heights.tif"], "");
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
    let cut = run(&dir, &["check", "cut.tif"], "");
    assert_eq!(cut.status.code(), Some(4));
    assert!(
        text(&cut.stderr).contains("error[terrain-broken]"),
        "{}",
        text(&cut.stderr)
    );
    let other = run(&dir, &["height", "zones.geojson", "--at", "9,46.5"], "");
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
    let out = run(dir, &args, "");
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    serde_json::from_slice(&out.stdout).expect("JSON")
}

#[test]
fn a_plan_takes_its_ground_from_flags_and_from_the_trip_file() {
    let dir = folder("plan");
    let flags = planned(
        &dir,
        "plan route.gpx zones.geojson --party 3 --terrain heights.tif --glaciers ice.geojson \
         --start 04:30 --pace munter --format json",
    );
    let trip = "party = 3\nterrain = [\"heights.tif\"]\nglaciers = \"ice.geojson\"\nstart = \"04:30\"\npace = \"munter\"\n";
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
    assert_eq!(flags["route"]["heights_from"], "terrain model");
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
    let dir = folder("table");
    let out = run(
        &dir,
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
        ],
        "",
    );
    let table = text(&out.stdout);
    for words in [
        "Changes\n",
        "rope up at 0.68 km",
        "32T ",
        "° N 9.00000° E",
        "then 000° true",
        "effort kilometres",
        "from 04:30 to",
    ] {
        assert!(table.contains(words), "{words} is missing:\n{table}");
    }
    assert!(table.lines().all(|l| l.chars().count() <= 100), "{table}");
}

#[test]
fn a_wrong_time_and_bridges_without_a_start_are_told() {
    let dir = folder("clock");
    let plan = |more: &[&str]| {
        let args = [
            &["plan", "route.gpx", "zones.geojson", "--party", "3"],
            more,
        ]
        .concat();
        run(&dir, &args, "")
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
        plan(&["--terrain", "http://example.org/a.tif"])
            .status
            .code(),
        Some(3)
    );
}
