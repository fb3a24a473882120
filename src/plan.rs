//! Everything that is handed out: the plan as one document.

use schemars::JsonSchema;
use serde::Serialize;
use serde_json::{Map, Value};

pub mod belay;
mod both;
pub mod change;
pub mod clock;
pub mod cure;
pub mod depth;
pub mod explained;
pub mod fact;
pub mod fall;
pub mod falls_on;
pub mod field;
pub mod figures;
pub mod finding;
pub mod gear;
pub mod heights;
pub mod in_time;
pub mod judged;
pub mod keep;
pub mod leg;
pub mod mark;
pub mod name;
pub mod off;
pub mod options;
pub mod part;
pub mod pieces;
pub mod place;
pub mod reach;
pub mod spare;
#[cfg(feature = "survey")]
pub mod track;
pub mod verdict;
pub mod why;
pub mod without;

use crate::{
    plan::{
        clock::PlanClock,
        fact::Fact,
        falls_on::FallsOn,
        field::Field,
        figures::PlanFigures,
        finding::Finding,
        gear::GearRow,
        keep::KeepSetup,
        leg::{Leg, Verdict},
        name::RopeName,
        place::{HeightsFrom, JumpSummary},
        spare::SpareRope,
        why::CarryWhy,
    },
    practice::{Origin, Travel},
    trip::zone::{RopeWord, Surface},
};

/// Version of the plan's form; changes when a name or unit in it does.
pub const SCHEMA_VERSION: u32 = 1;

/// What a plan holds. Units stand in the names; lengths are metres.
///
/// ```
/// use schrund::plan::leg::Verdict;
///
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let walked_m: f64 = plan.legs.iter().map(|leg| leg.length_m).sum();
/// assert!((walked_m - plan.route.length_m).abs() < 1e-6, "the legs tile the line");
/// assert_eq!(plan.zones_met(), [1]);
/// assert_eq!(plan.verdict(), Verdict::Look, "that of the worst leg");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
    /// How late to start and to turn round, where the team is at an hour, when the sun is up; absent where the leader gives
    /// nothing that it is reckoned from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clock: Option<PlanClock>,
    /// What goes into the packs.
    pub carry: Vec<Carry>,
    /// Ropes at hand that no team is tied to.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub spares: Vec<SpareRope>,
    /// Which set-up suits the gap that is seen on the spot.
    #[serde(flatten)]
    pub field: Field,
    /// What everybody has on them for the rescue that was picked; empty where no leg is roped.
    pub gear: Vec<GearRow>,
    /// How the trip goes with fewer changes of the set-up; absent where nothing is saved by it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub keep_setup: Option<KeepSetup>,
    /// The snow that falls are reckoned on; absent where no team is roped on snow.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub falls_on: Option<FallsOn>,
    /// What must be said about the whole; what belongs to a leg stands there.
    pub findings: Vec<Finding>,
    /// What the plan rests on.
    pub assumptions: Vec<Assumption>,
    /// Figures of them that outputs show.
    #[serde(skip)]
    pub figures: PlanFigures,
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

    /// Whether no ice is known but the zones that somebody drew.
    #[must_use]
    pub fn knows_drawn_ice_only(&self) -> bool {
        let mut found = self.findings.iter();
        found.any(|finding| finding.fact() == Some(&Fact::NoInventory {}))
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
///
/// ```
/// let route = schrund::plan(&schrund::example::job()?)?.route;
/// assert_eq!((route.ascent_m, route.descent_m), (Some(300.0), Some(0.0)));
/// // An effort kilometre is a kilometre of way or 100 m up (published, `baspo`).
/// let effort_km = route.length_m / 1000.0 + 300.0 / 100.0;
/// assert!(route.effort_km.is_some_and(|km| (km - effort_km).abs() < 1e-9));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RouteSummary {
    /// What the file calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// How the party travels.
    pub travel: Travel,
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
///
/// ```
/// let time = schrund::plan(&schrund::example::job()?)?.route.time;
/// // One roped leg: 15 minutes to rope up and 5 to unrope (our judgement).
/// assert_eq!(time.rope_min, 15.0 + 5.0);
/// assert!((time.walking_min + time.rope_min + time.break_min + time.belay_min - time.total_min).abs() < 1e-9);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct TimeSummary {
    /// Walking.
    pub walking_min: f64,
    /// Roping up and unroping.
    pub rope_min: f64,
    /// Breaks.
    pub break_min: f64,
    /// Halts of the leader.
    pub halt_min: f64,
    /// Belays that legs ask for.
    pub belay_min: f64,
    /// All of it.
    pub total_min: f64,
}

/// One stage of the route.
///
/// ```
/// let job = schrund::example::pair()?;
/// let plan = schrund::plan(&job)?;
/// let [stage] = &plan.route.stages[..] else { panic!("one track is one stage") };
/// assert_eq!((stage.name.as_deref(), stage.points), (Some("Invented steps"), 5));
/// let ends_m = plan.legs.iter().filter(|leg| leg.stage == stage.stage).map(|leg| leg.end_m);
/// assert_eq!(ends_m.last(), Some(stage.length_m), "the last leg ends with its stage");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
///
/// ```
/// let zones = schrund::plan(&schrund::example::pair()?)?.zones;
/// let strikes: Vec<_> = zones.iter().map(|z| (z.strike_deg, z.strike_proposed_deg.map(f64::round))).collect();
/// // One zone gives its strike; that of the other is proposed, across ground which falls to the south.
/// assert_eq!(strikes, [(None, Some(90.0)), (Some(60.0), None)]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let (crossing, leg) = (&plan.zones[0].crossings[0], &plan.legs[1]);
/// // The rope is on from 20 m before the bare crossing (our judgement) until the last of three is 20 m past it.
/// let behind_m = 2.0 * leg.teams[0].spacing_m;
/// assert!((crossing.enter_m - 20.0 - leg.start_m).abs() < 0.001);
/// assert!((crossing.exit_m + 20.0 + behind_m - leg.end_m).abs() < 0.001);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let [carry] = &plan.carry[..] else { panic!("one rope team carries one rope") };
/// assert_eq!((carry.length_m, &carry.legs[..]), (80.0, &[4][..]));
/// let needed_m = plan.legs.iter().flat_map(|leg| &leg.teams).map(|team| team.ledger.total_m);
/// assert_eq!(needed_m.reduce(f64::max), Some(carry.needed_m), "leg 4 asks for most rope");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Carry {
    /// Metres: a length sold, or that of the rope at hand.
    pub length_m: f64,
    /// Number of the rope team that carries it.
    pub team: usize,
    /// Rope needed on the leg that asks most, metres.
    pub needed_m: f64,
    /// Those that ask for so much: they decide which rope.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub legs: Vec<usize>,
    /// How many are on it.
    pub people: usize,
    /// The rope at hand; absent where a length sold is meant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope: Option<RopeName>,
    /// Why this one.
    #[serde(flatten)]
    pub why: CarryWhy,
}

/// One thing that the plan rests on.
///
/// ```
/// use schrund::practice::{Origin, Rule};
///
/// let mut job = schrund::example::job()?;
/// let before_m = schrund::plan(&job)?.legs[1].length_m;
/// job.rules.set(Rule::MarginM, 30.0, Origin::Flag).expect("inside its bounds");
/// let plan = schrund::plan(&job)?;
/// let margin = plan.assumptions.iter().find(|a| a.name == "margin_m").expect("listed");
/// assert_eq!((margin.value.as_f64(), margin.origin), (Some(30.0), Origin::Flag));
/// assert!((plan.legs[1].length_m - before_m - 20.0).abs() < 0.001, "10 m more at both ends");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
