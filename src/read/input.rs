//! One input under the name that messages call it, or why it could not be opened.

use std::{
    io::{BufRead, Read},
    string::FromUtf8Error,
};

use crate::{
    fault::{Fault, Place, files::InFiles, instead::Instead},
    limits::{InputLimit, InputLimits},
    raster::ReadSeek,
    read::{kind, signature},
};

/// Text that is read once, from its beginning.
///
/// ```
/// use schrund::read::{input::{Input, Text}, lay};
///
/// let line: Text<'_> = Box::new(schrund::example::ROUTE_GPX.as_bytes());
/// let route = lay::route(Input::new("standard input", line))?.value;
/// assert!((route.length_m() - 3010.9).abs() < 0.1, "0.027° of latitude at 66.5°");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub type Text<'a> = Box<dyn BufRead + Send + 'a>;

/// A file that is read here and there, as an index tells: whoever uses the library opens it, or asks for pieces of it from
/// afar.
///
/// ```
/// use schrund::{example, read::{input::{Input, Seekable}, lay::Sources, trip}};
///
/// let text = |name: &str, text: &'static str| Input::text(name, text.as_bytes());
/// let mut sources = Sources::new(text("line.gpx", example::ROUTE_GPX), text("zones.geojson", example::ZONES_GEOJSON));
/// sources.trip = Some(trip::file(text("trip.toml", example::TRIP_TOML)));
/// let held: Seekable = Box::new(std::io::Cursor::new(example::PAIR_GLACIERS_GEOJSON.as_bytes()));
/// sources.glaciers_near = Some(Input::new("ice.geojson", held));
/// assert_eq!(sources.job()?.glaciers.len(), 1, "a file without an index is read from its beginning");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub type Seekable = Box<dyn ReadSeek>;

/// One input. What could not be opened brings its faults along, so that they are told together with those of the others.
///
/// ```
/// use schrund::{example::ZONES_GEOJSON, fault::{Fault, Place, files::InFiles}, read::{input::Input, lay::Sources}};
///
/// let stopped = Fault::new(InFiles::Stopped("no such device".to_owned()), Place::file("line.gpx"));
/// let line = Input::opened("line.gpx", Err(stopped.clone()));
/// let ice = Input::text("ice.geojson", ZONES_GEOJSON.as_bytes());
/// let faults = Sources::new(line, ice).job().expect_err("there is no line");
/// assert_eq!(faults[0], stopped, "told together with what is wrong elsewhere");
/// assert_eq!(faults.len(), 2, "nobody said how many go, either");
/// ```
pub struct Input<T> {
    /// What messages call it.
    pub name: String,
    /// What it holds, or why it could not be opened.
    pub source: Result<T, Vec<Fault>>,
    /// How much of it is read.
    pub limits: InputLimits,
}

impl<T> Input<T> {
    /// An input that is there.
    #[must_use]
    pub fn new(name: impl Into<String>, source: T) -> Self {
        Self::opened(name, Ok(source))
    }

    /// An input opened by somebody who may have failed.
    #[must_use]
    pub fn opened(name: impl Into<String>, source: Result<T, Fault>) -> Self {
        Self {
            name: name.into(),
            source: source.map_err(|fault| vec![fault]),
            limits: InputLimits::default(),
        }
    }

    /// The same with other limits.
    #[must_use]
    pub fn within(self, limits: InputLimits) -> Self {
        Self { limits, ..self }
    }
}

impl<'a> Input<Text<'a>> {
    /// A text.
    ///
    /// ```
    /// let input = schrund::read::input::Input::text("trip.toml", &b"party = 3"[..]);
    /// assert_eq!(input.whole().unwrap(), "party = 3");
    /// ```
    #[must_use]
    pub fn text(name: impl Into<String>, text: impl BufRead + Send + 'a) -> Self {
        Self::new(name, Box::new(text))
    }

    /// The first byte that is neither space nor byte-order mark; nothing is consumed.
    pub(super) fn first_sign(&mut self) -> Option<u8> {
        let text = self.source.as_mut().ok()?;
        kind::first_sign(text.fill_buf().ok()?)
    }

    /// All of a small text, without byte-order mark.
    ///
    /// # Errors
    /// It could not be opened or read, is too large, or is not UTF-8.
    pub fn whole(self) -> Result<String, Vec<Fault>> {
        let place = Place::file(&self.name);
        let fault = |what: InFiles, at: Place| vec![Fault::new(what, at)];
        let most = self.limits.bytes(InputLimit::TextMib);
        let most_mib = self.limits[InputLimit::TextMib];
        let mut bytes = Vec::new();
        self.source?
            .take(most + 1)
            .read_to_end(&mut bytes)
            .map_err(|e| fault(InFiles::Stopped(e.to_string()), place.clone()))?;
        if bytes.len() as u64 > most {
            return Err(fault(InFiles::TooLarge { most_mib }, place));
        }
        if let Some(instead) = no_toml(&bytes) {
            return Err(fault(InFiles::NoToml(instead), place));
        }
        let text = utf8(&self.name, bytes).map_err(|fault| vec![fault])?;
        let bare = text.strip_prefix('\u{feff}').map(str::to_owned);
        Ok(bare.unwrap_or(text))
    }
}

/// Bytes of a file as the text that they are.
///
/// # Errors
/// They are not UTF-8.
///
/// ```
/// use schrund::read::input::utf8;
///
/// assert_eq!(utf8("trip.toml", b"party = 3".to_vec())?, "party = 3");
/// let fault = utf8("zones.geojson", b"{\n\"name\": \"Gr\xfcn\"}".to_vec()).expect_err("Latin letters");
/// assert_eq!((fault.code(), fault.at.to_string().as_str()), ("broken-text", "zones.geojson, line 2 column 12"));
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
pub fn utf8(name: &str, bytes: Vec<u8>) -> Result<String, Fault> {
    String::from_utf8(bytes).map_err(|e| {
        let (line, column) = end_of(&e);
        let place = Place::file(name).at_line(line, column);
        Fault::new(InFiles::NotUtf8, place)
    })
}

/// Line and column, from 1, of the first byte that is no UTF-8.
fn end_of(error: &FromUtf8Error) -> (u64, u64) {
    let (good, _) = error.as_bytes().split_at(error.utf8_error().valid_up_to());
    let good = String::from_utf8_lossy(good);
    let line = good.matches('\n').count() as u64 + 1;
    let column = good.rsplit('\n').next().unwrap_or("").chars().count() as u64 + 1;
    (line, column)
}

/// What a text is that begins as no TOML does.
fn no_toml(bytes: &[u8]) -> Option<Instead> {
    let by_sign = match kind::first_sign(bytes) {
        Some(b'{') => Some(Instead::Json),
        Some(b'<') => Some(signature::of_xml(bytes).unwrap_or(Instead::Xml)),
        _ => None,
    };
    signature::of(bytes).or(by_sign)
}
