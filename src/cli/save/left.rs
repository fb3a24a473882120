//! What a run left that was killed in the moment of showing: no system clears that up for it, so the next run does. What a run
//! still works on is held by it.

use std::{
    ffi::OsStr,
    fs::{self, DirEntry, File},
    io,
    path::Path,
};

use super::hidden::{DRAWN, HIDDEN};

/// Tells other runs that this one works on it. Where a disk knows no such thing nothing is told, and nothing is cleared there.
pub(super) fn hold(file: &File) {
    let _ = file.try_lock();
}

/// Holds a folder as long as what comes of it is there.
pub(super) fn held(folder: &Path) -> io::Result<File> {
    let file = File::open(folder)?;
    hold(&file);
    Ok(file)
}

/// Takes away what runs left in a folder that are no more.
pub(super) fn clear_in(folder: &Path, set: &[&str]) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    for entry in entries.flatten() {
        let path = entry.path();
        if !is_ours(&entry) || !File::open(&path).is_ok_and(|file| file.try_lock().is_ok()) {
            continue;
        }
        // What cannot be taken away stays where it is and harms nobody.
        let _ = match path.is_dir() {
            true => clear(&path, set),
            false => fs::remove_file(&path),
        };
    }
}

/// Whether something has a name that runs give: links and pipes are none of theirs.
fn is_ours(entry: &DirEntry) -> bool {
    let name = entry.file_name();
    let drawn = name.to_str().and_then(|name| name.strip_prefix(HIDDEN));
    drawn.is_some_and(|drawn| {
        drawn.len() == DRAWN && drawn.bytes().all(|b| b.is_ascii_alphanumeric())
    }) && entry
        .file_type()
        .is_ok_and(|kind| kind.is_file() || kind.is_dir())
}

/// Takes a hidden folder away with the files of a set and with names of files that have another one too; it stays where it
/// holds anything else.
pub(super) fn clear(folder: &Path, set: &[&str]) -> io::Result<()> {
    for entry in fs::read_dir(folder)?.flatten() {
        let of_set = set.iter().any(|name| OsStr::new(name) == entry.file_name());
        if of_set || has_another_name(&entry.path()) {
            fs::remove_file(entry.path())?;
        }
    }
    fs::remove_dir(folder)
}

#[cfg(unix)]
fn has_another_name(path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    path.symlink_metadata().is_ok_and(|known| known.nlink() > 1)
}

#[cfg(not(unix))]
fn has_another_name(_: &Path) -> bool {
    false
}
