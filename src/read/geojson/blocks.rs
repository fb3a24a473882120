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

/// So many bytes of whole features are looked at together at least: enough work for all cores, little to hold. Our
/// judgement.
const TOGETHER: usize = 16 * BLOCK;

/// One element of a list, from brace to brace.
pub(super) struct WholeFeature {
    /// Where its first byte is in what is left, and where it is behind its last.
    begins: usize,
    ends: usize,
    pub(super) at: Spot,
    /// Where what follows stands.
    behind: Spot,
}

impl WholeFeature {
    /// Its text, of what is left.
    pub(super) fn json<'t>(&self, left: &'t [u8]) -> &'t [u8] {
        left.get(self.begins..self.ends).unwrap_or_default()
    }
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

    /// Some of the features that come next, if any do, the first behind a comma or not.
    pub(super) fn features(&mut self, behind_comma: bool) -> Vec<WholeFeature> {
        let (mut features, mut from, mut at) = (Vec::new(), 0, self.at);
        while from < TOGETHER
            && let Some(feature) = self.feature(from, at, behind_comma || from > 0)
        {
            (from, at) = (feature.ends, feature.behind);
            features.push(feature);
        }
        features
    }

    fn feature(&mut self, from: usize, at: Spot, behind_comma: bool) -> Option<WholeFeature> {
        let begins = self.brace(from, behind_comma)?;
        let ends = self.closed(begins)?;
        let left = self.left();
        let at = at.past(left.get(from..begins)?);
        let behind = at.past(left.get(begins..ends)?);
        Some(WholeFeature {
            begins,
            ends,
            at,
            behind,
        })
    }

    /// Goes on behind a feature.
    pub(super) fn pass(&mut self, feature: &WholeFeature) {
        self.at = feature.behind;
        self.text.take(feature.ends);
    }

    /// How far it is to the next brace, if one opens.
    fn brace(&mut self, from: usize, behind_comma: bool) -> Option<usize> {
        loop {
            let left = self.left();
            let rest = match unspaced(left.get(from..)?) {
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

    /// Goes past some bytes, if they come next and are held.
    pub(super) fn skip(&mut self, bytes: &[u8]) -> bool {
        let come = self.left().starts_with(bytes);
        if come {
            self.take(bytes.len());
        }
        come
    }

    /// What is held and was not passed.
    pub(super) fn left(&self) -> &[u8] {
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
