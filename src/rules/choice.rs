//! The words of a practice set that are not figures.

use serde::{Deserialize, Serialize};

use super::Origin;

/// When brake knots are tied.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Knots {
    /// Two people: where the snow lets them work. Three: when holding is harder. More: none.
    #[default]
    Auto,
    /// Two and three people always tie them.
    Always,
    /// Nobody ties them.
    Never,
}

/// How much spare rope the end persons carry.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reserve {
    /// As much as a drop loop needs: reach factor × spacing.
    #[default]
    Reach,
    /// A number of chest coils.
    ChestCoils,
}

/// Whose fall the spare rope must reach.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cover {
    /// An end person; what is missing for a middle one is printed.
    #[default]
    Ends,
    /// Anyone on the rope.
    Anyone,
}

/// The words in force.
#[derive(Clone, Debug, PartialEq)]
pub struct Choices {
    /// When brake knots are tied.
    pub knots: Knots,
    /// How much spare rope.
    pub reserve: Reserve,
    /// For whom.
    pub cover: Cover,
    /// Whether bare ice is roped where the zone does not say.
    pub rope_on_bare: bool,
    /// Who last set one of them.
    pub origin: Origin,
}

impl Default for Choices {
    fn default() -> Self {
        Self {
            knots: Knots::default(),
            reserve: Reserve::default(),
            cover: Cover::default(),
            rope_on_bare: true,
            origin: Origin::Default,
        }
    }
}
