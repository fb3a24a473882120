//! Bounds that know their own names, so that the check and its message cannot disagree.

use crate::fault::refusal::OutOfBounds;

/// A range a quantity must lie in, with the words to say so.
///
/// ```
/// use schrund::physics::bound::{self, Bound};
///
/// let out = bound::SLOPE_DEG.check(75.0).expect_err("an ice cliff is no slope to walk");
/// assert_eq!(out.to_string(), "slope towards the lip 75° is outside -60 to 60°");
/// let bites = Bound::new("bites of a knot", "", 0.0, 3.0);
/// assert_eq!(bites.check(2.0), Ok(2.0));
/// assert!(bites.check(f64::NAN).is_err(), "what is no number is never inside");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bound {
    /// What is measured, in the field's words.
    pub what: &'static str,
    /// Its unit; empty for a plain number.
    pub unit: &'static str,
    /// Smallest value let through.
    pub min: f64,
    /// Largest value let through.
    pub max: f64,
}

impl Bound {
    /// A bound from its parts.
    #[must_use]
    pub const fn new(what: &'static str, unit: &'static str, min: f64, max: f64) -> Self {
        Self {
            what,
            unit,
            min,
            max,
        }
    }

    /// Lets `value` through if it lies inside.
    ///
    /// # Errors
    /// The quantity, the value and the range; NaN and infinities fail too.
    pub fn check(&self, value: f64) -> Result<f64, OutOfBounds> {
        if value.is_finite() && value >= self.min && value <= self.max {
            return Ok(value);
        }
        Err(OutOfBounds {
            name: None,
            what: self.what.to_owned(),
            value,
            unit: self.unit.to_owned(),
            min: self.min,
            max: self.max,
        })
    }
}

/// Mass of one person with pack, kg `[ours]`.
pub const MASS_KG: Bound = Bound::new("mass of a person with pack", "kg", 20.0, 250.0);
/// Walking distance between neighbours, m `[ours]`.
pub const SPACING_M: Bound = Bound::new("spacing", "m", 1.0, 200.0);
/// Width of a crevasse along the route, m `[ours]`.
pub const GAP_M: Bound = Bound::new("gap width", "m", 0.0, 400.0);
/// Slope of the ground towards the lip, degrees `[ours]`; below zero it falls away from the lip.
pub const SLOPE_DEG: Bound = Bound::new("slope towards the lip", "°", -60.0, 60.0);
/// Rope modulus EA, N `[ours]`: from a soft rope under body weight to far stiffer than any cord.
pub const MODULUS_N: Bound = Bound::new("rope modulus", "N", 1e3, 1e9);
/// The same for a rope people tie into, N `[ours]`; it also keeps steps from getting too short.
pub const ROPE_N: Bound = Bound::new("rope modulus", "N", 1e3, 1e6);
/// A force, N `[ours]`.
pub const FORCE_N: Bound = Bound::new("force", "N", 0.0, 1e5);
/// Slack in the rope, m `[ours]`.
pub const SLACK_M: Bound = Bound::new("slack", "m", 0.0, 20.0);
/// A length of rope or snow, m `[ours]`.
pub const LENGTH_M: Bound = Bound::new("length", "m", 0.0, 500.0);
/// Delay before somebody reacts, s `[ours]`.
pub const DELAY_S: Bound = Bound::new("reaction delay", "s", 0.0, 10.0);
/// Coefficient of friction of a person on snow `[ours]`.
pub const MU: Bound = Bound::new("friction on snow", "", 0.0, 3.0);
/// Factor by which a lip lessens a rope force `[ours]`; 1 is a lip without friction.
pub const LIP: Bound = Bound::new("lip factor", "", 1.0, 20.0);
/// A share from nothing to all.
pub const SHARE: Bound = Bound::new("share", "", 0.0, 1.0);
