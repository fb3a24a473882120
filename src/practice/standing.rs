//! What stands behind a figure or word, and who put it in force.

use serde::{Deserialize, Serialize};

use super::term::{Term, Terms};

/// What stands behind a figure.
///
/// ```
/// use schrund::practice::{Origin, Rule, Standing};
///
/// let mut rules = schrund::example::job()?.rules;
/// assert_eq!(rules.figure(Rule::SpacingCapM).standing_shown(), "common practice, no source");
/// rules.set(Rule::SpacingCapM, 25.0, Origin::Trip).expect("5 to 60 m");
/// assert_eq!(rules.figure(Rule::SpacingCapM).standing, Standing::Leader, "whoever sets a figure answers for it");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub enum Standing {
    /// A named source says so; see the sources beside it.
    #[serde(rename = "published")]
    Published,
    /// Taught and done, without a source to quote.
    #[serde(rename = "common practice, no source")]
    Practice,
    /// Chosen by the authors; to be questioned.
    #[serde(rename = "our judgement")]
    Judgement,
    /// Arithmetic from other figures.
    #[serde(rename = "derived")]
    Derived,
    /// Remembered, not checked.
    #[serde(rename = "from memory")]
    Memory,
    /// Set by the person who plans.
    #[serde(rename = "the leader's word")]
    Leader,
}

impl Standing {
    /// With the sources named: `published (foh)`.
    #[must_use]
    pub fn with_sources(self, sources: &[String]) -> String {
        if sources.is_empty() {
            return self.as_str().to_owned();
        }
        format!("{} ({})", self.as_str(), sources.join(", "))
    }

    /// The words, as printed.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        self.name()
    }
}

impl Terms for Standing {
    const TERMS: &'static [Term<Self>] = &[
        Term {
            name: "published",
            word: Self::Published,
            means: "A named source says so.",
        },
        Term {
            name: "common practice, no source",
            word: Self::Practice,
            means: "Taught and done, without a source to quote.",
        },
        Term {
            name: "our judgement",
            word: Self::Judgement,
            means: "Chosen by the authors.",
        },
        Term {
            name: "derived",
            word: Self::Derived,
            means: "Arithmetic from other figures.",
        },
        Term {
            name: "from memory",
            word: Self::Memory,
            means: "Remembered, not checked.",
        },
        Term {
            name: "the leader's word",
            word: Self::Leader,
            means: "Set by the person who plans.",
        },
    ];
}

/// Who put a figure in force.
///
/// ```
/// use schrund::practice::{Origin, Rule};
///
/// let rules = schrund::example::job()?.rules;
/// assert_eq!(rules.figure(Rule::Spacing3M).origin, Origin::Practice, "a spacing comes from the practice set");
/// assert_eq!(rules.figure(Rule::MarginM).origin, Origin::Default);
/// assert_eq!(rules.choices.snow.origin.as_str(), "trip file", "`snow = \"settled\"` stands there");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, schemars::JsonSchema)]
pub enum Origin {
    /// `data/rules.toml`.
    #[serde(rename = "default")]
    Default,
    /// The practice set.
    #[serde(rename = "practice set")]
    Practice,
    /// The trip file.
    #[serde(rename = "trip file")]
    Trip,
    /// A flag of the command line.
    #[serde(rename = "flag")]
    Flag,
}

impl Origin {
    /// The words, as printed.
    #[must_use]
    pub fn as_str(&self) -> &'static str {
        match self {
            Self::Default => "default",
            Self::Practice => "practice set",
            Self::Trip => "trip file",
            Self::Flag => "flag",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_is_read_by_the_words_it_is_printed_with() {
        for term in Standing::TERMS {
            let read = serde_json::from_value(serde_json::json!(term.name));
            assert_eq!(read.ok(), Some(term.word), "{}", term.name);
        }
    }
}
