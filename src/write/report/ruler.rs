//! One stage along the paper: metres walked to the right, heights upward.

use super::paper::WIDTH;
use crate::{ground::profile::Profile, trip::route::Stage};

/// Where the ruler begins and ends, units.
pub(super) const LEFT: f64 = 46.0;
pub(super) const RIGHT: f64 = WIDTH - 28.0;
/// Where the highest and the lowest ground lie.
pub(super) const TOP: f64 = 16.0;
pub(super) const GROUND: f64 = 126.0;

/// One stage's ruler.
pub(super) struct Ruler<'a> {
    pub(super) stage: &'a Stage,
    pub(super) profile: &'a Profile,
    pub(super) low_m: f64,
    pub(super) high_m: f64,
}

impl Ruler<'_> {
    pub(super) fn x(&self, at_m: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * at_m / self.stage.length_m().max(1e-9)
    }

    pub(super) fn y(&self, height_m: f64) -> f64 {
        GROUND - (GROUND - TOP) * (height_m - self.low_m) / (self.high_m - self.low_m).max(1.0)
    }
}

/// How far a place lies from the nearer end of the ruler.
pub(super) fn inward(x: f64) -> f64 {
    (x - LEFT).min(RIGHT - x)
}
