//! One value for each assumption: kinds of snow, parameters, corners.
//!
//! *Model, valid, error, source, checked:* see `assumed`.

use serde::{Deserialize, Serialize};

/// What the team stands on.
#[derive(
    Clone,
    Copy,
    Debug,
    Default,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Deserialize,
    Serialize,
    schemars::JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Snow {
    /// Fresh or wet: one sinks in.
    Soft,
    /// Old snow that has settled, boots leave deep prints.
    #[default]
    Settled,
    /// Firm firn: boots leave shallow prints.
    Firm,
    /// Frozen crust or refrozen firn: boots scratch.
    Refrozen,
    /// Bare ice.
    Ice,
}

/// Which end of the ranges.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Corner {
    /// Holding is easiest.
    Favourable,
    /// In between.
    Central,
    /// Holding is hardest.
    Adverse,
}

/// What an answer can depend on.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Parameter {
    /// Friction before braking.
    MuBefore,
    /// Friction while braking.
    MuAfter,
    /// The lip.
    Lip,
    /// Force a knot bears.
    KnotForce,
    /// How long a knot bites.
    KnotBite,
    /// Reaction.
    Delay,
    /// Loose rope.
    Slack,
    /// Where the bridge breaks.
    BreakPoint,
    /// How fast the rope stops bouncing.
    RopeDamping,
}

/// One value for each parameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Case {
    /// Friction before braking.
    pub mu_before: f64,
    /// Friction while braking.
    pub mu_after: f64,
    /// Lip factor λ over a right angle.
    pub lip: f64,
    /// Force one knot bears, N.
    pub knot_n: f64,
    /// How far a knot bites, m.
    pub knot_bite_m: f64,
    /// Reaction delay, s.
    pub delay_s: f64,
    /// Loose rope in each span, m.
    pub slack_m: f64,
    /// Share of the gap's width at which the bridge breaks.
    pub break_point: f64,
    /// Damping of the rope, share of critical.
    pub rope_damping: f64,
}

impl Snow {
    /// All kinds, from the one that holds best.
    pub const ALL: [Self; 5] = [
        Self::Soft,
        Self::Settled,
        Self::Firm,
        Self::Refrozen,
        Self::Ice,
    ];

    /// The word for it, as files and the command line have it.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Soft => "soft",
            Self::Settled => "settled",
            Self::Firm => "firm",
            Self::Refrozen => "refrozen",
            Self::Ice => "ice",
        }
    }
}

impl Parameter {
    /// All parameters.
    pub const ALL: [Self; 9] = [
        Self::MuBefore,
        Self::MuAfter,
        Self::Lip,
        Self::KnotForce,
        Self::KnotBite,
        Self::Delay,
        Self::Slack,
        Self::BreakPoint,
        Self::RopeDamping,
    ];

    /// Its name, as in `data/holding.toml`.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::MuBefore => "mu_before",
            Self::MuAfter => "mu_after",
            Self::Lip => "lip",
            Self::KnotForce => "knot_n",
            Self::KnotBite => "knot_bite_m",
            Self::Delay => "delay_s",
            Self::Slack => "slack_m",
            Self::BreakPoint => "break_point",
            Self::RopeDamping => "rope_damping",
        }
    }

    /// What it is, for a reader in a hut.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::MuBefore => "friction before the holders brake",
            Self::MuAfter => "friction once they brake",
            Self::Lip => "how much the lip takes off the rope",
            Self::KnotForce => "what a brake knot bears",
            Self::KnotBite => "how long a brake knot bites",
            Self::Delay => "how fast the holders react",
            Self::Slack => "slack in the rope",
            Self::BreakPoint => "where the bridge breaks",
            Self::RopeDamping => "how fast the rope stops bouncing",
        }
    }
}
