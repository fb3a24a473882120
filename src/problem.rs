//! The closed list of complaints, each with its place in the user's words, and results that carry warnings.

use std::fmt;

use serde::Serialize;

/// How much a complaint matters.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, schemars::JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// An input is wrong; nothing is planned from it.
    Error,
    /// Planned, but people can die of ignoring this one.
    Grave,
    /// Planned, and somebody should look.
    Warning,
    /// Worth knowing.
    Note,
}

impl Level {
    /// The word printed in front of the code.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Grave => "grave",
            Self::Warning => "warning",
            Self::Note => "note",
        }
    }
}

macro_rules! codes {
    ($($(#[doc = $doc:literal])+ $variant:ident, $name:literal, $level:ident;)+) => {
        /// Every kind of complaint there is. The doc comment of each is what `check --explain` prints.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code { $($(#[doc = $doc])+ $variant,)+ }

        impl Code {
            /// All codes, in the order of the flow.
            pub const ALL: &'static [Code] = &[$(Code::$variant,)+];

            /// The stable name, as printed and as `check --explain` takes it.
            #[must_use]
            pub fn as_str(self) -> &'static str {
                match self { $(Self::$variant => $name,)+ }
            }

            /// How much it matters.
            #[must_use]
            pub fn level(self) -> Level {
                match self { $(Self::$variant => Level::$level,)+ }
            }

            /// What it means and what to do, in a few sentences.
            #[must_use]
            pub fn explain(self) -> &'static str {
                match self { $(Self::$variant => concat!($($doc, "\n",)+),)+ }
            }
        }
    };
}

codes! {
    /// The file, address or standard input could not be read at all.
    Unreadable, "unreadable", Error;
    /// The file is not what its place on the command line calls for.
    WrongKind, "wrong-kind", Error;
    /// The text is broken: the XML, JSON or TOML ends early or does not parse.
    BrokenText, "broken-text", Error;
    /// A number is missing, malformed, not finite or outside what it can be.
    BadNumber, "bad-number", Error;
    /// A longitude or latitude lies outside its range or is no number.
    BadPosition, "bad-position", Error;
    /// A name was given that does not exist: a practice set, a figure, a stage.
    UnknownName, "unknown-name", Error;
    /// A practice set must give the spacing for 2, 3, 4 and 5 people.
    MissingFigure, "missing-figure", Error;
}

/// Where a complaint belongs, in words the user knows.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// The file as the user named it, or `standard input`.
    pub file: Option<String>,
    /// Line, from 1.
    pub line: Option<u64>,
    /// Column in characters, from 1.
    pub column: Option<u64>,
    /// The thing inside it: `feature 3 "Upper icefall"`, `leg 2`, `track 1, point 17`.
    pub item: Option<String>,
    /// The property or element: `gap_m`.
    pub property: Option<String>,
}

impl Place {
    /// A file as a whole.
    #[must_use]
    pub fn file(name: &str) -> Self {
        Self {
            file: Some(name.to_owned()),
            ..Self::default()
        }
    }

    /// Something without a file: a leg, an option, the party.
    #[must_use]
    pub fn item(what: impl Into<String>) -> Self {
        Self {
            item: Some(what.into()),
            ..Self::default()
        }
    }

    /// The same place, narrowed to a thing inside it.
    #[must_use]
    pub fn with_item(mut self, what: impl Into<String>) -> Self {
        self.item = Some(what.into());
        self
    }

    /// The same place, narrowed to a property.
    #[must_use]
    pub fn with_property(mut self, name: impl Into<String>) -> Self {
        self.property = Some(name.into());
        self
    }

    /// The same place with a line and column, both from 1.
    #[must_use]
    pub fn at_line(mut self, line: u64, column: u64) -> Self {
        self.line = Some(line);
        self.column = Some(column);
        self
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut parts: Vec<String> = Vec::new();
        if let Some(file) = &self.file {
            parts.push(file.clone());
        }
        match (self.line, self.column) {
            (Some(line), Some(column)) => parts.push(format!("line {line} column {column}")),
            (Some(line), None) => parts.push(format!("line {line}")),
            _ => {}
        }
        parts.extend(self.item.clone());
        parts.extend(self.property.as_ref().map(|p| format!("`{p}`")));
        f.write_str(&parts.join(", "))
    }
}

/// One complaint: what is wrong, where, what was found there, and how to mend it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Which kind it is; decides the level.
    pub code: Code,
    /// Where it is.
    pub place: Place,
    /// What is wrong, one sentence without a full stop; quotes the value found.
    pub says: String,
    /// How to mend it, if there is a way.
    pub hint: Option<String>,
}

impl Problem {
    /// A complaint without advice.
    #[must_use]
    pub fn new(code: Code, place: Place, says: impl Into<String>) -> Self {
        Self {
            code,
            place,
            says: says.into(),
            hint: None,
        }
    }

    /// The same complaint with advice.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = Some(hint.into());
        self
    }

    /// How much it matters.
    #[must_use]
    pub fn level(&self) -> Level {
        self.code.level()
    }
}

/// `error[code]: what is wrong`, then where, then how to mend it.
impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}[{}]: {}",
            self.level().as_str(),
            self.code.as_str(),
            self.says
        )?;
        let place = self.place.to_string();
        if !place.is_empty() {
            write!(f, "\n  at: {place}")?;
        }
        if let Some(hint) = &self.hint {
            write!(f, "\n  do: {hint}")?;
        }
        Ok(())
    }
}

/// A good result with the warnings met on the way. Errors never get this far.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted<T> {
    /// The result.
    pub value: T,
    /// Warnings and notes, in input order.
    pub notes: Vec<Problem>,
}
