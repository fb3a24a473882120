//! Messages by key, read from files in the syntax of Project Fluent.
//!
//! What is taken of that syntax: messages, attributes, terms, placeables with variables, literals and references to
//! messages and terms, and choices by a variable. Text between backticks is what is typed or written in files.
//! Anything else is a fault of the file, which the tests tell.

use std::collections::HashMap;

use fluent_syntax::{
    ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, Variant, VariantKey},
    parser,
};

use super::span::Span;

/// One piece of a message.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Piece {
    /// Text of ours.
    Text(Span),
    /// A placeable to be filled.
    Slot(String),
    /// Another message; a term has a `-` in front.
    Message(String),
    /// One of several, by a filling.
    Choice {
        slot: String,
        variants: Vec<(String, Vec<Piece>)>,
        default: usize,
    },
}

/// The messages of one language. Attributes stand under `key.attribute`.
#[derive(Clone, Debug, Default)]
pub(super) struct Catalogue {
    messages: HashMap<String, Vec<Piece>>,
}

impl Catalogue {
    /// Reads all files; every fault with the name of its file.
    pub(super) fn of(files: &[(&str, &str)]) -> (Self, Vec<String>) {
        let (mut catalogue, mut faults) = (Self::default(), Vec::new());
        for (name, text) in files {
            let told = catalogue.add(text);
            faults.extend(told.into_iter().map(|fault| format!("{name}: {fault}")));
        }
        (catalogue, faults)
    }

    pub(super) fn get(&self, key: &str) -> Option<&[Piece]> {
        self.messages.get(key).map(Vec::as_slice)
    }

    fn add(&mut self, text: &str) -> Vec<String> {
        let (resource, mut faults) = match parser::parse(text) {
            Ok(resource) => (resource, Vec::new()),
            Err((resource, errors)) => {
                let told = errors
                    .iter()
                    .map(|e| format!("{e} at byte {}", e.pos.start));
                (resource, told.collect())
            }
        };
        for entry in &resource.body {
            let (id, value, attributes) = match entry {
                Entry::Message(m) => (m.id.name.to_owned(), m.value.as_ref(), &m.attributes),
                Entry::Term(t) => (format!("-{}", t.id.name), Some(&t.value), &t.attributes),
                _ => continue,
            };
            let named = attributes
                .iter()
                .map(|a| (format!("{id}.{}", a.id.name), &a.value));
            for (key, pattern) in value.map(|v| (id.clone(), v)).into_iter().chain(named) {
                faults.extend(self.put(key, pattern));
            }
        }
        faults
    }

    fn put(&mut self, key: String, pattern: &Pattern<&str>) -> Option<String> {
        let pieces = match pieces(pattern) {
            Ok(pieces) => pieces,
            Err(fault) => return Some(format!("{key}: {fault}")),
        };
        let twice = format!("{key} stands twice");
        self.messages.insert(key, pieces).map(|_| twice)
    }
}

fn pieces(pattern: &Pattern<&str>) -> Result<Vec<Piece>, String> {
    let mut text = String::new();
    let mut all = Vec::new();
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => text.push_str(value),
            PatternElement::Placeable { expression } => match literal(expression) {
                Some(more) => text.push_str(more),
                None => {
                    all.extend(spans(&std::mem::take(&mut text))?);
                    all.push(placeable(expression)?);
                }
            },
        }
    }
    all.extend(spans(&text)?);
    Ok(all)
}

fn literal<'s>(expression: &Expression<&'s str>) -> Option<&'s str> {
    match expression {
        Expression::Inline(InlineExpression::StringLiteral { value }) => Some(value),
        _ => None,
    }
}

/// Text with what stands between backticks apart.
fn spans(text: &str) -> Result<Vec<Piece>, String> {
    let parts: Vec<&str> = text.split('`').collect();
    if parts.len() % 2 == 0 {
        return Err(format!("a backtick without its other one in \"{text}\""));
    }
    let span = |(i, part): (usize, &&str)| match i % 2 {
        0 => Span::Words((*part).to_owned()),
        _ => Span::Code((*part).to_owned()),
    };
    let spans = parts.iter().enumerate().map(span);
    let spoken = spans.filter(|span| !matches!(span, Span::Words(text) if text.is_empty()));
    Ok(spoken.map(Piece::Text).collect())
}

fn placeable(expression: &Expression<&str>) -> Result<Piece, String> {
    match expression {
        Expression::Inline(inline) => reference(inline),
        Expression::Select { selector, variants } => {
            let InlineExpression::VariableReference { id } = selector else {
                return Err("a choice by something that is no variable".to_owned());
            };
            let default = variants.iter().position(|v| v.default);
            Ok(Piece::Choice {
                slot: id.name.to_owned(),
                variants: variants.iter().map(variant).collect::<Result<_, _>>()?,
                default: default.unwrap_or_default(),
            })
        }
    }
}

fn variant(variant: &Variant<&str>) -> Result<(String, Vec<Piece>), String> {
    let (VariantKey::Identifier { name: key } | VariantKey::NumberLiteral { value: key }) =
        &variant.key;
    Ok(((*key).to_owned(), pieces(&variant.value)?))
}

fn reference(inline: &InlineExpression<&str>) -> Result<Piece, String> {
    match inline {
        InlineExpression::VariableReference { id } => Ok(Piece::Slot(id.name.to_owned())),
        InlineExpression::MessageReference {
            id,
            attribute: None,
        } => Ok(Piece::Message(id.name.to_owned())),
        InlineExpression::TermReference {
            id,
            attribute: None,
            arguments: None,
        } => Ok(Piece::Message(format!("-{}", id.name))),
        InlineExpression::Placeable { expression } => placeable(expression),
        _ => Err("a placeable of a kind that is not taken".to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::{BTreeMap, BTreeSet};

    use super::{super::language::Language, *};

    /// The variables that each message takes, whichever way it is said, and whether it refers to what is not there.
    fn slots(catalogue: &Catalogue, pieces: &[Piece], into: &mut BTreeSet<String>) {
        for piece in pieces {
            match piece {
                Piece::Text(_) => {}
                Piece::Slot(name) => {
                    into.insert(name.clone());
                }
                Piece::Message(key) => {
                    let other = catalogue.get(key);
                    slots(catalogue, other.unwrap_or_else(|| panic!("no {key}")), into);
                }
                Piece::Choice { slot, variants, .. } => {
                    into.insert(slot.clone());
                    variants.iter().for_each(|(_, v)| slots(catalogue, v, into));
                }
            }
        }
    }

    fn messages(catalogue: &Catalogue) -> BTreeMap<&str, BTreeSet<String>> {
        let of = |(key, pieces): (&'_ String, &Vec<Piece>)| {
            let mut names = BTreeSet::new();
            slots(catalogue, pieces, &mut names);
            names
        };
        catalogue
            .messages
            .iter()
            .map(|m| (m.0.as_str(), of(m)))
            .collect()
    }

    /// What a language lacks, has too much of, or fills otherwise than English.
    fn apart(english: &Catalogue, other: &Catalogue) -> Vec<String> {
        let (english, other) = (messages(english), messages(other));
        let mut apart = Vec::new();
        for (key, names) in &english {
            match other.get(key) {
                None => apart.push(format!("no {key}")),
                Some(theirs) if theirs != names => apart.push(format!("{key}: {theirs:?}")),
                Some(_) => {}
            }
        }
        let more = other.keys().filter(|key| !english.contains_key(*key));
        apart.extend(more.map(|key| format!("{key} is unknown")));
        apart
    }

    #[test]
    fn every_file_is_read_and_every_language_says_the_same() {
        let (english, faults) = Catalogue::of(Language::English.files());
        assert_eq!(faults, [""; 0]);
        assert!(
            english.messages.len() > 100,
            "only {}",
            english.messages.len()
        );
        for language in Language::ALL {
            let (catalogue, faults) = Catalogue::of(language.files());
            assert_eq!(faults, [""; 0], "{language:?}");
            assert_eq!(apart(&english, &catalogue), [""; 0], "{language:?}");
        }
    }

    #[test]
    fn a_language_that_lacks_a_word_or_a_figure_is_found_out() {
        let of = |text| Catalogue::of(&[("t.ftl", text)]).0;
        let english = of("a = { $n } gaps\n    .hint = go round\nb = ice\n");
        let other = of("a = Spalten\nc = { $x }\n");
        let told = ["a: {}", "no a.hint", "no b", "c is unknown"];
        assert_eq!(apart(&english, &other), told);
    }

    #[test]
    fn what_is_not_taken_is_told_with_its_message() {
        let (_, faults) = Catalogue::of(&[("t.ftl", "a = { NUMBER($n) }\nb = `x\nb = y\n")]);
        assert_eq!(
            faults,
            [
                "t.ftl: a: a placeable of a kind that is not taken",
                "t.ftl: b: a backtick without its other one in \"`x\"",
            ]
        );
        let (_, faults) = Catalogue::of(&[("t.ftl", "a = x\na = y\n")]);
        assert_eq!(faults, ["t.ftl: a stands twice"]);
    }
}
