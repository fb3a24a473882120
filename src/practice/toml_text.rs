//! A TOML text with the places of what stands in it, and every line at which it is none.

use std::ops::Range;

use serde::de::DeserializeOwned;
use toml::{
    Spanned,
    de::{DeTable, Error},
};

use crate::fault::{
    Fault, Place, Wrong,
    place::Excerpt,
    toml::{InToml, NoToml, NotClosed},
};

/// Characters of a line or value that a message quotes; our judgement.
const QUOTED_CHARS: usize = 60;
/// Faults of one text that are told one by one before they are only counted; our judgement.
const MOST_TOLD: usize = 20;

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
        let mut spots: Vec<(usize, NoToml)> = Vec::new();
        let mut told_to = None;
        for (span, error) in errors {
            if told_to.is_some_and(|end| span.start <= end) {
                continue;
            }
            let why = self.why(&span, error.message());
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

    fn why(&self, span: &Range<usize>, says: &str) -> NoToml {
        let value = self.line(span.start).split_once('=');
        let value = value.map(|(_, value)| value.trim_start());
        let no_value = value.is_some_and(str::is_empty);
        let unquoted = value.is_some_and(|v| v.starts_with(char::is_alphabetic));
        match not_closed(says) {
            _ if says.starts_with("duplicate key") => {
                let name = self.text.get(span.clone()).unwrap_or_default();
                NoToml::Twice(Excerpt::of(name, QUOTED_CHARS))
            }
            _ if says.contains("recurs") => NoToml::Deep,
            _ if says.starts_with("key with no value") || no_value => NoToml::NoValue,
            Some(what) => NoToml::NotClosed(what),
            None if unquoted => NoToml::Unquoted,
            None => NoToml::Other(says.replace('\n', ", ")),
        }
    }
}

fn not_closed(says: &str) -> Option<NotClosed> {
    let begins = |beginning: &str| says.starts_with(beginning);
    if begins("unclosed inline table") {
        Some(NotClosed::Braces)
    } else if begins("unclosed table") || begins("unclosed array table") {
        Some(NotClosed::Name)
    } else if begins("unclosed array") || begins("missing comma between array elements") {
        // Of a list that is not closed the next line comes first: it lacks a comma.
        Some(NotClosed::List)
    } else if says.contains("string, expected `") {
        Some(NotClosed::Text)
    } else {
        None
    }
}

/// The faults of the first of them, and how many more there are; a fault is made only where it is told.
pub(super) fn told<T>(mut all: Vec<T>, fault: impl Fn(T) -> Fault) -> Vec<Fault> {
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

    fn why(text: &str) -> Vec<NoToml> {
        let faults = TomlText::parse("t.toml", text).err().unwrap_or_default();
        let why = faults.into_iter().filter_map(|fault| match fault.what {
            Wrong::Toml(InToml::Line { why, .. }) => Some(why),
            _ => None,
        });
        why.collect()
    }

    /// Goes by the words of the parser, so another version of it is told here.
    #[test]
    fn the_parser_is_understood() {
        let twice = |name: &str| NoToml::Twice(Excerpt::of(name, 60));
        assert_eq!(
            why("party = 3\nparty = 4\n[rope]\n[rope]"),
            [twice("party"), twice("rope")]
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
