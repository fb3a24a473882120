//! Files are written whole or not at all, and never over an input.

use std::{
    fs,
    io::{self, Write},
    path::{Path, PathBuf},
};

use schrund::fault::{Fault, Place, files::InFiles};

use crate::source;

/// Where files may be written.
#[derive(Debug)]
pub(crate) struct Saver {
    /// Inputs, as real paths; never written over.
    inputs: Vec<PathBuf>,
    /// Whether other files may be replaced.
    force: bool,
}

impl Saver {
    pub(crate) fn new<'a>(inputs: impl IntoIterator<Item = &'a str>, force: bool) -> Self {
        let inputs = inputs
            .into_iter()
            .filter_map(|name| fs::canonicalize(name).ok())
            .collect();
        Self { inputs, force }
    }

    /// Every reason why one of these files may not be written.
    pub(crate) fn refusals(&self, paths: &[PathBuf]) -> Vec<Fault> {
        let refused = paths
            .iter()
            .filter_map(|path| Some((path, self.refusal(path)?)));
        let (there, inputs): (Vec<_>, Vec<_>) = refused.partition(|(path, _)| !self.is_input(path));
        let mut refusals: Vec<Fault> = inputs.into_iter().map(|(_, refusal)| refusal).collect();
        match there.as_slice() {
            [] => {}
            [(_, refusal)] => refusals.push(refusal.clone()),
            many => {
                let paths = many.iter().map(|(path, _)| path.display().to_string());
                let there = InFiles::There(paths.collect());
                refusals.push(Fault::new(there, Place::default()));
            }
        }
        refusals
    }

    fn is_input(&self, path: &Path) -> bool {
        fs::canonicalize(path).is_ok_and(|real| self.inputs.contains(&real))
    }

    fn refusal(&self, path: &Path) -> Option<Fault> {
        let shown = path.display().to_string();
        let place = Place::file(&shown);
        let real = fs::canonicalize(path).ok()?;
        if self.inputs.contains(&real) {
            return Some(Fault::new(InFiles::IsInput(shown), place));
        }
        if self.force && !real.is_dir() {
            return None;
        }
        Some(Fault::new(InFiles::There(vec![shown]), place))
    }

    /// Writes one file beside its place and moves it there when it is whole.
    pub(crate) fn save(
        &self,
        path: &Path,
        write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
    ) -> Result<(), Fault> {
        if let Some(refusal) = self.refusal(path) {
            return Err(refusal);
        }
        self.write_beside(path, write).map_err(|fault| {
            let (path, why) = (path.display().to_string(), source::refused(&fault));
            let place = Place::file(&path);
            Fault::new(InFiles::Unwritable { path, why }, place)
        })
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

/// A folder could not be made.
pub(crate) fn no_folder(dir: &Path, fault: &io::Error) -> Fault {
    let (path, why) = (dir.display().to_string(), source::refused(fault));
    let place = Place::file(&path);
    Fault::new(InFiles::NoFolder { path, why }, place)
}
