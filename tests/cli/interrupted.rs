//! What is seen of a set or a file that could not be written to its end: nothing of it, and nothing beside it.
#![cfg(unix)]

use std::{
    collections::BTreeMap,
    fs,
    os::unix::fs::{MetadataExt, PermissionsExt},
    path::Path,
    process::{Command, Output, Stdio},
    thread,
    time::{Duration, Instant},
};

use crate::fixture::program::{command, folder, folder_of_example, schrund, text};

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

/// How often runs are killed over an old set, and from nothing: as many as do not make the suite wait for long.
const KILLS: [u32; 2] = [200, 36];

/// A run that is killed near its end by signals that can be heard and by one that cannot.
struct Killed<'f> {
    folder: &'f Path,
    /// How long a whole run takes now: a first one on a busy machine says too much.
    took: Duration,
}

impl<'f> Killed<'f> {
    fn whole(folder: &'f Path, args: &[&str]) -> Self {
        let begun = Instant::now();
        let whole = schrund(folder, args);
        assert_eq!(whole.status.code(), Some(0), "{}", text(&whole.stderr));
        let took = begun.elapsed();
        Self { folder, took }
    }

    /// The signal that it was killed by after this share of its time.
    fn run(&mut self, args: &[&str], kill: u32, share: f64) -> &'static str {
        let mut program = command(self.folder, args);
        let silent = program.stdout(Stdio::null()).stderr(Stdio::null());
        let mut child = silent.spawn().unwrap();
        let (begun, moment) = (Instant::now(), self.took.mul_f64(share));
        while begun.elapsed() < moment {
            if child.try_wait().unwrap().is_some() {
                self.took = begun.elapsed();
                break;
            }
            thread::sleep(Duration::from_micros(200));
        }
        let signal = ["-KILL", "-INT", "-TERM"][kill as usize % 3];
        // What every shell can do; the program of that name is missing on small systems.
        let mut call = Command::new("sh");
        call.args(["-c", &format!("kill {signal} {}", child.id())]);
        call.stderr(Stdio::null()).status().unwrap();
        child.wait().unwrap();
        signal
    }

    /// What lies there and did not before: a run that was killed may have left something, and the next one was ended before it
    /// cleared that up.
    fn left_since(&self, before: &[String]) -> Vec<String> {
        let mut left = self.litter();
        left.retain(|name| !before.contains(name));
        left
    }

    /// What lies beside the inputs and the set.
    fn litter(&self) -> Vec<String> {
        let own = ["route.gpx", "zones.geojson", "set"];
        let names = held(self.folder).into_keys();
        names.filter(|name| !own.contains(&name.as_str())).collect()
    }
}

#[test]
fn a_set_that_is_interrupted_is_there_as_a_whole_or_not_at_all() {
    let folder = folder();
    let set = folder.path().join("set");
    let mut killed = Killed::whole(folder.path(), &PLAN);
    let names: Vec<String> = held(&set).into_keys().collect();
    let (mut none, mut all) = (0, 0);
    for kill in 0..KILLS[1] {
        fs::remove_dir_all(&set).ok();
        let share = 0.6 + 0.6 * (f64::from(kill) + 0.5) / f64::from(KILLS[1]);
        let before = killed.litter();
        let signal = killed.run(&PLAN, kill, share);
        let there: Vec<String> = held(&set).into_keys().collect();
        assert!(there.is_empty() || there == names, "{signal}: {there:?}");
        none += u32::from(there.is_empty());
        all += u32::from(there == names);
        // In the millisecond of the change nobody is left to clear up behind the first.
        let left = killed.left_since(&before);
        assert!(signal == "-KILL" || left.is_empty(), "{signal}: {left:?}");
    }
    assert!(none > 0 && all > 0, "{none} with nothing, {all} whole");
    Killed::whole(folder.path(), &PLAN);
    assert_eq!(killed.litter(), [""; 0], "the next run clears up");
}

/// A plan for three and one for four, in turn over each other.
#[test]
fn an_old_set_stays_until_the_new_one_is_there_as_a_whole() {
    let folder = folder_of_example();
    let set = folder.path().join("set");
    let calls = ["3", "4"].map(|people| [&PLAN[..4], &[people], &PLAN[5..]].concat());
    let sets = calls.each_ref().map(|call| {
        Killed::whole(folder.path(), call);
        held(&set)
    });
    assert!(sets[0] != sets[1] && sets[0].len() == sets[1].len());
    let mut killed = Killed::whole(folder.path(), &calls[1]);
    let mut seen = [0; 2];
    for kill in 0..KILLS[0] {
        let old = usize::from(held(&set) == sets[1]);
        let share = 0.7 + 0.4 * (f64::from(kill) + 0.5) / f64::from(KILLS[0]);
        let before = killed.litter();
        let signal = killed.run(&calls[1 - old], kill, share);
        let now = held(&set);
        let which = sets.iter().position(|set| *set == now);
        let which =
            which.unwrap_or_else(|| panic!("{signal}, kill {kill}: a mixture of old and new"));
        seen[usize::from(which != old)] += 1;
        let left = killed.left_since(&before);
        assert!(signal == "-KILL" || left.is_empty(), "{signal}: {left:?}");
    }
    assert!(seen[0] > 0 && seen[1] > 0, "{seen:?}: old and new sets");
    Killed::whole(folder.path(), &calls[0]);
    assert_eq!(killed.litter(), [""; 0], "the next run clears up");
}

#[test]
fn what_lies_beside_a_set_in_its_folder_stays() {
    let folder = folder_of_example();
    let set = folder.path().join("set");
    Killed::whole(folder.path(), &PLAN);
    fs::write(set.join("notes.txt"), "the leader's own").unwrap();
    std::os::unix::fs::symlink("nowhere", set.join("link")).unwrap();
    fs::set_permissions(&set, fs::Permissions::from_mode(0o750)).unwrap();
    for within in [false, true] {
        if within {
            fs::create_dir(set.join("photos")).unwrap();
            fs::write(set.join("photos/ice.jpg"), "a picture").unwrap();
        }
        Killed::whole(folder.path(), &PLAN);
        assert_eq!(
            fs::read_to_string(set.join("notes.txt")).unwrap(),
            "the leader's own"
        );
        assert!(set.join("link").symlink_metadata().is_ok() || within);
        assert_eq!(set.join("photos/ice.jpg").exists(), within);
        assert_eq!(
            fs::metadata(&set).unwrap().permissions().mode() & 0o777,
            0o750
        );
        let beside: Vec<String> = held(folder.path()).into_keys().collect();
        assert_eq!(beside, ["route.gpx", "set", "zones.geojson"]);
    }
    assert_eq!(
        held(&set)
            .keys()
            .filter(|name| name.starts_with('.'))
            .count(),
        0
    );
}

/// Whoever stands in the folder of a set goes on standing in it.
#[test]
fn a_set_in_the_folder_one_stands_in_is_written_there() {
    let folder = folder_of_example();
    Killed::whole(folder.path(), &PLAN);
    let set = folder.path().join("set");
    let call = [
        "plan",
        "../route.gpx",
        "../zones.geojson",
        "--party",
        "4",
        "--force",
        "--out",
        ".",
    ];
    let before = fs::metadata(&set).unwrap().ino();
    let old = held(&set);
    assert_eq!(schrund(&set, &call).status.code(), Some(0));
    assert_eq!(fs::metadata(&set).unwrap().ino(), before);
    assert!(held(&set) != old && held(&set).len() == old.len());
}
