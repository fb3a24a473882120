//! Project Fluent's FTL as far as the catalogue uses it; what cannot be used is told with its file and key.

use std::{
    iter::{from_fn, once},
    mem,
};

use fluent_syntax::{
    ast::{self, Expression, InlineExpression, PatternElement, VariantKey},
    parser,
    unicode::unescape_unicode_to_string,
};

use crate::say::pattern::{BUILT_IN, Entry, Key, Pattern, PatternPiece, Select};

/// Units of length that follow the reader's choice, and so are never typed behind a number.
const TURNED: [&str; 4] = ["m", "km", "ft", "mi"];

/// The messages and terms of a file by key, in its order, and what is wrong with it.
pub(crate) fn read(file: &str, text: &str) -> (Vec<(String, Entry)>, Vec<String>) {
    let (resource, errors) = match parser::parse_runtime(text) {
        Ok(resource) => (resource, Vec::new()),
        Err(both) => both,
    };
    let mut faults: Vec<String> = errors
        .iter()
        .map(|error| format!("{file}: line {}: {error}", line(text, error.pos.start)))
        .collect();
    let mut entries = Vec::new();
    for entry in resource.body {
        let (key, value, attributes) = match entry {
            ast::Entry::Message(it) => (it.id.name.to_owned(), it.value, it.attributes),
            ast::Entry::Term(it) => (format!("-{}", it.id.name), Some(it.value), it.attributes),
            _ => continue,
        };
        let mut reader = Reader {
            file,
            key: &key,
            faults: &mut faults,
        };
        if let Some(entry) = reader.entry(value.as_ref(), &attributes) {
            entries.push((key, entry));
        }
    }
    (entries, faults)
}

/// The one entry of a text that [`written`] found; `None` where it cannot be used.
pub(crate) fn entry(file: &str, text: &str) -> Option<Entry> {
    let (entries, _) = read(file, text);
    entries.into_iter().next().map(|(_, entry)| entry)
}

/// Keys and texts of the entries of a file: each begins a line, and all that does not belongs to the one before it.
pub(crate) fn written(text: &'static str) -> impl Iterator<Item = (&'static str, &'static str)> {
    let of_key = |sign: char| sign.is_ascii_alphanumeric() || matches!(sign, '-' | '_');
    let begins = |at: usize| {
        text.get(at..).is_some_and(|rest| {
            rest.starts_with(|s: char| s.is_ascii_alphabetic() || "-#".contains(s))
        })
    };
    let lines = once(0).chain(text.match_indices('\n').map(|(end, _)| end + 1));
    let mut begun = lines.filter(move |at| begins(*at)).peekable();
    let pieces = from_fn(move || {
        let from = begun.next()?;
        text.get(from..begun.peek().copied().unwrap_or(text.len()))
    });
    let entries = pieces.filter(|piece| !piece.starts_with('#'));
    entries.filter_map(move |piece| Some((piece.get(..piece.find(|s| !of_key(s))?)?, piece)))
}

fn line(text: &str, at: usize) -> usize {
    let before = text.bytes().take(at);
    before.filter(|&b| b == b'\n').count() + 1
}

struct Reader<'f> {
    file: &'f str,
    key: &'f str,
    faults: &'f mut Vec<String>,
}

impl Reader<'_> {
    fn fault(&mut self, what: &str) {
        let (file, key) = (self.file, self.key);
        self.faults.push(format!("{file}: {key}: {what}"));
    }

    /// `None` with a fault where it says nothing.
    fn entry(
        &mut self,
        value: Option<&ast::Pattern<&str>>,
        attributes: &[ast::Attribute<&str>],
    ) -> Option<Entry> {
        let Some(value) = value else {
            self.fault("it has attributes and no text of its own");
            return None;
        };
        if self.key.starts_with('-') && !attributes.is_empty() {
            self.fault("a term has no attributes");
        }
        let value = self.pattern(value);
        let attributes = attributes
            .iter()
            .map(|it| (it.id.name.to_owned(), self.pattern(&it.value)))
            .collect();
        Some(Entry { value, attributes })
    }

    fn pattern(&mut self, pattern: &ast::Pattern<&str>) -> Pattern {
        let mut pieces = Pieces::default();
        let mut text = String::new();
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => text.push_str(value),
                PatternElement::Placeable { expression } => {
                    self.text(&mem::take(&mut text), &mut pieces);
                    let piece = self.expression(expression);
                    pieces.extend(piece);
                }
            }
        }
        self.text(&text, &mut pieces);
        if pieces.code.is_some() {
            self.fault("a backtick is not closed");
        }
        Pattern(pieces.done)
    }

    fn text(&mut self, text: &str, pieces: &mut Pieces) {
        for (i, part) in folded(text).split('`').enumerate() {
            if i > 0 {
                pieces.turn();
            }
            if pieces.code.is_none() && has_length(part) {
                self.fault("a length is typed into the text: it would not follow the units shown");
            }
            pieces.extend((!part.is_empty()).then(|| PatternPiece::Words(part.to_owned())));
        }
    }

    fn expression(&mut self, expression: &Expression<&str>) -> Option<PatternPiece> {
        match expression {
            Expression::Inline(inline) => self.inline(inline),
            Expression::Select { selector, variants } => {
                let InlineExpression::VariableReference { id } = selector else {
                    self.fault("only an argument, `$name`, can choose a variant");
                    return None;
                };
                let default = variants.iter().position(|v| v.default).unwrap_or(0);
                let variants = variants
                    .iter()
                    .map(|v| (self.key(&v.key), self.pattern(&v.value)))
                    .collect();
                let argument = id.name.to_owned();
                Some(PatternPiece::Select(Select {
                    argument,
                    variants,
                    default,
                }))
            }
        }
    }

    fn key(&mut self, key: &VariantKey<&str>) -> Key {
        match key {
            VariantKey::Identifier { name } => Key::Word((*name).to_owned()),
            VariantKey::NumberLiteral { value } => match value.parse() {
                Ok(number) => Key::Number(number),
                Err(_) => {
                    self.fault("only a whole number can stand for a variant");
                    Key::Word((*value).to_owned())
                }
            },
        }
    }

    fn inline(&mut self, inline: &InlineExpression<&str>) -> Option<PatternPiece> {
        match inline {
            InlineExpression::StringLiteral { value } => {
                let text = unescape_unicode_to_string(value).into_owned();
                return Some(PatternPiece::Words(text));
            }
            InlineExpression::VariableReference { id } if BUILT_IN.contains(&id.name) => {
                self.fault(&format!(
                    "`${}` chooses a variant and is not shown",
                    id.name
                ));
            }
            InlineExpression::VariableReference { id } => {
                return Some(PatternPiece::Argument(id.name.to_owned()));
            }
            InlineExpression::MessageReference {
                id,
                attribute: None,
            } => return Some(PatternPiece::Entry(id.name.to_owned())),
            InlineExpression::TermReference {
                id,
                attribute: None,
                arguments: None,
            } => return Some(PatternPiece::Entry(format!("-{}", id.name))),
            InlineExpression::MessageReference { .. } | InlineExpression::TermReference { .. } => {
                self.fault("a reference takes no attribute and no arguments");
            }
            InlineExpression::FunctionReference { .. } => self.fault("functions are not used"),
            InlineExpression::NumberLiteral { .. } => {
                self.fault("a number stands as text, or comes as an argument");
            }
            InlineExpression::Placeable { .. } => self.fault("braces stand inside braces"),
        }
        None
    }
}

/// Pieces as they are found; those between backticks gather apart.
#[derive(Default)]
struct Pieces {
    done: Vec<PatternPiece>,
    code: Option<Vec<PatternPiece>>,
}

impl Pieces {
    fn extend(&mut self, piece: Option<PatternPiece>) {
        self.code.as_mut().unwrap_or(&mut self.done).extend(piece);
    }

    /// A backtick.
    fn turn(&mut self) {
        match self.code.take() {
            Some(inner) => self.done.push(PatternPiece::Code(Pattern(inner))),
            None => self.code = Some(Vec::new()),
        }
    }
}

/// The text with its line breaks as spaces; where lines are left blank, a paragraph ends.
///
/// FTL keeps line breaks, since it cannot know where a text is shown. Here every writer breaks lines itself.
fn folded(text: &str) -> String {
    let last = text.matches('\n').count();
    let (mut whole, mut between) = (String::new(), "");
    for (i, mut line) in text.split('\n').enumerate() {
        if i > 0 {
            line = line.trim_start();
        }
        if i < last {
            line = line.trim_end();
        }
        if line.is_empty() && i > 0 && i < last {
            between = "\n\n";
            continue;
        }
        whole.push_str(between);
        whole.push_str(line);
        between = " ";
    }
    whole
}

/// Whether a number with a unit of length is typed there.
fn has_length(text: &str) -> bool {
    let words: Vec<&str> = text.split_whitespace().collect();
    words.windows(2).any(|pair| {
        let number = pair[0].ends_with(|c: char| c.is_ascii_digit());
        let unit = pair[1].trim_end_matches(|c: char| !c.is_alphanumeric());
        number && TURNED.contains(&unit)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_are_joined_and_paragraphs_kept() {
        assert_eq!(folded("one line "), "one line ");
        assert_eq!(folded("two\n  lines"), "two lines");
        assert_eq!(folded("\nbehind"), " behind");
        assert_eq!(folded("before\n"), "before ");
        assert_eq!(folded("one\n\n\n two"), "one\n\ntwo");
        assert_eq!(folded("a \r\nb"), "a b");
    }

    #[test]
    fn what_cannot_be_used_is_told_with_its_key() {
        let faulty = [
            ("a = { NUMBER($n) }", "f: a: functions are not used"),
            (
                "a = { 5 }",
                "f: a: a number stands as text, or comes as an argument",
            ),
            ("a = { { $n } }", "f: a: braces stand inside braces"),
            (
                "a = { b.c }",
                "f: a: a reference takes no attribute and no arguments",
            ),
            (
                "a = { -b(case: \"x\") }",
                "f: a: a reference takes no attribute and no arguments",
            ),
            (
                "a = { $n ->\n    [1.5] x\n   *[other] y\n }",
                "f: a: only a whole number can stand for a variant",
            ),
            (
                "a = { \"x\" ->\n   *[other] y\n }",
                "f: a: only an argument, `$name`, can choose a variant",
            ),
            (
                "a = { $units }",
                "f: a: `$units` chooses a variant and is not shown",
            ),
            ("-a = b\n    .hint = c", "f: -a: a term has no attributes"),
            ("a = open `code", "f: a: a backtick is not closed"),
            (
                "a =\n    .hint = alone",
                "f: a: it has attributes and no text of its own",
            ),
            (
                "a = a step of 0.5 m, or so",
                "f: a: a length is typed into the text: it would not follow the units shown",
            ),
        ];
        for (text, fault) in faulty {
            assert_eq!(read("f", text).1, [fault], "{text}");
        }
    }

    #[test]
    fn broken_syntax_is_told_with_its_line() {
        let (entries, faults) = read("f", "a = fine\n\nb { oops\n\nc = fine\n");
        assert_eq!(entries.len(), 2, "{faults:?}");
        assert!(faults[0].starts_with("f: line 3: "), "{faults:?}");
    }
}
