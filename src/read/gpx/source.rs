//! Bytes → UTF-8 text that knows the line and column of every event.

use std::io::{self, BufRead, Chain, Cursor, Read};

use memchr::{memchr_iter, memrchr};
use quick_xml::{
    Reader,
    encoding::{DecodingReader, detect_encoding},
    events::Event,
};

use crate::limits::{InputLimit, InputLimits};

/// Read at once, bytes. \[ours\]
const CHUNK_BYTES: usize = 64 * 1024;
/// Looked at to tell the kind of file and its encoding, bytes. \[ours\]
const FIRST_BYTES: u64 = 1024;

/// A file from its beginning, although its first bytes were read before.
type Whole<R> = Chain<Cursor<Vec<u8>>, R>;

/// The first bytes of a file and a reader that begins with them again.
pub(super) fn first_bytes<R: Read>(mut text: R) -> io::Result<(Vec<u8>, Whole<R>)> {
    let mut first = Vec::new();
    text.by_ref().take(FIRST_BYTES).read_to_end(&mut first)?;
    let whole = Cursor::new(first.clone()).chain(text);
    Ok((first, whole))
}

/// The text in UTF-8 without byte-order mark, whatever its encoding.
pub(super) fn decoded<'r>(first: &[u8], whole: impl BufRead + 'r) -> Box<dyn Read + 'r> {
    let found = detect_encoding(first);
    let bom_bytes = found.as_ref().map_or(0, |e| e.bom_len());
    let wide = found
        .as_ref()
        .is_some_and(|e| e.encoding().name().starts_with("UTF-16"));
    let mut decoder = DecodingReader::new(whole);
    if !wide {
        let declared = if bom_bytes == 0 {
            declaration(first)
        } else {
            None
        };
        match declared.as_ref().and_then(|d| d.encoder()) {
            Some(e) if !e.name().starts_with("UTF") => decoder.set_encoding(e),
            _ => return Box::new(past_mark(decoder.into_inner(), bom_bytes)),
        }
    }
    Box::new(decoder)
}

/// A text with UTF-8 as the encoding that it declares, where it declares any.
pub(super) fn declared_utf8(text: String) -> String {
    let label = || {
        let head = text.trim_start().strip_prefix("<?xml")?;
        let head = head.split("?>").next()?;
        let (_, after) = head.split_once("encoding")?;
        let quoted = after.trim_start().strip_prefix('=')?.trim_start();
        let quote = quoted.chars().next().filter(|c| "\"'".contains(*c))?;
        let label = quoted.get(1..)?.split(quote).next()?;
        let other = !label.eq_ignore_ascii_case("utf-8");
        let from = label.as_ptr() as usize - text.as_ptr() as usize;
        other.then(|| from..from + label.len())
    };
    let Some(label) = label() else { return text };
    let mut text = text;
    text.replace_range(label, "UTF-8");
    text
}

/// The XML declaration, if the file begins with one (white space may stand before it).
fn declaration(first: &[u8]) -> Option<quick_xml::events::BytesDecl<'static>> {
    let mut reader = Reader::from_reader(first.trim_ascii_start());
    match reader.read_event_into(&mut Vec::new()) {
        Ok(Event::Decl(declaration)) => Some(declaration.into_owned()),
        _ => None,
    }
}

/// `text` without its first `bytes`, which are known to be there.
fn past_mark<R: BufRead>(mut text: R, bytes: usize) -> R {
    text.consume(bytes);
    text
}

/// A place in the text, both from 1.
#[derive(Clone, Copy, Debug)]
pub(super) struct GpxSpot {
    pub(super) line: u64,
    /// In characters.
    pub(super) column: u64,
}

impl GpxSpot {
    /// The place behind `bytes`, which begin here.
    pub(super) fn after(self, bytes: &[u8]) -> Self {
        match memrchr(b'\n', bytes) {
            Some(last) => Self {
                line: self.line + memchr_iter(b'\n', bytes).count() as u64,
                column: 1 + characters(bytes.get(last + 1..).unwrap_or_default()),
            },
            None => Self {
                line: self.line,
                column: self.column + characters(bytes),
            },
        }
    }
}

/// Bytes that begin a character of UTF-8.
fn characters(bytes: &[u8]) -> u64 {
    bytes.iter().filter(|&&b| b & 0xC0 != 0x80).count() as u64
}

/// A byte offset whose place stays known when its chunk is gone.
#[derive(Clone, Copy, Debug, Default)]
struct OffsetMark {
    offset: u64,
    spot: Option<GpxSpot>,
}

/// The text in chunks. Lines are counted a chunk at a time, places worked out only when asked for.
pub(super) struct Lines<'r> {
    inner: Box<dyn Read + 'r>,
    chunk: Box<[u8]>,
    filled: usize,
    used: usize,
    /// Offset of the chunk in the text.
    base: u64,
    at_base: GpxSpot,
    event: OffsetMark,
    held: OffsetMark,
    /// A single tag, text or comment longer than this is refused, MiB, so that memory stays bounded.
    pub(super) most_mib: u64,
}

impl<'r> Lines<'r> {
    pub(super) fn new(inner: Box<dyn Read + 'r>, limits: &InputLimits) -> Self {
        Self {
            inner,
            chunk: vec![0; CHUNK_BYTES].into_boxed_slice(),
            filled: 0,
            used: 0,
            base: 0,
            at_base: GpxSpot { line: 1, column: 1 },
            event: OffsetMark::default(),
            held: OffsetMark::default(),
            most_mib: limits[InputLimit::TagMib],
        }
    }

    /// Notes that the next event begins here.
    pub(super) fn begin_event(&mut self) {
        self.event = OffsetMark {
            offset: self.base + self.used as u64,
            spot: None,
        };
    }

    /// What of the text was read and not taken yet.
    pub(super) fn at_hand(&self) -> &[u8] {
        self.chunk.get(self.used..self.filled).unwrap_or_default()
    }

    /// Keeps the place of the running event for [`Lines::held`].
    pub(super) fn hold(&mut self) {
        self.held = self.event;
    }

    /// Where the running event begins.
    pub(super) fn event(&self) -> GpxSpot {
        self.spot(self.event)
    }

    /// Where the event that was held begins.
    pub(super) fn held(&self) -> GpxSpot {
        self.spot(self.held)
    }

    fn spot(&self, mark: OffsetMark) -> GpxSpot {
        mark.spot.unwrap_or_else(|| {
            let bytes = usize::try_from(mark.offset.saturating_sub(self.base)).unwrap_or(0);
            self.at_base
                .after(self.chunk.get(..bytes.min(self.filled)).unwrap_or_default())
        })
    }

    /// Whether the running event is longer than anything a route needs.
    pub(super) fn overlong(&self) -> bool {
        self.base.saturating_sub(self.event.offset) > self.most_mib << 20
    }

    #[cold]
    fn next_chunk(&mut self) -> io::Result<()> {
        self.event.spot = Some(self.event());
        self.held.spot = Some(self.held());
        let old = self.chunk.get(..self.filled).unwrap_or_default();
        self.at_base = self.at_base.after(old);
        self.base += self.filled as u64;
        (self.filled, self.used) = (0, 0);
        if self.overlong() {
            return Err(io::Error::from(io::ErrorKind::FileTooLarge));
        }
        self.filled = self.inner.read(&mut self.chunk)?;
        Ok(())
    }
}

impl Read for Lines<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let read = self.fill_buf()?.read(into)?;
        self.consume(read);
        Ok(read)
    }
}

impl BufRead for Lines<'_> {
    #[inline]
    fn fill_buf(&mut self) -> io::Result<&[u8]> {
        if self.used >= self.filled {
            self.next_chunk()?;
        }
        Ok(self.at_hand())
    }

    #[inline]
    fn consume(&mut self, amount: usize) {
        self.used = (self.used + amount).min(self.filled);
    }
}
