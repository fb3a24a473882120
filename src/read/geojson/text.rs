//! The bytes of a file with their line and column, without byte-order mark and record separators.
//!
//! JSON has no words for numbers that are none, yet programs write `NaN`, `Infinity` and `-Infinity`.
//! They are handed on as texts of the same length (quoted DEL characters), so that the fault is found
//! where the number is read, with feature and property at hand, and not as broken text.

use std::{
    cell::Cell,
    io::{self, Read},
    rc::Rc,
};

use memchr::{memchr_iter, memrchr};

use super::held::HeldText;
use crate::fault::Place;

/// A place in the text; both from 1, the column in characters.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Spot {
    pub(super) line: u64,
    pub(super) column: u64,
}

impl Spot {
    /// This spot of a file that is still to be named.
    pub(super) fn place(self) -> Place {
        Place::default().at_line(self.line, self.column)
    }

    /// That of the first byte of a text.
    pub(super) const FIRST: Self = Self { line: 1, column: 1 };

    /// The spot reached after walking over these bytes from here.
    pub(super) fn past(self, bytes: &[u8]) -> Self {
        let line = self.line + memchr_iter(b'\n', bytes).count() as u64;
        let last = memrchr(b'\n', bytes).and_then(|end| bytes.get(end + 1..));
        let signs = last
            .unwrap_or(bytes)
            .iter()
            .filter(|byte| !continues(**byte));
        let begins = if last.is_some() { 1 } else { self.column };
        Self {
            line,
            column: begins + signs.count() as u64,
        }
    }

    /// The spot reached after walking over `text` from here.
    pub(super) fn after(self, text: &str) -> Self {
        let (line, column) = text.chars().fold((self.line, self.column), |(l, c), char| {
            if char == '\n' { (l + 1, 1) } else { (l, c + 1) }
        });
        Self { line, column }
    }
}

/// Where the reading is, shared between the text and those who read it.
#[derive(Debug)]
pub(super) struct TextClock {
    /// Of the byte handed out last.
    here: Cell<Spot>,
    /// Bytes that go on with a character begun before them, of this line and of those before it.
    continued: [Cell<u64>; LINES],
    /// Where the value began that was read after the last [`TextClock::mark`].
    start: Cell<Option<Spot>>,
    /// Whether anything but white space came since the last top-level value.
    begun: Cell<bool>,
    /// Whether the text was read to its end.
    ended: Cell<bool>,
    /// The first bytes of the file.
    opening: Cell<[u8; 4]>,
}

impl TextClock {
    pub(super) fn new() -> Self {
        Self {
            here: Cell::new(Spot { line: 1, column: 0 }),
            continued: Default::default(),
            start: Cell::new(None),
            begun: Cell::new(false),
            ended: Cell::new(false),
            opening: Cell::new([0; 4]),
        }
    }

    /// A top-level value begins, if one more comes.
    pub(super) fn next_value(&self) {
        self.begun.set(false);
        self.mark();
    }

    /// Whether the running top-level value holds anything yet.
    pub(super) fn begun(&self) -> bool {
        self.begun.get()
    }

    /// Whether the text was read to its end.
    pub(super) fn ended(&self) -> bool {
        self.ended.get()
    }

    /// Asks for the start of the next value.
    pub(super) fn mark(&self) {
        self.start.set(None);
    }

    /// The start of the value after the last mark; `None` while only white space came.
    pub(super) fn start(&self) -> Option<Spot> {
        self.start.get()
    }

    /// Where the text broke. serde_json counts bytes, and reads on over closing brackets before it says so.
    pub(super) fn of(&self, error: &serde_json::Error) -> Spot {
        let here = self.here.get();
        let wide = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
        let (line, column) = (wide(error.line()), wide(error.column()));
        if line == 0 {
            return here;
        }
        let is_kept = here.line.saturating_sub(line) < LINES as u64;
        let continued = is_kept.then(|| self.continued(line).get());
        let column = column.saturating_sub(continued.unwrap_or_default());
        Spot {
            line,
            column: column.max(1),
        }
    }

    fn continued(&self, line: u64) -> &Cell<u64> {
        let [first, ..] = &self.continued;
        let at = usize::try_from(line % LINES as u64).unwrap_or_default();
        self.continued.get(at).unwrap_or(first)
    }

    /// The first four bytes of the file, zeros where it is shorter.
    pub(super) fn opening(&self) -> [u8; 4] {
        self.opening.get()
    }

    #[inline]
    fn tick(&self, byte: u8) {
        let mut here = self.here.get();
        if continues(byte) {
            let continued = self.continued(here.line);
            continued.set(continued.get() + 1);
        } else {
            here.column += 1;
        }
        if self.start.get().is_none() && !matches!(byte, b' ' | b'\n' | b'\r' | b'\t' | b',' | b':')
        {
            self.start.set(Some(here));
        }
        if !matches!(byte, b' ' | b'\n' | b'\r' | b'\t') {
            self.begun.set(true);
        }
        if byte == b'\n' {
            here.line += 1;
            here.column = 0;
            self.continued(here.line).set(0);
        }
        self.here.set(here);
    }
}

/// Whether a byte goes on with the character of UTF-8 begun before it.
fn continues(byte: u8) -> bool {
    byte & 0xC0 == 0x80
}

/// Lines of which it is known how many bytes are no characters of their own: as many as are read on over where closing
/// brackets stand alone. Our judgement.
const LINES: usize = 16;
/// Stands before a text that some programs write, and belongs to nothing.
pub(super) const BYTE_ORDER_MARK: &[u8] = b"\xEF\xBB\xBF";
/// The longest word that is masked: `-Infinity`.
const LONGEST: usize = 9;
const WORDS: [&str; 3] = ["NaN", "Infinity", "-Infinity"];
/// Stands between quotes for each masked letter; a legal character of a JSON text that nobody types.
const MASK: char = '\u{7f}';

/// A source of JSON that counts lines and columns as its bytes are taken.
pub(super) struct CountedText<R> {
    text: HeldText<R>,
    opened: bool,
    quoted: bool,
    escaped: bool,
    clock: Rc<TextClock>,
}

impl<R: Read> CountedText<R> {
    pub(super) fn new(source: R, clock: Rc<TextClock>) -> Self {
        Self {
            text: HeldText::new(source),
            opened: false,
            quoted: false,
            escaped: false,
            clock,
        }
    }

    /// Takes the byte-order mark off.
    fn open(&mut self) -> io::Result<()> {
        self.text.fill(LONGEST)?;
        if self.text.left().starts_with(BYTE_ORDER_MARK) {
            self.text.take(BYTE_ORDER_MARK.len());
        }
        let mut opening = [0; 4];
        for (to, byte) in opening.iter_mut().zip(self.text.left()) {
            *to = *byte;
        }
        self.clock.opening.set(opening);
        self.opened = true;
        Ok(())
    }

    /// The next byte as it will be handed on.
    fn next(&mut self) -> io::Result<Option<u8>> {
        if !self.opened {
            self.open()?;
        }
        if self.text.left().is_empty() {
            self.text.fill(1)?;
        }
        let Some(&byte) = self.text.left().first() else {
            return Ok(None);
        };
        let byte = match byte {
            b'N' | b'I' | b'-' if !self.quoted => self.mask(byte)?,
            0x1E => b' ',
            _ => byte,
        };
        self.text.take(1);
        self.follow_quotes(byte);
        Ok(Some(byte))
    }

    #[inline]
    fn follow_quotes(&mut self, byte: u8) {
        if self.escaped {
            self.escaped = false;
        } else if byte == b'"' {
            self.quoted = !self.quoted;
        } else if byte == b'\\' && self.quoted {
            self.escaped = true;
        }
    }

    /// Makes a text of a word that stands for no number, and says how it begins now.
    fn mask(&mut self, byte: u8) -> io::Result<u8> {
        if self.text.left().len() < LONGEST {
            self.text.fill(LONGEST)?;
        }
        let ahead = self.text.left_mut();
        if ahead.len() < LONGEST && WORDS.iter().any(|w| w.as_bytes().starts_with(ahead)) {
            // The last word of the text, and not all of it.
            self.clock.ended.set(true);
        }
        let word = WORDS.iter().find(|w| ahead.starts_with(w.as_bytes()));
        let Some(masked) = word.and_then(|w| ahead.get_mut(..w.len())) else {
            return Ok(byte);
        };
        masked.fill(MASK as u8);
        if let [first, .., last] = masked {
            *first = b'"';
            *last = b'"';
        }
        Ok(b'"')
    }
}

impl<R: Read> Read for CountedText<R> {
    /// One byte at a time, so that the clock never runs ahead of the reader.
    #[inline]
    fn read(&mut self, out: &mut [u8]) -> io::Result<usize> {
        let Some(to) = out.first_mut() else {
            return Ok(0);
        };
        let Some(byte) = self.next()? else {
            self.clock.ended.set(true);
            return Ok(0);
        };
        self.clock.tick(byte);
        *to = byte;
        Ok(1)
    }
}

/// The word behind a masked text, without its quotes.
pub(super) fn unmasked(text: &str) -> Option<&'static str> {
    let all_masked = !text.is_empty() && text.chars().all(|c| c == MASK);
    WORDS
        .into_iter()
        .find(|word| all_masked && word.len() == text.len() + 2)
}

/// JSON with every masked text turned back into its word.
pub(super) fn as_written(json: &str) -> String {
    let mask = |word: &str| format!("\"{}\"", MASK.to_string().repeat(word.len() - 2));
    WORDS.into_iter().fold(json.to_owned(), |json, word| {
        json.replace(&mask(word), word)
    })
}
