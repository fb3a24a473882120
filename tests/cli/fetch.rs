//! Addresses as inputs of the program, and `fetch`: the same bytes as from files, no secrets, no half files.

use std::{fs, path::Path, process::Output};

use serde_json::Value;
use tempfile::tempdir;

use crate::fixture::{
    program::{command, root, schrund, text},
    raster::Tiled,
    server::{Play, Server, answer, file, ok},
};

/// Every file of the example under its name.
fn vordalen() -> Server {
    let dir = root().join("examples/vordalen");
    let read = |name: &str| fs::read(dir.join(name)).expect("a file of the example");
    Server::of_files(vec![
        ("/route.gpx", read("route.gpx")),
        ("/zones.geojson", read("zones.geojson")),
        ("/terrain.tif", read("terrain.tif")),
    ])
}

/// The line of the example, wherever the call is made.
fn route() -> String {
    let file = root().join("examples/vordalen/route.gpx");
    file.display().to_string()
}

/// A model under the line of the example that takes several requests.
fn large() -> Tiled {
    Tiled {
        across: 8,
        down: 4,
        corner: (1.9, 66.6),
        cell_deg: 0.0002,
    }
}

fn with_cache(folder: &Path, cache: &Path, args: &[&str]) -> Output {
    let mut command = command(folder, args);
    command
        .env("SCHRUND_CACHE", cache)
        .output()
        .expect("it runs")
}

#[track_caller]
fn ends(ran: &Output, code: i32) -> String {
    let told = text(&ran.stderr);
    assert_eq!(ran.status.code(), Some(code), "{told}");
    told
}

#[test]
fn a_plan_from_addresses_is_that_from_files() {
    let (server, dir) = (vordalen(), root().join("examples/vordalen"));
    let rest = ["--party", "3", "--rope", "60", "--format", "json"];
    let plan = |route: &str, zones: &str, terrain: &str| {
        let own = ["plan", route, zones, "--terrain", terrain];
        let ran = schrund(&dir, &[&own[..], &rest].concat());
        assert!(
            matches!(ran.status.code(), Some(0 | 5)),
            "{}",
            text(&ran.stderr)
        );
        text(&ran.stdout)
    };
    let here = plan("route.gpx", "zones.geojson", "terrain.tif");
    let at = |path: &str| server.at(path).replace("http://", "HTTP://");
    let there = plan(
        &at("/route.gpx"),
        &at("/zones.geojson"),
        &at("/terrain.tif"),
    );
    // Where a file lies is told in two places of the document.
    let bare = there.replace(&server.at("/"), "").replace(&at("/"), "");
    assert_eq!(bare, here);
}

#[test]
fn a_trip_file_names_addresses_too() {
    let server = vordalen();
    let folder = tempdir().unwrap();
    let trip = format!(
        "party = 3\nterrain = [\"{}\"]\nglaciers = \"{}\"\n",
        server.at("/terrain.tif"),
        server.at("/zones.geojson")
    );
    fs::write(folder.path().join("trip.toml"), trip).unwrap();
    let (route, zones) = (server.at("/route.gpx"), server.at("/zones.geojson"));
    let args = [
        "plan",
        &route,
        &zones,
        "--trip",
        "trip.toml",
        "--format",
        "csv",
    ];
    let ran = schrund(folder.path(), &args);
    assert!(
        matches!(ran.status.code(), Some(0 | 5)),
        "{}",
        text(&ran.stderr)
    );
    assert!(
        server
            .asked()
            .iter()
            .any(|asked| asked.path == "/terrain.tif")
    );
}

#[test]
fn a_model_that_breaks_off_ends_as_a_fault_of_the_network() {
    let whole = fs::read(root().join("examples/vordalen/terrain.tif")).unwrap();
    let large = large();
    for (bytes, good) in [(whole, 0), (large.write(), 1)] {
        let server = Server::start(move |request, before| {
            let part = file(request, &bytes, "\"1\"");
            let half = part[..part.len() / 2].to_vec();
            Play::Bytes(if before < good { part } else { half })
        });
        let dir = root().join("examples/vordalen");
        let terrain = server.at("/terrain.tif?key=hunter2");
        let args = [
            "plan",
            "route.gpx",
            "zones.geojson",
            "--party",
            "3",
            "--terrain",
            &terrain,
        ];
        let ran = schrund(&dir, &args);
        let told = ends(&ran, 6);
        assert!(
            told.contains("error[network]: the answer broke off"),
            "{told}"
        );
        assert!(
            told.contains("/terrain.tif\n") && !told.contains("hunter2"),
            "{told}"
        );
        assert!(ran.stdout.is_empty(), "nothing is planned");
    }
}

#[test]
fn offline_is_told_and_what_is_kept_is_used() {
    let (server, cache) = (vordalen(), tempdir().unwrap());
    let dir = root().join("examples/vordalen");
    let zones = server.at("/zones.geojson?token=hunter2");
    let call = |offline: bool| {
        let mut args = vec!["plan", "route.gpx", zones.as_str(), "--party", "3"];
        args.extend(offline.then_some("--offline"));
        with_cache(&dir, cache.path(), &args)
    };
    let told = ends(&call(true), 6);
    assert!(told.contains("nothing is kept of this address"), "{told}");
    assert!(!told.contains("hunter2"), "{told}");
    assert_eq!(server.asked().len(), 0);
    ends(&call(false), 0);
    let asked = server.asked().len();
    ends(&call(true), 0);
    assert_eq!(server.asked().len(), asked);
}

/// Two outlines: one under the line of the example, one far away.
fn outlines() -> Vec<u8> {
    let zones = fs::read(root().join("examples/vordalen/zones.geojson")).unwrap();
    let mut zones: Value = serde_json::from_slice(&zones).unwrap();
    let first = zones["features"][0].clone();
    let mut far = first.clone();
    far["geometry"] = serde_json::json!({"type": "Polygon",
        "coordinates": [[[10.0, 10.0], [10.1, 10.0], [10.1, 10.1], [10.0, 10.0]]]});
    zones["features"] = serde_json::json!([first, far]);
    zones["numberMatched"] = serde_json::json!(2);
    serde_json::to_vec(&zones).unwrap()
}

#[test]
fn outlines_become_zones_that_wait_for_their_width() {
    let server = Server::saying(ok(&outlines()));
    let folder = tempdir().unwrap();
    let route = route();
    let from = server.at("/collections/ice/items?key=hunter2");
    let args = [
        "fetch",
        "zones",
        &route,
        "--from",
        &from,
        "-o",
        "zones.geojson",
        "--inventory",
        "ice.geojson",
    ];
    let told = ends(&schrund(folder.path(), &args), 0);
    assert!(
        told.contains("1 outline lies near the route, of 2 that came"),
        "{told}"
    );
    let zones = fs::read_to_string(folder.path().join("zones.geojson")).unwrap();
    assert!(
        zones.contains("\"gap_m\":null") && zones.contains("fetched 20"),
        "{zones}"
    );
    assert!(!zones.contains("hunter2") && !told.contains("hunter2"));
    let plan = ["plan", &route, "zones.geojson", "--party", "3"];
    let waits = ends(&schrund(folder.path(), &plan), 4);
    assert!(waits.contains("[gap-not-given]"), "{waits}");
    let plan = [&plan[..], &["--gap", "6", "--glaciers", "ice.geojson"]].concat();
    let planned = schrund(folder.path(), &plan);
    assert!(
        matches!(planned.status.code(), Some(0 | 5)),
        "{}",
        text(&planned.stderr)
    );
    let there = ends(&schrund(folder.path(), &args), 4);
    assert!(there.contains("[would-overwrite]"), "{there}");
    assert_eq!(
        server.asked().len(),
        1,
        "nothing is asked for what cannot be written"
    );
}

#[test]
fn pages_that_break_off_leave_no_file() {
    let server = Server::saying(answer("500 Internal Server Error", &[], b""));
    let folder = tempdir().unwrap();
    let route = route();
    let from = server.at("/items");
    let zones = [
        "fetch",
        "zones",
        &route,
        "--from",
        &from,
        "-o",
        "z.geojson",
        "--inventory",
        "i.json",
    ];
    let told = ends(&schrund(folder.path(), &zones), 6);
    assert!(
        told.contains("the server answered 500 Internal Server Error"),
        "{told}"
    );
    let from = server.at("/{NS}{lat}{EW}{lon}.tif");
    ends(
        &schrund(
            folder.path(),
            &["fetch", "terrain", &route, "--from", &from, "-o", "dem"],
        ),
        6,
    );
    assert_eq!(folder.path().read_dir().unwrap().count(), 0);
}

#[test]
fn heights_that_were_fetched_are_planned_with_and_credited() {
    let large = large();
    let server = Server::of_files(vec![("/dem.tif", large.write())]);
    let folder = tempdir().unwrap();
    let dir = root().join("examples/vordalen");
    let route = dir.join("route.gpx").display().to_string();
    let from = server.at("/dem.tif");
    let credit = "© the surveyors, CC BY 4.0";
    let args = [
        "fetch", "terrain", &route, "--from", &from, "-o", "dem.tif", "--credit", credit,
    ];
    let told = ends(&schrund(folder.path(), &args), 0);
    assert!(
        told.contains("wrote dem.tif") && told.contains(credit),
        "{told}"
    );
    let zones = dir.join("zones.geojson").display().to_string();
    let plan = [
        "plan",
        &route,
        &zones,
        "--party",
        "3",
        "--terrain",
        "dem.tif",
        "--format",
        "json",
    ];
    let planned = schrund(folder.path(), &plan);
    let plan: Value = serde_json::from_slice(&planned.stdout).expect("a plan");
    let listed = plan["assumptions"].as_array().unwrap();
    let model = listed
        .iter()
        .find(|one| one["name"] == "terrain.1")
        .expect("listed");
    assert_eq!(model["standing"], format!("the leader's word ({credit})"));
    assert!(
        !plan["route"]["ascent_m"].is_null(),
        "the heights reach along the line"
    );
}

#[test]
fn several_tiles_want_a_folder_before_anything_is_asked() {
    let server = Server::saying(ok(b""));
    let folder = tempdir().unwrap();
    let route = route();
    let from = server.at("/{NS}{lat}{EW}{lon}.tif");
    let args = [
        "fetch", "terrain", &route, "--from", &from, "-o", "dem.tif", "--around", "90000",
    ];
    let told = ends(&schrund(folder.path(), &args), 2);
    assert!(told.contains("name a folder: `-o dem`"), "{told}");
    assert_eq!(server.asked().len(), 0);
}

#[test]
fn a_page_takes_of_a_model_on_a_server_what_lies_round_its_line() {
    let large = Tiled {
        across: 16,
        down: 16,
        corner: (1.5, 66.9),
        cell_deg: 0.0002,
    };
    let server = Server::of_files(vec![("/dem.tif", large.write())]);
    let folder = tempdir().unwrap();
    let dir = root().join("examples/vordalen");
    let [route, zones] =
        ["route.gpx", "zones.geojson"].map(|name| dir.join(name).display().to_string());
    let from = server.at("/dem.tif?key=hunter2");
    let args = [
        "draw",
        &route,
        &zones,
        "--party",
        "3",
        "--terrain",
        &from,
        "-o",
        "draw.html",
    ];
    let told = ends(&schrund(folder.path(), &args), 0);
    let page = fs::read_to_string(folder.path().join("draw.html")).unwrap();
    assert!(
        page.contains("dem.tif") && !page.contains("hunter2"),
        "{told}"
    );
    let all = large.write().len() as u64;
    assert!(server.sent() < all / 4, "{} of {all}", server.sent());
}

#[test]
fn the_examples_of_the_help_are_calls_that_the_program_takes() {
    let dir = root().join("examples/vordalen");
    let help = text(&schrund(&dir, &["fetch", "--help"]).stdout);
    let (_, after) = help
        .split_once("\nExamples:\n")
        .expect("examples at the end");
    let calls = after
        .lines()
        .filter_map(|line| line.strip_prefix("  schrund "));
    let calls: Vec<&str> = calls.collect();
    assert!((2..=4).contains(&calls.len()), "{help}");
    for call in calls {
        // Whether the servers are there nobody knows; that they would be asked is told.
        let args: Vec<&str> = call.split(' ').chain(["--offline"]).collect();
        let told = ends(&schrund(&dir, &args), 6);
        assert!(
            told.contains("nothing is kept of this address"),
            "{call}: {told}"
        );
        let args = [&args[..2], &["--help"]].concat();
        assert!(text(&schrund(&dir, &args).stdout).contains(call), "{call}");
    }
    for name in ["zones.geojson", "ice.geojson", "terrain"] {
        let left = dir.join(name).exists() && name != "zones.geojson";
        assert!(!left, "{name} was written");
    }
}
