//! Outlines of a planet in one file with an index: what is near comes, and the rest stays where it is.

use std::{fs, path::Path};

use schrund::{
    read::{input::Input, lay},
    trip::zone::Zone,
};
use serde_json::Value;
use tempfile::tempdir;

use crate::fixture::{
    flatgeobuf::{Form, flatgeobuf},
    program::{schrund, text},
    server::Server,
};

/// Outlines in a row from west to east.
const ACROSS: usize = 160;
/// Rows of them.
const ROWS: usize = 130;
/// Corners of one.
const CORNERS: usize = 64;

/// Round pieces of ice on a lattice, a hundredth of a degree apart; the line of [`route`] runs over some of them.
fn planet(rows: usize) -> String {
    let piece = |at: usize| {
        let (lon, lat) = (
            7.0 + 0.01 * (at % ACROSS) as f64,
            46.0 + 0.01 * (at / ACROSS) as f64,
        );
        let corner = |of: usize| {
            let turn = std::f64::consts::TAU * (of % CORNERS) as f64 / CORNERS as f64;
            format!(
                "[{},{}]",
                lon + 0.004 * turn.cos(),
                lat + 0.004 * turn.sin()
            )
        };
        let ring: Vec<String> = (0..=CORNERS).map(corner).collect();
        format!(
            r#"{{"type":"Feature","properties":{{"name":"Ice {at}"}},"geometry":{{"type":"Polygon","coordinates":[[{}]]}}}}"#,
            ring.join(",")
        )
    };
    let pieces: Vec<String> = (0..ACROSS * rows).map(piece).collect();
    format!(
        r#"{{"type":"FeatureCollection","features":[{}]}}"#,
        pieces.join(",\n")
    )
}

/// A line of three kilometres to the north over the ice from this corner on.
fn route(lon: f64, lat: f64) -> String {
    let point = |i: u32| {
        format!(
            r#"<trkpt lat="{}" lon="{lon}"/>"#,
            lat + 0.001 * f64::from(i)
        )
    };
    let points: Vec<String> = (0..=30).map(point).collect();
    format!("<gpx><trk><trkseg>{}</trkseg></trk></gpx>", points.concat())
}

fn ran(folder: &Path, args: &[&str]) -> (String, String) {
    let ran = schrund(folder, args);
    assert!(
        matches!(ran.status.code(), Some(0 | 5)),
        "{}",
        text(&ran.stderr)
    );
    (text(&ran.stdout), text(&ran.stderr))
}

#[test]
fn outlines_near_a_line_come_through_the_index_alone() {
    let text = planet(ROWS);
    let bytes = flatgeobuf(&text, Form::default());
    assert!(
        ACROSS * ROWS >= 20_000 && bytes.len() > 20_000_000,
        "{}",
        bytes.len()
    );
    let folder = tempdir().unwrap();
    let of = |name: &str| folder.path().join(name);
    fs::write(of("route.gpx"), route(7.5, 46.5)).unwrap();
    fs::write(of("ice.fgb"), &bytes).unwrap();
    fs::write(
        of("none.geojson"),
        r#"{"type":"FeatureCollection","features":[]}"#,
    )
    .unwrap();
    // Told by its content, so called as nothing.
    let server = Server::of_files(vec![
        ("/ice", bytes.clone()),
        ("/ice.fgb", bytes),
        ("/ice.geojson", text.into_bytes()),
    ]);

    let fetch = |path: &str| {
        let from = server.at(path);
        ran(
            folder.path(),
            &["fetch", "zones", "route.gpx", "--from", &from],
        )
    };
    let (near, told) = fetch("/ice");
    let (sent, asked) = (server.sent(), server.asked());
    assert!(sent < 500_000, "{sent} bytes");
    assert!(asked.len() < 16, "{} requests", asked.len());
    assert!(
        asked
            .iter()
            .all(|asked| asked.headers.contains_key("range"))
    );
    let holds = ACROSS * ROWS;
    assert!(
        told.contains(&format!("of {holds} that the file holds")),
        "{told}"
    );
    let all = outlines(&fetch("/ice.geojson").0);
    assert!(all.len() > 20, "{}", all.len());
    assert_eq!(outlines(&near), all, "the same outlines");
    as_an_inventory(folder.path(), &server);
}

/// Names and shapes of outlines in a row of their own.
fn outlines(text: &str) -> Vec<String> {
    let read: Value = serde_json::from_str(text).unwrap();
    let all = read["features"].as_array().unwrap().iter();
    let mut all: Vec<String> = all
        .map(|of| format!("{} {}", of["properties"]["name"], of["geometry"]))
        .collect();
    all.sort();
    all
}

/// The plan of the line over these zones.
fn planned(folder: &Path, zones: &str, more: &[&str]) -> String {
    let party = ["--party", "3", "--rope", "60", "--format", "json"];
    let call = [&["plan", "route.gpx", zones][..], &party, more].concat();
    ran(folder, &call).0
}

/// The same in a plan, from there and from here.
fn as_an_inventory(folder: &Path, server: &Server) {
    let before = server.sent();
    let plan = |ice: &str| planned(folder, "none.geojson", &["--glaciers", ice]);
    let from = server.at("/ice.fgb");
    let there = plan(&from);
    assert!(
        server.sent() - before < 500_000,
        "{} bytes",
        server.sent() - before
    );
    assert_eq!(
        there.replace(&from, "ice.fgb"),
        plan("ice.fgb"),
        "the same plan"
    );
}

#[test]
fn zones_of_an_address_may_be_flatgeobuf() {
    let folder = tempdir().unwrap();
    fs::write(folder.path().join("route.gpx"), route(7.5, 46.0)).unwrap();
    let form = Form {
        index: false,
        ..Form::default()
    };
    let bytes = flatgeobuf(&planet(4), form);
    fs::write(folder.path().join("zones.fgb"), &bytes).unwrap();
    let server = Server::of_files(vec![("/zones.fgb", bytes)]);
    let plan = |zones: &str| planned(folder.path(), zones, &["--gap", "5"]);
    let from = server.at("/zones.fgb");
    assert_eq!(plan(&from).replace(&from, "zones.fgb"), plan("zones.fgb"));
}

#[test]
fn zones_of_a_file_with_an_index_are_looked_up() {
    let folder = tempdir().unwrap();
    let of = |name: &str| folder.path().join(name);
    let all = planet(ROWS);
    fs::write(of("zones.geojson"), &all).unwrap();
    fs::write(of("zones.fgb"), flatgeobuf(&all, Form::default())).unwrap();
    let plan = |zones: &str, at: (f64, f64)| -> Value {
        fs::write(of("route.gpx"), route(at.0, at.1)).unwrap();
        let told = planned(folder.path(), zones, &["--gap", "5"]);
        serde_json::from_str(&told).unwrap()
    };
    let [near, whole] = ["zones.fgb", "zones.geojson"].map(|zones| plan(zones, (7.5, 46.5)));
    let lengths = |plan: &Value| -> Vec<Value> {
        let legs = plan["legs"].as_array().unwrap().iter();
        legs.map(|leg| leg["length_m"].clone()).collect()
    };
    assert!(lengths(&near).len() > 2, "{near}");
    assert_eq!(lengths(&near), lengths(&whole), "to the last bit");
    let zones = |plan: &Value| plan["zones"].as_array().unwrap().len();
    assert_eq!(zones(&whole), ACROSS * ROWS);
    assert!(zones(&near) < 200, "{}", zones(&near));
    let said = format!("{} of {} outlines lie near", zones(&near), ACROSS * ROWS);
    let findings = near["findings"].to_string();
    assert!(
        findings.contains(&said) && findings.contains("far-zones"),
        "{findings}"
    );

    // Where none is near all are read, and the nearest is named.
    fs::write(of("route.gpx"), route(12.0, 46.5)).unwrap();
    let call = |zones: &str| {
        let ran = schrund(
            folder.path(),
            &["plan", "route.gpx", zones, "--gap", "5", "--party", "3"],
        );
        assert!(!ran.status.success(), "{}", text(&ran.stdout));
        text(&ran.stderr)
    };
    for zones in ["zones.fgb", "zones.geojson"] {
        let told = call(zones);
        assert!(told.contains("none of the 20800 zones is met"), "{told}");
        assert!(told.contains("lies 261.23 km to the west"), "{told}");
    }
}

/// Three tracks; the last one lies far from all ice.
fn tracks(folder: &Path) {
    fs::create_dir(folder).unwrap();
    for (name, at) in [("a", (7.5, 46.0)), ("b", (8.3, 46.01)), ("c", (12.0, 46.0))] {
        fs::write(folder.join(format!("{name}.gpx")), route(at.0, at.1)).unwrap();
    }
}

#[test]
fn a_survey_reads_of_an_inventory_what_lies_near_each_track() {
    let folder = tempdir().unwrap();
    let of = |name: &str| folder.path().join(name);
    tracks(&of("tracks"));
    fs::write(
        of("none.geojson"),
        r#"{"type":"FeatureCollection","features":[]}"#,
    )
    .unwrap();
    let all = planet(12);
    let bytes = flatgeobuf(&all, Form::default());
    fs::write(of("ice.fgb"), &bytes).unwrap();
    fs::write(of("ice.geojson"), &all).unwrap();
    let survey = |tracks: &str, ice: &str, more: &[&str]| {
        let own = ["survey", tracks, "--zones", "none.geojson", "--party", "3"];
        ran(
            folder.path(),
            &[&own[..], &["--rope", "60", "--glaciers", ice], more].concat(),
        )
        .0
    };
    let whole = survey("tracks", "ice.geojson", &[]);
    assert_eq!(whole.lines().count(), 4, "{whole}");
    assert_eq!(survey("tracks", "ice.fgb", &[]), whole);
    let server = Server::of_files(vec![("/ice.fgb", bytes.clone())]);
    let from = server.at("/ice.fgb");
    assert_eq!(survey("tracks/a.gpx", &from, &[]).lines().count(), 2);
    assert!(
        server.sent() < bytes.len() as u64 / 2,
        "{} bytes",
        server.sent()
    );
    let compare = |ice: &str| survey("tracks/a.gpx", ice, &["tracks/b.gpx", "--compare"]);
    assert_eq!(compare("ice.fgb"), compare("ice.geojson"));

    // What does not lie near is not read: a file that is damaged there serves those who are elsewhere.
    let mut broken = bytes;
    let last = broken.len() - 200;
    broken[last..].fill(0xff);
    fs::write(of("ice.fgb"), broken).unwrap();
    assert_eq!(survey("tracks/c.gpx", "ice.fgb", &[]).lines().count(), 2);
}

#[test]
fn a_survey_reads_of_zones_what_lies_near_each_track() {
    let folder = tempdir().unwrap();
    let of = |name: &str| folder.path().join(name);
    tracks(&of("tracks"));
    let all = planet(12);
    let bytes = flatgeobuf(&all, Form::default());
    fs::write(of("ice.fgb"), &bytes).unwrap();
    fs::write(of("ice.geojson"), &all).unwrap();
    fs::write(of("trip.toml"), "gap_m = 5\nparty = 3\n").unwrap();
    let survey = |tracks: &str, ice: &str, more: &[&str]| {
        let own = ["survey", tracks, "--zones", ice, "--rope", "60"];
        schrund(folder.path(), &[&own[..], more].concat())
    };
    for gap in [
        &["--gap", "5", "--party", "3"][..],
        &["--trip", "trip.toml"],
    ] {
        let [near, whole] =
            ["ice.fgb", "ice.geojson"].map(|ice| text(&survey("tracks", ice, gap).stdout));
        assert!(
            whole.lines().count() == 4 && whole.contains(",look,"),
            "{whole}"
        );
        assert_eq!(near, whole);
    }
    // A width is asked for where a track meets zones without one, and that costs its own line alone.
    let told = survey("tracks", "ice.fgb", &["--party", "3"]);
    let lines = text(&told.stdout);
    assert!(
        lines
            .lines()
            .nth(1)
            .is_some_and(|line| line.contains("give no gap width")),
        "{lines}"
    );
    assert!(
        lines
            .lines()
            .nth(3)
            .is_some_and(|line| line.contains("unroped")),
        "{lines}"
    );
    assert_eq!(told.status.code(), Some(4), "{}", text(&told.stderr));
    // By their numbers in the file, as whoever reads all of it has them.
    let all = lay::zones(Input::text("ice.fgb", &bytes[..]), Some(5.0)).unwrap();
    let of_a = lines.lines().nth(1).unwrap().replace("\"\"", "\"");
    let known = |zone: &Zone| {
        let name = zone.name.as_deref().unwrap();
        of_a.contains(&format!("feature {} \"{name}\"", zone.feature))
    };
    let told = of_a.matches("feature ").count();
    assert!(
        told > 5 && all.value.iter().filter(|zone| known(zone)).count() == told,
        "{of_a}"
    );
    let wrong = survey("tracks", "ice.fgb", &["--party", "3", "--gap", "-1"]);
    assert_eq!(wrong.status.code(), Some(4), "{}", text(&wrong.stderr));
}
