//! What happens after a fall: who holds, what rope is free, and whether those left can haul.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    physics::{
        assumed::{Parameter, Snow},
        haul::{Can, System},
    },
    plan::name::PersonName,
};

/// The fall model's answer for one rope team on one leg. It holds for the assumptions of the plan only.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Arrest {
    /// Position on the rope, from 1, of the person whose fall is held worst.
    pub falls: usize,
    /// Positions of those who hold.
    pub holds: Vec<usize>,
    /// Whether they do.
    pub verdict: Held,
    /// The assumptions that decide; empty unless the verdict is `depends`, and where only verdicts were asked for.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub depends_on: Vec<Parameter>,
    /// Whether each of them decides by itself; otherwise only in combination do they.
    pub alone: bool,
    /// Least and most slide of the first holder over the assumed cases, metres; where not held, the way to the lip.
    pub slide_m: [f64; 2],
    /// Least and most peak force on the first holder, kilonewtons.
    pub holder_force_kn: [f64; 2],
    /// What the team was taken to stand on.
    pub snow: Snow,
    /// Whether nobody said what snow there is, so that it was assumed.
    pub snow_assumed: bool,
    /// Slope of the ground towards the lip, degrees; 0 where no heights are known.
    pub slope_deg: f64,
    /// Whether heights say how steep it is there.
    pub slope_known: bool,
    /// Whether the model let the brake knots bear: only where the snow is known to be deep enough.
    pub knots_counted: bool,
    /// The verdict for everybody's fall, in rope order.
    pub everybody: Vec<Held>,
    /// Advice on the order; stands on the leg where the team is held worst, and only there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub order: Option<OrderAdvice>,
}

/// Whether a fall is held over the corners of everything assumed. No probability.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Held {
    /// In all assumed cases.
    All,
    /// In some.
    Depends,
    /// In none.
    None,
}

/// In which order the people of a team are held best, as the model has it.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OrderAdvice {
    /// From the first to the last person, with the positions they have now.
    pub order: Vec<PersonName>,
    /// Whether changing places is worth it.
    pub worth_it: bool,
}

/// How deep a drop loop reaches for one person who falls, from an anchor where the holder stands.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Reach {
    /// Position on the rope, from 1.
    pub person: usize,
    /// The side with more free rope.
    pub side: Side,
    /// People on that side.
    pub people: usize,
    /// Rope that they have free, metres.
    pub free_m: f64,
    /// How deep below the lip the loop reaches, metres, hands and hitches counted; negative where it ends short of the
    /// lip. Never deeper than the rope lets anybody hang while the holder keeps away from the lip.
    pub depth_m: f64,
    /// Whether that is as deep as anybody can hang on this rope.
    pub whoever: bool,
    /// Positions of those who must untie for it, secured first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub needs_untied: Vec<usize>,
    /// The ways to haul that the free rope allows, each with the depths that it reaches.
    pub hauls: Vec<HaulReach>,
}

/// A side of the fallen person on the rope.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Side {
    /// Those who walk in front.
    Ahead,
    /// Those who follow.
    Behind,
}

/// How deep below the lip a way to haul reaches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HaulReach {
    /// Which way.
    pub system: System,
    /// Least depth, metres.
    pub from_m: f64,
    /// Greatest depth, metres.
    pub to_m: f64,
}

/// Ways to haul out the person whose fall is held worst.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HaulTable {
    /// Position on the rope, from 1, of the person in the crevasse.
    pub person: usize,
    /// People left to pull: those on the side with more free rope.
    pub haulers: usize,
    /// From the anchor to the lip, metres.
    pub anchor_to_lip_m: f64,
    /// From the lip down to the person, metres: the anchor is where `anchor_share` says.
    pub lip_to_person_m: f64,
    /// Share of the force that the lip leaves.
    pub lip_share: f64,
    /// Whether brake knots block the loaded strand, so that a haul needs its own.
    pub needs_own_strand: bool,
    /// One line for each system.
    pub systems: Vec<HaulSystem>,
    /// What of it those left can do with the rope they have.
    pub answer: HaulAnswer,
    /// Rope that hands and hitches take, metres; counted in what each system needs.
    pub hands_m: f64,
}

/// One way to haul.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HaulSystem {
    /// Which.
    pub system: System,
    /// Rope it takes beyond the loaded strand, metres; absent where the anchor is too near for a stroke.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope_m: Option<f64>,
    /// Whether the free rope is enough and knots do not block its strand.
    pub possible: bool,
    /// Force at the hands, kilonewtons.
    pub pull_kn: f64,
    /// How often it is pulled through; absent where it goes in one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strokes: Option<u32>,
    /// Whether those left can pull it.
    pub can: Can,
}

/// What those left can do with the rope they have.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "answer", rename_all = "kebab-case")]
pub enum HaulAnswer {
    /// The surest system that the free rope allows.
    Best {
        /// Which.
        system: System,
        /// Whether those left can pull it.
        can: Can,
        /// How many are left to pull.
        haulers: usize,
        /// Force at the hands, kilonewtons.
        pull_kn: f64,
        /// The least force at the hands of all systems that the free rope allows, kilonewtons.
        least_kn: f64,
    },
    /// The free rope is too short for any.
    TooShort {
        /// The system for which least is missing.
        system: System,
        /// Metres missing for it, hands and hitches counted.
        missing_m: f64,
        /// How many are left to pull.
        haulers: usize,
    },
    /// The anchor is too near for any haul.
    AnchorTooNear {
        /// How many are left to pull.
        haulers: usize,
    },
}

impl Held {
    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::All => "all",
            Self::Depends => "depends",
            Self::None => "none",
        }
    }
}
