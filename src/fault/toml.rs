//! What can be wrong with the text and the form of trip files and practice files.

use serde::Serialize;

use super::{code::Code, place::Excerpt};

/// What is wrong with a TOML file before anything in it is judged.
///
/// ```
/// use schrund::{fault::{place::Excerpt, toml::{InToml, Takes, TomlTable}}, read::trip};
///
/// let faults = trip::trip("trip.toml", "party = 3\nrope = [60]\n").expect_err("a rope is a table with a length");
/// let (name, found) = ("rope".to_owned(), Excerpt::of("[60]", 60));
/// assert_eq!(faults[0].what, InToml::Form { of: TomlTable::Trip, name, found, takes: Takes::Ropes }.into());
/// assert_eq!((faults.len(), faults[0].at.line, faults[0].at.column), (1, Some(2), Some(8)));
/// ```
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
    /// It is a practice set as it is printed for reading.
    PrintedSet {
        /// Of this name.
        set: String,
        /// A name for the file that it should be.
        free: String,
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
///
/// ```
/// use schrund::{fault::{Wrong, toml::{InToml, NoToml}}, read::trip};
///
/// let faults = trip::trip("trip.toml", "party =\nrope = []\ntravel = ski\n").expect_err("two lines are no TOML");
/// let why = faults.iter().map(|fault| match &fault.what {
///     Wrong::Toml(InToml::Line { why, .. }) => (fault.at.line, why),
///     _ => panic!("{fault}"),
/// });
/// assert!(why.eq([(Some(1), &NoToml::NoValue), (Some(3), &NoToml::Unquoted)]), "all of them at once");
/// ```
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
    /// Commas stand between numbers outside of brackets: a decimal comma, or a list.
    Commas,
    /// Something stands behind a number.
    AfterNumber,
    /// A text between curly quotation marks, as text programs write them.
    Curly,
    /// It is nested too deeply.
    Deep,
    /// Something else, in the words of the parser.
    Other(String),
}

/// What begins and is not closed.
///
/// ```
/// use schrund::{fault::{place::Excerpt, toml::{InToml, NoToml, NotClosed}}, read::trip};
///
/// let faults = trip::trip("trip.toml", "[assume\nmargin_m = \n").expect_err("no bracket behind the name");
/// let line = Excerpt::of("[assume", 60);
/// assert_eq!(faults[0].what, InToml::Line { why: NoToml::NotClosed(NotClosed::Name), line }.into());
/// assert_eq!(faults.len(), 1, "of what stands behind it nothing can be told");
/// ```
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
///
/// ```
/// use schrund::{fault::{Wrong, toml::{InToml, Meant}}, read::trip};
///
/// let faults = trip::trip("trip.toml", "ropes = []\nmargin_m = 30\n").expect_err("a trip has neither");
/// let meant = faults.iter().filter_map(|fault| match fault.what {
///     Wrong::Toml(InToml::NoMember { meant, .. }) => meant,
///     _ => None,
/// });
/// assert_eq!(meant.collect::<Vec<_>>(), [Meant::Member("rope"), Meant::Figure], "misspelt, and misplaced");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Meant {
    /// This member.
    Member(&'static str),
    /// A figure or word, which stands under `[assume]`.
    Figure,
}

/// The tables that trip files and practice files hold.
///
/// ```
/// use schrund::{fault::{Code, toml::{InToml, TomlTable}}, read::trip};
///
/// let faults = trip::trip("trip.toml", "[[party]]\nmass_kg = 70\n").expect_err("somebody without a name");
/// assert_eq!(faults[0].what, InToml::Lacks { of: TomlTable::Person, name: "name" }.into());
/// // Whose fault it is goes by the file that holds such a table.
/// let kind = |of| InToml::Lacks { of, name: "name" }.kind();
/// assert_eq!([TomlTable::Person, TomlTable::Practice].map(kind), [Code::BadTrip, Code::BadPractice]);
/// ```
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
    /// A halt.
    Halt,
    /// A practice file itself.
    Practice,
    /// What a practice file says of itself.
    About,
    /// One figure of a practice file.
    Figure,
}

/// What a member takes.
///
/// ```
/// use schrund::{fault::{Wrong, toml::{InToml, Takes}}, read::trip};
///
/// let faults = trip::trip("trip.toml", "travel = \"bike\"\nstart = \"25:00\"\n").expect_err("neither is taken");
/// let takes = faults.into_iter().map(|fault| match fault.what {
///     Wrong::Toml(InToml::Form { takes, .. }) => takes,
///     _ => panic!("{fault}"),
/// });
/// assert_eq!(takes.collect::<Vec<_>>(), [Takes::Words(vec!["foot", "snowshoe", "ski"]), Takes::Time]);
/// ```
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
    /// A day of the calendar.
    Date,
    /// A distance from UTC.
    Offset,
    /// One of these words.
    Words(Vec<&'static str>),
    /// How many, masses, or `[[party]]` blocks.
    People,
    /// Number or name.
    Stage,
    /// How many go on each rope.
    Teams,
    /// `[[rope]]` blocks.
    Ropes,
    /// `[[emergency]]` blocks.
    Contacts,
    /// `[[halt]]` blocks.
    Halts,
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
            Self::PrintedSet { .. } => Code::WrongKind,
            Self::NoMember { .. } => Code::UnknownName,
            Self::Huge { .. } => Code::BadNumber,
            Self::Lacks { of, .. } | Self::Form { of, .. } => match of {
                TomlTable::Practice | TomlTable::About | TomlTable::Figure => Code::BadPractice,
                _ => Code::BadTrip,
            },
        }
    }
}
