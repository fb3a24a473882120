//! Everything that is handed out: the plan as one document.

use schemars::JsonSchema;
use serde::Serialize;
use serde_json::{Map, Value};

pub mod fact;
pub mod fall;
pub mod finding;
pub mod leg;
pub mod name;
pub mod options;
pub mod place;
pub mod why;

use crate::{
    plan::{
        finding::Finding,
        leg::{Leg, Verdict},
        name::RopeName,
        place::{HeightsFrom, JumpSummary},
        why::CarryWhy,
    },
    practice::Origin,
    trip::zone::{RopeWord, Surface},
};

/// Version of the plan's form; changes when a name or unit in it does.
pub const SCHEMA_VERSION: u32 = 1;

/// What a plan holds. Units stand in the names; lengths are metres.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Plan {
    /// Version of this document's form.
    pub schema_version: u32,
    /// The line.
    pub route: RouteSummary,
    /// The ice, in file order.
    pub zones: Vec<ZoneSummary>,
    /// The legs, tiling each stage.
    pub legs: Vec<Leg>,
    /// What goes into the packs.
    pub carry: Vec<Carry>,
    /// How the trip goes with fewer changes of the set-up; absent where nothing is saved by it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub keep_setup: Option<KeepSetup>,
    /// What must be said about the whole; what belongs to a leg stands there.
    pub findings: Vec<Finding>,
    /// What the plan rests on.
    pub assumptions: Vec<Assumption>,
}

impl Plan {
    /// Numbers of the zones that the route meets, margin included, rising.
    #[must_use]
    pub fn zones_met(&self) -> Vec<usize> {
        let mut met: Vec<usize> = self
            .legs
            .iter()
            .flat_map(|leg| leg.zones.iter().copied())
            .collect();
        met.sort_unstable();
        met.dedup();
        met
    }

    /// The worst verdict of all legs.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        self.legs
            .iter()
            .map(|leg| leg.verdict)
            .max()
            .unwrap_or(Verdict::Unroped)
    }
}

/// The route as a whole.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RouteSummary {
    /// What the file calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Metres walked over all stages planned.
    pub length_m: f64,
    /// Metres up; absent without heights.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ascent_m: Option<f64>,
    /// Metres down; absent without heights.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub descent_m: Option<f64>,
    /// Ups and downs smaller than this were not counted.
    pub ascent_threshold_m: f64,
    /// Where the heights come from; both over several stages.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub heights_from: Vec<HeightsFrom>,
    /// Effort kilometres: the way, the climb, and what goes steeply down; absent without heights.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub effort_km: Option<f64>,
    /// How long it takes.
    pub time: TimeSummary,
    /// Its stages.
    pub stages: Vec<StageSummary>,
}

/// How long the whole route takes, line by line, minutes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct TimeSummary {
    /// Walking.
    pub walking_min: f64,
    /// Roping up and unroping.
    pub rope_min: f64,
    /// Breaks.
    pub break_min: f64,
    /// All of it.
    pub total_min: f64,
}

/// One stage of the route.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct StageSummary {
    /// Number from 1.
    pub stage: usize,
    /// What the file calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Metres walked.
    pub length_m: f64,
    /// Points, repeats dropped.
    pub points: usize,
    /// Where the line ends and goes on elsewhere.
    pub jumps: Vec<JumpSummary>,
}

/// One zone with where the route crosses it.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ZoneSummary {
    /// Number from 1.
    pub zone: usize,
    /// What the leader calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Widest gap expected, metres across.
    pub gap_m: f64,
    /// Whether that width was assumed, not given.
    pub gap_assumed: bool,
    /// Snow on the ice.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub snow_depth_m: Option<f64>,
    /// `snow` or `bare`.
    pub surface: Surface,
    /// Direction in which the gaps run, degrees from true north.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strike_deg: Option<f64>,
    /// How far it may be off.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strike_uncertainty_deg: Option<f64>,
    /// Strike assumed across the fall line of the terrain model where none is given, degrees; a hint.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strike_proposed_deg: Option<f64>,
    /// `auto`, `always` or `never`.
    pub rope: RopeWord,
    /// As written in the file.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub observed_on: Option<String>,
    /// As written in the file.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub source: Option<String>,
    /// As written in the file.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// Properties that mean nothing here.
    #[serde(skip_serializing_if = "Map::is_empty")]
    #[schemars(with = "Option<std::collections::BTreeMap<String, Value>>")]
    pub other: Map<String, Value>,
    /// Bare polygon crossings, no margin.
    pub crossings: Vec<CrossingSummary>,
}

/// One stretch of the route inside a zone.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct CrossingSummary {
    /// Stage number, from 1.
    pub stage: usize,
    /// Chainage where the line enters.
    pub enter_m: f64,
    /// Chainage where it leaves.
    pub exit_m: f64,
}

/// One rope to take along.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Carry {
    /// Metres: a length sold, or that of the rope at hand.
    pub length_m: f64,
    /// Number of the rope team that carries it.
    pub team: usize,
    /// Rope needed on the leg that asks most, metres.
    pub needed_m: f64,
    /// That leg: the one that decides which rope.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leg: Option<usize>,
    /// How many are on it.
    pub people: usize,
    /// The rope at hand; absent where a length sold is meant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope: Option<RopeName>,
    /// Why this one.
    #[serde(flatten)]
    pub why: CarryWhy,
}

/// The trip with some set-ups kept over several roped legs, against changing before each leg.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct KeepSetup {
    /// As the legs stand: how often the set-up changes, and what that costs in minutes.
    pub as_planned: ChangeCost,
    /// With the set-ups kept.
    pub kept: ChangeCost,
    /// The roped legs, those under one set-up together.
    pub runs: Vec<KeptRun>,
}

/// How often the set-up changes between the roped legs of a stage, and what that costs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct ChangeCost {
    /// Changes.
    pub changes: usize,
    /// Minutes for them, and those lost by walking wider than a leg asks for.
    pub minutes: f64,
}

/// Roped legs of one stage under one set-up.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct KeptRun {
    /// Number of the stage.
    pub stage: usize,
    /// Numbers of the legs.
    pub legs: Vec<usize>,
    /// One set-up for each rope team.
    pub teams: Vec<KeptTeam>,
}

/// The set-up of one team over several legs.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct KeptTeam {
    /// Number of the rope team.
    pub team: usize,
    /// Walking distance between neighbours, metres: the least that suits all the legs.
    pub spacing_m: f64,
    /// Brake knots from each end person, where any of the legs wants them.
    pub knots_each_end: usize,
    /// Spare rope of each end person, metres.
    pub coil_m: f64,
    /// Rope needed, metres.
    pub needed_m: f64,
    /// How much longer than planned the team stays on the rope after each leg, at most, metres.
    pub longer_m: f64,
}

/// One thing that the plan rests on.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Assumption {
    /// The name under which a trip file can change it.
    pub name: String,
    /// What it is.
    pub says: String,
    /// The number or word in force.
    pub value: Value,
    /// Unit of a number; `1` for a pure one, empty for a word.
    pub unit: String,
    /// What stands behind it.
    pub standing: String,
    /// Who put it in force: default, practice set, trip file or flag.
    pub origin: Origin,
}
