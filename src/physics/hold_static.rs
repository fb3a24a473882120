//! Whether people lying in the snow balance somebody hanging over a lip.
//!
//! *Model:* m₀/λ − F_k/g ≤ Σ mᵢ(μᵢ cos β − sin β): the hanging mass, lessened by the lip and by brake knots,
//! against what friction leaves of the holders.
//! *Valid:* nobody moves; the rope runs over one lip; β the slope towards it.
//! *Error:* none of its own; its answer is as good as μ and λ.
//! *Source:* capstan and incline, the two files beside this one.   *Checked:* tests/physics (holders needed by kind of snow `[derived]`).

use super::{GRAVITY_M_S2, incline};

/// Somebody lying in the snow with the rope taut.
///
/// ```
/// use schrund::physics::hold_static::{Holder, Load, holders_needed, margin_kg};
///
/// let (lip, mu) = (1.4, 0.5);
/// let people = holders_needed(lip, mu, 0.0).expect("on the flat"); // 1/(1.4 · 0.5) = 1.43
/// let just_enough = [Holder { mass_kg: 80.0 * people, mu }];
/// let load = Load { victim_kg: 80.0, lip, knots_n: 0.0 };
/// assert!((people - 1.0 / 0.7).abs() < 1e-12);
/// assert!(margin_kg(&load, &just_enough, 0.0).abs() < 1e-9, "they balance him to the gram");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Holder {
    /// Mass with pack, kg.
    pub mass_kg: f64,
    /// Friction on the snow.
    pub mu: f64,
}

/// What pulls at the holders.
///
/// ```
/// use schrund::physics::{GRAVITY_M_S2, hold_static::{Holder, Load, margin_kg}};
///
/// let one = [Holder { mass_kg: 80.0, mu: 0.5 }];
/// let bare = Load { victim_kg: 80.0, lip: 1.6, knots_n: 0.0 };
/// assert!((margin_kg(&bare, &one, 0.0) + 10.0).abs() < 1e-9, "0.5 · 80 kg against 80/1.6 kg: he is dragged");
/// let knotted = Load { knots_n: 10.0 * GRAVITY_M_S2, ..bare };
/// assert!(margin_kg(&knotted, &one, 0.0).abs() < 1e-9, "knots that bear 10 kg make up for it");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Mass of the hanging person with pack, kg.
    pub victim_kg: f64,
    /// Lip factor λ on this ground.
    pub lip: f64,
    /// Force all brake knots bear together, N.
    pub knots_n: f64,
}

/// What is left over, in kilograms hung behind the lip: right side less left side. Negative: they are dragged.
#[must_use]
pub fn margin_kg(load: &Load, holders: &[Holder], slope_rad: f64) -> f64 {
    let holds_kg: f64 = holders
        .iter()
        .map(|h| h.mass_kg * incline::hold_share(h.mu, slope_rad))
        .sum();
    let pulls_kg = load.victim_kg / load.lip - load.knots_n / GRAVITY_M_S2;
    holds_kg - pulls_kg.max(0.0)
}

/// How many holders of the victim's own mass it takes, as a fraction of a person; `None` where no number does.
#[must_use]
pub fn holders_needed(lip: f64, mu: f64, slope_rad: f64) -> Option<f64> {
    let each = incline::hold_share(mu, slope_rad);
    (each > 0.0 && lip > 0.0).then(|| 1.0 / (lip * each))
}
