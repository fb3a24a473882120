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

/// Names of files are bytes; what is no UTF-8 is read, and shown as far as it is text.
#[cfg(target_os = "linux")]
mod odd {
    use std::{ffi::OsStr, os::unix::ffi::OsStrExt, path::PathBuf, process::Command};

    use super::*;

    const LINE: &[u8] = b"l\xefne.gpx";
    const ICE: &[u8] = b"\xff.geojson";
    const GROUND: &[u8] = b"t\xe4.tif";
    const PLAN: [&[u8]; 6] = [b"plan", LINE, ICE, b"--terrain", GROUND, b"--party=3"];

    struct Folder(tempfile::TempDir);

    impl Folder {
        /// The example under other names.
        fn new() -> Self {
            let folder = Self(tempfile::tempdir().unwrap());
            let example = root().join("examples/vordalen");
            let names = [
                ("route.gpx", LINE),
                ("zones.geojson", ICE),
                ("terrain.tif", GROUND),
            ];
            for (name, odd) in names {
                fs::copy(example.join(name), folder.at(odd)).unwrap();
            }
            folder
        }

        fn at(&self, name: &[u8]) -> PathBuf {
            self.0.path().join(OsStr::from_bytes(name))
        }

        /// How it ended, what it printed, what it told.
        fn run(&self, args: &[&[u8]]) -> (Option<i32>, String, String) {
            let mut program = Command::new(env!("CARGO_BIN_EXE_schrund"));
            let args = args.iter().map(|arg| OsStr::from_bytes(arg));
            let out = program
                .current_dir(self.0.path())
                .args(args)
                .output()
                .unwrap();
            (out.status.code(), text(&out.stdout), text(&out.stderr))
        }
    }

    #[test]
    fn names_that_are_no_text_are_read_and_written() {
        let folder = Folder::new();
        let (end, _, told) = folder.run(&[&PLAN[..], &[b"--out", b"s\xe9t"]].concat());
        assert_eq!(end, Some(0), "{told}");
        assert!(told.contains("wrote s\u{fffd}t/report.html\n"), "{told}");
        assert!(folder.at(b"s\xe9t").join("report.html").is_file());
        let (end, printed, told) = folder.run(&[&PLAN[..], &[b"--format=json"]].concat());
        assert_eq!(end, Some(0), "{told}");
        assert!(printed.contains("\"t\u{fffd}.tif\""), "the model is named");
    }

    #[test]
    fn such_an_input_is_never_written_over() {
        let folder = Folder::new();
        let before = fs::read(folder.at(LINE)).unwrap();
        let over: [&[u8]; 4] = [b"--format=gpx", b"--force", b"-o", LINE];
        let (end, _, told) = folder.run(&[&PLAN[..], &over].concat());
        assert_eq!(end, Some(4), "{told}");
        let says = "error[would-overwrite]: l\u{fffd}ne.gpx is an input and is never written over";
        assert!(told.contains(says), "{told}");
        assert_eq!(fs::read(folder.at(LINE)).unwrap(), before);
        let (end, _, told) = folder.run(&[b"zone", LINE, b"1-2", b"--gap=3", b"--into", ICE]);
        assert_eq!(end, Some(0), "{told}");
        assert!(
            told.contains("\u{fffd}.geojson holds 9 zones now"),
            "{told}"
        );
    }

    #[test]
    fn tracks_and_folders_of_such_names_are_surveyed() {
        let folder = Folder::new();
        fs::create_dir(folder.at(b"f\xf6")).unwrap();
        fs::copy(
            folder.at(LINE),
            folder.at(b"f\xf6").join(OsStr::from_bytes(LINE)),
        )
        .unwrap();
        let tracks: [&[u8]; 6] = [b"survey", LINE, b"f\xf6", b"--zones", ICE, b"--party=3"];
        let (end, printed, told) = folder.run(&tracks);
        assert_eq!(end, Some(0), "{told}");
        let lines: Vec<&str> = printed.lines().skip(1).collect();
        let named = ["l\u{fffd}ne.gpx,", "f\u{fffd}/l\u{fffd}ne.gpx,"];
        assert!(
            lines
                .iter()
                .zip(named)
                .all(|(line, name)| line.starts_with(name)),
            "{printed}"
        );
        assert_eq!(lines.len(), 2);
    }

    #[test]
    fn one_that_is_missing_is_told() {
        let (end, _, told) = Folder::new().run(&[b"check", b"n\xefx.gpx", ICE]);
        assert_eq!(end, Some(3), "{told}");
        assert!(
            told.contains("cannot read n\u{fffd}x.gpx: there is no such file"),
            "{told}"
        );
    }
}

/// What a trip file names lies beside it, wherever the call is made; an embedded set is none of its files.
#[test]
fn a_practice_file_of_a_trip_file_lies_beside_it() {
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    fs::create_dir(at("tour")).unwrap();
    let set = schrund(folder.path(), &["practice", "club-coils", "--toml"]);
    fs::write(at("tour/mine.toml"), &set.stdout).unwrap();
    fs::write(at("tour/mine"), &set.stdout).unwrap();
    let plan = |practice: &str, call: &[&str]| {
        fs::write(
            at("tour/trip.toml"),
            format!("{PEOPLE}practice = \"{practice}\"\n"),
        )
        .unwrap();
        let args = [
            "plan",
            "route.gpx",
            "zones.geojson",
            "--trip",
            "tour/trip.toml",
            "--format",
            "csv",
        ];
        schrund(folder.path(), &[&args[..], call].concat())
    };
    let embedded = plan("club-coils", &[]);
    assert!(
        matches!(embedded.status.code(), Some(0 | 5)),
        "{}",
        text(&embedded.stderr)
    );
    assert_ne!(plan("arm-span", &[]).stdout, embedded.stdout);
    for name in ["mine.toml", "./mine.toml", "mine"] {
        assert_eq!(plan(name, &[]).stdout, embedded.stdout, "{name}");
    }
    let flag = plan("arm-span", &["--practice", "tour/mine.toml"]);
    assert_eq!(
        flag.stdout, embedded.stdout,
        "a flag is of the folder of the call"
    );
    let none = plan("other.toml", &[]);
    assert_eq!(none.status.code(), Some(3));
    assert!(
        text(&none.stderr).contains("tour/other.toml"),
        "{}",
        text(&none.stderr)
    );
    let set = plan("no-such-set", &[]);
    assert_eq!(set.status.code(), Some(4), "{}", text(&set.stderr));
    let over = plan("mine.toml", &["-o", "tour/mine.toml", "--force"]);
    assert!(
        text(&over.stderr).contains("error[would-overwrite]"),
        "{}",
        text(&over.stderr)
    );
}

const PEOPLE: &str = "party = [{ name = \"Ane\", mass_kg = 80 }, { name = \"Bo\", mass_kg = 75 }]\nrope = [{ name = \"blue\", length_m = 60 }]\n";
