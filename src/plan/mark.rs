//! What is tied where along a rope.

use schemars::JsonSchema;
use serde::Serialize;

/// One place along the rope.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let team = &plan.legs[1].teams[0];
/// assert!(team.marks.windows(2).all(|pair| pair[0].at_m < pair[1].at_m), "in the order of tying");
/// let (first, last) = (&team.marks[0], &team.marks[team.marks.len() - 1]);
/// assert_eq!(first.at_m, team.coil_carried_m, "Dag ties in behind his coil");
/// let rope_m = team.rope.as_ref().map(|rope| rope.length_m).expect("named");
/// assert!((last.at_m + team.bag_m - rope_m).abs() < 1e-9, "all of it, as carried");
/// // An arm span is 1.8 m (common practice).
/// assert!((last.at_arm_spans * 1.8 - last.at_m).abs() < 1e-9);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Mark {
    /// Metres from the first person's free end, before anything is tied.
    pub at_m: f64,
    /// The same in arm spans.
    pub at_arm_spans: f64,
    /// What is tied there.
    pub kind: MarkKind,
    /// Who ties in there: position on the rope, from 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub person: Option<usize>,
}

/// What can be tied at a mark.
///
/// ```
/// use schrund::plan::leg::MarkKind::{End, Knot, TieIn};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let kinds = plan.legs[1].teams[0].marks.iter().map(|mark| mark.kind);
/// assert_eq!(kinds.collect::<Vec<_>>(), [TieIn, Knot, Knot, Knot, Knot, Knot, Knot, TieIn, End]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MarkKind {
    /// A person's tie-in.
    TieIn,
    /// A brake knot.
    Knot,
    /// Nothing: the rope ends, or its rest goes into the bag.
    End,
}

/// A tie-in or knot for which the rope at hand is too short, even without coils.
///
/// ```
/// use schrund::plan::leg::MarkKind;
///
/// let mut job = schrund::example::job()?;
/// job.ropes[0].length_m = 28.0; // two spans of 13.5 m and three tie-ins of 1 m take 30 m
/// let plan = schrund::plan(&job)?;
/// let team = &plan.legs[1].teams[0];
/// let beyond = &team.no_place[0];
/// assert_eq!((beyond.kind, beyond.person, beyond.missing_m), (MarkKind::TieIn, Some(3), 2.0));
/// assert!(team.marks.iter().all(|mark| mark.at_m <= 28.0 && mark.person != Some(3)));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct NoPlace {
    /// What would be tied.
    pub kind: MarkKind,
    /// Who would tie in: position on the rope, from 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub person: Option<usize>,
    /// How much more rope it takes to come to it, metres, no coil counted.
    pub missing_m: f64,
}
