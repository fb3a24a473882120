//! Times worked backwards: how late a stage may be started, and where the team is at an hour.
//!
//! Minutes are counted from the start of the stage.

use crate::{
    rope::legs::RopedLeg,
    times::{
        bridges,
        hours::{Hours, started},
    },
    trip::{clock::Clock, job::Brief},
};

/// One stage with its hours, walked so many times as slow as planned; halts stay as they are.
#[derive(Clone, Copy)]
pub(crate) struct WalkedStage<'a> {
    pub(crate) job: &'a Brief<'a>,
    /// Its legs in walking order.
    pub(crate) legs: &'a [RopedLeg<'a>],
    /// By leg.
    pub(crate) hours: &'a [Hours],
    pub(crate) factor: f64,
}

/// A place on a leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LegSpot {
    /// Number of the leg.
    pub(crate) leg: usize,
    /// Chainage, metres.
    pub(crate) at_m: f64,
}

impl<'a> WalkedStage<'a> {
    /// The stages as planned, each with its legs.
    pub(crate) fn all(
        job: &'a Brief<'a>,
        legs: &'a [RopedLeg<'a>],
        hours: &'a [Hours],
    ) -> Vec<Self> {
        let mut from = 0;
        let runs = legs.chunk_by(|a, b| a.stage.stage.number == b.stage.stage.number);
        let stage = |legs: &'a [RopedLeg<'a>]| {
            let to = from + legs.len();
            let hours = hours.get(from..to).unwrap_or_default();
            from = to;
            Self {
                job,
                legs,
                hours,
                factor: 1.0,
            }
        };
        runs.map(stage).collect()
    }

    /// Chainage that who is under way has passed, metres; before all of it where nobody is.
    pub(crate) fn passed_m(&self) -> f64 {
        let here_m = self.job.timetable.start_at_m();
        let length_m = self.legs.first().map(|leg| leg.stage.stage.length_m());
        here_m.map_or(f64::NEG_INFINITY, |m| {
            length_m.map_or(m, |end_m| m.min(end_m))
        })
    }

    /// When it is started; `None` where nobody said.
    pub(crate) fn start(&self) -> Option<Clock> {
        started(self.job, self.legs, self.hours, self.factor)
    }

    /// Hours for the way alone are too few to work backwards from.
    pub(crate) fn climb_is_known(&self) -> bool {
        let known = |leg: &RopedLeg<'_>| {
            leg.footing.climb.is_some()
                && leg
                    .stage
                    .met
                    .under
                    .line
                    .climb_unknown(leg.sketch.stretch, self.job.rules)
                    .is_empty()
        };
        self.legs.iter().all(known)
    }

    /// The latest start, to the minute, that leaves all hidden gaps while bridges are trusted; `None` where there are none,
    /// where the climb is not known, and where it would have been on the day before: no start of the day is early enough then.
    /// Whoever is under way may have been started then, and to less than a minute.
    pub(crate) fn latest_start(&self) -> Option<Clock> {
        let until = self.job.timetable.bridges_until.value?;
        let left_min = self.bridges_left_min().filter(|_| self.climb_is_known())?;
        let start = until.after(-left_min);
        if self.job.timetable.start_at_km.value.is_some() {
            return Some(start);
        }
        Some(start.cut_off()).filter(|start| start.min() >= 0.0)
    }

    /// The latest start that leaves all hidden gaps in time and is done in time, as far as the leader asks for either; `None` where
    /// none of the day does, or nothing is reckoned.
    pub(crate) fn latest_start_for_all(&self) -> Option<Clock> {
        let until = self.job.timetable.bridges_until.value;
        let back = self.latest_start_back();
        match until.and(self.bridges_left_min()) {
            Some(_) => {
                let start = self.latest_start()?;
                let back = match self.job.timetable.back_by.value {
                    Some(_) => back?,
                    None => start,
                };
                Some(if start.is_later_than(back) {
                    back
                } else {
                    start
                })
            }
            None => back,
        }
    }

    /// The latest start, to the minute, with which the stage is done by the hour that the leader gives; `None` without such an
    /// hour, where the climb is not known, where no start of the day is early enough, and for who is under way.
    pub(crate) fn latest_start_back(&self) -> Option<Clock> {
        let times = self.job.timetable;
        let by = times.back_by.value.filter(|_| self.climb_is_known())?;
        let start = by.after(-self.arrival_min()).cut_off();
        let starts = times.start_at_km.value.is_none() && start.min() >= 0.0;
        starts.then_some(start)
    }

    /// Minutes until the end of the stage, the rope off.
    pub(crate) fn arrival_min(&self) -> f64 {
        let legs = self.hours.iter();
        legs.map(|hours| hours.total_min(self.factor)).sum()
    }

    /// Minutes until the last hidden gaps are left; `None` where there are none, or who is under way has them behind.
    pub(crate) fn bridges_left_min(&self) -> Option<f64> {
        let on_leg = |(leg, hours, begins_min): (&RopedLeg<'_>, &Hours, f64)| {
            let ends = bridges::hidden(self.job, leg).into_iter();
            let ends = ends.filter(|hidden| !self.job.timetable.is_past(hidden.ends_m));
            let left =
                ends.map(move |hidden| begins_min + hours.left_min(hidden.ends_m, self.factor));
            left.reduce(f64::max)
        };
        self.begun().filter_map(on_leg).reduce(f64::max)
    }

    /// Where the team is after so many minutes; `None` before it starts and once it is there.
    pub(crate) fn spot_at(&self, min: f64) -> Option<LegSpot> {
        if min < 0.0 {
            return None;
        }
        let on_leg = |(leg, hours, begins_min): (&RopedLeg<'_>, &Hours, f64)| {
            let left_min = min - begins_min;
            let at_m = hours.reached_m(left_min, self.factor);
            let under_way = left_min <= hours.total_min(self.factor);
            under_way.then_some(LegSpot {
                leg: leg.number,
                at_m,
            })
        };
        self.begun().find_map(on_leg)
    }

    /// Each leg with its hours and the minutes from the start until it begins.
    pub(super) fn begun(&self) -> impl Iterator<Item = (&'a RopedLeg<'a>, &'a Hours, f64)> {
        let (factor, mut now_min) = (self.factor, 0.0);
        self.legs.iter().zip(self.hours).map(move |(leg, hours)| {
            let begins_min = now_min;
            now_min += hours.total_min(factor);
            (leg, hours, begins_min)
        })
    }
}
