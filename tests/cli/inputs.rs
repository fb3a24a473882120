//! Inputs are never written over, whichever way they are named: by a flag, in a trip file, by a link, through a folder.
#![cfg(unix)]

use std::{fs, os::unix::fs::symlink, path::Path};

use crate::fixture::program::{root, schrund, text};

/// The example with a practice set and an inventory of its own, and links to them.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    let example = root().join("examples/vordalen");
    for name in ["route.gpx", "zones.geojson", "terrain.tif"] {
        fs::copy(example.join(name), at(name)).unwrap();
    }
    fs::copy(example.join("zones.geojson"), at("ice.geojson")).unwrap();
    let practice = schrund(folder.path(), &["practice", "arm-span", "--toml"]);
    fs::write(at("ours.toml"), practice.stdout).unwrap();
    let trip = fs::read_to_string(example.join("trip.toml")).unwrap();
    let named = "practice = \"ours.toml\"\nglaciers = \"ice.geojson\"\n";
    fs::write(at("trip.toml"), format!("{named}{trip}")).unwrap();
    symlink("terrain.tif", at("link.tif")).unwrap();
    symlink(".", at("here")).unwrap();
    folder
}

fn kept(folder: &Path) -> Vec<Vec<u8>> {
    let names = [
        "route.gpx",
        "zones.geojson",
        "trip.toml",
        "terrain.tif",
        "ice.geojson",
        "ours.toml",
    ];
    names
        .map(|name| fs::read(folder.join(name)).unwrap())
        .to_vec()
}

#[test]
fn no_input_is_written_over_wherever_it_was_named() {
    let folder = folder();
    let before = kept(folder.path());
    let trip = [
        "route.gpx",
        "zones.geojson",
        "--trip",
        "trip.toml",
        "--force",
        "-o",
    ];
    let names = [
        "route.gpx",
        "./zones.geojson",
        "trip.toml",
        "terrain.tif",
        "link.tif",
        "here/terrain.tif",
        "./here/./ice.geojson",
        "ours.toml",
    ];
    for name in names {
        for first in [
            &["plan", "--format", "csv"][..],
            &["options", "--format", "json"],
        ] {
            let refused = schrund(folder.path(), &[first, &trip, &[name]].concat());
            let told = text(&refused.stderr);
            assert_eq!(refused.status.code(), Some(4), "{name}: {told}");
            assert!(told.starts_with("error[would-overwrite]"), "{name}: {told}");
        }
    }
    assert_eq!(kept(folder.path()), before);
}

#[test]
fn no_input_is_written_over_by_a_set() {
    let folder = folder();
    fs::create_dir(folder.path().join("set")).unwrap();
    let own = folder.path().join("set/plan.json");
    fs::rename(folder.path().join("ice.geojson"), &own).unwrap();
    let before = fs::read(&own).unwrap();
    let args = [
        "plan",
        "route.gpx",
        "zones.geojson",
        "--party",
        "3",
        "--glaciers",
        "here/set/plan.json",
        "--out",
        "set",
        "--force",
    ];
    let refused = schrund(folder.path(), &args);
    let told = text(&refused.stderr);
    assert_eq!(refused.status.code(), Some(4), "{told}");
    assert!(
        told.starts_with("error[would-overwrite]: set/plan.json"),
        "{told}"
    );
    assert_eq!(fs::read(&own).unwrap(), before);
    let there: Vec<_> = fs::read_dir(folder.path().join("set")).unwrap().collect();
    assert_eq!(there.len(), 1, "{there:?}");
}
