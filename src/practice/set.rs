//! Practice sets: named collections of figures that are taught together.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::fault::{Fault, Item, Place, files::InFiles, name, trip::InPractice};
use crate::practice::{
    choice::{Cover, Knots, Reserve},
    figure::FigureEntry,
    nul,
    standing::Standing,
};

/// The sets that come with the program, the default first.
pub const EMBEDDED: [(&str, &str); 4] = [
    (
        "arm-span",
        include_str!("../../data/practice/arm-span.toml"),
    ),
    (
        "short-alpine",
        include_str!("../../data/practice/short-alpine.toml"),
    ),
    (
        "constant",
        include_str!("../../data/practice/constant.toml"),
    ),
    (
        "club-coils",
        include_str!("../../data/practice/club-coils.toml"),
    ),
];

pub use super::nul::line_column;

/// Where a practice set comes from.
#[derive(Clone, Copy, Debug)]
pub enum Source<'a> {
    /// One of the embedded sets.
    Named(&'a str),
    /// The text of a file of the leader's own.
    File {
        /// What the leader calls the file.
        name: &'a str,
        /// What it holds.
        text: &'a str,
    },
}

/// A practice file as it stands.
#[derive(Clone, Debug, Deserialize)]
pub struct Set {
    /// What the set is called.
    pub name: String,
    /// What it is, in a sentence.
    #[serde(default)]
    pub says: String,
    /// Where it comes from.
    pub comes_from: Option<AboutSet>,
    /// When people use it.
    pub used: Option<AboutSet>,
    /// The embedded sets that options weigh beside this one; `None` where the set does not say.
    pub(super) beside: Option<Vec<String>>,
    pub(super) reserve: Option<Reserve>,
    pub(super) knots: Option<Knots>,
    pub(super) cover: Option<Cover>,
    pub(super) rope_on_bare: Option<bool>,
    #[serde(flatten)]
    pub(super) figures: BTreeMap<String, FigureEntry>,
}

/// A sentence about a set, with what stands behind it.
///
/// ```
/// use schrund::practice::set::Source;
///
/// let set = Source::Named("club-coils").read().unwrap();
/// let told = set.comes_from.expect("every embedded set says where it comes from");
/// assert_eq!(told.standing_shown(), "published (trekmountain)");
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AboutSet {
    /// The sentence.
    pub says: String,
    /// What stands behind it.
    pub standing: Standing,
    /// Keys of `data/sources.toml`.
    #[serde(default)]
    pub sources: Vec<String>,
}

impl AboutSet {
    /// What stands behind it, with the sources named: `published (foh)`.
    #[must_use]
    pub fn standing_shown(&self) -> String {
        self.standing.with_sources(&self.sources)
    }
}

impl Source<'_> {
    /// The file as the user named it, or the name of the embedded set.
    pub(super) fn file(&self) -> &str {
        match self {
            Self::Named(name) | Self::File { name, .. } => name,
        }
    }

    /// Parses the set.
    ///
    /// # Errors
    /// The name is not one of the embedded sets, or the text does not parse.
    pub fn read(&self) -> Result<Set, Vec<Fault>> {
        let text = match self {
            Self::File { text, .. } => text,
            Self::Named(name) => embedded(name)?,
        };
        let mut set: Set = toml::from_str(text).map_err(|e| vec![broken(self.file(), text, &e)])?;
        let nul = nul::with_nul(self.file(), text);
        if !nul.is_empty() {
            return Err(nul);
        }
        set.name = name::tidy(&set.name).unwrap_or_default();
        Ok(set)
    }
}

fn embedded(name: &str) -> Result<&'static str, Vec<Fault>> {
    EMBEDDED
        .iter()
        .find(|(n, _)| *n == name)
        .map(|(_, text)| *text)
        .ok_or_else(|| vec![Fault::new(unknown(name), Place::item(Item::Practice))])
}

/// That no set has this name.
pub(super) fn unknown(name: &str) -> InPractice {
    InPractice::NoSet {
        name: name.to_owned(),
        sets: EMBEDDED.iter().map(|(n, _)| *n).collect(),
    }
}

/// A TOML fault with its place.
#[must_use]
pub fn broken(file: &str, text: &str, fault: &toml::de::Error) -> Fault {
    let mut place = Place::file(file);
    if let Some(span) = fault.span() {
        let (line, column) = line_column(text, span.start);
        place = place.at_line(line, column);
    }
    Fault::new(InFiles::Toml(fault.message().replace('\n', ", ")), place)
}
