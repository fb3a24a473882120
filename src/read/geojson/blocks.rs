//! A text held in blocks: as much of it as the feature takes that is read.

use std::io::{self, Read};

use memchr::{memchr2, memchr3};

use super::{
    held::{BLOCK, HeldText},
    opening::unspaced,
    text::Spot,
};

/// A text of which no more is held than is looked at.
pub(super) struct Blocks<R> {
    text: HeldText<R>,
    /// Where the first byte of what is left stands.
    at: Spot,
    /// Why the source gave no more.
    stopped: Option<io::Error>,
}

/// One element of a list, from brace to brace.
pub(super) struct WholeFeature<'t> {
    pub(super) json: &'t [u8],
    pub(super) at: Spot,
    /// How many bytes of what is left are behind its last.
    pub(super) ends: usize,
}

impl<R: Read> Blocks<R> {
    pub(super) fn new(source: R) -> Self {
        Self {
            text: HeldText::new(source),
            at: Spot::FIRST,
            stopped: None,
        }
    }

    /// The beginning of the text, as much as is read at a time.
    pub(super) fn first_block(&mut self) -> &[u8] {
        self.more();
        self.left()
    }

    /// Where what is left begins.
    pub(super) fn at(&self) -> Spot {
        self.at
    }

    /// Goes on by so many bytes.
    pub(super) fn take(&mut self, bytes: usize) {
        let taken = self.left().get(..bytes).unwrap_or_default();
        self.at = self.at.past(taken);
        self.text.take(bytes);
    }

    /// What was not taken, held or not.
    pub(super) fn rest(self) -> impl Read {
        let (held, source) = self.text.into_parts();
        let stopped = StoppedRead(self.stopped);
        io::Cursor::new(held).chain(stopped).chain(source)
    }

    /// Whether nothing comes but the end of the list and of the collection.
    pub(super) fn ends_plainly(&mut self) -> bool {
        while self.left().len() < BLOCK && self.more() {}
        let list = unspaced(self.left()).strip_prefix(b"]");
        let collection = list.and_then(|rest| unspaced(rest).strip_prefix(b"}"));
        self.stopped.is_none() && collection.is_some_and(|rest| unspaced(rest).is_empty())
    }

    /// The feature that comes next, where one does, behind a comma or not.
    pub(super) fn feature(&mut self, behind_comma: bool) -> Option<WholeFeature<'_>> {
        let begins = self.brace(behind_comma)?;
        let ends = self.closed(begins)?;
        let left = self.left();
        Some(WholeFeature {
            json: left.get(begins..ends)?,
            at: self.at.past(left.get(..begins)?),
            ends,
        })
    }

    /// How far it is to the next brace, if one opens.
    fn brace(&mut self, behind_comma: bool) -> Option<usize> {
        loop {
            let left = self.left();
            let rest = match unspaced(left) {
                [b',', behind @ ..] if behind_comma => unspaced(behind),
                [_, ..] if behind_comma => return None,
                rest => rest,
            };
            if let Some(first) = rest.first() {
                return (*first == b'{').then_some(left.len() - rest.len());
            }
            if !self.more() {
                return None;
            }
        }
    }

    /// How far it is to where the brace closes that opens here.
    fn closed(&mut self, begins: usize) -> Option<usize> {
        let (mut braces, mut seen) = (Braces::default(), begins);
        loop {
            let unseen = self.left().get(seen..)?;
            if let Some(ends) = braces.closed(unseen) {
                return Some(seen + ends);
            }
            seen += unseen.len();
            if !self.more() {
                return None;
            }
        }
    }

    fn left(&self) -> &[u8] {
        self.text.left()
    }

    /// Reads on; whether more came.
    fn more(&mut self) -> bool {
        if self.stopped.is_some() {
            return false;
        }
        let had = self.left().len();
        self.stopped = self.text.fill(had + had.max(BLOCK)).err();
        self.left().len() > had
    }
}

/// Braces that are open in a text, and whether it is within quotes.
#[derive(Default)]
struct Braces {
    open: usize,
    quoted: bool,
    escaped: bool,
}

impl Braces {
    /// How far it is to where the first brace closes, if it does in this piece of the text.
    fn closed(&mut self, piece: &[u8]) -> Option<usize> {
        let mut behind = usize::from(self.escaped && !piece.is_empty());
        self.escaped &= piece.is_empty();
        loop {
            let rest = piece.get(behind..)?;
            let next = if self.quoted {
                memchr2(b'"', b'\\', rest)?
            } else {
                memchr3(b'"', b'{', b'}', rest)?
            };
            behind += next + 1;
            match rest.get(next)? {
                b'{' => self.open += 1,
                b'}' if self.open == 1 => return Some(behind),
                b'}' => self.open -= 1,
                b'"' => self.quoted = !self.quoted,
                _ if behind == piece.len() => self.escaped = true,
                _ => behind += 1,
            }
        }
    }
}

/// A source that stopped, if it did.
struct StoppedRead(Option<io::Error>);

impl Read for StoppedRead {
    fn read(&mut self, _: &mut [u8]) -> io::Result<usize> {
        self.0.take().map_or(Ok(0), Err)
    }
}
