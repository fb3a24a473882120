//! The word that a leg carries.

use schemars::JsonSchema;
use serde::Serialize;

/// How a leg stands against the limits that were given. Never a promise.
///
/// ```
/// use schrund::plan::leg::Verdict;
///
/// let mut job = schrund::example::job()?;
/// assert_eq!(schrund::plan(&job)?.verdict(), Verdict::Look);
/// job.zones[0].gap.max_m = 34.0; // three would have to walk 30.6 m apart, and 30 m is the most (common practice)
/// assert_eq!(schrund::plan(&job)?.verdict(), Verdict::Outside);
/// job.zones[0].gap.max_m = 40.0; // the fall model holds Bo in none of the cases assumed (our judgement)
/// assert_eq!(schrund::plan(&job)?.verdict(), Verdict::Stop);
/// assert!(Verdict::ALL.is_sorted(), "worse is greater");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Verdict {
    /// Walked without a rope.
    Unroped,
    /// A set-up within the limits fits a rope at hand.
    Inside,
    /// Something to decide or to watch; a finding says what.
    Look,
    /// No set-up within the limits, or no rope at hand holds it.
    Outside,
    /// Roping together is not the answer here; a finding says what is.
    Stop,
}

impl Verdict {
    /// All of them, from the mildest to the gravest.
    pub const ALL: [Self; 5] = [
        Self::Unroped,
        Self::Inside,
        Self::Look,
        Self::Outside,
        Self::Stop,
    ];

    /// The word, as printed.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Unroped => "unroped",
            Self::Inside => "inside",
            Self::Look => "look",
            Self::Outside => "outside",
            Self::Stop => "stop",
        }
    }
}
