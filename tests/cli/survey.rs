//! `schrund survey`: many tracks against one set of outlines.

use std::{
    fs,
    path::{Path, PathBuf},
    process::Output,
};

use serde_json::Value;
use tempfile::{TempDir, tempdir};

use crate::fixture::{
    close,
    program::{root, schrund, text},
};

/// The example in a folder of its own, its track three times: as it is, beside all ice, and broken.
fn archive() -> (TempDir, PathBuf) {
    let folder = tempdir().expect("a folder");
    let inside = folder.path().to_owned();
    for name in ["zones.geojson", "trip.toml", "terrain.tif"] {
        let from = root().join("examples/vordalen").join(name);
        fs::copy(from, inside.join(name)).expect("a copy");
    }
    let track = fs::read_to_string(root().join("examples/vordalen/route.gpx")).expect("the track");
    fs::create_dir(inside.join("tracks")).expect("a folder");
    let write = |name: &str, text: &str| {
        fs::write(inside.join("tracks").join(name), text).expect("written")
    };
    write("a.gpx", &track);
    write("b.gpx", &track[..track.len() / 2]);
    write("c.gpx", &track.replace("lat=\"66.", "lat=\"67."));
    write("notes.txt", "no track");
    (folder, inside)
}

fn ask(folder: &Path, call: &str) -> Output {
    schrund(folder, &call.split_whitespace().collect::<Vec<_>>())
}

const TO_ALL: &str = "survey tracks --zones zones.geojson --trip trip.toml";

fn lines(ran: &Output) -> Vec<Value> {
    let line = |line: &str| serde_json::from_str(line).expect("an object a line");
    text(&ran.stdout).lines().map(line).collect()
}

#[test]
fn a_line_has_the_figures_of_the_plan() {
    let (_whole, folder) = archive();
    let plan = ask(
        &folder,
        "plan tracks/a.gpx zones.geojson --trip trip.toml --format json",
    );
    let plan: Value = serde_json::from_slice(&plan.stdout).expect("a plan");
    let [line] = &lines(&ask(
        &folder,
        "survey tracks/a.gpx --zones zones.geojson --trip trip.toml --format jsonl",
    ))[..] else {
        panic!("one line");
    };
    for name in ["length_m", "ascent_m", "descent_m"] {
        let [here, there] =
            [&line[name], &plan["route"][name]].map(|v| v.as_f64().expect("a number"));
        close(name, here, there, 0.5);
    }
    let legs = plan["legs"].as_array().expect("legs");
    let roped: Vec<&Value> = legs.iter().filter(|leg| leg["roped"] == true).collect();
    assert_eq!(line["legs_roped"], roped.len());
    let most = |name: &str| {
        roped
            .iter()
            .filter_map(|leg| leg[name].as_f64())
            .fold(0.0, f64::max)
    };
    close(
        "gap",
        line["widest_gap_m"].as_f64().unwrap(),
        most("gap_m"),
        1e-9,
    );
    close(
        "steepest",
        line["steepest_roped_deg"].as_f64().unwrap(),
        most("steepest_deg"),
        1e-3,
    );
    assert_eq!(line["verdict"], "look");
    // No two zones of the example overlap on the line.
    let crossings = plan["zones"]
        .as_array()
        .expect("zones")
        .iter()
        .flat_map(|z| z["crossings"].as_array().expect("crossings"));
    let ice_m: f64 = crossings
        .map(|c| c["exit_m"].as_f64().unwrap() - c["enter_m"].as_f64().unwrap())
        .sum();
    close("ice", line["ice_m"].as_f64().unwrap(), ice_m, 0.01);
    let along: bool = legs.iter().any(|leg| leg["along"] == true);
    assert_eq!(line["along_m"].as_f64().unwrap() > 0.0, along, "{line}");
    let hidden_m = line["hidden_ice_m"].as_f64().unwrap();
    assert!(
        hidden_m > 0.0 && hidden_m < ice_m,
        "one zone is bare: {line}"
    );
}

#[test]
fn a_bad_track_costs_its_line_and_no_more() {
    let (_whole, folder) = archive();
    let ran = ask(&folder, &format!("{TO_ALL} --format jsonl"));
    assert_eq!(ran.status.code(), Some(4), "a track was wrong");
    let all = lines(&ran);
    let [a, b, c] = &all[..] else {
        panic!("three tracks: {all:?}")
    };
    assert_eq!(a["verdict"], "look");
    let error = b["error"].as_str().expect("what is wrong");
    let told = text(&ran.stderr);
    let of_b: Vec<&str> = told.lines().filter(|line| line.contains("b.gpx")).collect();
    assert_eq!(
        of_b,
        [format!("error: tracks/b.gpx: {error}")],
        "one line: {told}"
    );
    // A track beside all ice is an answer.
    assert_eq!(
        (&c["ice_m"], &c["legs_roped"], &c["verdict"]),
        (&0.0.into(), &0.into(), &"unroped".into())
    );
    assert!(c["length_m"].as_f64().is_some_and(|m| m > 16_000.0), "{c}");
}

#[test]
fn one_that_was_interrupted_goes_on_to_the_same_bytes() {
    let (_whole, folder) = archive();
    for name in ["all.csv", "all.jsonl"] {
        let call = format!("{TO_ALL} --out {name}");
        assert_eq!(ask(&folder, &call).status.code(), Some(4));
        let path = folder.join(name);
        let whole = fs::read(&path).expect("written");
        let again = ask(&folder, &call);
        assert!(
            text(&again.stderr).contains("`--resume`"),
            "{}",
            text(&again.stderr)
        );
        assert!(
            fs::read(&path).expect("there") == whole,
            "a file that is there is not replaced"
        );
        for cut in [
            0,
            10,
            whole.len() / 3,
            whole.len() - 40,
            whole.len() - 1,
            whole.len(),
        ] {
            fs::write(&path, &whole[..cut]).expect("cut");
            let ran = ask(&folder, &format!("{call} --resume"));
            assert!(
                matches!(ran.status.code(), Some(0 | 4)),
                "{}",
                text(&ran.stderr)
            );
            assert!(
                fs::read(&path).expect("written") == whole,
                "{name} cut at {cut}"
            );
        }
        fs::write(&path, "name,height\nhut,3000\n").expect("another file");
        let ran = ask(&folder, &format!("{call} --resume"));
        assert_eq!(ran.status.code(), Some(2), "{}", text(&ran.stderr));
        assert_eq!(
            fs::read(&path).expect("there"),
            b"name,height\nhut,3000\n",
            "not touched"
        );
        assert_eq!(
            ask(&folder, &format!("{call} --force")).status.code(),
            Some(4)
        );
        assert!(fs::read(&path).expect("written") == whole, "anew");
    }
    let input = ask(
        &folder,
        "survey tracks/a.gpx --zones zones.geojson --trip trip.toml --out tracks/a.gpx --force",
    );
    assert_ne!(input.status.code(), Some(0), "an input is never replaced");
}

#[test]
fn lines_of_one_trip_stand_side_by_side() {
    let (_whole, folder) = archive();
    let track = fs::read_to_string(folder.join("tracks/a.gpx")).expect("the track");
    // The other line leaves the first one by some hundred metres in its middle third.
    let points = track.matches("<trkpt").count();
    let mut seen = 0;
    let other: Vec<String> = track
        .split_inclusive("<trkpt")
        .map(|piece| {
            let moved = seen > points / 3 && seen < 2 * points / 3;
            seen += 1;
            if moved {
                piece.replacen("lat=\"66.5", "lat=\"66.50", 1)
            } else {
                piece.to_owned()
            }
        })
        .collect();
    fs::write(folder.join("other.gpx"), other.concat()).expect("written");
    let ran = ask(
        &folder,
        "survey tracks/a.gpx other.gpx --zones zones.geojson --trip trip.toml --compare",
    );
    let says = text(&ran.stdout);
    assert_eq!(ran.status.code(), Some(0), "{}", text(&ran.stderr));
    assert!(says.contains("Least on hidden gaps: line "), "{says}");
    assert!(
        says.contains("Where they go different ways, more than 50 m apart:\n  line 1: "),
        "{says}"
    );
    let same = ask(
        &folder,
        "survey tracks/a.gpx tracks/a.gpx --zones zones.geojson --trip trip.toml --compare --lang de",
    );
    assert!(
        text(&same.stdout).contains("Sie gehen überall denselben Weg"),
        "{}",
        text(&same.stdout)
    );
    let one = ask(
        &folder,
        "survey tracks/a.gpx --zones zones.geojson --trip trip.toml --compare",
    );
    assert_eq!(one.status.code(), Some(2), "two to five");
}
