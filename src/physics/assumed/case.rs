//! One value for each assumption: kinds of snow, parameters, corners.
//!
//! *Model, valid, error, source, checked:* see `assumed`.

use serde::{Deserialize, Serialize};

/// What the team stands on.
///
/// ```
/// use schrund::physics::assumed::Snow;
///
/// assert_eq!(schrund::example::job()?.rules.choices.snow.value, Snow::Settled);
/// assert!(Snow::Soft < Snow::Ice, "from the one that holds best");
/// assert_eq!(Snow::ALL.map(Snow::as_str), ["soft", "settled", "firm", "refrozen", "ice"]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
    /// Ice underfoot, whether or not it shows its gaps.
    Ice,
}

/// Which end of the ranges.
///
/// ```
/// use schrund::physics::assumed::{Assumed, Corner};
///
/// let delay_s = Assumed::built_in()?.delay_s;
/// let from_good_to_bad = [Corner::Favourable, Corner::Central, Corner::Adverse].map(|end| delay_s.at(end));
/// assert_eq!(from_good_to_bad, [0.6, 1.1, 1.6], "seconds from the first pull to braking, our judgement");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
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
///
/// ```
/// use schrund::physics::assumed::{Assumed, Corner, Parameter, Snow};
///
/// let assumed = Assumed::built_in()?;
/// let corner = |worst| if worst { Corner::Adverse } else { Corner::Central };
/// let swung = |one| assumed.case(Snow::Settled, false, |p| corner(p == one));
/// assert_eq!(swung(Parameter::Slack).slack_m, 1.5);
/// assert_eq!(swung(Parameter::Delay).slack_m, 0.75, "one swings to its end, the others stay in the middle");
/// assert_eq!(Parameter::Slack.as_str(), "slack_m", "as data/holding.toml has it");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
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
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Case, Corner, Snow}, hold_static::holders_needed};
///
/// let assumed = Assumed::built_in()?;
/// let people = |end| {
///     let case: Case = assumed.case(Snow::Settled, false, |_| end);
///     holders_needed(case.lip, case.mu_after, 0.0).unwrap_or(f64::INFINITY)
/// };
/// assert!((people(Corner::Favourable) - 0.52).abs() < 0.005, "1/(2.13 · 0.90)");
/// assert!((people(Corner::Adverse) - 1.65).abs() < 0.005, "1/(1.35 · 0.45): one holder is then not enough");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
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
