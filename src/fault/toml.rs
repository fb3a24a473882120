//! What can be wrong with the text and the form of trip files and practice files.

use serde::Serialize;

use super::{code::Code, place::Excerpt};

/// What is wrong with a TOML file before anything in it is judged.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InToml {
    /// A line does not parse.
    Line {
        /// Why.
        why: NoToml,
        /// The line.
        line: Excerpt,
    },
    /// A table has no such member.
    NoMember {
        /// Which table.
        of: TomlTable,
        /// As given.
        name: String,
        /// What may be meant.
        meant: Option<Meant>,
    },
    /// A table lacks a member.
    Lacks {
        /// Which table.
        of: TomlTable,
        /// The member.
        name: &'static str,
    },
    /// A member holds something that it does not take.
    Form {
        /// Of which table.
        of: TomlTable,
        /// The member.
        name: String,
        /// What stands there.
        found: Excerpt,
        /// What it takes.
        takes: Takes,
    },
    /// A number is too large to be held.
    Huge {
        /// The member.
        name: String,
        /// What stands there.
        found: Excerpt,
    },
}

/// Why a line is no TOML.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoToml {
    /// This name stands there a second time.
    Twice(Excerpt),
    /// Something is not closed.
    NotClosed(NotClosed),
    /// A name without a value.
    NoValue,
    /// A text without quotation marks.
    Unquoted,
    /// It is nested too deeply.
    Deep,
    /// Something else, in the words of the parser.
    Other(String),
}

/// What begins and is not closed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotClosed {
    /// A list.
    List,
    /// A table in braces.
    Braces,
    /// The name of a table.
    Name,
    /// A text.
    Text,
}

/// What a misspelt or misplaced member may mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Meant {
    /// This member.
    Member(&'static str),
    /// A figure or word, which stands under `[assume]`.
    Figure,
}

/// The tables that trip files and practice files hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum TomlTable {
    /// A trip file itself.
    Trip,
    /// Somebody who goes.
    Person,
    /// A rope.
    Rope,
    /// Somebody to call.
    Contact,
    /// A practice file itself.
    Practice,
    /// What a practice file says of itself.
    About,
    /// One figure of a practice file.
    Figure,
}

/// What a member takes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Takes {
    /// A number.
    Number,
    /// A text.
    Text,
    /// A list of texts.
    Texts,
    /// `true` or `false`.
    Truth,
    /// A time of day.
    Time,
    /// One of these words.
    Words(Vec<&'static str>),
    /// How many, masses, or `[[party]]` blocks.
    People,
    /// Number or name.
    Stage,
    /// `[[rope]]` blocks.
    Ropes,
    /// `[[emergency]]` blocks.
    Contacts,
    /// A table of figures and words by name.
    Assumptions,
    /// A figure or word.
    Assumption,
    /// A table that says a sentence and its standing.
    About,
    /// A table that says a figure and its standing.
    Figure,
}

impl InToml {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Line { .. } => Code::BrokenText,
            Self::NoMember { .. } => Code::UnknownName,
            Self::Huge { .. } => Code::BadNumber,
            Self::Lacks { of, .. } | Self::Form { of, .. } => match of {
                TomlTable::Practice | TomlTable::About | TomlTable::Figure => Code::BadPractice,
                _ => Code::BadTrip,
            },
        }
    }
}
