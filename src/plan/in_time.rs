//! What is asked to be in time, and what makes it so.

use schemars::JsonSchema;
use serde::Serialize;

use crate::trip::clock::Clock;

/// An hour that the leader gives beside the start.
///
/// ```
/// use schrund::{plan::{fact::Fact, in_time::TripHour}, practice::Origin};
///
/// let mut job = schrund::example::job()?; // it starts at 05:30
/// let mut told = |by: &str| {
///     job.timetable.set("back_by", by, Origin::Flag);
///     let found = schrund::plan(&job).map(|plan| plan.findings).unwrap_or_default().into_iter();
///     let hours = found.filter_map(|f| match f.fact()? {
///         Fact::HourBeforeStart { hour, .. } => Some(*hour),
///         _ => None,
///     });
///     hours.collect::<Vec<_>>()
/// };
/// assert_eq!(told("03:00"), [TripHour::BackBy]);
/// assert!(told("03:00 +1").is_empty(), "the morning after");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum TripHour {
    /// Until when snow bridges are trusted.
    BridgesUntil,
    /// When the line is to be done.
    BackBy,
}

/// By when a stage has to be started for an hour.
///
/// ```
/// use schrund::{plan::{fact::Fact, in_time::StartBy}, practice::Origin};
///
/// let mut job = schrund::example::job()?;
/// job.timetable.set("bridges_until", "06:30", Origin::Flag);
/// let start_by = |job: &schrund::trip::job::Job| {
///     let legs = schrund::plan(job)?.legs;
///     let found = legs.iter().flat_map(|leg| &leg.findings).find_map(|found| match found.fact()? {
///         Fact::BridgesLate { start_by, .. } => Some(*start_by),
///         _ => None,
///     });
///     Ok::<_, Vec<schrund::fault::Fault>>(found)
/// };
/// assert!(matches!(start_by(&job)?, Some(StartBy::At(at)) if at.to_string() < "05:30".to_owned()));
/// // Who is under way starts no earlier.
/// job.timetable.set("start_at_km", "0.5", Origin::Flag);
/// assert_eq!(start_by(&job)?, Some(StartBy::UnderWay));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StartBy {
    /// The latest start, to the minute.
    At(Clock),
    /// No start of the day is early enough.
    NoneOfTheDay,
    /// The team is under way.
    UnderWay,
    /// Without heights no start is reckoned.
    NotReckoned,
}

/// Whether a turn that lies ahead is in time.
///
/// ```
/// use schrund::plan::in_time::TurnInTime;
///
/// assert_eq!(serde_json::to_string(&TurnInTime::Unbelayed)?, r#""unbelayed""#);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TurnInTime {
    /// One is.
    Yes,
    /// One is if the way back asks for no belays; with those of the way out none is.
    Unbelayed,
    /// None is.
    No,
}

/// Where who is under way is off hidden gaps, when no turn is off all of them in time: of the ways that are in time one on which none lie
/// beyond, else the sooner one, and over no stretch that stops or is outside, unless both ways are. Gaps that are no farther apart than the
/// margin are one.
///
/// ```
/// use schrund::{plan::{fact::Fact, in_time::{TurnInTime, WayOff}}, practice::Origin};
///
/// let mut job = schrund::example::job()?;
/// for (name, word) in [("start", "09:00"), ("start_at_km", "1.8"), ("bridges_until", "09:05")] {
///     job.timetable.set(name, word, Origin::Flag);
/// }
/// let leg = schrund::plan(&job)?.legs.remove(1);
/// let found = leg.findings.iter().find_map(|found| match found.fact()? {
///     Fact::BridgesLate { turns: TurnInTime::No, off, .. } => *off,
///     _ => None,
/// });
/// // The end of the ice is near, and no other ice lies beyond.
/// assert!(matches!(found, Some(WayOff::On { at_m, more: false, .. }) if at_m < leg.end_m), "{found:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "way", rename_all = "kebab-case")]
pub enum WayOff {
    /// They stand on none.
    NotOn,
    /// Back along the line.
    Back {
        /// To where: chainage, metres.
        at_m: f64,
        /// When they are there.
        at: Clock,
        /// Whether other hidden gaps lie beyond: they wait there.
        more: bool,
    },
    /// On along the line.
    On {
        /// To where: chainage, metres.
        at_m: f64,
        /// When they are there, halts left out.
        at: Clock,
        /// Whether other hidden gaps lie beyond: they wait there.
        more: bool,
    },
    /// Back to where the line begins, on hidden gaps: what lies before it is not counted.
    Begin {
        /// When they are there.
        at: Clock,
    },
}

/// What leaves all hidden gaps of a stage in time, where it is left too late as planned.
#[derive(Clone, Copy)]
pub(crate) struct InTime {
    pub(crate) start_by: StartBy,
    pub(crate) turns: TurnInTime,
    /// For who is under way, where no turn is in time.
    pub(crate) off: Option<WayOff>,
}
