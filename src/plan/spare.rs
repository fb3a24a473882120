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
/// job.ropes = vec![rope(44.0), rope(1.0), rope(30.0)]; // 43.5 m are needed
/// let plan = schrund::plan(&job)?;
/// let carried: Vec<(f64, bool)> = plan.spares.iter().map(|spare| (spare.rope.length_m, spare.is_carried())).collect();
/// // A loop for the one in the middle ends short of the lip, and 30 m are long enough for one by itself.
/// assert_eq!(carried, [(1.0, false), (30.0, true)]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SpareRope {
    /// Which.
    pub rope: RopeName,
    /// The legs on which, joined to it, the rope of a team is long enough.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub joined_on: Vec<usize>,
    /// The legs on which it is carried because a loop ends short of the lip and the finding names it, or because those left have too
    /// little rope for any haul and it is long enough for a loop by itself.
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
