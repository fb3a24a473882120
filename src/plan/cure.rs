//! How a leg fits the ropes at hand after all.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::{name::RopeName, options::Change, verdict::Verdict};

/// What makes a rope at hand hold a leg that it does not hold as planned, keeping every spacing that gaps ask for.
///
/// ```
/// use schrund::plan::{fact::Fact, options::Change};
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
    /// The rope that holds it, of two joined ropes the one that the team carries.
    pub rope: RopeName,
    /// The other one of two joined ropes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joined_to: Option<RopeName>,
    /// Widest gap across that the spacing rule lets it meet as tied then, metres; absent where no gap is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_tied_gap_m: Option<f64>,
    /// How the team then stands on the leg, falls included; never outside. What the ground says for itself stays.
    pub verdict: Verdict,
}
