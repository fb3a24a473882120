//! The slide of holders tied to a faller by a rope that does not stretch, in closed form.
//!
//! *Model:* one body of mass M + m₀/λ; a = (m₀g/λ − Σmᵢg(μ cos β − sin β))/(M + m₀/λ) before and after the
//! holders react, so S = v₊t_r + ½a_A t_r² + (v₊ + a_A t_r)²/(2|a_B|). v₊ is the common speed once the rope is
//! taut; after a drop through slack s it is the inelastic jerk v₊ = (m₀/λ)√(2gs)/(M + m₀/λ), and 0 without slack.
//! *Valid:* all holders start at once, the rope runs over the lip towards the faller all the time, no knots.
//! *Error:* an elastic undamped rope of 20 kN gives slides 14 to 63 % longer or shorter in the printed cases, one of
//! 2 MN 1 to 6 %, one of 200 MN below 0.6 % (measured in tests/physics).
//! *Source:* Newton's law, `[derived]`.   *Checked:* tests/physics (four printed slides), and itself the check of `hold_dynamic`.

use super::{GRAVITY_M_S2, incline};

/// One stiff-rope fall; angles in radians, masses in kilograms.
///
/// ```
/// use schrund::physics::hold_stiff::StiffFall;
///
/// let mut fall = StiffFall {
///     victim_kg: 80.0, holders_kg: 80.0, lip: 1.5, mu_before: 0.2, mu_after: 0.9, slope_rad: 0.0, delay_s: 1.0,
///     slack_m: 0.0,
/// };
/// let slide_m = fall.slide_m().expect("it stops");
/// assert!((slide_m - 4.1188).abs() < 5e-5, "in closed form, derived");
/// (fall.lip, fall.mu_after) = (1.0, 0.2);
/// assert_eq!(fall.slide_m(), None, "on ice one holder never stops");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StiffFall {
    /// Mass of the faller with pack, kg.
    pub victim_kg: f64,
    /// Mass of all holders together, kg.
    pub holders_kg: f64,
    /// Lip factor λ on this ground.
    pub lip: f64,
    /// Friction before the holders react.
    pub mu_before: f64,
    /// Friction once they do.
    pub mu_after: f64,
    /// Slope towards the lip, rad.
    pub slope_rad: f64,
    /// Time from the first pull to the reaction, s.
    pub delay_s: f64,
    /// Height dropped before the rope is taut, m.
    pub slack_m: f64,
}

impl StiffFall {
    /// Common acceleration towards the lip with friction `mu`, m/s².
    #[must_use]
    pub fn acceleration_m_s2(&self, mu: f64) -> f64 {
        let pulls_kg = self.victim_kg / self.lip;
        let holds_kg = self.holders_kg * incline::hold_share(mu, self.slope_rad);
        GRAVITY_M_S2 * (pulls_kg - holds_kg) / (self.holders_kg + pulls_kg)
    }

    /// Common speed when the rope has just come taut, m/s.
    #[must_use]
    pub fn speed_after_jerk_m_s(&self) -> f64 {
        let pulls_kg = self.victim_kg / self.lip;
        let speed_m_s = (2.0 * GRAVITY_M_S2 * self.slack_m).sqrt();
        pulls_kg * speed_m_s / (self.holders_kg + pulls_kg)
    }

    /// How far the holders slide, m; `None` where nothing ever stops them.
    #[must_use]
    pub fn slide_m(&self) -> Option<f64> {
        let (start_m_s, before) = (
            self.speed_after_jerk_m_s(),
            self.acceleration_m_s2(self.mu_before),
        );
        let stops_in_s = if before < 0.0 {
            start_m_s / -before
        } else {
            f64::INFINITY
        };
        let drag_s = self.delay_s.min(stops_in_s);
        let first_m = start_m_s * drag_s + 0.5 * before * drag_s * drag_s;
        let speed_m_s = (start_m_s + before * drag_s).max(0.0);
        let after = self.acceleration_m_s2(self.mu_after);
        if stops_in_s <= self.delay_s || (speed_m_s <= 0.0 && after <= 0.0) {
            return Some(first_m);
        }
        (after < 0.0).then(|| first_m + speed_m_s * speed_m_s / (-2.0 * after))
    }
}
