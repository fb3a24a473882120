//! Files that are seen when they are whole. Until then they have no name where the system allows that, so that nothing stays
//! of a run that is killed; elsewhere a hidden one that is taken away again.

use std::{
    fs::File,
    io::{self, BufWriter, Write},
    path::Path,
};

use tempfile::TempPath;

use super::{
    hidden::{FILE, folder_of, hidden},
    left,
};

/// A file that nobody sees yet.
#[derive(Debug)]
pub(super) struct Beside {
    file: File,
    /// Where it has a name.
    named: Option<TempPath>,
}

impl Beside {
    /// In a folder on the disk that it is to be seen on.
    pub(super) fn written(
        folder: &Path,
        write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
    ) -> io::Result<Self> {
        let mut made = match unnamed(folder) {
            Some(file) => Self { file, named: None },
            None => {
                let (file, path) = hidden(FILE).tempfile_in(folder)?.into_parts();
                let named = Some(path);
                Self { file, named }
            }
        };
        left::hold(&made.file);
        let mut out = BufWriter::new(&mut made.file);
        write(&mut out)?;
        out.flush()?;
        drop(out);
        Ok(made)
    }

    /// Who may read it and write to it is as of the one that is there, if one is.
    #[cfg(unix)]
    pub(super) fn allow_as(&self, there: &Path) -> io::Result<()> {
        match std::fs::metadata(there) {
            Ok(known) => self.file.set_permissions(known.permissions()),
            Err(_) => Ok(()),
        }
    }

    #[cfg(not(unix))]
    pub(super) fn allow_as(&self, _: &Path) -> io::Result<()> {
        Ok(())
    }

    /// Lets it be seen under a name that no other file has.
    pub(super) fn show(self, path: &Path) -> io::Result<()> {
        match self.named {
            Some(named) => named.persist_noclobber(path).map_err(|kept| kept.error),
            None => link(&self.file, path),
        }
    }

    /// Lets it be seen in place of whatever has that name.
    pub(super) fn replace(self, path: &Path) -> io::Result<()> {
        let (_held, hidden) = self.hide_at(path)?;
        hidden.persist(path).map_err(|kept| kept.error)
    }

    /// Gives it a hidden name beside a path; it is held as long as what comes of it is.
    pub(super) fn hide_at(self, path: &Path) -> io::Result<(File, TempPath)> {
        let named = match self.named {
            Some(named) => named,
            None => {
                let link = |hidden: &Path| link(&self.file, hidden);
                let made = hidden(FILE).make_in(folder_of(path), link)?;
                made.into_temp_path()
            }
        };
        Ok((self.file, named))
    }

    /// Gives it one more name, as it can have while it has none at all.
    #[cfg(target_os = "linux")]
    pub(super) fn also(&self, path: &Path) -> io::Result<()> {
        match self.named {
            Some(_) => Err(io::ErrorKind::Unsupported.into()),
            None => link(&self.file, path),
        }
    }
}

/// Where open files of the program have a name.
#[cfg(target_os = "linux")]
const OPEN: &str = "/proc/self/fd";

/// A file without a name; `None` where the system or the disk has none.
#[cfg(target_os = "linux")]
fn unnamed(folder: &Path) -> Option<File> {
    use rustix::fs::{Mode, OFlags, open};
    if !Path::new(OPEN).exists() {
        return None;
    }
    let how = OFlags::TMPFILE | OFlags::WRONLY | OFlags::CLOEXEC;
    let file = open(folder, how, Mode::from_raw_mode(FILE)).ok()?;
    Some(File::from(file))
}

#[cfg(not(target_os = "linux"))]
fn unnamed(_: &Path) -> Option<File> {
    None
}

/// Gives a file without a name its first one.
#[cfg(target_os = "linux")]
fn link(file: &File, path: &Path) -> io::Result<()> {
    use rustix::fs::{AtFlags, CWD, linkat};
    use std::os::fd::AsRawFd;
    let open = Path::new(OPEN).join(file.as_raw_fd().to_string());
    Ok(linkat(CWD, &open, CWD, path, AtFlags::SYMLINK_FOLLOW)?)
}

#[cfg(not(target_os = "linux"))]
fn link(_: &File, _: &Path) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}
