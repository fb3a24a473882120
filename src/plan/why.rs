//! Why something is as it is: reasons that stand beside a figure without being a finding.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{practice::Origin, trip::party::Called};

/// Why brake knots are tied or not.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "because", rename_all = "kebab-case")]
pub enum KnotsWhy {
    /// Bare ice or too little snow: they would not bite.
    WouldNotBite,
    /// Somebody said never.
    Unwanted {
        /// Who.
        by: Origin,
    },
    /// Four or more on the rope.
    Many,
    /// Three on the rope, and nothing makes holding harder.
    Three {
        /// Whether heights say how steep it goes down.
        heights_known: bool,
    },
    /// Wanted, but not one set fits between two people.
    NoRoom {
        /// What they are wanted for.
        wanted: KnotsWanted,
        /// Walking distance between neighbours, metres.
        spacing_m: f64,
    },
    /// Tied.
    Tied {
        /// What for.
        wanted: KnotsWanted,
        /// Fewer than a whole set, where no more fit.
        #[serde(skip_serializing_if = "Option::is_none")]
        fewer: Option<FewerKnots>,
    },
}

/// What brake knots are wanted for.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "wanted", rename_all = "kebab-case")]
pub enum KnotsWanted {
    /// Somebody said always.
    Word {
        /// Who.
        by: Origin,
    },
    /// One person alone must hold.
    OneAlone,
    /// One of three is clearly heavier than the others.
    Heavier {
        /// That person.
        who: Called,
    },
    /// Three go steeply down.
    SteepDescent {
        /// Steepest descent on the leg, degrees.
        deg: f64,
    },
}

/// A set that is not whole.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FewerKnots {
    /// Knots tied in each set.
    pub tied: usize,
    /// Knots of a whole set.
    pub asked: usize,
    /// Walking distance between neighbours into which no more fit, metres.
    pub spacing_m: f64,
}

/// Who put the ropes where: what a rope is carried for.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "because", rename_all = "kebab-case")]
pub enum CarryWhy {
    /// It holds the longest set-up.
    LongestSetUp,
    /// It is the best there is, and too short.
    TooShort,
}
