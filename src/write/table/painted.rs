//! Text for a terminal, and where in it the verdicts stand.

use std::ops::Range;

use crate::plan::leg::Verdict;

/// A table as plain text, and where in it the verdicts stand, for whoever paints them.
///
/// ```
/// use schrund::write::{Scene, Sheet, table};
///
/// let job = schrund::example::job()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let table = table::plan(&Sheet::of(&job, &plan, &scene));
/// // For whoever paints them: where the verdict of each leg stands.
/// let (at, verdict) = &table.verdicts[1];
/// assert_eq!((&table.text[at.clone()], *verdict), ("look ?", plan.legs[1].verdict));
/// assert_eq!(table.verdicts.len(), plan.legs.len());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// The text.
    pub text: String,
    /// Bytes of the text that are the verdict of a leg, in order.
    pub verdicts: Vec<(Range<usize>, Verdict)>,
}
