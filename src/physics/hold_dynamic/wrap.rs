//! How much a lip lessens the pull of a rope that hangs in a V, at every depth.
//!
//! *Model:* λ = e^(μ·(θ − β)), never below 1; θ, by which the rope dips below the lip, is arctan(depth/beyond). From one step
//! to the next θ grows by arctan((d₂ − d₁)·b / (b² + d₁·d₂)), which is exact; arctan and e^x of such small figures are the
//! first terms of their series, and every so many steps λ is taken from the beginning.
//! *Valid:* as `capstan`. *Error:* below 1e-13 of λ, all steps together; what a step leaves out is below 1e-15.
//! *Source:* capstan beside `hold_dynamic`, the sum of two arctangents; `[derived]`.   *Checked:* below, against `capstan`.

use super::fall::GapSide;

/// Steps after which λ is taken from the beginning `[ours]`.
const FRESH_STEPS: u32 = 32;
/// Most that θ, rad, and the exponent may grow in one step for the series `[derived]`.
const MOST_RAD: f64 = 1.0 / 64.0;
const MOST_GROWTH: f64 = 1.0 / 128.0;

/// λ as it is, and its inverse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lip {
    /// λ, at least 1.
    pub(super) factor: f64,
    /// What the lip leaves: 1/λ.
    pub(super) leaves: f64,
}

impl Lip {
    pub(super) fn new(factor: f64) -> Self {
        Self {
            factor,
            leaves: 1.0 / factor,
        }
    }
}

/// The rope of one side where it turns at the lip.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Wrap {
    beyond_m: f64,
    slope_rad: f64,
    mu: f64,
    depth_m: f64,
    /// λ at this depth, below 1 where the rope does not turn.
    factor: f64,
    /// Until λ is taken from the beginning.
    steps: u32,
}

impl Wrap {
    pub(super) fn new(side: &GapSide) -> Self {
        Self {
            beyond_m: side.beyond(),
            slope_rad: side.slope_rad,
            mu: side.lip_mu,
            depth_m: 0.0,
            factor: 1.0,
            steps: 0,
        }
    }

    /// λ at a depth at which so much rope hangs from the lip to the faller.
    #[inline]
    pub(super) fn at(&mut self, depth_m: f64, reach_m: f64) -> Lip {
        let from_m = std::mem::replace(&mut self.depth_m, depth_m);
        let beyond_m = self.beyond_m;
        let level = beyond_m * beyond_m + depth_m * from_m;
        let tangent = (depth_m - from_m) * beyond_m / level;
        let growth = self.mu * small_arctan(tangent);
        let small = tangent.abs() <= MOST_RAD && growth.abs() <= MOST_GROWTH && level > 0.0;
        if small && self.steps > 0 {
            self.steps -= 1;
            self.factor *= small_exp(growth);
        } else {
            self.steps = FRESH_STEPS;
            let dips_rad = (depth_m / reach_m).clamp(-1.0, 1.0).asin();
            self.factor = (self.mu * (dips_rad - self.slope_rad)).exp();
        }
        Lip::new(if self.factor > 1.0 { self.factor } else { 1.0 })
    }
}

/// Off by less than 1e-17 up to [`MOST_RAD`].
#[inline]
fn small_arctan(tangent: f64) -> f64 {
    let square = tangent * tangent;
    let (near, far) = (1.0 - square * (1.0 / 3.0), 1.0 / 5.0 - square * (1.0 / 7.0));
    tangent * (near + square * square * far)
}

/// Off by less than 1e-15 of itself up to [`MOST_GROWTH`].
#[inline]
fn small_exp(x: f64) -> f64 {
    let square = x * x;
    let (near, far) = (0.5 + x * (1.0 / 6.0), 1.0 / 24.0 + x * (1.0 / 120.0));
    (1.0 + x) + square * (near + square * far)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::capstan;

    #[test]
    fn step_by_step_the_lip_is_what_it_is_at_every_depth() {
        for (beyond_m, slope_rad, lip_mu) in [(0.2, 0.3, 0.5), (3.0, -0.2, 0.3), (14.0, 0.1, 1.9)] {
            let side = GapSide {
                holders_kg: vec![80.0],
                spacing_m: 20.0,
                slack_m: 0.0,
                beyond_m,
                slope_rad,
                lip_mu,
                mu_before: 0.3,
                mu_after: 0.6,
                knots_m: vec![],
                knot_n: 0.0,
                bite_m: 0.0,
            };
            let mut wrap = Wrap::new(&side);
            let mut in_series = 0;
            for step in 0..4000_u32 {
                // A bounce that comes up through the lip's own height, in steps of centimetres.
                let depth_m = 6.0 * (f64::from(step) / 700.0).sin() + 1.0;
                let lip = wrap.at(depth_m, beyond_m.hypot(depth_m));
                let turned_rad = (depth_m / beyond_m).atan() - slope_rad;
                let want = capstan::ratio(lip_mu, turned_rad);
                let off = (lip.factor / want - 1.0).abs();
                assert!(off < 1e-13, "{beyond_m} m, {depth_m} m: {lip:?}, {want}");
                assert!((lip.leaves * lip.factor - 1.0).abs() < 1e-15, "{lip:?}");
                in_series += u32::from(wrap.steps < FRESH_STEPS);
            }
            assert!(in_series > 3000, "only {in_series} steps in series");
        }
    }
}
