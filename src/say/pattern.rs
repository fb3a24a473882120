//! A message taken apart: what stands in it, in order.

/// The arguments that every message has, to choose by: `metric` or `imperial`, and `members` or `flags`.
pub(crate) const BUILT_IN: [&str; 2] = ["units", "interface"];

/// A message or a term.
#[derive(Debug)]
pub(crate) struct Entry {
    pub(crate) value: Pattern,
    /// By name, in the order of the file.
    pub(crate) attributes: Vec<(String, Pattern)>,
}

impl Entry {
    pub(crate) fn attribute(&self, name: &str) -> Option<&Pattern> {
        let found = self.attributes.iter().find(|(known, _)| known == name);
        found.map(|(_, pattern)| pattern)
    }

    /// The value and every attribute.
    pub(crate) fn patterns(&self) -> impl Iterator<Item = &Pattern> {
        let attributes = self.attributes.iter().map(|(_, pattern)| pattern);
        std::iter::once(&self.value).chain(attributes)
    }
}

/// What is said, piece by piece.
#[derive(Debug, Default)]
pub(crate) struct Pattern(pub(crate) Vec<PatternPiece>);

/// One piece of a pattern.
#[derive(Debug)]
pub(crate) enum PatternPiece {
    Words(String),
    /// What stood between backticks.
    Code(Pattern),
    /// An argument by its name.
    Argument(String),
    /// Another message by its key; a term's begins with `-`.
    Entry(String),
    Select(Select),
}

/// One of several patterns, chosen by an argument.
#[derive(Debug)]
pub(crate) struct Select {
    pub(crate) argument: String,
    pub(crate) variants: Vec<(Key, Pattern)>,
    /// Which of them is taken where none fits.
    pub(crate) default: usize,
}

/// What a variant is chosen by.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Key {
    Number(u64),
    /// A plural category or a keyword.
    Word(String),
}

impl Pattern {
    /// Shows every piece, those inside others too.
    pub(crate) fn each<'a>(&'a self, see: &mut dyn FnMut(&'a PatternPiece)) {
        for piece in &self.0 {
            see(piece);
            match piece {
                PatternPiece::Code(inner) => inner.each(see),
                PatternPiece::Select(select) => {
                    for (_, variant) in &select.variants {
                        variant.each(see);
                    }
                }
                PatternPiece::Words(_) | PatternPiece::Argument(_) | PatternPiece::Entry(_) => {}
            }
        }
    }

    /// Keys of the messages and terms it refers to.
    pub(crate) fn references(&self) -> Vec<&str> {
        let mut keys = Vec::new();
        self.each(&mut |piece| {
            if let PatternPiece::Entry(key) = piece {
                keys.push(key.as_str());
            }
        });
        keys
    }

    /// Names of the arguments it takes itself.
    pub(crate) fn arguments(&self) -> Vec<&str> {
        let mut names = Vec::new();
        self.each(&mut |piece| match piece {
            PatternPiece::Argument(name) => names.push(name.as_str()),
            PatternPiece::Select(select) => names.push(select.argument.as_str()),
            PatternPiece::Words(_) | PatternPiece::Code(_) | PatternPiece::Entry(_) => {}
        });
        names
    }
}
