//! A body lying on a slope.
//!
//! *Model:* Coulomb friction, N = mg cos β, static and sliding friction alike.
//! *Valid:* |β| < 90°, a body that neither tips nor ploughs deeper as it goes.
//! *Error:* μ of a person on snow spreads over a factor of two `[nachbauer2016]`, as excerpted; the law adds none.
//! *Source:* textbook mechanics.   *Checked:* tests/physics (the angle of repose is arctan μ).

use super::GRAVITY_M_S2;

/// What keeps a body on the slope, as a share of its weight: μ cos β − sin β. Negative: it slides by itself.
#[must_use]
pub fn hold_share(mu: f64, slope_rad: f64) -> f64 {
    mu * slope_rad.cos() - slope_rad.sin()
}

/// Acceleration of a body sliding down the slope, m/s²; negative where friction stops it.
#[must_use]
pub fn slide_m_s2(mu: f64, slope_rad: f64) -> f64 {
    -GRAVITY_M_S2 * hold_share(mu, slope_rad)
}
