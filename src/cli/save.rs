//! Files are written whole or not at all, and never over an input.

mod beside;
mod hidden;
mod left;
mod set;
mod together;

use std::{
    fs,
    io::{self, Write},
    path::{Path, PathBuf},
};

use schrund::fault::{
    Fault, Place,
    files::{InFiles, Refused, WrittenAs},
};

use crate::{
    args::JobArgs,
    ending, inputs,
    naming::{self, free},
    source,
};
use beside::Beside;
use hidden::folder_of;
use set::{show_in, show_in_new};
use together::together;

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
            .filter_map(|name| fs::canonicalize(naming::path(name)).ok())
            .collect();
        Self { inputs, force }
    }

    /// Every reason why one of these files may not be written.
    pub(crate) fn refusals(&self, paths: &[PathBuf], kind: WrittenAs) -> Vec<Fault> {
        let refused = paths.iter().filter(|path| self.refuses(path, kind));
        let (inputs, there): (Vec<_>, Vec<_>) = refused.partition(|path| self.is_input(path));
        let is_folder = |path: &&PathBuf| kind == WrittenAs::Output && path.is_dir();
        let (folders, there): (Vec<_>, Vec<_>) = there.into_iter().partition(is_folder);
        let inputs = inputs.into_iter().map(|path| is_input(path, kind));
        let mut refusals: Vec<Fault> = inputs
            .chain(folders.into_iter().map(|path| in_folder(path)))
            .collect();
        if !there.is_empty() {
            refusals.push(is_there(&there, kind));
        }
        refusals
    }

    fn is_input(&self, path: &Path) -> bool {
        fs::canonicalize(path).is_ok_and(|real| self.inputs.contains(&real))
    }

    /// Files to fill in replace nothing at all, not even a link that leads nowhere. A device or a pipe is written into, and so
    /// nothing of it is lost.
    fn refuses(&self, path: &Path, kind: WrittenAs) -> bool {
        if kind != WrittenAs::Start && is_stream(path) {
            return false;
        }
        let there = match kind {
            WrittenAs::Start => path.symlink_metadata().is_ok(),
            _ => fs::canonicalize(path).is_ok(),
        };
        self.is_input(path) || there && (!self.force || path.is_dir())
    }

    /// Writes one file beside its place and moves it there when it is whole; what is no file is written into.
    pub(crate) fn save(
        &self,
        path: &Path,
        write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
    ) -> Result<(), Fault> {
        let refusals = self.refusals(&[path.to_owned()], WrittenAs::Output);
        if let Some(refusal) = refusals.into_iter().next() {
            return Err(refusal);
        }
        let written = match is_stream(path) {
            true => write_into(path, write),
            false => self.write_whole(path, write),
        };
        written.map_err(|fault| unwritable(path, source::refused(&fault)))
    }

    /// Exchanges a file as a whole for what was made of it: the one file that is an input and is written. What it held is
    /// asked once more, so that nothing is lost which somebody wrote meanwhile.
    #[cfg(feature = "zone")]
    pub(crate) fn exchange(
        &self,
        path: &Path,
        held: Option<&[u8]>,
        text: &str,
    ) -> Result<(), Fault> {
        use schrund::fault::strip::InStrip;
        let known = fs::metadata(path).ok();
        if known.is_some_and(|known| known.permissions().readonly()) {
            return Err(unwritable(path, Refused::Permission));
        }
        if fs::read(path).ok().as_deref() != held {
            let place = Place::file(&path.display().to_string());
            return Err(Fault::new(InStrip::Changed, place));
        }
        let written = self.write_whole(path, |out| out.write_all(text.as_bytes()));
        written.map_err(|fault| unwritable(path, source::refused(&fault)))
    }

    /// A link stays one, and who may read the file it leads to and write to it stays as it was.
    fn write_whole(
        &self,
        path: &Path,
        write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
    ) -> io::Result<()> {
        let real = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
        let made = Beside::written(folder_of(&real), write)?;
        made.allow_as(&real)?;
        match self.force {
            true => together(|| made.replace(&real)),
            false => made.show(&real),
        }
    }

    /// Writes files into a folder, which is made where there is none: all of them are seen together, or none.
    pub(crate) fn save_set(
        &self,
        folder: &Path,
        files: Vec<(&'static str, Content<'_>)>,
    ) -> Result<(), Fault> {
        let paths: Vec<PathBuf> = files.iter().map(|(name, _)| folder.join(name)).collect();
        let refusals = self.refusals(&paths, WrittenAs::Set);
        if let Some(refusal) = refusals.into_iter().next() {
            return Err(refusal);
        }
        let is_new = folder.symlink_metadata().is_err();
        let beside = if is_new { folder_of(folder) } else { folder };
        fs::create_dir_all(beside).map_err(|fault| no_folder(folder, &fault, WrittenAs::Set))?;
        let names: Vec<&str> = files.iter().map(|(name, _)| *name).collect();
        left::clear_in(folder_of(folder), &names);
        left::clear_in(folder, &names);
        let mut made = Vec::new();
        for (name, write) in files {
            let file = Beside::written(beside, write);
            made.push((
                name,
                file.map_err(|fault| unwritable(&folder.join(name), source::refused(&fault)))?,
            ));
        }
        let shown = together(|| match is_new {
            true => show_in_new(folder, made),
            false => show_in(folder, made, self.force),
        });
        shown.map_err(|fault| unwritable(folder, source::refused(&fault)))
    }
}

/// Writes what a file holds.
pub(crate) type Content<'w> = Box<dyn FnOnce(&mut dyn Write) -> io::Result<()> + 'w>;

fn unwritable(path: &Path, why: Refused) -> Fault {
    let path = path.display().to_string();
    let place = Place::file(&path);
    Fault::new(InFiles::Unwritable { path, why }, place)
}

/// Whether what has this name is no file: a device, a pipe, or what the program was started with under a name of a file.
fn is_stream(path: &Path) -> bool {
    let known = fs::metadata(path).ok();
    let other = known.is_some_and(|known| !known.is_file() && !known.is_dir());
    let folder = path
        .parent()
        .and_then(|folder| fs::canonicalize(folder).ok());
    let own = folder.is_some_and(|folder| {
        folder == Path::new("/dev") || folder.starts_with("/proc") && folder.ends_with("fd")
    });
    other || own && path.exists() && !path.is_dir()
}

/// Behind what is there already.
fn write_into(path: &Path, write: impl FnOnce(&mut dyn Write) -> io::Result<()>) -> io::Result<()> {
    let mut out = io::BufWriter::new(fs::OpenOptions::new().append(true).open(path)?);
    write(&mut out)?;
    out.flush()
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

/// One file under the name of a folder.
fn in_folder(path: &Path) -> Fault {
    let name = path.display().to_string();
    let place = Place::file(&name);
    let free = naming::free(&path.join("plan.txt"));
    Fault::new(InFiles::IsFolder { name, free }, place)
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
