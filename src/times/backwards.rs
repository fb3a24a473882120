//! Times worked backwards: how late a stage may be started, and where the team is at an hour.
//!
//! Minutes are counted from the start of the stage.

use crate::{
    rope::legs::RopedLeg,
    times::{
        bridges,
        hours::{Hours, started},
    },
    trip::{clock::Clock, job::Brief, route::Stretch},
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

    /// Where who is under way stands, chainage, metres, at most the end of the stage; `None` where nobody is.
    pub(crate) fn here_m(&self) -> Option<f64> {
        let length_m = self.legs.first()?.stage.stage.length_m();
        Some(self.job.timetable.start_at_m()?.min(length_m))
    }

    /// Chainage that who is under way has passed, metres; before all of it where nobody is.
    pub(crate) fn passed_m(&self) -> f64 {
        self.here_m().unwrap_or(f64::NEG_INFINITY)
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
    /// none of the day does both, or nothing is reckoned.
    pub(crate) fn latest_start_for_all(&self) -> Option<Clock> {
        let times = self.job.timetable;
        let off = times.bridges_until.value.and(self.bridges_left_min());
        let off = off.map(|_| self.latest_start());
        let back = times.back_by.value.map(|_| self.latest_start_back());
        match (off, back) {
            (Some(off), Some(back)) => Some(off?.earlier(back?)),
            (off, back) => off.or(back).flatten(),
        }
    }

    /// When hidden gaps that lie ahead are left as planned, and until when bridges are trusted, where that is too late.
    pub(crate) fn late_on_bridges(&self) -> Option<[Clock; 2]> {
        let left = self.start()?.after(self.bridges_left_min()?);
        let until = self.job.timetable.bridges_until.value?;
        left.is_later_than(until).then_some([left, until])
    }

    /// When the stage is done as planned, and by when it is to be, where that is too late.
    pub(crate) fn late_back(&self) -> Option<[Clock; 2]> {
        let arrival = self.start()?.after(self.arrival_min());
        let by = self.job.timetable.back_by.value?;
        arrival.is_later_than(by).then_some([arrival, by])
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

    /// The hidden gaps of the stage in walking order, those that touch as one.
    pub(crate) fn hidden(&self) -> Vec<Stretch> {
        let gaps = self
            .legs
            .iter()
            .flat_map(|leg| bridges::hidden(self.job, leg));
        let gaps = gaps.flat_map(|gaps| gaps.on_leg().to_vec());
        Stretch::merged(gaps.collect(), 1e-6)
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
