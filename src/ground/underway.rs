//! A leg as its ground sees it.

use crate::{
    ground::met::MetStage,
    trip::route::{Stage, Stretch},
};

/// A leg as far as its ground is concerned.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Underway<'a> {
    /// Its stage.
    pub(crate) stage: &'a Stage,
    /// How that stage meets the ice.
    pub(crate) met: &'a MetStage,
    /// From where to where.
    pub(crate) stretch: Stretch,
    /// Indices of the contacts on it.
    pub(crate) contacts: &'a [usize],
    /// The longest spacing on it, metres: the rope's own direction is taken over it. `None` without a rope.
    pub(crate) rope_m: Option<f64>,
}

/// True direction of a rope whose middle is here; never across a jump.
pub(super) fn heading_deg(stage: &Stage, at_m: f64, rope_m: f64) -> Option<f64> {
    let Stretch { from_m, to_m } = stage.about(at_m, rope_m);
    let (from, to) = (stage.at(from_m)?, stage.at(to_m)?);
    (from != to).then(|| from.bearing_deg(to))
}
