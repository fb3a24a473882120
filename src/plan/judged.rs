//! How a leg stands, and where on it.

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
    /// The word.
    pub verdict: Verdict,
    /// The finding that it comes from.
    pub code: &'static str,
}
