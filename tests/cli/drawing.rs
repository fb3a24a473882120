//! `schrund draw`: one file that holds all that it needs, and asks for nothing.

use std::{fs, io::Read};

use base64::{Engine, engine::general_purpose::STANDARD};
use flate2::read::GzDecoder;
use serde_json::Value;

use crate::fixture::program::{command, root, schrund, text};

/// What stands in an element of the page, by its id.
fn element<'p>(page: &'p str, id: &str) -> &'p str {
    let begin = page.find(&format!("id=\"{id}\">")).expect("it is there") + id.len() + 6;
    let rest = &page[begin..];
    &rest[..rest.find("</").expect("it ends")]
}

fn example(more: &[&str]) -> (String, Value) {
    let folder = root().join("examples/vordalen");
    let given = ["draw", "route.gpx", "zones.geojson", "--trip", "trip.toml"];
    let done = schrund(&folder, &[&given[..], more].concat());
    assert_eq!(done.status.code(), Some(0), "{}", text(&done.stderr));
    let page = text(&done.stdout);
    let given = serde_json::from_str(element(&page, "given")).expect("it is JSON");
    (page, given)
}

fn unpacked(file: &Value) -> Vec<u8> {
    let packed = STANDARD.decode(file["packed"].as_str().unwrap()).unwrap();
    let mut bytes = Vec::new();
    GzDecoder::new(&packed[..]).read_to_end(&mut bytes).unwrap();
    bytes
}

#[test]
fn a_page_holds_its_files_as_they_are_and_flags_in_its_trip() {
    let (page, given) = example(&[
        "--party",
        "70,80",
        "--assume",
        "margin_m=30",
        "--lang",
        "de",
    ]);
    let read = |name: &str| fs::read(root().join("examples/vordalen").join(name)).unwrap();
    for (member, name) in [("route", "route.gpx"), ("zones", "zones.geojson")] {
        assert_eq!(given[member]["name"], name);
        assert_eq!(
            given[member]["text"].as_str().unwrap().as_bytes(),
            read(name)
        );
    }
    assert_eq!(given["files"][0]["name"], "terrain.tif");
    assert_eq!(
        unpacked(&given["files"][0]),
        read("terrain.tif"),
        "it is small: whole"
    );
    let trip = &given["trip"];
    assert_eq!(
        trip["party"],
        serde_json::json!([70.0, 80.0]),
        "the flag wins"
    );
    assert_eq!(
        (&trip["start"], &trip["assume"]["margin_m"]),
        (&"02:30".into(), &30.0.into())
    );
    assert_eq!(
        (&given["language"], &trip["language"]),
        (&"de".into(), &"de".into())
    );
    assert!(
        page.starts_with("<!DOCTYPE html><html lang=\"de\">"),
        "{}",
        &page[..60]
    );
}

#[test]
fn a_page_lets_no_request_out_and_shows_the_sheet_without_scripts() {
    let (page, _) = example(&[]);
    let head = &page[..page.find("</head>").unwrap()];
    assert!(head.contains("default-src 'none'"), "{head}");
    for out in ["src=\"http", "href=\"http", "url(http", "@import"] {
        assert!(!head.contains(out), "{out}");
    }
    let still = &page[page.find("<div id=\"still\">").unwrap()..];
    let still = &still[..still.find("<script").unwrap()];
    assert!(
        still.contains("58.5") && still.contains("id=\"seen\""),
        "{}",
        &still[..2000]
    );
}

#[test]
fn texts_that_would_end_a_script_stay_texts() {
    let folder = tempfile::tempdir().unwrap();
    let name = "</script><script>alert(1)</script>";
    let zones = serde_json::json!({"type": "FeatureCollection", "features": [{"type": "Feature",
        "properties": {"gap_m": 4, "name": name},
        "geometry": {"type": "Polygon", "coordinates": [[[2.0, 66.5], [2.1, 66.5], [2.1, 66.6], [2.0, 66.5]]]}}]});
    fs::write(folder.path().join("ice.geojson"), zones.to_string()).unwrap();
    let route = root()
        .join("examples/vordalen/route.gpx")
        .display()
        .to_string();
    let done = schrund(
        folder.path(),
        &["draw", &route, "ice.geojson", "--party", "3"],
    );
    let page = text(&done.stdout);
    assert!(!page.contains("<script>alert"), "it would run");
    let given: Value = serde_json::from_str(element(&page, "given")).unwrap();
    assert_eq!(
        given["zones"]["text"],
        zones.to_string(),
        "and comes back as it was"
    );
}

#[test]
fn without_a_line_it_is_a_planner_and_on_a_wrong_line_none() {
    let folder = tempfile::tempdir().unwrap();
    let empty = schrund(folder.path(), &["draw", "-o", "draw.html"]);
    assert_eq!(empty.status.code(), Some(0), "{}", text(&empty.stderr));
    let page = fs::read_to_string(folder.path().join("draw.html")).unwrap();
    let given: Value = serde_json::from_str(element(&page, "given")).unwrap();
    assert_eq!(
        (&given["route"], &given["zones"]),
        (&Value::Null, &Value::Null)
    );
    fs::write(folder.path().join("line.gpx"), "<gpx>").unwrap();
    let broken = schrund(folder.path(), &["draw", "line.gpx", "-o", "other.html"]);
    assert_eq!(broken.status.code(), Some(4), "{}", text(&broken.stderr));
    assert!(
        !folder.path().join("other.html").exists(),
        "nothing is written"
    );
    let there = schrund(folder.path(), &["draw", "-o", "draw.html"]);
    assert!(
        text(&there.stderr).starts_with("error[would-overwrite]"),
        "{}",
        text(&there.stderr)
    );
}

/// A tile of a hundred kilometres round a line of two: what is read of it is there, the rest is void and packs to nothing.
#[test]
fn of_a_great_terrain_model_a_page_holds_what_lies_round_the_line() {
    let folder = tempfile::tempdir().unwrap();
    let height = |i: u32| u16::try_from(1000 + (i % 1201 + i / 1201 * 7) % 900).unwrap();
    let tile: Vec<u8> = (0..1201 * 1201)
        .flat_map(|i| height(i).to_be_bytes())
        .collect();
    fs::write(folder.path().join("N66E002.hgt"), &tile).unwrap();
    let line = r#"<gpx><trk><trkseg><trkpt lat="66.50" lon="2.5"/><trkpt lat="66.52" lon="2.5"/></trkseg></trk></gpx>"#;
    fs::write(folder.path().join("line.gpx"), line).unwrap();
    let ice = r#"{"type": "Feature", "properties": {"gap_m": 4}, "geometry": {"type": "Polygon", "coordinates":
        [[[2.4, 66.505], [2.6, 66.505], [2.6, 66.51], [2.4, 66.51], [2.4, 66.505]]]}}"#;
    fs::write(folder.path().join("ice.geojson"), ice).unwrap();
    let args = [
        "line.gpx",
        "ice.geojson",
        "--party",
        "3",
        "--terrain",
        "N66E002.hgt",
    ];
    let page = schrund(folder.path(), &[&["draw"][..], &args].concat());
    let given: Value = serde_json::from_str(element(&text(&page.stdout), "given")).unwrap();
    let file = &given["files"][0];
    let (packed, sparse) = (file["packed"].as_str().unwrap().len(), unpacked(file));
    assert_eq!(sparse.len(), tile.len(), "the form of the file stays");
    assert!(packed < 400_000, "{packed} of {}", tile.len());
    let json = || {
        let done = schrund(
            folder.path(),
            &[&["plan", "--format", "json"][..], &args].concat(),
        );
        done.stdout
    };
    let whole = json();
    fs::write(folder.path().join("N66E002.hgt"), sparse).unwrap();
    assert!(whole == json(), "the plan is the same, byte for byte");
}

#[test]
fn a_set_holds_the_page_wherever_its_inputs_come_from() {
    let folder = tempfile::tempdir().unwrap();
    let path = |name: &str| {
        root()
            .join("examples/vordalen")
            .join(name)
            .display()
            .to_string()
    };
    let (route, zones, trip) = (path("route.gpx"), path("zones.geojson"), path("trip.toml"));
    let args = ["plan", &route, &zones, "--trip", &trip, "--out", "set"];
    let done = schrund(folder.path(), &args);
    assert_eq!(done.status.code(), Some(0), "{}", text(&done.stderr));
    assert!(
        folder.path().join("set/draw.html").exists(),
        "{}",
        text(&done.stderr)
    );
    let args = ["plan", "-", &zones, "--trip", &trip, "--out", "piped"];
    let piped = command(folder.path(), &args)
        .stdin(fs::File::open(&route).unwrap())
        .output()
        .unwrap();
    assert_eq!(piped.status.code(), Some(0), "{}", text(&piped.stderr));
    let page = |set: &str| fs::read_to_string(folder.path().join(set).join("draw.html")).unwrap();
    assert_eq!(
        page("piped"),
        page("set"),
        "route.gpx is what an unnamed line is called"
    );
}
