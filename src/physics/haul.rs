//! What it takes to haul somebody over a lip: force at the hands, rope, strokes.
//!
//! *Model:* tension method. Each turn passes on a share e of the force, so the actual advantage is a
//! polynomial in e; the pull is P = W/(e_lip·A(e)).
//! *Valid:* every turn alike, ropes parallel, traveller free to run τ = a − 1.5 m, nobody stretches the rope.
//! *Error:* e of a karabiner spreads from 0.40 to 0.60 (measured, rescue-training publications), which moves a 9:1 by a factor of two.
//! *Source:* `[derived]` by the tension method; rope and strokes of 2:1, 3:1 and 6:1 as in the trade, the others `[derived]` here.
//! *Checked:* tests/physics (e = 1 gives 2, 3, 6, 9; A by passing the force from hand to load, turn by turn).

use schemars::JsonSchema;
use serde::Serialize;

use super::{
    GRAVITY_M_S2,
    bound::{self, Bound},
    gear::{Allowance, Gear},
};
use crate::fault::refusal::Refusal;

/// A way to haul.
///
/// ```
/// use schrund::physics::haul::System;
///
/// let without_loss = System::ALL.map(|system| system.advantage(1.0));
/// assert_eq!(without_loss, [2.0, 2.0, 3.0, 3.0, 6.0, 9.0]);
/// assert_eq!(System::ALL.map(System::turns), [1, 1, 2, 2, 3, 4]);
/// assert!((System::Nine.advantage(0.53) - 3.28).abs() < 0.005, "(1 + 0.53 + 0.53²)²: karabiners eat two thirds");
/// assert!(!System::LoopAtLip.needs_free_strand(), "it works where the rope has cut into the lip");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum System {
    /// 2:1, a drop loop with its fixed end at the lip.
    LoopAtLip,
    /// 2:1, a drop loop with its fixed end at the anchor.
    LoopAtAnchor,
    /// 3:1 on the loaded strand.
    ThreeLoaded,
    /// 3:1 on a strand of its own.
    ThreeNew,
    /// 6:1: a loop of its own rope that pulls the tail of a 3:1 on the loaded strand.
    SixLoopOnThree,
    /// 9:1: a 3:1 made of the tail of a 3:1 on the loaded strand.
    Nine,
}

/// Whether the people left can do it.
///
/// ```
/// use schrund::physics::{gear::Gear, haul::{Can, HaulSite}};
///
/// let mut site = HaulSite {
///     anchor_to_lip_m: 6.0, lip_to_victim_m: 6.0, victim_mass_kg: 80.0, e: 0.53, e_lip: 0.8, haulers: 1,
/// };
/// let gear = Gear::built_in()?;
/// let drop_loop = site.table(&gear)?[0]; // 80 · 9.807 / (0.8 · 1.53) = 641 N at the hands
/// assert_eq!((drop_loop.pull_n.round(), drop_loop.can), (641.0, Can::No), "a strong one pulls 400 N, from memory");
/// site.haulers = 4;
/// assert_eq!(site.table(&gear)?[0].can, Can::Yes, "160 N each");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Can {
    /// Not even strong ones.
    No,
    /// Strong ones with a good stance.
    Perhaps,
    /// Tired or light ones too.
    Yes,
}

impl Can {
    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::No => "no",
            Self::Perhaps => "perhaps",
            Self::Yes => "yes",
        }
    }
}

/// Where the haul happens.
///
/// ```
/// use schrund::physics::{gear::Gear, haul::HaulSite};
///
/// let site = HaulSite {
///     anchor_to_lip_m: 6.0, lip_to_victim_m: 9.0, victim_mass_kg: 80.0, e: 1.0, e_lip: 1.0, haulers: 1,
/// };
/// // Worked by hand with a stroke of 4.5 m and 2.5 m for the hands; from the 2:1 at the lip to the 9:1.
/// let rope_m: Vec<f64> = site.table(&Gear::built_in()?)?.iter().filter_map(|line| line.rope_m).collect();
/// assert_eq!(rope_m, [26.5, 32.5, 11.5, 26.5, 23.0, 20.5]);
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HaulSite {
    /// From the anchor to the lip, m.
    pub anchor_to_lip_m: f64,
    /// From the lip down to the victim, m.
    pub lip_to_victim_m: f64,
    /// The victim with what hangs on them, kg.
    pub victim_mass_kg: f64,
    /// Share of the force left after each turn, 0 to 1.
    pub e: f64,
    /// Share of the force left over the lip, 0 to 1.
    pub e_lip: f64,
    /// People left to pull.
    pub haulers: u32,
}

/// One line of the table: one system in one scene.
///
/// ```
/// use schrund::physics::{GRAVITY_M_S2, gear::Gear, haul::{Haul, HaulSite}};
///
/// let near = HaulSite {
///     anchor_to_lip_m: 1.0, lip_to_victim_m: 9.0, victim_mass_kg: 80.0, e: 0.83, e_lip: 1.0, haulers: 2,
/// };
/// let lines: Vec<Haul> = near.table(&Gear::built_in()?)?;
/// let lifts_him = |line: &Haul| (line.pull_n * line.advantage - 80.0 * GRAVITY_M_S2).abs() < 1e-9;
/// assert!(lines.iter().all(lifts_him), "force at the hands times advantage is his weight");
/// let stuck = lines.iter().filter(|line| line.rope_m.is_none() && line.strokes.is_none()).count();
/// assert_eq!(stuck, 4, "an anchor 1 m behind the lip leaves a traveller no room: only drop loops are left");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Haul {
    /// Which system.
    pub system: System,
    /// Advantage with what the turns lose.
    pub advantage: f64,
    /// Force at the hands, N.
    pub pull_n: f64,
    /// Rope beyond the strand the victim hangs on, m; `None` where the anchor is too near for any stroke.
    pub rope_m: Option<f64>,
    /// How often the traveller must be set back, 1 being one stroke; `None` where it is pulled in one go or not at all.
    pub strokes: Option<u32>,
    /// Whether the people left can do it.
    pub can: Can,
}

/// No haul is offered whose traveller runs less than this, m. Our judgement.
pub const LEAST_STROKE_M: f64 = 2.0;
const ANCHOR: Bound = Bound::new("distance from anchor to lip", "m", 0.0, 200.0);
const DEPTH: Bound = Bound::new("depth of the victim below the lip", "m", 0.0, 200.0);
const E: Bound = Bound::new("efficiency of a turn", "", 0.05, 1.0);
const E_LIP: Bound = Bound::new("efficiency of the lip", "", 0.05, 1.0);

/// Rope by itself that a drop loop takes to whoever hangs `h` below the lip, `a` from the anchor to the lip, `rest` for hands: there, down
/// to them and back over the lip; m.
pub(crate) fn loop_at_lip_m(a: f64, h: f64, rest: f64) -> f64 {
    a + 2.0 * h + rest
}

impl System {
    /// All of them, weakest first.
    pub const ALL: [Self; 6] = [
        Self::LoopAtLip,
        Self::LoopAtAnchor,
        Self::ThreeLoaded,
        Self::ThreeNew,
        Self::SixLoopOnThree,
        Self::Nine,
    ];

    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::LoopAtLip => "loop-at-lip",
            Self::LoopAtAnchor => "loop-at-anchor",
            Self::ThreeLoaded => "three-loaded",
            Self::ThreeNew => "three-new",
            Self::SixLoopOnThree => "six-loop-on-three",
            Self::Nine => "nine",
        }
    }

    /// Whether it pulls on the strand the victim hangs on: no brake knots in it, rope not cut into the lip.
    #[must_use]
    pub fn needs_free_strand(self) -> bool {
        matches!(self, Self::ThreeLoaded | Self::SixLoopOnThree | Self::Nine)
    }

    /// How often its rope turns: the highest power of the efficiency in its advantage. Derived.
    #[must_use]
    pub fn turns(self) -> usize {
        match self {
            Self::LoopAtLip | Self::LoopAtAnchor => 1,
            Self::ThreeLoaded | Self::ThreeNew => 2,
            Self::SixLoopOnThree => 3,
            Self::Nine => 4,
        }
    }

    /// Hitches that grip a rope in it: one that holds the load while hands let go, and one for each traveller. Derived.
    #[must_use]
    pub fn grips(self) -> usize {
        match self {
            Self::LoopAtLip | Self::LoopAtAnchor => 1,
            Self::ThreeLoaded | Self::ThreeNew => 2,
            Self::SixLoopOnThree | Self::Nine => 3,
        }
    }

    /// Actual advantage when each turn passes on `e` of the force.
    #[must_use]
    pub fn advantage(self, e: f64) -> f64 {
        let (two, three) = (1.0 + e, 1.0 + e + e * e);
        match self {
            Self::LoopAtLip | Self::LoopAtAnchor => two,
            Self::ThreeLoaded | Self::ThreeNew => three,
            Self::SixLoopOnThree => two * three,
            Self::Nine => three * three,
        }
    }

    /// Rope beyond the strand the victim hangs on, m: `a` to the lip, `h` down, `stroke` usable, `rest` for hands.
    fn rope_m(self, a: f64, h: f64, stroke: f64, rest: f64) -> Option<f64> {
        match self {
            Self::LoopAtLip => Some(loop_at_lip_m(a, h, rest)),
            Self::LoopAtAnchor => Some(2.0 * a + 2.0 * h + rest),
            _ if stroke < LEAST_STROKE_M - 1e-9 => None,
            Self::ThreeLoaded => Some(2.0 * stroke + rest),
            Self::ThreeNew => Some(a + h + 2.0 * stroke + rest),
            Self::SixLoopOnThree => Some(4.0 * stroke + 2.0 * rest),
            Self::Nine => Some(4.0 * stroke + rest),
        }
    }

    /// Depths below the lip that a system reaches where `free_m` of rope are there for it beyond the strand that the
    /// victim hangs on and anchor and victim are `rope_m` of taut rope apart, m; `None` where it reaches none.
    #[must_use]
    pub fn depths_m(self, rope_m: f64, free_m: f64, haul: &Allowance) -> Option<[f64; 2]> {
        let rest_m = haul.rest_m;
        let (from_m, to_m) = match self {
            Self::LoopAtLip => (0.0, free_m - rope_m - rest_m),
            Self::LoopAtAnchor if 2.0 * rope_m + rest_m <= free_m + 1e-9 => (0.0, rope_m),
            Self::LoopAtAnchor => return None,
            // The longer the way from anchor to lip, the more rope the traveller runs over.
            _ => {
                let least_m =
                    rope_m - haul.clearance_m - self.longest_stroke_m(rope_m, free_m, rest_m);
                (least_m.max(0.0), rope_m - haul.clearance_m - LEAST_STROKE_M)
            }
        };
        (from_m <= to_m + 1e-9).then_some([from_m, to_m])
    }

    /// The longest run of the traveller that so much free rope allows, m.
    fn longest_stroke_m(self, rope_m: f64, free_m: f64, rest_m: f64) -> f64 {
        match self {
            Self::ThreeNew => (free_m - rope_m - rest_m) / 2.0,
            Self::SixLoopOnThree => (free_m - 2.0 * rest_m) / 4.0,
            Self::Nine => (free_m - rest_m) / 4.0,
            Self::ThreeLoaded | Self::LoopAtLip | Self::LoopAtAnchor => (free_m - rest_m) / 2.0,
        }
    }

    /// Height gained by one stroke of the traveller, m; `None` where there is no traveller.
    fn gain_m(self, stroke: f64) -> Option<f64> {
        match self {
            Self::LoopAtLip | Self::LoopAtAnchor => None,
            Self::ThreeLoaded | Self::ThreeNew => Some(stroke),
            Self::SixLoopOnThree | Self::Nine => Some(stroke / 3.0),
        }
    }
}

impl HaulSite {
    /// One line for each system.
    ///
    /// # Errors
    /// Names the first figure that lies outside what it can be.
    pub fn table(&self, gear: &Gear) -> Result<Vec<Haul>, Refusal> {
        ANCHOR.check(self.anchor_to_lip_m)?;
        DEPTH.check(self.lip_to_victim_m)?;
        bound::MASS_KG.check(self.victim_mass_kg)?;
        E.check(self.e)?;
        E_LIP.check(self.e_lip)?;
        Ok(System::ALL.iter().map(|&s| self.haul(s, gear)).collect())
    }

    fn haul(&self, system: System, gear: &Gear) -> Haul {
        let (a, h) = (self.anchor_to_lip_m, self.lip_to_victim_m);
        let stroke = (a - gear.haul.clearance_m).max(0.0);
        let advantage = system.advantage(self.e);
        let pull_n = self.victim_mass_kg * GRAVITY_M_S2 / (self.e_lip * advantage);
        let people = f64::from(self.haulers);
        let can = match pull_n {
            p if p <= people * gear.pull.weak_n => Can::Yes,
            p if p <= people * gear.pull.strong_n => Can::Perhaps,
            _ => Can::No,
        };
        Haul {
            system,
            advantage,
            pull_n,
            rope_m: system.rope_m(a, h, stroke, gear.haul.rest_m),
            strokes: system.gain_m(stroke).and_then(|gain| strokes(h, gain)),
            can,
        }
    }
}

/// ⌈height/gain⌉, at least one; `None` without a gain. A hair (1 nm) over a whole number is rounding, not a stroke.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to the range of u32 first"
)]
fn strokes(height_m: f64, gain_m: f64) -> Option<u32> {
    if gain_m <= 0.0 {
        return None;
    }
    let count = ((height_m - 1e-9) / gain_m).ceil();
    Some(count.clamp(1.0, f64::from(u32::MAX)) as u32)
}
