//! How a rope falls short, how a leg fits the ropes at hand after all, and how a gap is crossed one by one.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::{
    change::Change,
    name::{PersonName, RopeName},
    verdict::Verdict,
};

/// How a rope falls short.
///
/// ```
/// use schrund::plan::{cure::RopeLack, fact::Fact};
///
/// let mut job = schrund::example::job()?;
/// job.ropes[0].length_m = 40.0; // 43.5 m are needed
/// let leg = &schrund::plan(&job)?.legs[1];
/// let lack = leg.findings.iter().find_map(|f| match f.fact()? {
///     Fact::NoRope { lack, .. } => Some(lack),
///     _ => None,
/// });
/// assert!(matches!(lack, Some(RopeLack::Short { short_m, .. }) if *short_m == 3.5));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "lack", rename_all = "kebab-case")]
pub enum RopeLack {
    /// The rope that the team carries is too short.
    Short {
        /// Which.
        rope: RopeName,
        /// By how much, metres.
        short_m: f64,
    },
    /// Others carry all ropes at hand.
    NoneLeft {
        /// Number of the rope team.
        team: usize,
    },
    /// No single rope sold is so long.
    NoneSold,
}

/// What makes a rope at hand long enough for a leg for which it is too short as planned, keeping every spacing that gaps ask for.
///
/// ```
/// use schrund::plan::{change::Change, fact::Fact};
///
/// let mut job = schrund::example::job()?;
/// job.ropes[0].length_m = 42.0; // 43.5 m are needed
/// let leg = &schrund::plan(&job)?.legs[1];
/// let cure = leg.findings.iter().find_map(|found| match found.fact()? {
///     Fact::NoRope { cure, .. } => cure.clone(),
///     _ => None,
/// });
/// // 13.5 m are what the gap asks of three, so nobody may walk closer; a sling makes both coils shorter.
/// let cure = cure.expect("there is one");
/// assert!(matches!(cure.changes[..], [Change::LongSling { .. }]), "{cure:?}");
/// assert!(cure.needed_m <= 42.0 && cure.spacing_m == leg.teams[0].spacing_m);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RopeCure {
    /// What is done otherwise than the rules in force say.
    pub changes: Vec<Change>,
    /// Walking distance between neighbours then, metres.
    pub spacing_m: f64,
    /// Walking distance between neighbours as planned, metres.
    pub planned_spacing_m: f64,
    /// Rope needed then, metres.
    pub needed_m: f64,
    /// The rope that is long enough, of two joined ropes the one that the team carries.
    pub rope: RopeName,
    /// The other one of two joined ropes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joined_to: Option<RopeName>,
    /// Widest gap across for which it then keeps the spacing rule as tied, metres; absent where no gap is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_tied_gap_m: Option<f64>,
    /// Whether that is the narrowest of several legs whose gaps differ.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub gaps_differ: bool,
    /// What it costs beside the plan, and whom no loop reaches then.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub costs: Vec<CureCost>,
    /// How the team then stands on the leg, falls included; never outside. What the ground says for itself stays.
    pub verdict: Verdict,
}

impl RopeCure {
    /// One cure for two places, where the same is done on both: with the narrower gap, the graver verdict and all the rope
    /// that either needs. `None` where something else is done, or a gap is given at one of them only.
    #[must_use]
    pub fn for_both(&self, other: &Self) -> Option<Self> {
        let gap_m = match (self.as_tied_gap_m, other.as_tied_gap_m) {
            (Some(one_m), Some(other_m)) => Some(one_m.min(other_m)),
            (None, None) => None,
            _ => return None,
        };
        let differ = matches!(
            (self.as_tied_gap_m, other.as_tied_gap_m),
            (Some(one_m), Some(other_m)) if (one_m - other_m).abs() > 1e-6
        );
        let same = Self {
            as_tied_gap_m: self.as_tied_gap_m,
            gaps_differ: self.gaps_differ,
            verdict: self.verdict,
            needed_m: self.needed_m,
            ..other.clone()
        };
        (same == *self).then(|| Self {
            as_tied_gap_m: gap_m,
            gaps_differ: differ || self.gaps_differ || other.gaps_differ,
            verdict: self.verdict.max(other.verdict),
            needed_m: self.needed_m.max(other.needed_m),
            ..same
        })
    }
}

/// What a cure for a rope that is too short costs. All but the loops is told beside the plan as it would be were the rope long
/// enough.
///
/// ```
/// use schrund::plan::{cure::CureCost, fact::Fact};
///
/// let mut job = schrund::example::job()?;
/// job.zones[0].gap.max_m = 12.9; // 13 m apart one at a time is over it, 12 m apart two are
/// job.ropes[0].length_m = 40.0; // 42 m are needed
/// let leg = &schrund::plan(&job)?.legs[1];
/// let costs = leg.findings.iter().find_map(|found| match found.fact()? {
///     Fact::NoRope { cure, .. } => Some(cure.clone()?.costs),
///     _ => None,
/// });
/// assert!(costs.expect("a cure").contains(&CureCost::MoreOverGap { over: 2, left: 1 }));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "cost", rename_all = "kebab-case")]
pub enum CureCost {
    /// A fall that the model holds as planned, were the rope long enough, it holds with favourable assumptions only: to be belayed.
    FallLessHeld,
    /// More people than as planned can stand over one gap at once.
    MoreOverGap {
        /// How many.
        over: usize,
        /// How many are then left to hold.
        left: usize,
    },
    /// A shorter coil at each end than as planned is needed.
    ShorterCoil {
        /// Carried then, metres.
        coil_m: f64,
        /// As planned, metres.
        planned_m: f64,
    },
    /// A drop loop ends short of the lip for somebody, be it so as planned or not.
    NotReached {
        /// Whoever falls.
        falls: PersonName,
        /// By how much, metres.
        short_m: f64,
    },
}

/// How far apart a team is tied so that only one of it is over a gap at a time. Its rope is long enough with the reserve, a loop
/// reaches everybody, and the plan would call it neither outside nor stop.
///
/// ```
/// use schrund::plan::{cure::OneByOne, fact::Fact};
///
/// let mut job = schrund::example::job()?;
/// let alone = |plan: schrund::plan::Plan| plan.legs[1].findings.iter().find_map(|found| match found.fact()? {
///     Fact::TwoOverGap { one_by_one, .. } => one_by_one.clone(),
///     _ => None,
/// });
/// // 13.5 m on a gap of 15 m: as they are tied nobody is over it alone. At 15 m they would be, but on 60 m of rope no loop
/// // would reach the one in the middle; on 70 m one does.
/// assert_eq!(alone(schrund::plan(&job)?), None);
/// job.ropes[0].length_m = 70.0;
/// let one_by_one = OneByOne { spacing_m: 15.0, needed_m: 48.0, figure: Some("spacing_3_m") };
/// assert_eq!(alone(schrund::plan(&job)?), Some(one_by_one));
/// // A plan with that figure has nobody else over the gap.
/// job.rules.set(schrund::practice::Rule::Spacing3M, 15.0, schrund::practice::Origin::Flag).expect("inside its bounds");
/// assert_eq!(alone(schrund::plan(&job)?), None);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OneByOne {
    /// Walking distance between neighbours then, metres: no less than the way over the gap.
    pub spacing_m: f64,
    /// Rope needed then, metres.
    pub needed_m: f64,
    /// The figure that makes a plan so, set to that spacing; absent where all gaps are in sight, where nobody walks by it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub figure: Option<&'static str>,
}
