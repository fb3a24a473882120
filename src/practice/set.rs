//! Practice sets: named collections of figures that are taught together.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::fault::{
    Fault, Item, Place, name,
    toml::{Takes, TomlTable},
    trip::InPractice,
};
use crate::practice::{
    alike,
    choice::{Cover, Knots, Reserve},
    figure::FigureEntry,
    form::{MemberForm, NUMBER, Sorted, TEXT, TEXTS, TRUTH, TableForm, ValueForm, WordForm},
    rule::Rule,
    standing::Standing,
    toml_text::TomlText,
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

/// Where a practice set comes from.
///
/// ```
/// use schrund::practice::{Rule, Rules, set::Source};
///
/// let spacings = [(2, 16), (3, 14), (4, 12), (5, 10)]
///     .map(|(people, m)| format!("[spacing_{people}_m]\nvalue = {m}\nstanding = \"our judgement\"\n"));
/// let text = format!("name = \"our club\"\n{}", spacings.concat());
/// let rules = Rules::with_practice(&Source::File { name: "club.toml", text: &text })?;
/// assert_eq!((rules.practice.as_str(), rules[Rule::Spacing3M]), ("our club", 14.0));
/// assert!(Rules::with_practice(&Source::Named("our club")).is_err(), "it is none of the embedded sets");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
///
/// ```
/// use schrund::practice::set::{EMBEDDED, Set, Source};
///
/// for (name, _) in EMBEDDED {
///     let set: Set = Source::Named(name).read()?;
///     assert_eq!(set.name, name);
///     assert!(!set.says.is_empty(), "each says what it is");
/// }
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
        let read = TomlText::parse(self.file(), text)?;
        let mut faults = read.check(&SET);
        faults.extend(read.nul());
        if !faults.is_empty() {
            faults.extend(spacings_missing(&read));
            return Err(faults);
        }
        let mut set: Set = read.read()?;
        set.name = name::tidy(&set.name).unwrap_or_default();
        Ok(set)
    }
}

/// What a practice file can hold: the words of a set, and figures by their names.
static SET: TableForm = TableForm {
    of: TomlTable::Practice,
    members: &[
        MemberForm::must("name", TEXT),
        MemberForm::may("says", TEXT),
        MemberForm::may("comes_from", ABOUT),
        MemberForm::may("used", ABOUT),
        MemberForm::may("beside", TEXTS),
        MemberForm::may("reserve", WordForm::<Reserve>::FORM),
        MemberForm::may("knots", WordForm::<Knots>::FORM),
        MemberForm::may("cover", WordForm::<Cover>::FORM),
        MemberForm::may("rope_on_bare", TRUTH),
    ],
    others: Some(&ValueForm {
        sorts: &[Sorted::Table(&FIGURE)],
        takes: || Takes::Figure,
    }),
};

/// A sentence with its standing.
const ABOUT: ValueForm = ValueForm {
    sorts: &[Sorted::Table(&ABOUT_SET)],
    takes: || Takes::About,
};

/// What a practice file can say of itself.
static ABOUT_SET: TableForm = TableForm {
    of: TomlTable::About,
    members: &[
        MemberForm::must("says", TEXT),
        MemberForm::must("standing", WordForm::<Standing>::FORM),
        MemberForm::may("sources", TEXTS),
    ],
    others: None,
};

/// What a practice file can say of a figure.
static FIGURE: TableForm = TableForm {
    of: TomlTable::Figure,
    members: &[
        MemberForm::may("says", TEXT),
        MemberForm::must("value", NUMBER),
        MemberForm::may("unit", TEXT),
        MemberForm::may("min", NUMBER),
        MemberForm::may("max", NUMBER),
        MemberForm::must("standing", WordForm::<Standing>::FORM),
        MemberForm::may("sources", TEXTS),
        MemberForm::may("note", TEXT),
    ],
    others: None,
};

/// The spacings that a file does not give, where the rest of it is at fault too.
fn spacings_missing(read: &TomlText<'_>) -> Vec<Fault> {
    let is_there = |rule: &Rule| read.names().any(|name| name == rule.name());
    let missing = (2..=5)
        .map(Rule::base_spacing)
        .filter(|rule| !is_there(rule));
    let fault = |rule: Rule| {
        let place = read.place().with_property(rule.name());
        Fault::new(InPractice::Missing(rule.name()), place)
    };
    missing.map(fault).collect()
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
    let sets: Vec<&str> = EMBEDDED.iter().map(|(n, _)| *n).collect();
    let lower = name.to_lowercase();
    // Half of a name is what people remember of it.
    let halves = |set: &&str| set.split('-').any(|half| half == lower);
    let half = sets.iter().copied().find(halves);
    InPractice::NoSet {
        name: name.to_owned(),
        near: half.or_else(|| alike::nearest(&lower, sets.iter().copied())),
        sets,
    }
}
