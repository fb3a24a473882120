//! What is seen of a set or a file that could not be written to its end: nothing of it, and nothing beside it.
#![cfg(unix)]

use std::{
    collections::BTreeMap,
    fs,
    path::Path,
    process::{Command, Output, Stdio},
    thread,
    time::{Duration, Instant},
};

use crate::fixture::program::{folder, schrund, text};

const PLAN: [&str; 8] = [
    "plan",
    "route.gpx",
    "zones.geojson",
    "--party",
    "3",
    "--force",
    "--out",
    "set",
];

/// As many as do not make the suite wait for long.
const KILLS: u32 = 36;

/// All that a folder holds, by name.
fn held(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let Ok(files) = fs::read_dir(folder) else {
        return BTreeMap::new();
    };
    let files = files.map(|file| file.unwrap());
    let file = |file: fs::DirEntry| {
        let name = file.file_name().into_string().unwrap();
        (name, fs::read(file.path()).unwrap_or_default())
    };
    files.map(file).collect()
}

/// The program where no file may grow beyond so many kilobytes, as on a disk that is full.
fn on_a_full_disk(folder: &Path, kilobytes: u32, args: &[&str]) -> Output {
    let call = format!("trap '' XFSZ; ulimit -f {}; exec \"$@\"", 2 * kilobytes);
    let program = env!("CARGO_BIN_EXE_schrund");
    let mut shell = Command::new("sh");
    shell
        .current_dir(folder)
        .args(["-c", &call, "sh", program])
        .args(args);
    shell.env("SCHRUND_CACHE", "").output().unwrap()
}

#[test]
fn on_a_full_disk_the_old_set_stays_and_nothing_beside_it() {
    let folder = folder();
    for old in [false, true] {
        if old {
            let out = schrund(folder.path(), &PLAN);
            assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
        }
        let set = folder.path().join("set");
        let (before, around) = (held(&set), held(folder.path()));
        for kilobytes in [0, 4, 64, 512] {
            let full = on_a_full_disk(folder.path(), kilobytes, &PLAN);
            let told = text(&full.stderr);
            assert_eq!(full.status.code(), Some(1), "{kilobytes} kB: {told}");
            let full = "there is no room for it";
            assert!(
                told.contains("error[unwritable]") && told.contains(full),
                "{told}"
            );
            assert_eq!(held(&set), before, "{kilobytes} kB");
            assert_eq!(
                held(folder.path()).keys().collect::<Vec<_>>(),
                around.keys().collect::<Vec<_>>()
            );
        }
    }
}

#[test]
fn on_a_full_disk_the_old_file_stays() {
    let folder = folder();
    let file = folder.path().join("plan.json");
    fs::write(&file, "old").unwrap();
    let around = held(folder.path());
    let args = [&PLAN[..6], &["-o", "plan.json"]].concat();
    let full = on_a_full_disk(folder.path(), 4, &args);
    assert_eq!(full.status.code(), Some(1), "{}", text(&full.stderr));
    assert_eq!(held(folder.path()), around);
}

/// Sets are interrupted at any moment, most of them near their end, by signals that can be heard and by one that cannot.
#[test]
fn a_set_that_is_interrupted_is_there_as_a_whole_or_not_at_all() {
    let folder = folder();
    let set = folder.path().join("set");
    let begun = Instant::now();
    let whole = schrund(folder.path(), &PLAN);
    let mut took = begun.elapsed();
    assert_eq!(whole.status.code(), Some(0), "{}", text(&whole.stderr));
    let names: Vec<String> = held(&set).into_keys().collect();
    let (mut none, mut all) = (0, 0);
    for kill in 0..KILLS {
        fs::remove_dir_all(&set).ok();
        let mut program = Command::new(env!("CARGO_BIN_EXE_schrund"));
        program
            .current_dir(folder.path())
            .args(PLAN)
            .env("SCHRUND_CACHE", "");
        let mut child = program
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let share = (f64::from(kill) + 0.5) / f64::from(KILLS);
        // A run that ends before its moment tells how long one takes now: a first one on a busy machine says too much.
        let (begun, moment) = (Instant::now(), took.mul_f64(0.6 + 0.6 * share));
        while begun.elapsed() < moment {
            if child.try_wait().unwrap().is_some() {
                took = begun.elapsed();
                break;
            }
            thread::sleep(Duration::from_millis(1));
        }
        let signal = ["-KILL", "-INT", "-TERM"][kill as usize % 3];
        let id = child.id().to_string();
        Command::new("kill")
            .args([signal, &id])
            .stderr(Stdio::null())
            .status()
            .unwrap();
        child.wait().unwrap();
        let there: Vec<String> = held(&set).into_keys().collect();
        assert!(there.is_empty() || there == names, "{signal}: {there:?}");
        none += u32::from(there.is_empty());
        all += u32::from(there == names);
        if signal == "-KILL" {
            // In the millisecond of the change nobody is left to clear up.
            clear_hidden(folder.path());
        }
        let around: Vec<String> = held(folder.path())
            .into_keys()
            .filter(|name| name != "set")
            .collect();
        assert_eq!(around, ["route.gpx", "zones.geojson"], "{signal}");
    }
    assert!(none > 0 && all > 0, "{none} with nothing, {all} whole");
}

fn clear_hidden(folder: &Path) {
    let hidden = held(folder)
        .into_keys()
        .filter(|name| name.starts_with(".schrund-"));
    for name in hidden {
        fs::remove_dir_all(folder.join(name)).unwrap();
    }
}
