//! Ways to split the party and to use the ropes, side by side.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    plan::{change::Change, clock::PlanClock, finding::Finding, name::RopeName, verdict::Verdict},
    trip::party::Called,
};

/// The ways nobody would rule out, best first. Units stand in the names.
///
/// ```
/// let job = schrund::example::job()?;
/// let options = schrund::Planner::new(&job)?.options()?;
/// assert!(options.ways.len() < options.weighed, "what another way beats in everything is left out");
/// let numbers: Vec<usize> = options.ways.iter().map(|way| way.way).collect();
/// assert_eq!(numbers, [1, 2]);
/// assert_eq!(options.verdict(), options.ways[0].verdict, "the best stands first");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Options {
    /// Version of this document's form.
    pub schema_version: u32,
    /// How many go.
    pub people: usize,
    /// How many ways were weighed.
    pub weighed: usize,
    /// The ways left: each is best in something, or in some weighing of things.
    pub ways: Vec<Way>,
    /// What must be said of all of them.
    pub remarks: Vec<Remark>,
}

impl Options {
    /// The verdict of the best way.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        let verdicts = self.ways.iter().map(|way| way.verdict);
        verdicts.min().unwrap_or(Verdict::Outside)
    }
}

/// One way to split the party and to share the ropes out, over all legs of the trip.
///
/// ```
/// let job = schrund::example::job()?;
/// let planner = schrund::Planner::new(&job)?;
/// let way = &planner.options()?.ways[0];
/// assert!(way.changes.is_empty(), "as the rules stand, so it is the set-up of the plan:");
/// let set_up = &planner.plan()?.legs[1].teams[0];
/// assert_eq!((way.coil_m, way.coil_carried_m), (set_up.coil_m, set_up.coil_carried_m));
/// assert_eq!(way.left_to_hold, 1, "two of three can stand over one gap");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Way {
    /// Number from 1, best first.
    pub way: usize,
    /// The rope teams.
    pub teams: Vec<WayTeam>,
    /// What is done otherwise than the rules in force say; empty where nothing is.
    pub changes: Vec<Change>,
    /// The worst verdict of all legs, as the plan with these choices judges them.
    pub verdict: Verdict,
    /// Metres of rope missing over all teams, or of spacing where more is missing there; 0 unless outside.
    pub short_m: f64,
    /// Fewest people left to hold anywhere, everybody counted who can stand over one gap at once.
    pub left_to_hold: usize,
    /// Whether another rope team is there to help after a fall.
    pub another_team: bool,
    /// Mass of all ropes, kilograms.
    pub rope_mass_kg: f64,
    /// Longest coil that one person needs anywhere, metres.
    pub coil_m: f64,
    /// Longest coil that one person carries anywhere with these ropes, metres: what is left over goes there.
    pub coil_carried_m: f64,
    /// How often the set-up changes between roped legs of a stage.
    pub setup_changes: usize,
    /// What it is best in among those shown, as far as not all are alike in it.
    pub best_in: Vec<Merit>,
    /// Ropes that it ties or joins and that are as thin as cord (`thin_rope_mm`).
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cords: Vec<RopeName>,
    /// What a trip file says to plan it; absent where it rests on a practice set that none can name.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trip: Option<WayTrip>,
    /// What the plan with it comes to; absent of ways that nobody compares, and where lengths that are sold are taken.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plan: Option<WayPlan>,
}

impl Way {
    /// So many of the best are compared, and planned for that. Our judgement: nobody looks at more.
    pub const COMPARED: usize = 12;
}

/// What the plan with a way comes to.
///
/// ```
/// let job = schrund::example::pair()?;
/// let planner = schrund::Planner::new(&job)?;
/// let (options, plan) = (planner.options()?, planner.plan()?);
/// let way = options.ways[0].plan.as_ref().expect("a rope is at hand");
/// let legs: Vec<usize> = plan.legs.iter().filter(|leg| leg.belays.is_some()).map(|leg| leg.leg).collect();
/// let belays: usize = plan.legs.iter().flat_map(|leg| &leg.belays).map(|asked| asked.belays).sum();
/// assert_eq!((way.belays, way.clock.as_ref()), (belays, plan.clock.as_ref()), "as the plan has them");
/// assert!(legs.iter().all(|leg| way.legs.iter().any(|found| found.leg == *leg)), "what asks for them is told");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WayPlan {
    /// The legs that ask for something to be done, in walking order.
    pub legs: Vec<WayLeg>,
    /// Belays that they ask for, as counted.
    pub belays: usize,
    /// Minutes that those take.
    pub belay_min: f64,
    /// Its clock; absent where nobody says any hour.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clock: Option<PlanClock>,
}

/// A leg that asks for something to be done when a way is walked.
///
/// ```
/// use schrund::plan::leg::Verdict;
///
/// let job = schrund::example::pair()?;
/// let options = schrund::Planner::new(&job)?.options()?;
/// let legs = options.ways.iter().flat_map(|way| &way.plan).flat_map(|plan| &plan.legs);
/// assert!(legs.clone().count() > 0);
/// assert!(legs.clone().all(|leg| leg.verdict >= Verdict::Look && !leg.finding.code().is_empty()));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WayLeg {
    /// Its number.
    pub leg: usize,
    /// Its verdict: look or worse.
    pub verdict: Verdict,
    /// The gravest that was found on it.
    pub finding: Finding,
}

/// What a trip file says otherwise to plan a way, under the names of its members; nothing stands here that is so anyway.
///
/// ```
/// let job = schrund::example::job()?;
/// let planner = schrund::Planner::new(&job)?;
/// let ways = planner.options()?.ways;
/// let trip = ways[1].trip.as_ref().expect("its set has a name");
/// assert_eq!(trip.assume.keys().collect::<Vec<_>>(), ["sling_m"], "the long sling, and nothing else");
/// assert!(trip.teams.is_empty() && trip.practice.is_none() && trip.ropes.is_empty());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct WayTrip {
    /// `teams`: how many go on each rope.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub teams: Vec<usize>,
    /// `practice`: the name of a set.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub practice: Option<String>,
    /// `assume`: figures, by their names.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub assume: BTreeMap<String, f64>,
    /// `rope`: those that are carried, and those too short to be planned with instead; the others stay at home.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub ropes: Vec<WayRope>,
}

/// A rope of a way, as a trip file lists it.
///
/// ```
/// let mut job = schrund::example::job()?;
/// job.ropes = vec![schrund::trip::rope::Rope { length_m: 30.0, ..job.ropes[0].clone() }; 2];
/// let ways = schrund::Planner::new(&job)?.options()?.ways;
/// let ropes = ways.iter().filter_map(|way| way.trip.as_ref()).flat_map(|trip| &trip.ropes);
/// let joined = ropes.filter(|rope| rope.joined_to == Some(2)).map(|rope| rope.length_m);
/// assert!(joined.clone().all(|length_m| length_m < 60.0) && joined.count() > 0, "the bend takes some");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WayRope {
    /// Which of the ropes at hand, from 1.
    pub rope: usize,
    /// Which of them is joined to it by a bend: they are one rope then, `joined`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joined_to: Option<usize>,
    /// Whether two ropes are joined in it, by this way or before.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub joined: bool,
    /// What the leader calls it, of two that are joined by this way both.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Its length, with the bend tied where two are joined, metres.
    pub length_m: f64,
    /// Its diameter, of two the thicker, millimetres; absent where nobody gave any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub diameter_mm: Option<f64>,
}

/// One rope team of a way.
///
/// ```
/// let job = schrund::example::pair()?;
/// let options = schrund::Planner::new(&job)?.options()?;
/// for team in options.ways.iter().flat_map(|way| &way.teams) {
///     let names: Vec<_> = team.persons.iter().flat_map(|called| called.name.as_deref()).collect();
///     assert_eq!(names, ["Dag", "Eli"]);
///     assert!(team.spacing_m[0] <= team.spacing_m[1] && team.needed_m <= team.rope_m);
/// }
/// assert_eq!(options.ways[0].teams[0].spacing_m, [15.0, 17.0], "over the two roped legs");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WayTeam {
    /// How many.
    pub people: usize,
    /// The people, in the order named.
    pub persons: Vec<Called>,
    /// Least and greatest spacing over the legs, metres.
    pub spacing_m: [f64; 2],
    /// Number of its rope among those at hand, from 1; absent where a length sold is taken or none is left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope: Option<usize>,
    /// Length of its rope, metres; 0 where none is left.
    pub rope_m: f64,
    /// Rope needed on the leg that asks most, metres.
    pub needed_m: f64,
    /// That leg; absent where none is roped.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leg: Option<usize>,
}

/// Something that a way can be best in.
///
/// ```
/// use schrund::plan::options::Merit;
///
/// let job = schrund::example::job()?;
/// let ways = schrund::Planner::new(&job)?.options()?.ways;
/// let best = ways.iter().find(|way| way.best_in.contains(&Merit::ShortestCoil)).expect("one is");
/// assert!(ways.iter().all(|way| way.coil_m >= best.coil_m));
/// assert!(ways.iter().all(|way| !way.best_in.contains(&Merit::LightestRopes)), "all have one rope");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Merit {
    /// The verdict.
    Verdict,
    /// Nothing is done otherwise than the rules say.
    NothingChanged,
    /// People left to hold a fall.
    LeftToHold,
    /// Another rope team is there to help.
    AnotherTeam,
    /// Mass of the ropes.
    LightestRopes,
    /// The coil that one person needs.
    ShortestCoil,
    /// Set-up changes.
    FewestChanges,
}

/// What must be said of all ways.
///
/// ```
/// use schrund::{plan::options::Remark, trip::party::Party};
///
/// let mut job = schrund::example::job()?;
/// let options = schrund::Planner::new(&job)?.options()?;
/// assert!(options.remarks.contains(&Remark::TooSmallForTwo));
/// job.party = Party::of(6, &job.rules);
/// let options = schrund::Planner::new(&job)?.options()?;
/// assert!(options.remarks.contains(&Remark::TooManyForOne { most: 5 }));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(tag = "remark", rename_all = "kebab-case")]
pub enum Remark {
    /// The party is too small for two rope teams.
    TooSmallForTwo,
    /// More people than go on one rope.
    TooManyForOne {
        /// Most on one rope.
        most: usize,
    },
    /// One rope team and two are both taught, and both are shown.
    OneAndTwo,
    /// The same, but nothing is left with two.
    OnlyOne,
    /// The same, but nothing is left with one.
    OnlyTwo,
    /// No way is inside the limits.
    NoneInside,
    /// As the rules stand no split fits: every way changes something.
    AllChanged,
    /// Of so many people only splits into rope teams as alike as can be are weighed.
    EvenSplits {
        /// Up to so many people every split is.
        beyond: usize,
    },
    /// No rope at hand was named.
    NoRopeNamed,
}
