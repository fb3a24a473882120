//! User, password, query and fragment of an address are told to its server and to nobody else.

use std::{
    fs,
    path::{Path, PathBuf},
};

use crate::fixture::{
    program::{command, root, schrund, text},
    server::{Server, answer},
};

/// The same address with a secret in every part that can hold one.
fn with_secrets(address: &str) -> String {
    let inside = address.replace("http://", "http://hunter2:hunter3@");
    format!("{inside}?key=hunter4#hunter5")
}

fn is_told(text: &str) -> bool {
    ["hunter2", "hunter3", "hunter4", "hunter5"]
        .iter()
        .any(|secret| text.contains(secret))
}

#[test]
fn no_secret_is_told_whatever_is_wrong() {
    let dir = root().join("examples/vordalen");
    let server = Server::saying(answer("403 Forbidden", &[], b""));
    let secret = with_secrets(&server.at("/x"));
    for args in [
        vec!["plan", &secret, "zones.geojson", "--party", "3"],
        vec![
            "plan",
            "route.gpx",
            &secret,
            "--party",
            "3",
            "--terrain",
            &secret,
        ],
        vec!["plan", &secret, &secret, "--party", "0", "-v"],
        vec!["plan", &secret, "--party", "3"],
        vec!["plam", &secret],
        vec!["check", &secret],
        vec!["height", &secret, "--at", "8,46"],
        vec!["plan", "route.gpx", "zones.geojson", "--rope", &secret],
        vec!["fetch", "zones", "route.gpx", "--from", &secret],
        vec!["fetch", "zones", &secret, "--form", &secret],
    ] {
        let ran = schrund(&dir, &args);
        let told = text(&ran.stderr) + &text(&ran.stdout);
        assert_ne!(ran.status.code(), Some(0), "{args:?}");
        assert!(!is_told(&told), "{args:?}: {told}");
    }
}

/// Every file below a folder.
fn files(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path());
    entries
        .flat_map(|path| {
            if path.is_dir() {
                files(&path)
            } else {
                vec![path]
            }
        })
        .collect()
}

#[test]
fn no_secret_stands_in_an_output_or_beside_what_is_kept() {
    let example = root().join("examples/vordalen");
    let names = ["route.gpx", "zones.geojson", "terrain.tif"];
    let paths = ["/route.gpx", "/zones.geojson", "/terrain.tif"];
    let held = names.map(|name| fs::read(example.join(name)).unwrap());
    let server = Server::of_files(paths.into_iter().zip(held).collect());
    let [route, zones, terrain] = paths.map(|path| with_secrets(&server.at(path)));
    let folder = tempfile::tempdir().unwrap();
    let trip = format!(
        "terrain = [\"{terrain}\"]\nrope = [{{ name = \"blue\", length_m = 60 }}]\nparty = [{{ name = \"Ane\", mass_kg = 80 }}, {{ name = \"Bo\", mass_kg = 70 }}]\n"
    );
    fs::write(folder.path().join("trip.toml"), trip).unwrap();
    let inputs = [route.as_str(), &zones, "--trip", "trip.toml"];
    let calls = [
        [&["plan"], &inputs[..], &["--out", "set", "-v"]].concat(),
        [&["draw"], &inputs[..], &["-o", "draw.html", "-v"]].concat(),
        [
            &["options"],
            &inputs[..],
            &["--format", "json", "-o", "ways.json"],
        ]
        .concat(),
        vec![
            "survey",
            &route,
            "--zones",
            &zones,
            "--party",
            "3",
            "--out",
            "survey.csv",
        ],
        vec![
            "zone",
            &route,
            "1-2",
            "--gap",
            "4",
            "--into",
            "mine.geojson",
        ],
    ];
    for args in calls {
        let ran = command(folder.path(), &args)
            .env("SCHRUND_CACHE", folder.path().join("kept"))
            .output()
            .unwrap();
        let told = text(&ran.stderr) + &text(&ran.stdout);
        assert!(!is_told(&told), "{args:?}: {told}");
        assert!(matches!(ran.status.code(), Some(0 | 5)), "{args:?}: {told}");
    }
    let written = files(folder.path());
    assert!(written.len() > 14, "{written:?}");
    for path in written.iter().filter(|path| !path.ends_with("trip.toml")) {
        assert!(!is_told(&path.display().to_string()), "{path:?}");
        assert!(
            !is_told(&String::from_utf8_lossy(&fs::read(path).unwrap())),
            "{path:?}"
        );
    }
}
