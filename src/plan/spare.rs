//! Ropes at hand that no team is tied to.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    plan::{fact::Fact, name::RopeName},
    trip::party::Called,
};

/// A rope at hand that no team is tied to, and what it is good for.
///
/// ```
/// use schrund::trip::rope::Rope;
///
/// let mut job = schrund::example::job()?;
/// let rope = |length_m: f64| Rope { length_m, ..job.ropes[0].clone() };
/// job.ropes = vec![rope(44.0), rope(1.0), rope(30.0)]; // 43.5 m are needed
/// let plan = schrund::plan(&job)?;
/// let carried: Vec<(f64, bool)> = plan.spares.iter().map(|spare| (spare.rope.length_m, spare.is_carried())).collect();
/// // A loop for the one in the middle ends short of the lip, and 30 m are long enough for one by itself.
/// assert_eq!(carried, [(1.0, false), (30.0, true)]);
/// // Those at the ends may carry it.
/// let numbers = |people: &[schrund::trip::party::Called]| people.iter().map(|p| p.number).collect::<Vec<_>>();
/// assert_eq!([&plan.spares[1].rescue_of, &plan.spares[1].carried_by].map(|p| numbers(p)), [vec![2], vec![1, 3]]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SpareRope {
    /// Which.
    pub rope: RopeName,
    /// The legs on which, joined to it, the rope of a team is long enough.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub joined_on: Vec<usize>,
    /// The legs on which it is carried because a loop ends short of the lip and the finding names it, or because it is long enough for a
    /// loop by itself where those left have too little rope for any haul, or a loop ends less than `near_lip_m` below the lip.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub rescue_on: Vec<usize>,
    /// The team that it is carried for; no other one has it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub team: Option<usize>,
    /// Whom of it a loop of it is for, by number.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub rescue_of: Vec<Called>,
    /// Who may carry it: the others of this team, as far as they are left on the side that hauls, whoever of those falls. Nobody where
    /// there is none such; then it helps only if whoever carries it is left there.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub carried_by: Vec<Called>,
    /// Whether the one team of the trip could tie into it in place of its own rope, from which it is as light by the metre and longer: on
    /// it a loop reaches everybody.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub instead: bool,
}

impl SpareRope {
    /// Whether it goes into the packs.
    #[must_use]
    pub fn is_carried(&self) -> bool {
        !self.joined_on.is_empty() || !self.rescue_on.is_empty()
    }
}

impl Fact {
    /// The rope that a cure joins to that of a team.
    pub(crate) fn joined_to(&self) -> Option<&RopeName> {
        match self {
            Self::NoRope { cure, .. } => cure.as_ref()?.joined_to.as_ref(),
            _ => None,
        }
    }

    /// The rope that the leader is told to take for whom no loop reaches.
    pub(crate) fn taken_for_loop(&self) -> Option<&RopeName> {
        match self {
            Self::NotReached { longer, spare, .. } => longer.as_ref().or(spare.as_ref()),
            _ => None,
        }
    }
}
