//! Inputs: files, standard input, and http(s) addresses.

use std::{
    fs::File,
    io::{self, BufRead, BufReader},
    path::Path,
};

use schrund::{
    fault::{Code, Place, Problem},
    raster,
};

/// Bytes read at once. Large enough for long lines, small enough to stay in the cache. Our judgement.
const BUFFER: usize = 1 << 18;

/// What the messages call an input.
pub(crate) fn shown(name: &str) -> &str {
    if name == "-" { "standard input" } else { name }
}

/// Whether the input is an address.
pub(crate) fn is_address(name: &str) -> bool {
    name.starts_with("http://") || name.starts_with("https://")
}

/// Opens an input for reading from its beginning.
pub(crate) fn open(name: &str) -> Result<Box<dyn BufRead>, Problem> {
    if name == "-" {
        return Ok(Box::new(BufReader::with_capacity(BUFFER, io::stdin())));
    }
    if is_address(name) {
        return crate::source::fetch::open(name);
    }
    Ok(Box::new(BufReader::with_capacity(BUFFER, file(name)?)))
}

/// Opens a file that is read here and there.
pub(crate) fn seekable(name: &str) -> Result<raster::Source, Problem> {
    if name == "-" || is_address(name) {
        let says = "a terrain model is read here and there, so it must be a file";
        return Err(
            Problem::new(Code::Unreadable, Place::file(shown(name)), says)
                .hint("save it first and name the file"),
        );
    }
    let file = file(name)?;
    Ok(Box::new(BufReader::new(file)))
}

fn file(name: &str) -> Result<File, Problem> {
    if Path::new(name).is_dir() {
        return Err(unreadable(name, "it is a folder, not a file"));
    }
    File::open(name).map_err(|fault| unreadable(name, &words(&fault)))
}

/// Why the system refused, without the names it made up on the way.
pub(crate) fn words(fault: &io::Error) -> String {
    match fault.kind() {
        io::ErrorKind::NotFound => "there is no such file or folder".to_owned(),
        io::ErrorKind::PermissionDenied => "you have no permission".to_owned(),
        kind if fault.raw_os_error().is_none() => kind.to_string(),
        _ => fault.to_string(),
    }
}

fn unreadable(name: &str, why: &str) -> Problem {
    Problem::new(
        Code::Unreadable,
        Place::file(shown(name)),
        format!("cannot read {}: {why}", shown(name)),
    )
    .hint("check the name and that you may read it")
}

#[cfg(not(feature = "fetch"))]
mod fetch {
    use super::{BufRead, Code, Place, Problem};

    pub(super) fn open(address: &str) -> Result<Box<dyn BufRead>, Problem> {
        let says = "this build of schrund cannot fetch addresses";
        Err(Problem::new(Code::Network, Place::file(address), says)
            .hint("download the file and name it"))
    }
}

#[cfg(feature = "fetch")]
mod fetch {
    //! Addresses: one request, a time limit, a size limit, and a clear word when it fails.

    use std::time::Duration;

    use std::io::Read;

    use super::{BUFFER, BufRead, BufReader, Code, Place, Problem, io};

    /// Longest wait for a connection. Our judgement.
    const CONNECT: Duration = Duration::from_secs(10);
    /// Longest wait for the whole answer. Our judgement.
    const WHOLE: Duration = Duration::from_secs(120);
    /// Most bytes taken: ten times the largest file measured. Our judgement.
    const MOST: u64 = 1 << 30;

    pub(super) fn open(address: &str) -> Result<Box<dyn BufRead>, Problem> {
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
            let says = format!("the server answered {status}");
            return Err(
                Problem::new(Code::Network, Place::file(address), says).hint("check the address")
            );
        }
        if answer.content_length().is_some_and(|n| n > MOST) {
            let says = format!("the answer is larger than {} MB", MOST >> 20);
            return Err(Problem::new(Code::Network, Place::file(address), says));
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

    fn failed(address: &str, fault: &reqwest::Error) -> Problem {
        let why = if fault.is_timeout() {
            "no answer in time".to_owned()
        } else if fault.is_connect() {
            "no connection".to_owned()
        } else {
            root(fault)
        };
        Problem::new(
            Code::Network,
            Place::file(address),
            format!("cannot fetch it: {why}"),
        )
        .hint("check the address and the connection, or download the file and name it")
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
