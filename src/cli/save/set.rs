//! The files of a set are seen together. A folder takes the place of another at one moment where that can be done, so that whoever
//! looks sees the old set or the new one even where the run is killed.

use std::{
    fs::{self, File},
    io,
    path::{Path, PathBuf},
};

use tempfile::TempPath;

use super::{
    beside::Beside,
    hidden::{FOLDER, folder_of, hidden},
    left,
};

/// Shows files together, in a folder that is made with them.
pub(super) fn show_in_new(folder: &Path, files: Vec<(&str, Beside)>) -> io::Result<()> {
    let made = hidden(FOLDER).tempdir_in(folder_of(folder))?;
    let _held = left::held(made.path());
    for (name, file) in files {
        file.show(&made.path().join(name))?;
    }
    fs::rename(made.path(), folder)?;
    // It has another name now.
    let _ = made.keep();
    Ok(())
}

/// Shows files together in a folder that is there. Where the folder cannot be exchanged as a whole all have a hidden name before
/// the first is shown, so what is left is to rename them.
pub(super) fn show_in(folder: &Path, files: Vec<(&str, Beside)>, replace: bool) -> io::Result<()> {
    // Whatever stands in the way of that does not stand in the way of the other.
    if exchanged(folder, &files, replace).is_ok() {
        return Ok(());
    }
    let hidden = files.into_iter().map(|(name, file)| {
        let path = folder.join(name);
        file.allow_as(&path)?;
        Ok((file.hide_at(&path)?, path))
    });
    let hidden: Vec<((File, TempPath), PathBuf)> = hidden.collect::<io::Result<_>>()?;
    for ((_held, file), path) in hidden {
        let shown = match replace {
            true => file.persist(path),
            false => file.persist_noclobber(path),
        };
        shown.map_err(|kept| kept.error)?;
    }
    Ok(())
}

/// Shows files in place of the old ones of a folder, all at one moment; whatever else lies in it stays.
///
/// # Errors
/// That cannot be done here: then nothing happened.
#[cfg(target_os = "linux")]
fn exchanged(folder: &Path, files: &[(&str, Beside)], replace: bool) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    let real = fs::canonicalize(folder)?;
    // What may be replaced; a file that is there all the same is one of the others.
    let names = files.iter().map(|(name, _)| *name);
    let set: Vec<&str> = names.filter(|_| replace).collect();
    let others = others(&real, &set)?;
    let made = hidden(FOLDER).tempdir_in(folder_of(&real))?;
    let _held = left::held(made.path())?;
    allow_as(made.path(), &real)?;
    for (name, file) in files {
        file.allow_as(&real.join(name))?;
        file.also(&made.path().join(name))?;
    }
    for name in others {
        fs::hard_link(real.join(&name), made.path().join(&name))?;
    }
    renameat_with(CWD, made.path(), CWD, &real, RenameFlags::EXCHANGE)?;
    // It holds what is old now, and whatever somebody put there meanwhile: that goes home.
    let old = made.keep();
    go_home(&old, &real);
    let _ = left::clear(&old, &set);
    Ok(())
}

#[cfg(not(target_os = "linux"))]
fn exchanged(_: &Path, _: &[(&str, Beside)], _: bool) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}

/// What else lies in a folder. Folders in it have one place only, and who stands in it would see the old one from now on.
#[cfg(target_os = "linux")]
fn others(folder: &Path, set: &[&str]) -> io::Result<Vec<std::ffi::OsString>> {
    let mut others = Vec::new();
    for entry in fs::read_dir(folder)? {
        let (entry, name) = entry.map(|entry| (entry.file_type(), entry.file_name()))?;
        if !entry?.is_file() {
            return Err(io::ErrorKind::Unsupported.into());
        }
        if !set.iter().any(|own| *own == name) {
            others.push(name);
        }
    }
    match std::env::current_dir()?.starts_with(folder) {
        true => Err(io::ErrorKind::Unsupported.into()),
        false => Ok(others),
    }
}

/// Whose a folder is and who may enter it is as of another; lists of further people cannot be told.
#[cfg(target_os = "linux")]
fn allow_as(folder: &Path, other: &Path) -> io::Result<()> {
    use std::os::unix::fs::MetadataExt;
    let (made, known) = (fs::metadata(folder)?, fs::metadata(other)?);
    if (made.uid(), made.gid()) != (known.uid(), known.gid()) || has_lists(other)? {
        return Err(io::ErrorKind::Unsupported.into());
    }
    fs::set_permissions(folder, known.permissions())
}

/// Whether further people than owner and group are named with what they may.
#[cfg(target_os = "linux")]
fn has_lists(folder: &Path) -> io::Result<bool> {
    let mut names = [0; 4096];
    match rustix::fs::listxattr(folder, &mut names) {
        Ok(length) => Ok(names[..length]
            .split(|byte| *byte == 0)
            .any(|name| name.starts_with(b"system.posix_acl_"))),
        Err(rustix::io::Errno::NOTSUP) => Ok(false),
        Err(fault) => Err(fault.into()),
    }
}

/// Gives back to a folder what the old one has alone.
#[cfg(target_os = "linux")]
fn go_home(old: &Path, folder: &Path) {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    let entries = fs::read_dir(old).into_iter().flatten().flatten();
    for entry in entries {
        // A name that is taken there is that of the set, or of a file that is there already.
        let home = folder.join(entry.file_name());
        let _ = renameat_with(CWD, entry.path(), CWD, &home, RenameFlags::NOREPLACE);
    }
}
