//! Why a figure is not taken.

use schemars::JsonSchema;
use serde::Serialize;

/// A value outside the range it must lie in.
///
/// ```
/// use schrund::practice::{Origin, Rule};
///
/// let mut rules = schrund::example::job()?.rules;
/// let out = rules.set(Rule::MarginM, -5.0, Origin::Trip).expect_err("a margin is not below nothing");
/// assert_eq!((out.min, out.max), (0.0, 1000.0));
/// assert_eq!(out.under("margin").to_string(), "margin: margin_m -5 m is outside 0 to 1000 m");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OutOfBounds {
    /// The name it was set by, where that is not what is measured.
    pub name: Option<String>,
    /// What is measured, in the field's words or by its name.
    pub what: String,
    /// What was given, in `unit`.
    pub value: f64,
    /// `m`, `°`, `kg`; empty for a pure number.
    pub unit: String,
    /// Least value let through.
    pub min: f64,
    /// Greatest value let through.
    pub max: f64,
}

impl OutOfBounds {
    /// The same under the name it was set by.
    #[must_use]
    pub fn under(mut self, name: &str) -> Self {
        self.name = Some(name.to_owned());
        self
    }
}

/// Why a figure, or figures together, cannot be in force.
///
/// ```
/// use schrund::{fault::refusal::Refusal, physics::assumed::Assumed};
///
/// let mut assumed = Assumed::built_in()?;
/// assumed.set("delay_s.adverse", 0.2)?;
/// let name = "delay_s".to_owned();
/// let disorder = Refusal::Disorder { name, adverse: 0.2, central: 0.4, favourable: 0.6 };
/// assert_eq!(assumed.check(), Err(disorder), "nobody reacts faster when things go badly");
/// # Ok::<(), Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Refusal {
    /// One lies outside its range.
    OutOfBounds(OutOfBounds),
    /// The ends of a range are not in order.
    Disorder {
        /// Name of the range.
        name: String,
        /// Its ends and what lies between, in the unit of the range.
        adverse: f64,
        /// See `adverse`.
        central: f64,
        /// See `adverse`.
        favourable: f64,
    },
    /// A peak force, N, that no spring gives in the drop test.
    NoSpringPeak(f64),
    /// A share of length by which no spring stretches.
    NoSpringStretch(f64),
    /// There is no figure of that name.
    Unknown(String),
    /// An embedded file does not hold what it must; a test proves that none does so.
    BuiltIn(String),
    /// Nobody is on the rope.
    NobodyOnRope,
    /// Somebody falls with so many sides to hold them.
    Sides(usize),
    /// A side without a holder.
    NoHolder,
    /// So many people have too many orders to try.
    Orders(usize),
    /// No figure for this turning point of a haul.
    NoTurn(&'static str),
}

impl From<OutOfBounds> for Refusal {
    fn from(out: OutOfBounds) -> Self {
        Self::OutOfBounds(out)
    }
}
