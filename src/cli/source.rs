//! Inputs: files, standard input, and http(s) addresses, for which `network.rs` asks.

use std::{
    fs::File,
    io::{self, BufRead, BufReader},
    path::{Path, PathBuf},
    sync::OnceLock,
};

use schrund::{
    fault::{
        Fault, Place,
        files::{InFiles, Refused},
        network::address_shown,
        place::STANDARD_INPUT,
    },
    raster,
    read::input::Input,
};

use crate::{limits, naming, network};

pub(crate) use schrund::fault::network::is_address;

/// Bytes read at once. Large enough for long lines, small enough to stay in the cache. Our judgement.
const BUFFER: usize = 1 << 18;

/// How the names of inputs end, those first that are most likely meant; those of one kind stand together.
const MEANT: [&[&str]; 4] = [
    &["gpx"],
    &["geojson", "json", "fgb"],
    &["toml"],
    &["tif", "tiff", "hgt"],
];
/// Likeness, of 1, from which a name is taken for the one that is meant. Our judgement.
const MISSPELT: f64 = 0.75;

/// What the messages call an input.
pub(crate) fn shown(name: &str) -> String {
    if name == "-" {
        STANDARD_INPUT.to_owned()
    } else {
        naming::shown(&address_shown(name))
    }
}

/// What was opened under a name, within the limits of the call.
pub(crate) fn within<T>(name: &str, opened: Result<T, Fault>) -> Input<T> {
    Input::opened(shown(name), opened).within(limits::in_force())
}

/// Opens an input for reading from its beginning.
pub(crate) fn open(name: &str) -> Result<Box<dyn BufRead + Send>, Fault> {
    if name == "-" {
        return Ok(match STANDARD.get() {
            Some(kept) => Box::new(kept.as_slice()),
            None => Box::new(BufReader::with_capacity(BUFFER, io::stdin())),
        });
    }
    if is_address(name) {
        return network::open(name);
    }
    Ok(Box::new(BufReader::with_capacity(BUFFER, file(name)?)))
}

/// Whether it is worth while to read it here and there: a file and no pipe, or an address that is called as a format with an
/// index is.
pub(crate) fn can_be_sought(name: &str) -> bool {
    if is_address(name) {
        let path = name.split(['?', '#']).next().unwrap_or_default();
        return path.to_ascii_lowercase().ends_with(".fgb");
    }
    name != "-" && naming::path(name).is_file()
}

/// Opens a file that is read here and there.
pub(crate) fn seekable(name: &str) -> Result<raster::RasterSource, Fault> {
    if name == "-" {
        return Err(Fault::new(InFiles::NotSeekable, Place::file(&shown(name))));
    }
    if is_address(name) {
        return network::seekable(name);
    }
    let file = file(name)?;
    Ok(Box::new(BufReader::new(file)))
}

/// The same of outlines with an index.
pub(crate) fn indexed(name: &str) -> Result<raster::RasterSource, Fault> {
    match is_address(name) {
        true => network::outline_file(name),
        false => seekable(name),
    }
}

/// Standard input, where it is read more than once.
static STANDARD: OnceLock<Vec<u8>> = OnceLock::new();

/// Reads standard input once for all, where it is among these inputs and will be opened again.
#[cfg(feature = "page")]
pub(crate) fn keep_standard_input<'n>(
    names: impl IntoIterator<Item = &'n String>,
) -> Result<(), Fault> {
    if STANDARD.get().is_none() && names.into_iter().any(|name| name == "-") {
        let bytes = whole("-", io::stdin())?;
        STANDARD.get_or_init(|| bytes);
    }
    Ok(())
}

/// All bytes of an input that was opened.
pub(crate) fn whole(name: &str, mut from: impl io::Read) -> Result<Vec<u8>, Fault> {
    let mut bytes = Vec::new();
    let read = from.read_to_end(&mut bytes);
    let stopped = |why: io::Error| InFiles::Stopped(why.to_string());
    read.map_err(|why| Fault::new(stopped(why), Place::file(&shown(name))))?;
    Ok(bytes)
}

fn file(name: &str) -> Result<File, Fault> {
    let path = naming::path(name);
    if path.is_dir() {
        return Err(unreadable(name, Refused::Folder));
    }
    File::open(path).map_err(|fault| unreadable(name, refused(&fault)))
}

/// Why the system refused, without the names it made up on the way.
pub(crate) fn refused(fault: &io::Error) -> Refused {
    match fault.kind() {
        io::ErrorKind::NotFound => Refused::NotFound,
        io::ErrorKind::AlreadyExists | io::ErrorKind::NotADirectory => Refused::File,
        io::ErrorKind::PermissionDenied => Refused::Permission,
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded | io::ErrorKind::FileTooLarge => {
            Refused::Full
        }
        kind if fault.raw_os_error().is_none() => Refused::Other(kind.to_string()),
        _ => Refused::Other(fault.to_string()),
    }
}

/// The fault of an input that cannot be read, with the one that is meant where that is known.
pub(crate) fn unreadable(name: &str, why: Refused) -> Fault {
    let path = naming::path(name);
    let (near, holds) = match why {
        Refused::Folder => (None, readable(&path, &MEANT.concat())),
        Refused::NotFound => beside(&path),
        _ => (None, Vec::new()),
    };
    let name = shown(name);
    let place = Place::file(&name);
    let unreadable = InFiles::Unreadable {
        name,
        why,
        near,
        holds,
    };
    Fault::new(unreadable, place)
}

/// The file that is spelt nearly as one is that is not there, and the others of its kind, those spelt like it first.
fn beside(path: &Path) -> (Option<String>, Vec<String>) {
    let folder = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty());
    let folder = folder.unwrap_or(Path::new("."));
    let wanted = path.display().to_string().to_lowercase();
    let alike =
        |name: &String| strsim::normalized_damerau_levenshtein(&name.to_lowercase(), &wanted);
    let all = readable(folder, &MEANT.concat());
    let near = all.iter().max_by(|a, b| alike(a).total_cmp(&alike(b)));
    let near = near.filter(|name| alike(name) >= MISSPELT).cloned();
    let end = path.extension().and_then(|end| end.to_str());
    let end = end.unwrap_or_default().to_lowercase();
    let kind = MEANT.iter().find(|kind| kind.contains(&end.as_str()));
    let is_other = |name: &String| {
        let of_kind = |kind: &&[&str]| {
            Path::new(name)
                .extension()
                .is_some_and(|end| kind.iter().any(|known| end.eq_ignore_ascii_case(known)))
        };
        Some(name) != near.as_ref() && kind.is_none_or(of_kind)
    };
    let mut others = all;
    others.retain(is_other);
    others.sort_by(|a, b| alike(b).total_cmp(&alike(a)));
    (near, others)
}

/// Files of a folder whose names end so, in that order.
fn readable(folder: &Path, ends: &[&str]) -> Vec<String> {
    let files = folder.read_dir().into_iter().flatten().flatten();
    let mut files: Vec<PathBuf> = files.map(|file| file.path()).collect();
    files.sort();
    let by = |end: &&str| {
        let (end, files) = (end.to_string(), files.iter());
        files.filter(move |path| {
            path.extension()
                .is_some_and(|e| e.eq_ignore_ascii_case(&end))
        })
    };
    let shown = |path: &PathBuf| path.strip_prefix(".").unwrap_or(path).display().to_string();
    ends.iter().flat_map(by).map(shown).collect()
}
