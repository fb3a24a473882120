//! Where on a leg which word holds.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::verdict::Verdict;

/// Where on a leg a word graver than `inside` holds.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let leg = &plan.legs[1];
/// let inside = |s: &schrund::plan::judged::JudgedStretch| leg.start_m <= s.from_m && s.to_m <= leg.end_m;
/// assert!(leg.stretches.iter().all(inside));
/// assert_eq!(leg.stretches.iter().map(|s| s.verdict).max(), Some(leg.verdict));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct JudgedStretch {
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, metres; the same for a single place.
    pub to_m: f64,
    /// Height of the line where it begins, metres; absent where none is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height_m: Option<f64>,
    /// The word.
    pub verdict: Verdict,
    /// The finding that it comes from.
    pub code: &'static str,
}
