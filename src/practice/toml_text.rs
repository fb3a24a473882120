//! A TOML text with the places of what stands in it, and every line at which it is none.

use std::ops::Range;

use serde::de::DeserializeOwned;
use toml::{
    Spanned,
    de::{DeTable, DeValue, Error},
};

use crate::fault::{
    Fault, Place, Wrong,
    place::Excerpt,
    toml::{InToml, NoToml},
};
use crate::practice::toml_shape::{self, Statement};

/// Characters of a line or value that a message quotes; our judgement.
const QUOTED_CHARS: usize = 60;
/// Faults of one text that are told one by one before they are only counted; our judgement.
const MOST_TOLD: usize = 20;

/// How a practice set begins where it is printed for reading.
const PRINTED: &str = "practice set ";

/// The name of a practice set that was printed for reading and is no TOML.
fn printed_set(text: &str) -> Option<&str> {
    let first = text.trim_start_matches('\u{feff}').lines().next()?;
    let set = first.strip_prefix(PRINTED)?.trim();
    let is_name = !set.is_empty() && !set.contains(['=', '"', ' ']);
    is_name.then_some(set)
}

/// A name beside that of a file: nothing of the leader's is offered for replacement.
fn beside(file: &str) -> String {
    let stem = file
        .strip_suffix(".toml")
        .or_else(|| file.strip_suffix(".txt"));
    format!("{}-2.toml", stem.unwrap_or(file))
}

/// A TOML text that parses.
///
/// ```
/// use std::collections::BTreeMap;
/// use schrund::practice::toml_text::TomlText;
///
/// let text = TomlText::parse("figures.toml", "margin_m = 20.0\ntie_in_m = 1.0\n")?;
/// assert!(text.names().eq(["margin_m", "tie_in_m"]));
/// let figures: BTreeMap<String, f64> = text.read()?;
/// assert_eq!(figures["tie_in_m"], 1.0);
///
/// let faults = TomlText::parse("figures.toml", "margin_m =\ntie_in_m = 1.0\n").err().expect("no value");
/// assert_eq!(faults[0].at.to_string(), "figures.toml, line 1 column 11");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub struct TomlText<'t> {
    file: &'t str,
    text: &'t str,
    /// Its members with their places.
    pub(super) root: DeTable<'t>,
}

impl<'t> TomlText<'t> {
    /// Parses a text; `file` is what the messages call it.
    ///
    /// # Errors
    /// Every line that is no TOML; behind something that is never closed nothing can be told.
    pub fn parse(file: &'t str, text: &'t str) -> Result<Self, Vec<Fault>> {
        let (root, errors) = DeTable::parse_recoverable(text);
        let read = Self {
            file,
            text,
            root: root.into_inner(),
        };
        if errors.is_empty() {
            Ok(read)
        } else if let Some(set) = printed_set(text) {
            let (set, free) = (set.to_owned(), beside(file));
            Err(vec![Fault::new(
                InToml::PrintedSet { set, free },
                read.place(),
            )])
        } else {
            Err(read.broken(&errors))
        }
    }

    /// Reads what was checked before.
    ///
    /// # Errors
    /// It is not of the form that was checked.
    pub fn read<T: DeserializeOwned>(&self) -> Result<T, Vec<Fault>> {
        toml::from_str(self.text).map_err(|e| self.broken(&[e]))
    }

    /// The names of all members.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.root.keys().map(|key| &**key.get_ref())
    }

    /// The file as a whole.
    #[must_use]
    pub fn place(&self) -> Place {
        Place::file(self.file)
    }

    /// Where a piece of the text begins.
    pub(super) fn place_of(&self, span: &Range<usize>) -> Place {
        let (line, column) = self.line_column(span.start);
        self.place().at_line(line, column)
    }

    /// A piece of the text as it is quoted.
    pub(super) fn found<T>(&self, value: &Spanned<T>) -> Excerpt {
        let whole = self.text.get(value.span()).unwrap_or_default();
        Excerpt::of(whole, QUOTED_CHARS)
    }

    fn line_column(&self, at: usize) -> (u64, u64) {
        let before = self.text.get(..at).unwrap_or(self.text);
        let line = before.matches('\n').count() as u64 + 1;
        let column = before.rsplit('\n').next().unwrap_or("").chars().count() as u64 + 1;
        (line, column)
    }

    /// One fault a line, in their order.
    fn broken(&self, errors: &[Error]) -> Vec<Fault> {
        // Of a name of too many parts the parser does not say where it stands.
        let most_dots = self.text.lines().max_by_key(|l| l.matches('.').count());
        let deepest = most_dots.map_or(0, |l| l.as_ptr() as usize - self.text.as_ptr() as usize);
        let span = |error: &Error| error.span().unwrap_or(deepest..deepest);
        let mut errors: Vec<(Range<usize>, &Error)> = errors.iter().map(|e| (span(e), e)).collect();
        errors.sort_by_key(|(span, _)| span.start);
        let statements = toml_shape::statements(self.text);
        let mut spots: Vec<(usize, NoToml)> = Vec::new();
        let mut told_to = None;
        for (span, error) in errors {
            if told_to.is_some_and(|end| span.start <= end) {
                continue;
            }
            // What is only counted is not looked for.
            let will_be_told = spots.len() < MOST_TOLD;
            let why = self.why(&span, &statements, will_be_told, error.message());
            let is_last = matches!(why, NoToml::NotClosed(_) | NoToml::Deep);
            told_to = Some(span.start + self.rest_of_line(span.start));
            spots.push((span.start, why));
            if is_last {
                break;
            }
        }
        told(spots, |(at, why)| {
            let line = Excerpt::of(self.line(at).trim(), QUOTED_CHARS);
            Fault::new(InToml::Line { why, line }, self.place_of(&(at..at)))
        })
    }

    /// Bytes from here to the end of the line.
    fn rest_of_line(&self, at: usize) -> usize {
        let after = self.text.get(at..).unwrap_or_default();
        after.find('\n').unwrap_or(after.len())
    }

    /// The line that holds a byte.
    fn line(&self, at: usize) -> &'t str {
        let before = self.text.get(..at).unwrap_or(self.text);
        let from = before.rfind('\n').map_or(0, |end| end + 1);
        let to = at + self.rest_of_line(at);
        self.text.get(from..to).unwrap_or_default()
    }

    /// Read off the text; the parser's own words are only repeated where nothing is seen.
    fn why(&self, span: &Range<usize>, statements: &[Statement], told: bool, says: &str) -> NoToml {
        let line = self.line(span.start);
        let value = line.split_once('=').map(|(_, value)| value.trim_start());
        let named = line.trim();
        let alone = value.is_none() && !named.is_empty() && !named.starts_with(['[', '#']);
        let statement = toml_shape::at(statements, span.start);
        let open = statement.and_then(|s| s.open);
        let written = value.map(Bare::of);
        if statement.is_some_and(|s| s.deep) {
            NoToml::Deep
        } else if let Some(what) = open {
            NoToml::NotClosed(what)
        } else if alone || value.is_some_and(|v| v.is_empty() || v.starts_with('#')) {
            NoToml::NoValue
        } else if let Some(name) = told.then(|| self.twice(span)).flatten() {
            NoToml::Twice(Excerpt::of(name, QUOTED_CHARS))
        } else {
            let other = || NoToml::Other(says.replace('\n', ", "));
            written.and_then(Bare::why).unwrap_or_else(other)
        }
    }

    /// The name at which a fault is told, where the same table has had it before.
    fn twice(&self, span: &Range<usize>) -> Option<&'t str> {
        let name = self
            .text
            .get(span.clone())
            .filter(|name| !name.is_empty())?;
        let line = self.line(span.start);
        let from = span.start - (line.as_ptr() as usize - self.text.as_ptr() as usize);
        // What stands behind a sign of equality is no name.
        if line.get(..from).is_some_and(|before| before.contains('=')) {
            return None;
        }
        let unquoted = name.trim_matches(['"', '\'']);
        // The second head of a table is the one that the parser keeps.
        let head = line.trim();
        let before = self.text.get(..span.start).unwrap_or_default().lines();
        let is_again = head.starts_with('[') && before.map(str::trim).any(|line| line == head);
        (is_again || holds_before(&self.root, unquoted, span.start)).then_some(name)
    }
}

/// A value that is no TOML, by what it looks like.
#[derive(Clone, Copy)]
enum Bare {
    Words,
    Numbers,
    NumberAnd,
    Curly,
    Other,
}

/// Quotation marks that are no TOML.
const CURLY: [char; 6] = ['“', '”', '„', '‘', '’', '«'];

impl Bare {
    fn of(value: &str) -> Self {
        let value = value.split('#').next().unwrap_or(value).trim();
        let is_number = |part: &str| {
            let part = part.trim().trim_start_matches(['-', '+']);
            let digits = |c: char| c.is_ascii_digit() || c == '.';
            part.starts_with(|c: char| c.is_ascii_digit())
                && part.chars().all(digits)
                && part.matches('.').count() < 2
        };
        let number = value.trim_start_matches(['-', '+']);
        if value
            .trim_start_matches('[')
            .trim_start()
            .starts_with(CURLY)
        {
            Self::Curly
        } else if value.starts_with(char::is_alphabetic) {
            Self::Words
        } else if value.contains(',') && value.split(',').all(is_number) {
            Self::Numbers
        } else if !number.starts_with(|c: char| c.is_ascii_digit()) || is_number(value) {
            Self::Other
        } else if value.contains(':') || value.matches(['.', '/', '-']).count() > 1 {
            // A time of day or a day.
            Self::Words
        } else if value.contains(char::is_alphabetic) {
            Self::NumberAnd
        } else {
            Self::Other
        }
    }

    fn why(self) -> Option<NoToml> {
        match self {
            Self::Words => Some(NoToml::Unquoted),
            Self::Numbers => Some(NoToml::Commas),
            Self::NumberAnd => Some(NoToml::AfterNumber),
            Self::Curly => Some(NoToml::Curly),
            Self::Other => None,
        }
    }
}

/// Whether a table or one in it has this name before a byte.
fn holds_before(table: &DeTable<'_>, name: &str, byte: usize) -> bool {
    table.iter().any(|(key, value)| {
        let here = key.get_ref() == name && key.span().start < byte;
        here || in_value(value.get_ref(), name, byte)
    })
}

fn in_value(value: &DeValue<'_>, name: &str, byte: usize) -> bool {
    match value {
        DeValue::Table(table) => holds_before(table, name, byte),
        DeValue::Array(all) => all.iter().any(|v| in_value(v.get_ref(), name, byte)),
        _ => false,
    }
}

/// The faults of the first of them, and how many more there are; a fault is made only where it is told.
pub(crate) fn told<T>(mut all: Vec<T>, fault: impl Fn(T) -> Fault) -> Vec<Fault> {
    let more = all.len().saturating_sub(MOST_TOLD);
    all.truncate(MOST_TOLD);
    let mut faults: Vec<Fault> = all.into_iter().map(fault).collect();
    if let (Some(last), 1..) = (faults.last(), more) {
        let at = Place {
            file: last.at.file.clone(),
            ..Place::default()
        };
        faults.push(Fault::new(Wrong::More(last.kind(), more), at));
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fault::toml::NotClosed;

    fn why(text: &str) -> Vec<NoToml> {
        let faults = TomlText::parse("t.toml", text).err().unwrap_or_default();
        let why = faults.into_iter().filter_map(|fault| match fault.what {
            Wrong::Toml(InToml::Line { why, .. }) => Some(why),
            _ => None,
        });
        why.collect()
    }

    #[test]
    fn why_a_line_is_no_toml_is_read_off_the_text() {
        let twice = |name: &str| NoToml::Twice(Excerpt::of(name, 60));
        assert_eq!(
            why("party = 3\nparty = 4\n[rope]\n[rope]"),
            [twice("party"), twice("rope")]
        );
        assert_eq!(why("name = name"), [NoToml::Unquoted]);
        assert_eq!(
            why("start = \"04:30\"\nback_by = start"),
            [NoToml::Unquoted]
        );
        for (text, what) in [
            ("party = [1, 2\nname = \"x\"\n", NotClosed::List),
            ("party = {\n", NotClosed::Braces),
            ("[assume\nmargin_m = 3\n", NotClosed::Name),
            ("[[rope]\nlength_m = 3\n", NotClosed::Name),
            ("name = \"x\nparty = 3\n", NotClosed::Text),
            ("name = '''x\nparty = 3\n", NotClosed::Text),
        ] {
            assert_eq!(why(text), [NoToml::NotClosed(what)], "{text}");
        }
        assert_eq!(why("party =\nname\n"), [NoToml::NoValue, NoToml::NoValue]);
        for word in ["three", "never", "in two", "bike", "fast"] {
            assert_eq!(
                why(&format!("travel = {word}\n")),
                [NoToml::Unquoted],
                "{word}"
            );
        }
        let deep = "a.".repeat(20_000);
        assert_eq!(why(&format!("x = 1\n{deep}a = 1\n")), [NoToml::Deep]);
        assert_eq!(
            why(&format!("a = {}\n", "[".repeat(20_000))),
            [NoToml::Deep]
        );
        assert!(matches!(why("n = 01\n")[..], [NoToml::Other(_)]));
        for (text, want) in [
            ("rope = 60,5 # metres\n", NoToml::Commas),
            ("party = 82, 75,90\n", NoToml::Commas),
            ("gap_m = 6 m\n", NoToml::AfterNumber),
            ("start = 4h30\n", NoToml::AfterNumber),
            ("date = 21.08.2027\n", NoToml::Unquoted),
            ("utc_offset = +02:00\n", NoToml::Unquoted),
        ] {
            assert_eq!(why(text), [want], "{text}");
        }
    }

    #[test]
    fn a_name_too_deep_is_told_with_its_line() {
        let text = format!("x = 1\n{}a = 1\n", "a.".repeat(20_000));
        let faults = TomlText::parse("t.toml", &text).err().unwrap();
        assert_eq!((faults.len(), faults[0].at.line), (1, Some(2)));
    }

    #[test]
    fn many_faults_are_counted_after_some() {
        let text = "name =\n".repeat(100);
        let faults = TomlText::parse("t.toml", &text).err().unwrap();
        assert_eq!(faults.len(), MOST_TOLD + 1);
        assert_eq!(
            faults[MOST_TOLD].to_string(),
            "error[broken-text]: and 80 more like this\n  at: t.toml"
        );
    }
}
