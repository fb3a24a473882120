//! Files are written whole or not at all, and never over an input.

use std::{
    fs,
    io::{self, Write},
    path::{Path, PathBuf},
};

use schrund::fault::{
    Fault, Place,
    files::{InFiles, WrittenAs},
};

use crate::{
    args::JobArgs,
    ending, inputs,
    naming::{self, free},
    source,
};

/// Where files may be written.
#[derive(Debug)]
pub(crate) struct Saver {
    /// Inputs, as real paths; never written over.
    inputs: Vec<PathBuf>,
    /// Whether other files may be replaced.
    force: bool,
}

impl Saver {
    /// That writes over nothing that a job is read from.
    pub(crate) fn sparing(job: &JobArgs, force: bool) -> Self {
        let named = inputs::all_files(job);
        Self::new(named.iter().map(String::as_str), force)
    }

    pub(crate) fn new<'a>(inputs: impl IntoIterator<Item = &'a str>, force: bool) -> Self {
        let inputs = inputs
            .into_iter()
            .filter_map(|name| fs::canonicalize(name).ok())
            .collect();
        Self { inputs, force }
    }

    /// Every reason why one of these files may not be written.
    pub(crate) fn refusals(&self, paths: &[PathBuf], kind: WrittenAs) -> Vec<Fault> {
        let refused = paths.iter().filter(|path| self.refuses(path, kind));
        let (inputs, there): (Vec<_>, Vec<_>) = refused.partition(|path| self.is_input(path));
        let mut refusals: Vec<Fault> = inputs
            .into_iter()
            .map(|path| is_input(path, kind))
            .collect();
        if !there.is_empty() {
            refusals.push(is_there(&there, kind));
        }
        refusals
    }

    fn is_input(&self, path: &Path) -> bool {
        fs::canonicalize(path).is_ok_and(|real| self.inputs.contains(&real))
    }

    /// Files to fill in replace nothing at all, not even a link that leads nowhere.
    fn refuses(&self, path: &Path, kind: WrittenAs) -> bool {
        let there = match kind {
            WrittenAs::Start => path.symlink_metadata().is_ok(),
            _ => fs::canonicalize(path).is_ok(),
        };
        self.is_input(path) || there && (!self.force || path.is_dir())
    }

    /// Writes one file beside its place and moves it there when it is whole.
    pub(crate) fn save(
        &self,
        path: &Path,
        write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
    ) -> Result<(), Fault> {
        let refusals = self.refusals(&[path.to_owned()], WrittenAs::Output);
        if let Some(refusal) = refusals.into_iter().next() {
            return Err(refusal);
        }
        self.write_beside(path, write).map_err(|fault| {
            let (path, why) = (path.display().to_string(), source::refused(&fault));
            let place = Place::file(&path);
            Fault::new(InFiles::Unwritable { path, why }, place)
        })
    }

    /// Exchanges a file as a whole for what was made of it: the one file that is an input and is written. What it held is
    /// asked once more, so that nothing is lost which somebody wrote meanwhile; a link stays one, and who may read the
    /// file stays as it is.
    #[cfg(feature = "zone")]
    pub(crate) fn exchange(
        &self,
        path: &Path,
        held: Option<&[u8]>,
        text: &str,
    ) -> Result<(), Fault> {
        use schrund::fault::{files::Refused, strip::InStrip};
        let real = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
        let place = || Place::file(&path.display().to_string());
        let cannot = |why: Refused| {
            let path = path.display().to_string();
            Fault::new(InFiles::Unwritable { path, why }, place())
        };
        let kept = fs::metadata(&real).ok().map(|known| known.permissions());
        if kept.as_ref().is_some_and(fs::Permissions::readonly) {
            return Err(cannot(Refused::Permission));
        }
        if fs::read(&real).ok().as_deref() != held {
            return Err(Fault::new(InStrip::Changed, place()));
        }
        let write = |out: &mut dyn Write| out.write_all(text.as_bytes());
        let written = self.write_beside(&real, write);
        written.map_err(|fault| cannot(source::refused(&fault)))?;
        // The text is there and whole; who else may read it is not worth a failure.
        let _ = kept.map(|kept| allow_as_before(&real, kept));
        Ok(())
    }

    fn write_beside(
        &self,
        path: &Path,
        write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
    ) -> io::Result<()> {
        let folder = path
            .parent()
            .filter(|p| !p.as_os_str().is_empty())
            .unwrap_or(Path::new("."));
        let mut file = tempfile::Builder::new()
            .prefix(".schrund-")
            .tempfile_in(folder)?;
        allow_reading(file.as_file())?;
        let mut out = io::BufWriter::new(file.as_file_mut());
        write(&mut out)?;
        out.flush()?;
        drop(out);
        let kept = if self.force {
            file.persist(path)
        } else {
            file.persist_noclobber(path)
        };
        kept.map(|_| ()).map_err(|fault| fault.error)
    }
}

/// Who may read a file and write to it stays as it was.
#[cfg(feature = "zone")]
fn allow_as_before(path: &Path, kept: fs::Permissions) -> io::Result<()> {
    fs::set_permissions(path, kept)
}

/// Temporary files are private; what they become is shared like any other file.
#[cfg(unix)]
fn allow_reading(file: &fs::File) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    file.set_permissions(fs::Permissions::from_mode(0o644))
}

#[cfg(not(unix))]
fn allow_reading(_: &fs::File) -> io::Result<()> {
    Ok(())
}

fn is_input(path: &Path, kind: WrittenAs) -> Fault {
    let name = path.display().to_string();
    let place = Place::file(&name);
    let free = match kind {
        WrittenAs::Set => free(path.parent().unwrap_or(path)),
        WrittenAs::Zones => naming::free(&path.with_file_name("zones.geojson")),
        _ => ending::free(path),
    };
    Fault::new(InFiles::IsInput { name, kind, free }, place)
}

/// Files that are there; a free name is that of the file, or of a folder for all of them.
fn is_there(paths: &[&PathBuf], kind: WrittenAs) -> Fault {
    let names: Vec<String> = paths.iter().map(|p| p.display().to_string()).collect();
    let place = match names.as_slice() {
        [name] => Place::file(name),
        _ => Place::default(),
    };
    let first = paths.first().map_or(Path::new(""), |path| path.as_path());
    let folder = first.parent().unwrap_or(Path::new(""));
    let is_trip = first.extension().is_some_and(|end| end == "toml");
    let (kind, free) = match kind {
        WrittenAs::Set => (kind, free(folder)),
        WrittenAs::Start => (kind, free(&folder.join("tour"))),
        WrittenAs::Zones => (kind, free(&first.join("zones.geojson"))),
        _ if is_trip => (WrittenAs::Trip, free(&first.with_extension("txt"))),
        kind => (kind, ending::free(first)),
    };
    Fault::new(InFiles::There { names, kind, free }, place)
}

/// A folder could not be made.
pub(crate) fn no_folder(dir: &Path, fault: &io::Error, kind: WrittenAs) -> Fault {
    let (path, why) = (dir.display().to_string(), source::refused(fault));
    let place = Place::file(&path);
    let free = free(&dir.with_file_name(match kind {
        WrittenAs::Start => "tour",
        _ => "plan",
    }));
    let no_folder = InFiles::NoFolder {
        path,
        why,
        kind,
        free,
    };
    Fault::new(no_folder, place)
}
