//! Ropes at hand that no team is tied to.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::name::RopeName;

/// A rope at hand that no team is tied to, and what it is good for.
///
/// ```
/// use schrund::trip::rope::Rope;
///
/// let mut job = schrund::example::job()?;
/// let rope = |length_m: f64| Rope { length_m, ..job.ropes[0].clone() };
/// job.ropes = vec![rope(42.0), rope(8.0), rope(30.0)]; // 43.5 m are needed
/// let plan = schrund::plan(&job)?;
/// let carried: Vec<(f64, bool)> = plan.spares.iter().map(|spare| (spare.rope.length_m, spare.is_carried())).collect();
/// // With a sling in the loop 42 m are long enough, and a rope of 30 m is long enough for a rescue.
/// assert_eq!(carried, [(8.0, false), (30.0, false)]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SpareRope {
    /// Which.
    pub rope: RopeName,
    /// The legs on which, joined to it, the rope of a team is long enough.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub joined_on: Vec<usize>,
    /// The legs on which it is carried because a loop ends short of the lip, or those left have too little rope for any haul, by no
    /// more than its length. Of all ropes one is: the one that does for most.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub rescue_on: Vec<usize>,
}

impl SpareRope {
    /// Whether it goes into the packs.
    #[must_use]
    pub fn is_carried(&self) -> bool {
        !self.joined_on.is_empty() || !self.rescue_on.is_empty()
    }
}
