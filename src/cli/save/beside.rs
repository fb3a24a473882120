//! Files that are seen when they are whole. Until then they have no name where the system allows that, so that nothing stays
//! of a run that is killed; elsewhere a hidden one that is taken away again.

use std::{
    fs::{self, File},
    io::{self, BufWriter, Write},
    path::{Path, PathBuf},
};

use tempfile::{Builder, TempPath};

/// What hidden names begin with.
const HIDDEN: &str = ".schrund-";

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
        let mut out = BufWriter::new(&mut made.file);
        write(&mut out)?;
        out.flush()?;
        drop(out);
        Ok(made)
    }

    /// Who may read it and write to it is as of the one that is there, if one is.
    #[cfg(unix)]
    pub(super) fn allow_as(&self, there: &Path) -> io::Result<()> {
        match fs::metadata(there) {
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
        self.hide_at(path)?.persist(path).map_err(|kept| kept.error)
    }

    /// Gives it a hidden name beside a path.
    fn hide_at(self, path: &Path) -> io::Result<TempPath> {
        match self.named {
            Some(named) => Ok(named),
            None => {
                let link = |hidden: &Path| link(&self.file, hidden);
                Ok(hidden(FILE)
                    .make_in(folder_of(path), link)?
                    .into_temp_path())
            }
        }
    }
}

/// Shows files together, in a folder that is made with them.
pub(super) fn show_in_new(folder: &Path, files: Vec<(&str, Beside)>) -> io::Result<()> {
    let made = hidden(FOLDER).tempdir_in(folder_of(folder))?;
    for (name, file) in files {
        file.show(&made.path().join(name))?;
    }
    fs::rename(made.path(), folder)?;
    // It has another name now.
    let _ = made.keep();
    Ok(())
}

/// Shows files together in a folder that is there: all have a hidden name before the first is shown, so what is left is to
/// rename them.
pub(super) fn show_in(folder: &Path, files: Vec<(&str, Beside)>, replace: bool) -> io::Result<()> {
    let hidden = files.into_iter().map(|(name, file)| {
        let path = folder.join(name);
        file.allow_as(&path)?;
        Ok((file.hide_at(&path)?, path))
    });
    let hidden: Vec<(TempPath, PathBuf)> = hidden.collect::<io::Result<_>>()?;
    for (file, path) in hidden {
        let shown = match replace {
            true => file.persist(path),
            false => file.persist_noclobber(path),
        };
        shown.map_err(|kept| kept.error)?;
    }
    Ok(())
}

/// The folder that something lies in.
pub(super) fn folder_of(path: &Path) -> &Path {
    let folder = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty());
    folder.unwrap_or(Path::new("."))
}

/// What a file may be read and written by, and a folder besides entered: everybody, as far as the user's mask leaves it.
const FILE: u32 = 0o666;
const FOLDER: u32 = 0o777;

/// What gets a hidden name.
fn hidden<'f>(mode: u32) -> Builder<'f, 'f> {
    let mut builder = Builder::new();
    builder.prefix(HIDDEN);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        builder.permissions(fs::Permissions::from_mode(mode));
    }
    #[cfg(not(unix))]
    let _ = mode;
    builder
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
