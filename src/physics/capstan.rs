//! How much of a rope force is lost round an edge.
//!
//! *Model:* belt friction, T₁/T₂ = e^(μφ); at a lip φ = π/2 − β, the ground sloping by β towards it.
//! *Valid:* a rope that slides, has no stiffness of its own and has not cut in; φ ≥ 0.
//! *Error:* the law itself is exact; μ of a rope in snow is known to a factor of two at best `[ours]`.
//! *Source:* Euler–Eytelwein, textbook mechanics.   *Checked:* tests/physics (ratio 2 over 90° ⇔ μ 0.4413 `[derived]`).

use std::f64::consts::FRAC_PI_2;

/// Force ratio of a rope sliding round `wrap_rad` with friction `mu`; 1 for no wrap or none left.
#[must_use]
pub fn ratio(mu: f64, wrap_rad: f64) -> f64 {
    (mu * wrap_rad.max(0.0)).exp()
}

/// Angle by which a rope turns at a lip when the ground slopes by `slope_rad` towards it, radians.
#[must_use]
pub fn wrap_at_lip_rad(slope_rad: f64) -> f64 {
    (FRAC_PI_2 - slope_rad).max(0.0)
}

/// Lip factor λ = e^(μ(π/2 − β)).
#[must_use]
pub fn lip_factor(mu: f64, slope_rad: f64) -> f64 {
    ratio(mu, wrap_at_lip_rad(slope_rad))
}

/// The friction that gives `lip` over a right angle: the inverse of [`lip_factor`] on the flat.
#[must_use]
pub fn mu_of_square_lip(lip: f64) -> f64 {
    lip.max(1.0).ln() / FRAC_PI_2
}
