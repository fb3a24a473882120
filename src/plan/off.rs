//! How the rope comes off at the end of a leg.

use schemars::JsonSchema;
use serde::Serialize;

/// How the rope comes off where a roped leg ends. Nobody is told to unrope on ice.
///
/// ```
/// use schrund::plan::off::RopeOff;
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let off: Vec<_> = plan.legs.iter().filter_map(|leg| leg.rope_off).collect();
/// // Between the steps is ice that these two chose not to be roped on; the line ends on the upper one.
/// assert_eq!(off, [RopeOff::ByWord, RopeOff::EndsOnIce]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RopeOff {
    /// No ice is known there: the team unropes once the last person is there.
    Unrope,
    /// There is ice, and the leader's word takes the rope off.
    ByWord,
    /// The line ends on ice; what comes after it is not planned.
    EndsOnIce,
}
