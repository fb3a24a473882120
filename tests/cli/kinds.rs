//! What is written where no plain file is: devices, pipes and links; and who may read what is written.
#![cfg(unix)]

use std::{
    fs,
    os::unix::fs::{FileTypeExt, PermissionsExt, symlink},
    path::Path,
    process::Command,
    thread,
};

use crate::fixture::program::{command, folder, schrund, text};

fn plan<'a>(more: &[&'a str]) -> Vec<&'a str> {
    let plan = [
        "plan",
        "route.gpx",
        "zones.geojson",
        "--party",
        "3",
        "--format",
        "csv",
    ];
    [&plan[..], more].concat()
}

fn mode(path: &Path) -> u32 {
    fs::metadata(path).unwrap().permissions().mode() & 0o777
}

#[test]
fn a_pipe_is_written_into_and_stays_one() {
    let folder = folder();
    let pipe = folder.path().join("pipe.csv");
    assert!(
        Command::new("mkfifo")
            .arg(&pipe)
            .status()
            .unwrap()
            .success()
    );
    for more in [&["-o", "pipe.csv"][..], &["-o", "pipe.csv", "--force"]] {
        let reader = {
            let pipe = pipe.clone();
            thread::spawn(move || fs::read_to_string(pipe).unwrap())
        };
        let out = schrund(folder.path(), &plan(more));
        // Somebody who waits for a writer that never comes would wait for ever.
        assert!(
            fs::metadata(&pipe).unwrap().file_type().is_fifo(),
            "{more:?}"
        );
        assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
        assert!(reader.join().unwrap().starts_with("leg,"), "{more:?}");
    }
}

#[test]
fn a_device_is_written_into_and_stays_one() {
    let folder = folder();
    let out = schrund(folder.path(), &plan(&["-o", "/dev/null"]));
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    // What would destroy it is tried on one of our own, which only the superuser can make.
    let device = folder.path().join("null.csv");
    let made = Command::new("mknod")
        .arg(&device)
        .args(["c", "1", "3"])
        .output();
    if made.is_ok_and(|made| made.status.success()) {
        let out = schrund(folder.path(), &plan(&["-o", "null.csv", "--force"]));
        assert!(
            matches!(out.status.code(), Some(0 | 1)),
            "{}",
            text(&out.stderr)
        );
        assert!(fs::metadata(&device).unwrap().file_type().is_char_device());
    }
    let out = schrund(folder.path(), &plan(&["-o", "/dev/stdout"]));
    assert!(
        text(&out.stdout).starts_with("leg,"),
        "{}",
        text(&out.stderr)
    );
}

/// Also where it is a file: what stands in it already stays before what is written.
#[test]
fn the_output_of_the_shell_is_written_behind_what_stands_there() {
    let folder = folder();
    let file = folder.path().join("all.csv");
    fs::write(&file, "before\n").unwrap();
    let appended = fs::OpenOptions::new().append(true).open(&file).unwrap();
    let mut call = command(folder.path(), &plan(&["-o", "/dev/stdout", "--force"]));
    assert!(call.stdout(appended).status().unwrap().success());
    let held = fs::read_to_string(&file).unwrap();
    assert!(held.starts_with("before\nleg,"), "{held}");
    assert!(
        Path::new("/dev/stdout")
            .symlink_metadata()
            .unwrap()
            .is_symlink()
    );
}

#[test]
fn a_link_stays_one_and_the_file_keeps_its_mode() {
    let folder = folder();
    let (file, link) = (
        folder.path().join("real.csv"),
        folder.path().join("link.csv"),
    );
    fs::write(&file, "old").unwrap();
    fs::set_permissions(&file, fs::Permissions::from_mode(0o604)).unwrap();
    symlink("real.csv", &link).unwrap();
    let refused = schrund(folder.path(), &plan(&["-o", "link.csv"]));
    assert_eq!(refused.status.code(), Some(4), "{}", text(&refused.stderr));
    let out = schrund(folder.path(), &plan(&["-o", "link.csv", "--force"]));
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    assert!(link.symlink_metadata().unwrap().is_symlink());
    assert!(fs::read_to_string(&file).unwrap().starts_with("leg,"));
    assert_eq!(mode(&file), 0o604);
}

#[test]
fn who_may_read_a_new_file_is_what_the_mask_leaves() {
    let folder = folder();
    for (mask, want) in [("022", 0o644), ("027", 0o640), ("077", 0o600)] {
        let name = format!("mask-{mask}.csv");
        let call = format!("umask {mask} && exec \"$@\"");
        let program = env!("CARGO_BIN_EXE_schrund");
        let args = plan(&["-o", &name]);
        let mut shell = Command::new("sh");
        shell
            .current_dir(folder.path())
            .args(["-c", &call, "sh", program])
            .args(args);
        assert!(shell.env("SCHRUND_CACHE", "").status().unwrap().success());
        assert_eq!(mode(&folder.path().join(&name)), want, "{mask}");
    }
}

#[test]
fn a_folder_is_no_name_for_a_file() {
    let folder = folder();
    for force in [&[][..], &["--force"]] {
        let refused = schrund(folder.path(), &plan(&[&["-o", "."][..], force].concat()));
        assert_eq!(refused.status.code(), Some(4));
        let told = text(&refused.stderr);
        assert!(
            told.contains(". is a folder") && told.contains("`--output ./plan.txt`"),
            "{told}"
        );
    }
}
