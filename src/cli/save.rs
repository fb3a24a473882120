//! Files are written whole or not at all, and never over an input.

use std::{
    fs,
    io::{self, Write},
    path::{Path, PathBuf},
};

use schrund::fault::{Code, Place, Problem};

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
    pub(crate) fn refusals(&self, paths: &[PathBuf]) -> Vec<Problem> {
        let refused = paths
            .iter()
            .filter_map(|path| Some((path, self.refusal(path)?)));
        let (there, inputs): (Vec<_>, Vec<_>) = refused.partition(|(path, _)| !self.is_input(path));
        let mut refusals: Vec<Problem> = inputs.into_iter().map(|(_, refusal)| refusal).collect();
        match there.as_slice() {
            [] => {}
            [(_, refusal)] => refusals.push(refusal.clone()),
            many => refusals.push(there_already(many.iter().map(|(path, _)| path.as_path()))),
        }
        refusals
    }

    fn is_input(&self, path: &Path) -> bool {
        fs::canonicalize(path).is_ok_and(|real| self.inputs.contains(&real))
    }

    fn refusal(&self, path: &Path) -> Option<Problem> {
        let place = Place::file(&path.display().to_string());
        let real = fs::canonicalize(path).ok()?;
        if self.inputs.contains(&real) {
            let says = format!("{} is an input and is never written over", path.display());
            return Some(
                Problem::new(Code::WouldOverwrite, place, says).hint("write to another place"),
            );
        }
        if self.force && !real.is_dir() {
            return None;
        }
        let says = format!("{} is there already", path.display());
        Some(Problem::new(Code::WouldOverwrite, place, says).hint("`--force` replaces it"))
    }

    /// Writes one file beside its place and moves it there when it is whole.
    pub(crate) fn save(
        &self,
        path: &Path,
        write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
    ) -> Result<(), Problem> {
        if let Some(refusal) = self.refusal(path) {
            return Err(refusal);
        }
        self.write_beside(path, write).map_err(|fault| {
            let why = source::words(&fault);
            let says = format!("cannot write {}: {why}", path.display());
            Problem::new(
                Code::Unwritable,
                Place::file(&path.display().to_string()),
                says,
            )
            .hint("write to a folder that is there and that you may write to")
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

/// One refusal for several files.
fn there_already<'a>(paths: impl Iterator<Item = &'a Path>) -> Problem {
    let names: Vec<String> = paths.map(|path| path.display().to_string()).collect();
    let says = format!(
        "{} files are there already: {}",
        names.len(),
        names.join(", ")
    );
    Problem::new(Code::WouldOverwrite, Place::default(), says).hint("`--force` replaces them")
}
