//! The peak force in an elastic rope that stops a falling mass, and the rope modulus a drop test gives away.
//!
//! *Model:* weightless linear spring k = EA/L, all energy into the rope: F = mg + √((mg)² + 2·mg·EA·f),
//! f the height fallen over the rope paid out; turned round, EA = F(F − 2mg)/(2mg·f).
//! *Valid:* a fixed holder, a rope within its first stretch, nothing slipping.
//! *Error:* real ropes damp: EA from a drop test is two to four times the one from hanging a weight on it `[derived]` from EN 892's limits.
//! *Source:* energy balance, textbook mechanics; figures `[EN 892]`, as excerpted.   *Checked:* tests/physics.

use super::GRAVITY_M_S2;

/// Rope modulus EA in newtons from the peak force of a drop test.
///
/// `None` where the force does not exceed twice the weight (no spring stops a fall with less) or a figure is not above 0.
#[must_use]
pub fn modulus_n(peak_force_n: f64, mass_kg: f64, fall_factor: f64) -> Option<f64> {
    let weight_n = mass_kg * GRAVITY_M_S2;
    let ea_n = peak_force_n * (peak_force_n - 2.0 * weight_n) / (2.0 * weight_n * fall_factor);
    (weight_n > 0.0 && fall_factor > 0.0 && ea_n > 0.0 && ea_n.is_finite()).then_some(ea_n)
}

/// Rope modulus EA in newtons from the stretch under a hanging mass: mg over the relative elongation.
#[must_use]
pub fn static_modulus_n(mass_kg: f64, elongation: f64) -> Option<f64> {
    let ea_n = mass_kg * GRAVITY_M_S2 / elongation;
    (ea_n > 0.0 && ea_n.is_finite()).then_some(ea_n)
}

/// Peak force in newtons of a fall of factor `fall_factor` on a rope of modulus `modulus_n`.
#[must_use]
pub fn peak_force_n(modulus_n: f64, mass_kg: f64, fall_factor: f64) -> f64 {
    let weight_n = mass_kg * GRAVITY_M_S2;
    weight_n + (weight_n * weight_n + 2.0 * weight_n * modulus_n * fall_factor).sqrt()
}

/// Peak force in newtons when the holder stands like a rock `span_m` away and the rope has `slack_m` in it:
/// the faller drops the slack, then stretches `span_m + slack_m` of rope.
#[must_use]
pub fn fixed_holder_force_n(modulus_n: f64, mass_kg: f64, span_m: f64, slack_m: f64) -> f64 {
    peak_force_n(modulus_n, mass_kg, slack_m / (span_m + slack_m))
}
