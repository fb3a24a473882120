//! Inputs: files, standard input, and http(s) addresses.

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
        place::STANDARD_INPUT,
    },
    raster,
};

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
pub(crate) fn shown(name: &str) -> &str {
    if name == "-" { STANDARD_INPUT } else { name }
}

/// Whether the input is an address.
pub(crate) fn is_address(name: &str) -> bool {
    name.starts_with("http://") || name.starts_with("https://")
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
        return crate::source::fetch::open(name);
    }
    Ok(Box::new(BufReader::with_capacity(BUFFER, file(name)?)))
}

/// Whether it is a file that can be read here and there: no address, no pipe.
pub(crate) fn is_file(name: &str) -> bool {
    name != "-" && !is_address(name) && Path::new(name).is_file()
}

/// Opens a file that is read here and there.
pub(crate) fn seekable(name: &str) -> Result<raster::RasterSource, Fault> {
    if name == "-" || is_address(name) {
        return Err(Fault::new(InFiles::NotSeekable, Place::file(shown(name))));
    }
    let file = file(name)?;
    Ok(Box::new(BufReader::new(file)))
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
    read.map_err(|why| Fault::new(stopped(why), Place::file(shown(name))))?;
    Ok(bytes)
}

fn file(name: &str) -> Result<File, Fault> {
    if Path::new(name).is_dir() {
        return Err(unreadable(name, Refused::Folder));
    }
    File::open(name).map_err(|fault| unreadable(name, refused(&fault)))
}

/// Why the system refused, without the names it made up on the way.
pub(crate) fn refused(fault: &io::Error) -> Refused {
    match fault.kind() {
        io::ErrorKind::NotFound => Refused::NotFound,
        io::ErrorKind::AlreadyExists | io::ErrorKind::NotADirectory => Refused::File,
        io::ErrorKind::PermissionDenied => Refused::Permission,
        kind if fault.raw_os_error().is_none() => Refused::Other(kind.to_string()),
        _ => Refused::Other(fault.to_string()),
    }
}

fn unreadable(name: &str, why: Refused) -> Fault {
    let path = Path::new(name);
    let (near, holds) = match why {
        Refused::Folder => (None, readable(path, &MEANT.concat())),
        Refused::NotFound => beside(path),
        _ => (None, Vec::new()),
    };
    let name = shown(name).to_owned();
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

#[cfg(not(feature = "fetch"))]
mod fetch {
    use schrund::fault::files::Network;

    use super::{BufRead, Fault, InFiles, Place};

    pub(super) fn open(address: &str) -> Result<Box<dyn BufRead + Send>, Fault> {
        let cannot = InFiles::Network(Network::NotBuilt);
        Err(Fault::new(cannot, Place::file(address)))
    }
}

#[cfg(feature = "fetch")]
mod fetch {
    //! Addresses: one request, a time limit, a size limit, and a clear word when it fails.

    use std::time::Duration;

    use std::io::Read;

    use schrund::fault::files::Network;

    use super::{BUFFER, BufRead, BufReader, Fault, InFiles, Place, io};

    /// Longest wait for a connection. Our judgement.
    const CONNECT: Duration = Duration::from_secs(10);
    /// Longest wait for the whole answer. Our judgement.
    const WHOLE: Duration = Duration::from_secs(120);
    /// Most bytes taken: ten times the largest file measured. Our judgement.
    const MOST: u64 = 1 << 30;

    pub(super) fn open(address: &str) -> Result<Box<dyn BufRead + Send>, Fault> {
        // A second call finds a provider installed; that is as good.
        let _ = rustls::crypto::ring::default_provider().install_default();
        let client = reqwest::blocking::Client::builder()
            .connect_timeout(CONNECT)
            .timeout(WHOLE)
            .user_agent(concat!("schrund/", env!("CARGO_PKG_VERSION")))
            .build()
            .map_err(|fault| failed(address, &fault))?;
        let answer = client
            .get(address)
            .send()
            .map_err(|fault| failed(address, &fault))?;
        let status = answer.status();
        if !status.is_success() {
            return Err(wrong(address, Network::Answered(status.to_string())));
        }
        if answer.content_length().is_some_and(|n| n > MOST) {
            return Err(wrong(address, Network::TooMuch(MOST >> 20)));
        }
        Ok(Box::new(BufReader::with_capacity(
            BUFFER,
            Limited { answer, left: MOST },
        )))
    }

    /// Ends with an error, not in silence, once too much has come.
    struct Limited {
        answer: reqwest::blocking::Response,
        left: u64,
    }

    impl Read for Limited {
        fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
            let read = self.answer.read(buffer)?;
            self.left = self.left.checked_sub(read as u64).ok_or_else(|| {
                io::Error::other(format!("the answer is larger than {} MB", MOST >> 20))
            })?;
            Ok(read)
        }
    }

    fn failed(address: &str, fault: &reqwest::Error) -> Fault {
        let why = if fault.is_timeout() {
            Network::Late
        } else if fault.is_connect() {
            Network::NoConnection
        } else {
            Network::Other(root(fault))
        };
        wrong(address, why)
    }

    fn wrong(address: &str, why: Network) -> Fault {
        Fault::new(InFiles::Network(why), Place::file(address))
    }

    /// The innermost reason; the outer ones repeat the address.
    fn root(fault: &reqwest::Error) -> String {
        let mut inner: &dyn std::error::Error = fault;
        while let Some(next) = inner.source() {
            inner = next;
        }
        inner.to_string()
    }
}
