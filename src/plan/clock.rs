//! The clock of a plan: how late to start, where the team is at an hour, how late to turn round, when the sun is up.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    plan::{in_time::TripHour, place::RouteEnd},
    trip::{
        clock::Clock,
        day::{Day, UtcOffset},
    },
};

/// The clock of a plan: that of its first stage, and the same of each further one. Every stage is started anew.
///
/// ```
/// let mut job = schrund::example::job()?;
/// job.timetable.set("bridges_until", "09:00", schrund::practice::Origin::Flag);
/// let clock = schrund::plan(&job)?.clock.expect("a start is given");
/// // Started then, the bridges are left by nine; a minute later they are not.
/// let latest = clock.first.as_planned.latest_start.expect("there are bridges");
/// for (later_min, late) in [(0.0, false), (1.0, true)] {
///     job.timetable.start.value = Some(latest.after(later_min));
///     let mut legs = schrund::plan(&job)?.legs.into_iter();
///     assert_eq!(legs.any(|leg| leg.findings.iter().any(|f| f.code() == "bridges-late")), late);
/// }
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PlanClock {
    /// That of the first stage planned.
    #[serde(flatten)]
    pub first: StageClock,
    /// The same of each further stage.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub other_stages: Vec<StageClock>,
}

impl PlanClock {
    /// Stage by stage.
    pub fn stages(&self) -> impl Iterator<Item = &StageClock> {
        std::iter::once(&self.first).chain(&self.other_stages)
    }
}

/// The clock of one stage.
///
/// ```
/// use schrund::practice::Origin;
///
/// let mut job = schrund::example::job()?;
/// let start = job.timetable.start.value.expect("it is given");
/// for (name, word) in [("date", "2027-03-20"), ("utc_offset", "+01:00")] {
///     job.timetable.set(name, word, Origin::Flag);
/// }
/// let plan = schrund::plan(&job)?;
/// let clock = plan.clock.expect("a day and a start are given").first;
/// // Near the equinox a day is twelve hours long, and a few minutes for the sun's width and the air.
/// let day_min = clock.sunset.zip(clock.sunrise).map(|(sets, rises)| sets.min() - rises.min());
/// assert!(day_min.is_some_and(|min| (min - 12.0 * 60.0).abs() < 20.0), "{clock:?}");
/// assert_eq!(clock.as_planned.arrival, plan.legs[2].end_clock);
/// // A third slower (our judgement).
/// let min = |arrival: Option<schrund::trip::clock::Clock>| arrival.map(|a| a.min() - start.min());
/// let slower = clock.slower.and_then(|slower| min(slower.arrival));
/// assert!((slower.unwrap() * 3.0 / 4.0 - min(clock.as_planned.arrival).unwrap()).abs() < 1e-6);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct StageClock {
    /// Number of the stage.
    pub stage: usize,
    /// When it is started, where the leader says it; reckoned back from `start_at` where that is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start: Option<Clock>,
    /// Where and when the team is on its way, where the leader says that instead.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start_at: Option<StartAt>,
    /// Until when snow bridges are trusted, likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bridges_until: Option<Clock>,
    /// When the line is to be done, likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub back_by: Option<Clock>,
    /// As planned.
    #[serde(flatten)]
    pub as_planned: Backwards,
    /// The belays that legs of the stage ask for, which all hours count, and the hours as planned without them; absent where
    /// none does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub belays: Option<StageBelays>,
    /// The same for a slower party; `slower_factor` says how much slower.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slower: Option<Backwards>,
    /// Roped legs that are walked in the dark, by sunrise and sunset, with the latest start that is told, where that is another one than
    /// planned.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub dark_if_latest: Vec<usize>,
    /// Legs on which belays are made in the dark, by sunrise and sunset, with the start as planned.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub dark_belays: Vec<usize>,
    /// Ends of the line that lie on hidden gaps: what is crossed before it or behind it no hour counts.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub ends_on_hidden: Vec<RouteEnd>,
    /// The day of the trip, where the leader says it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<Day>,
    /// When the sun rises where the stage begins, at a level horizon: on the day after where the start is behind the sunset of
    /// the day. Absent on days on which it does not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sunrise: Option<Clock>,
    /// When it sets after that; it may be past midnight.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sunset: Option<Clock>,
    /// What the sun does on a day on which it neither rises nor sets.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sun: Option<SunAllDay>,
    /// By which clock sunrise and sunset are told: ahead of UTC. `+00:00` where the leader does not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub utc_offset: Option<UtcOffset>,
}

impl StageClock {
    /// By how many minutes the start as planned is later than the latest one; `None` where it is early enough, and where there
    /// is no latest one: nobody asked for it, or no start of the day would be early enough.
    #[must_use]
    pub fn late_min(&self) -> Option<f64> {
        let (start, latest) = (self.start?, self.as_planned.latest_start?);
        start
            .is_later_than(latest)
            .then(|| start.min() - latest.min())
    }

    /// The latest start that is told: for the bridges and the hour to be back, or for the bridges alone where none of the day is early
    /// enough for both.
    #[must_use]
    pub fn start_told(&self) -> Option<Clock> {
        let times = self.as_planned;
        times.latest_start_for_all.or(times.latest_start)
    }

    /// By how many minutes the start as planned is later than that one; `None` where it is early enough.
    #[must_use]
    pub fn late_for_all_min(&self) -> Option<f64> {
        let (start, latest) = (self.start?, self.start_told()?);
        start
            .is_later_than(latest)
            .then(|| start.min() - latest.min())
    }

    /// Whether the hour to be back asks for the earlier start, or for the only one. Nothing is asked of who is under way.
    #[must_use]
    pub fn back_comes_first(&self) -> bool {
        let Some(all) = self.as_planned.latest_start_for_all else {
            return false;
        };
        let bridges = self.as_planned.latest_start;
        bridges.is_none_or(|bridges| bridges.is_later_than(all))
    }

    /// Whether the start as planned is too late to leave all hidden gaps in time, by so much or because none of the day is
    /// early enough.
    #[must_use]
    pub fn is_late(&self) -> bool {
        self.late_min().is_some() || self.none_is_early()
    }

    /// Whether no start of the day leaves all hidden gaps in time.
    #[must_use]
    pub fn none_is_early(&self) -> bool {
        let asked = self.bridges_until.is_some() && self.as_planned.bridges_left.is_some();
        asked && self.as_planned.latest_start.is_none()
    }
}

/// A place of a stage and the hour at which the team leaves it.
///
/// ```
/// use schrund::{plan::clock::StartAt, practice::Origin};
///
/// let mut job = schrund::example::job()?;
/// for (name, word) in [("start", "06:00"), ("start_at_km", "1.5")] {
///     job.timetable.set(name, word, Origin::Flag);
/// }
/// let plan = schrund::plan(&job)?;
/// let clock = plan.clock.expect("an hour is given").first;
/// let start_at = clock.start_at.expect("likewise");
/// assert_eq!((start_at.at_m, start_at.hour.to_string().as_str()), (1500.0, "06:00"));
/// // There it is six, and it was started before.
/// let mut walked = plan.legs.iter().flat_map(|leg| &leg.walk);
/// let there = walked.find(|place| place.at_m == 1500.0).expect("it is on the line");
/// assert!((there.left.min() - start_at.hour.min()).abs() < 1e-6 && clock.start < Some(start_at.hour));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct StartAt {
    /// Chainage, metres.
    pub at_m: f64,
    /// When it is left.
    pub hour: Clock,
}

/// The belays that the legs of a stage ask for, and its clock without them.
///
/// ```
/// use schrund::trip::party::Party;
///
/// let mut job = schrund::example::job()?;
/// job.timetable.set("bridges_until", "09:00", schrund::practice::Origin::Flag);
/// let pair = schrund::Planner::new(&job)?.plan_for(&Party::weighing(&[82.0, 75.0]))?;
/// let clock = pair.clock.expect("a start is given").first;
/// let belays = clock.belays.expect("a pair is to be belayed over hidden gaps");
/// assert_eq!(belays.minutes, pair.route.time.belay_min);
/// let start = |times: schrund::plan::clock::Backwards| times.latest_start.map(|at| at.min());
/// // So much earlier, both cut off to the minute.
/// let earlier_min = start(belays.without).zip(start(clock.as_planned)).map(|(without, with)| without - with);
/// assert!(earlier_min.is_none_or(|min| (min - belays.minutes).abs() <= 1.0), "{belays:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct StageBelays {
    /// How many are counted.
    pub belays: usize,
    /// Minutes that they take.
    pub minutes: f64,
    /// The legs that ask for them.
    pub legs: Vec<usize>,
    /// The hours without them.
    pub without: Backwards,
}

/// What the sun does on a day without sunrise and sunset.
///
/// ```
/// use schrund::{plan::clock::SunAllDay, practice::Origin};
///
/// // The invented glacier lies north of the polar circle, if only just.
/// let mut job = schrund::example::job()?;
/// job.timetable.set("date", "2027-06-21", Origin::Flag);
/// let clock = schrund::plan(&job)?.clock.expect("a day is given");
/// assert_eq!((clock.first.sunrise, clock.first.sun), (None, Some(SunAllDay::Up)));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum SunAllDay {
    /// It does not set.
    Up,
    /// It does not rise.
    Down,
}

/// Times worked backwards for a stage. All are absent without heights, and each where the leader says nothing that it is
/// reckoned from.
///
/// ```
/// let mut job = schrund::example::job()?;
/// job.timetable.set("bridges_until", "06:30", schrund::practice::Origin::Flag);
/// let plan = schrund::plan(&job)?;
/// let times = plan.clock.as_ref().expect("a start is given").first.as_planned;
/// // At half past six the team is on the roped leg, which begins at 06:08 and is roped up by 06:23.
/// assert_eq!(times.at_bridges_until_leg, Some(2));
/// let on_leg = |m: &f64| (plan.legs[1].start_m..plan.legs[1].end_m).contains(m);
/// assert!(times.at_bridges_until_m.as_ref().is_some_and(on_leg), "{times:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Backwards {
    /// When the stage is done.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub arrival: Option<Clock>,
    /// When the last hidden gaps of the line are left; absent where there are none, and where who is under way has them behind.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bridges_left: Option<Clock>,
    /// The latest start, to the minute, that leaves all hidden gaps before snow bridges are no longer trusted; absent
    /// where there are none or who is under way has them behind, and where no start of the day is early enough.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub latest_start: Option<Clock>,
    /// The latest start, to the minute, with which the stage is done by the hour that the leader gives; absent where no start of
    /// the day is early enough, and for who is under way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub latest_start_back_by: Option<Clock>,
    /// The earlier of both, as far as the leader asks for either; absent where one that is asked for is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub latest_start_for_all: Option<Clock>,
    /// Chainage where the team is at that hour when it starts as planned, metres; absent where it has not begun or is
    /// done.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_bridges_until_m: Option<f64>,
    /// The leg that it is on there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_bridges_until_leg: Option<usize>,
    /// Where and how late it may turn round to be back in time where the leader says by when, and to have left the hidden gaps of
    /// the way back while snow bridges are trusted where the leader says until when: by that hour alone only where the stage as
    /// planned is on hidden gaps after it. Absent where no turn beyond the first hidden gaps is early enough; never in or behind a
    /// leg that stops or is outside.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turn_round: Option<TurnRound>,
    /// The turn that is only back in time, where its way back is on hidden gaps after bridges are trusted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turn_round_back_by: Option<TurnRound>,
    /// Whether no turn beyond the first hidden gaps has left them again while snow bridges are trusted.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub no_turn_in_time: bool,
    /// Whether one would have if the way back asked for no belays; it is reckoned with those of the way out.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub turn_if_unbelayed: bool,
}

/// Where and how late the team may turn round.
///
/// ```
/// use schrund::{plan::clock::TurnKind, practice::Origin};
///
/// let mut job = schrund::example::job()?;
/// job.timetable.set("back_by", "07:30", Origin::Flag);
/// let plan = schrund::plan(&job)?;
/// let turn = plan.clock.and_then(|clock| clock.first.as_planned.turn_round).expect("reckoned from back_by");
/// assert_eq!((turn.kind, turn.leg), (TurnKind::OffTheLine, 2), "a line one way: half of the two hours is gone on leg 2");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct TurnRound {
    /// The latest time, to the minute.
    pub by: Clock,
    /// Where: chainage, metres.
    pub at_m: f64,
    /// The same: longitude, latitude.
    pub at: [f64; 2],
    /// The leg.
    pub leg: usize,
    /// The leg behind it that stops or is outside, where that is why nobody goes on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub before: Option<usize>,
    /// When the way back then leaves the last hidden gaps; absent where it crosses none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bridges_left: Option<Clock>,
    /// Whether it lies off ice with hidden gaps, which begins there, and the way back would still be in time from not far behind:
    /// nobody waits for a decision among them.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub on_firm_ground: bool,
    /// Whether its way back is reckoned with the belays of the way out: who leads back holds other falls.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub belayed_back: bool,
    /// For which hour.
    pub hour: TripHour,
    /// What is done there.
    pub kind: TurnKind,
}

/// How a team turns round.
///
/// ```
/// use schrund::plan::clock::TurnKind;
///
/// assert_eq!(serde_json::to_string(&TurnKind::OfTheLine)?, r#""of-the-line""#);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TurnKind {
    /// The line goes out and back and turns there: who leaves it later is back too late.
    OfTheLine,
    /// The line goes one way: the last place from which the way back along it, as walked, still ends in time.
    OffTheLine,
}
