//! What stands behind a figure or word, and who put it in force.

use serde::{Deserialize, Serialize};

/// What stands behind a figure.
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
        match self {
            Self::Published => "published",
            Self::Practice => "common practice, no source",
            Self::Judgement => "our judgement",
            Self::Derived => "derived",
            Self::Memory => "from memory",
            Self::Leader => "the leader's word",
        }
    }
}

/// Who put a figure in force.
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
