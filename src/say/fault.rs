//! Faults of inputs in English: a sentence without full stop, and how to mend it.

mod files;
mod geojson;
mod gpx;
mod numbers;
mod place;
mod refusal;
mod terrain;
mod tiff;
mod trip;
mod xml;

use std::fmt;

use crate::fault::{Code, Fault, Level, Place, Wrong};

/// What is wrong, one sentence without a full stop; quotes the value found.
#[must_use]
pub fn says(fault: &Fault) -> String {
    let says = match &fault.what {
        Wrong::Files(what) => files::says(what),
        Wrong::Gpx(what) => gpx::says(what),
        Wrong::Geojson(what) => geojson::says(what),
        Wrong::Terrain(what) => terrain::says(what),
        Wrong::Practice(what) => trip::practice_says(what),
        Wrong::Trip(what) => trip::says(what),
        Wrong::Plan(what) => trip::plan_says(what),
        Wrong::More(_, more) => format!("and {more} more like this"),
    };
    match fault.more {
        0 => says,
        more => format!("{says} (and {more} more like this)"),
    }
}

/// How to mend it, if there is a way.
#[must_use]
pub fn hint(fault: &Fault) -> Option<String> {
    let file = fault.at.file.as_deref().unwrap_or_default();
    match &fault.what {
        Wrong::Files(what) => files::hint(what),
        Wrong::Gpx(what) => gpx::hint(what),
        Wrong::Geojson(what) => geojson::hint(what, file),
        Wrong::Terrain(what) => terrain::hint(what, file),
        Wrong::Practice(what) => trip::practice_hint(what),
        Wrong::Trip(what) => trip::hint(what),
        Wrong::Plan(what) => trip::plan_hint(what),
        Wrong::More(..) => None,
    }
}

/// `error[code]: what is wrong`, then where, then how to mend it.
impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (code, says, hint) = (self.code(), says(self), hint(self));
        write(f, code, &says, &self.at, hint.as_deref())
    }
}

impl std::error::Error for Fault {}

fn write(
    f: &mut fmt::Formatter<'_>,
    code: Code,
    says: &str,
    at: &Place,
    hint: Option<&str>,
) -> fmt::Result {
    write!(f, "{}[{}]: {says}", code.level().as_str(), code.as_str())?;
    let place = at.to_string();
    if !place.is_empty() {
        write!(f, "\n  at: {place}")?;
    }
    hint.map_or(Ok(()), |hint| write!(f, "\n  do: {hint}"))
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

/// `1 point`, `3 points`, `2 empty geometries`.
fn counted(count: usize, noun: &str) -> String {
    match (count, noun.strip_suffix('y')) {
        (1, _) => format!("1 {noun}"),
        (n, Some(stem)) => format!("{n} {stem}ies"),
        (n, None) => format!("{n} {noun}s"),
    }
}
