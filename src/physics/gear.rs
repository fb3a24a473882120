//! Ropes, cords and turning points as standards describe them, read from `data/gear.toml`.
//!
//! *Model:* tables; cord strength 0.2·d² kN; rope mass straight between the listed diameters.
//! *Valid:* cords of 4 to 8 mm, ropes of 6 to 9.5 mm. *Error:* makers' masses differ by 10 % or so `[ours]`.
//! *Source:* EN 892, EN 564, as excerpted; each figure's standing is in the file.
//! *Checked:* below and in tests/physics.

use crate::fault::refusal::Refusal;
use std::collections::BTreeMap;

use serde::Deserialize;

use super::{bound, impact};

const TEXT: &str = include_str!("../../data/gear.toml");

/// Everything the file holds.
///
/// ```
/// use schrund::physics::gear::Gear;
///
/// let gear = Gear::built_in()?;
/// assert_eq!(gear.rope_g_per_m(8.5), Some([46.0, 46.0]), "between 43 and 49 g/m, makers' figures");
/// assert_eq!(gear.rope_g_per_m(11.0), None, "thicker than listed");
/// assert!(Gear::from_toml("[rope.single]").is_err(), "a file of gear holds all of it");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Gear {
    /// Dynamic ropes by kind.
    pub rope: Ropes,
    /// Accessory cord.
    pub cord: Cord,
    /// Mass of ropes, thinnest first.
    pub mass: Vec<RopeMass>,
    /// Turning points by name: `karabiner`, `pulley`.
    pub turn: BTreeMap<String, Turn>,
    /// What one person can pull.
    pub pull: Pull,
    /// Allowances of a haul.
    pub haul: Allowance,
}

/// The kinds of dynamic rope of EN 892, and one as sold.
///
/// ```
/// use schrund::physics::gear::Gear;
///
/// let ropes = Gear::built_in()?.rope;
/// assert!(ropes.usual.peak_force_n < ropes.single.peak_force_n, "a rope as sold lies inside the limit");
/// assert_eq!(ropes.single.peak_force_n, 12_000.0, "EN 892, as excerpted");
/// assert_eq!(ropes.half.test_mass_kg, 55.0, "half ropes are tested with less");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ropes {
    /// Single rope, limits of the standard.
    pub single: RopeStretch,
    /// Half rope, limits of the standard.
    pub half: RopeStretch,
    /// Twin rope (both strands), limits of the standard.
    pub twin: RopeStretch,
    /// A rope as sold.
    pub usual: RopeStretch,
}

/// How a dynamic rope stretches.
///
/// ```
/// use schrund::physics::{gear::Gear, impact};
///
/// let usual = Gear::built_in()?.rope.usual;
/// let stiff_n = usual.modulus_n()?;
/// assert!((stiff_n - 21_213.0).abs() < 0.5, "derived from 8.5 kN, 80 kg, fall factor 1.77");
/// assert!((impact::peak_force_n(stiff_n, usual.test_mass_kg, usual.fall_factor) - 8500.0).abs() < 0.05, "and back");
/// assert!(stiff_n > 2.0 * usual.static_modulus_n()?, "a rope is far stiffer in a fall than under a weight");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RopeStretch {
    /// Stretch under 80 kg hanging still, as a share of the length.
    pub static_elongation: f64,
    /// Peak force of the drop test, N.
    pub peak_force_n: f64,
    /// Mass dropped, kg.
    pub test_mass_kg: f64,
    /// Height dropped over rope paid out.
    pub fall_factor: f64,
    /// How sure.
    pub standing: String,
}

impl RopeStretch {
    /// Mass that hangs on the rope in the elongation test, kg `[EN 892]`, as excerpted.
    pub const HANGING_KG: f64 = 80.0;

    /// Rope modulus EA in newtons that the drop test gives away, the stiff end.
    ///
    /// # Errors
    /// Says so when the figures are those of no spring.
    pub fn modulus_n(&self) -> Result<f64, Refusal> {
        impact::modulus_n(self.peak_force_n, self.test_mass_kg, self.fall_factor)
            .ok_or(Refusal::NoSpringPeak(self.peak_force_n))
    }

    /// Rope modulus EA in newtons under a hanging weight, the soft end.
    ///
    /// # Errors
    /// Says so when the elongation is not above zero.
    pub fn static_modulus_n(&self) -> Result<f64, Refusal> {
        impact::static_modulus_n(Self::HANGING_KG, self.static_elongation)
            .ok_or(Refusal::NoSpringStretch(self.static_elongation))
    }
}

/// Accessory cord.
///
/// ```
/// use schrund::physics::gear::Gear;
///
/// let cord = Gear::built_in()?.cord;
/// assert!((cord.strength_n(6.0) - 7200.0).abs() < 1e-6, "0.2 · 6² kN, EN 564 as excerpted");
/// assert!((cord.strength_n(8.0) / cord.strength_n(4.0) - 4.0).abs() < 1e-12, "twice as thick, four times as strong");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cord {
    /// Strength over the square of the diameter, kN/mm².
    pub kn_per_mm2: f64,
    /// The standard's list.
    pub strength: Vec<CordStrength>,
    /// How sure.
    pub standing: String,
}

impl Cord {
    /// Least strength in newtons of a cord of `diameter_mm`.
    #[must_use]
    pub fn strength_n(&self, diameter_mm: f64) -> f64 {
        1000.0 * self.kn_per_mm2 * diameter_mm * diameter_mm
    }
}

/// One line of the standard's list of cords.
///
/// ```
/// use schrund::physics::gear::{CordStrength, Gear};
///
/// let cord = Gear::built_in()?.cord;
/// assert_eq!(cord.strength[1], CordStrength { diameter_mm: 5.0, force_n: 5000.0 }, "EN 564, as excerpted");
/// let by_rule = cord.strength.iter().all(|line| (cord.strength_n(line.diameter_mm) - line.force_n).abs() < 1e-6);
/// assert!(by_rule, "the list follows the rule 0.2 · d²");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CordStrength {
    /// Diameter, mm.
    pub diameter_mm: f64,
    /// Least strength, N.
    pub force_n: f64,
}

/// Mass of a rope.
///
/// ```
/// use schrund::physics::gear::Gear;
///
/// let gear = Gear::built_in()?;
/// let thin = &gear.mass[0];
/// let [light_kg, heavy_kg] = thin.g_per_m.map(|g_per_m| 60.0 * g_per_m / 1000.0);
/// assert_eq!(thin.diameter_mm, 6.0);
/// assert!((light_kg - 1.32).abs() < 1e-9 && (heavy_kg - 1.74).abs() < 1e-9, "60 m of cord; makers differ");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RopeMass {
    /// Diameter, mm.
    pub diameter_mm: f64,
    /// Lightest and heaviest, grams per metre.
    pub g_per_m: [f64; 2],
    /// How sure.
    pub standing: String,
}

/// A turning point of a haul.
///
/// ```
/// use schrund::physics::{gear::Gear, haul::System};
///
/// let karabiner = &Gear::built_in()?.turn["karabiner"];
/// assert_eq!((karabiner.worst, karabiner.efficiency, karabiner.best), (0.40, 0.53, 0.60), "measured");
/// let three = System::ThreeLoaded.advantage(karabiner.efficiency);
/// assert!((three - 1.8109).abs() < 1e-9, "1 + 0.53 + 0.53²: a 3:1 over karabiners is hardly a 2:1");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Turn {
    /// Share of the force left after one turn.
    pub efficiency: f64,
    /// The least measured.
    pub worst: f64,
    /// The most measured.
    pub best: f64,
    /// How sure.
    pub standing: String,
}

/// What one person can pull on snow, sustained.
///
/// ```
/// use schrund::physics::{GRAVITY_M_S2, gear::Gear};
///
/// let pull = Gear::built_in()?.pull;
/// assert_eq!((pull.weak_n, pull.strong_n), (200.0, 400.0), "from memory");
/// let weight_n = 80.0 * GRAVITY_M_S2;
/// assert!(pull.strong_n < 0.6 * weight_n, "even a strong one alone lifts nobody straight up");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pull {
    /// A tired or light one, N.
    pub weak_n: f64,
    /// A strong one with a good stance, N.
    pub strong_n: f64,
    /// How sure.
    pub standing: String,
}

/// Allowances of a haul.
///
/// ```
/// use schrund::physics::gear::Gear;
///
/// let allowance = Gear::built_in()?.haul;
/// let (anchor_to_lip_m, down_m) = (6.0, 9.0);
/// assert_eq!(anchor_to_lip_m - allowance.clearance_m, 4.5, "what one stroke can use; our judgement");
/// assert_eq!(anchor_to_lip_m + 2.0 * down_m + allowance.rest_m, 26.5, "rope for a drop loop");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Allowance {
    /// Rope for hands, hitches and tails, m.
    pub rest_m: f64,
    /// Part of the anchor-to-lip distance no stroke can use, m.
    pub clearance_m: f64,
    /// How sure.
    pub standing: String,
}

impl Gear {
    /// The figures that come with the program.
    ///
    /// # Errors
    /// Says so when the embedded file is broken; a test proves it is not.
    pub fn built_in() -> Result<Self, Refusal> {
        Self::from_toml(TEXT)
    }

    /// Figures from a text like `data/gear.toml`.
    ///
    /// # Errors
    /// Names what does not parse or lies outside what it can be.
    pub fn from_toml(text: &str) -> Result<Self, Refusal> {
        let gear: Self = toml::from_str(text).map_err(|e| Refusal::BuiltIn(e.to_string()))?;
        gear.check()?;
        Ok(gear)
    }

    fn check(&self) -> Result<(), Refusal> {
        for rope in [
            &self.rope.single,
            &self.rope.half,
            &self.rope.twin,
            &self.rope.usual,
        ] {
            bound::MODULUS_N.check(rope.modulus_n()?)?;
            bound::MODULUS_N.check(rope.static_modulus_n()?)?;
        }
        for turn in self.turn.values() {
            for share in [turn.worst, turn.efficiency, turn.best] {
                bound::SHARE.check(share)?;
            }
        }
        for force_n in [self.pull.weak_n, self.pull.strong_n] {
            bound::FORCE_N.check(force_n)?;
        }
        for length_m in [self.haul.rest_m, self.haul.clearance_m] {
            bound::LENGTH_M.check(length_m)?;
        }
        if self.mass.is_empty() || !self.mass.is_sorted_by(|a, b| a.diameter_mm < b.diameter_mm) {
            return Err(Refusal::BuiltIn(
                "rope masses must be listed from thin to thick".to_owned(),
            ));
        }
        Ok(())
    }

    /// Lightest and heaviest mass in grams per metre of a rope of `diameter_mm`, straight between the listed
    /// diameters; `None` outside them.
    #[must_use]
    pub fn rope_g_per_m(&self, diameter_mm: f64) -> Option<[f64; 2]> {
        let same = |m: &&RopeMass| (m.diameter_mm - diameter_mm).abs() < 1e-9;
        if let Some(listed) = self.mass.iter().find(same) {
            return Some(listed.g_per_m);
        }
        let thicker = self.mass.iter().position(|m| m.diameter_mm > diameter_mm)?;
        let (thin, thick) = (
            self.mass.get(thicker.checked_sub(1)?)?,
            self.mass.get(thicker)?,
        );
        let share = (diameter_mm - thin.diameter_mm) / (thick.diameter_mm - thin.diameter_mm);
        let between = |i: usize| thin.g_per_m[i] + share * (thick.g_per_m[i] - thin.g_per_m[i]);
        Some([between(0), between(1)])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_built_in_file_loads() {
        Gear::built_in().expect("data/gear.toml is broken");
    }

    #[test]
    fn a_misspelt_figure_is_refused() {
        let text = TEXT.replace("peak_force_n", "peak_n");
        let refusal = Gear::from_toml(&text).expect_err("unknown field let through");
        let says = refusal.to_string();
        assert!(says.contains("peak_n"), "{says}");
    }
}
