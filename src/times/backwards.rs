//! Times worked backwards: how late a stage may be started, where the team is at an hour, and how late it may turn round.
//!
//! Minutes are counted from the start of the stage.

use crate::{
    practice::Rule,
    rope::legs::RopedLeg,
    times::{
        bridges,
        hours::{Hours, PartHours},
        stops::Stop,
    },
    trip::job::Brief,
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

/// Where and how late the team may turn round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LatestTurn {
    pub(crate) spot: LegSpot,
    /// Minutes from the start.
    pub(crate) min: f64,
    /// Whether the line itself turns back there; else the team leaves it.
    pub(crate) of_line: bool,
}

impl<'a> WalkedStage<'a> {
    /// Minutes until the end of the stage, the rope off.
    pub(crate) fn arrival_min(&self) -> f64 {
        let legs = self.hours.iter();
        legs.map(|hours| hours.total_min(self.factor)).sum()
    }

    /// Minutes until the last hidden gaps are left; `None` where there are none.
    pub(crate) fn bridges_left_min(&self) -> Option<f64> {
        let on_leg = |(leg, hours, begins_min): (&RopedLeg<'_>, &Hours, f64)| {
            let ends = bridges::hidden(self.job, leg).into_iter();
            let left =
                ends.map(move |hidden| begins_min + hours.until_min(hidden.ends_m, self.factor));
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
            let at_m = self.at_m(hours, left_min);
            let under_way = left_min <= hours.total_min(self.factor);
            under_way.then_some(LegSpot {
                leg: leg.number,
                at_m,
            })
        };
        self.begun().find_map(on_leg)
    }

    /// The chainage reached so many minutes after a leg began.
    fn at_m(&self, hours: &Hours, mut left_min: f64) -> f64 {
        left_min -= self.factor * hours.rope_up_min;
        let mut at_m = hours.parts.first().map_or(0.0, |part| part.stretch.from_m);
        for part in &hours.parts {
            let walking_min = self.factor * part.out_min;
            if left_min <= 0.0 {
                break;
            }
            if left_min < walking_min {
                return at_m + left_min / walking_min * part.stretch.length_m();
            }
            at_m = part.stretch.to_m;
            left_min -= walking_min + part.halt_min();
        }
        at_m
    }

    /// How late the team may turn round so that it is done after so many minutes.
    ///
    /// Where the line itself goes out and back that is at its turn, and the rest of the line is the way back. Elsewhere it is
    /// the last place from which the way back along the line as walked still ends in time.
    pub(crate) fn latest_turn(&self, done_min: f64) -> Option<LatestTurn> {
        if done_min < 0.0 {
            return None;
        }
        match self.turn_of_line() {
            Some((spot, left_min)) => Some(LatestTurn {
                spot,
                min: done_min - (self.arrival_min() - left_min),
                of_line: true,
            }),
            None => self.last_return(done_min),
        }
    }

    /// Where the line goes out and back: the turn that is found, if it takes most of the line, or the longest halt of a line
    /// that ends where it begins; with the minutes until it is left.
    fn turn_of_line(&self) -> Option<(LegSpot, f64)> {
        let stops = || self.begun().flat_map(|of| self.left(of));
        let length_m = self.legs.first()?.stage.stage.length_m();
        let back_m = |stop: &Stop| stop.back_m.unwrap_or_default();
        let longest = stops().max_by(|a, b| back_m(a.0).total_cmp(&back_m(b.0)));
        let most = longest.filter(|(stop, ..)| 4.0 * back_m(stop) >= length_m);
        let halts = || stops().filter(|(stop, ..)| stop.halt_min > 0.0);
        let goal = || halts().max_by(|a, b| a.0.halt_min.total_cmp(&b.0.halt_min));
        let turn = most.or_else(|| goal().filter(|_| self.ends_where_it_begins()));
        turn.map(|(_, spot, left_min)| (spot, left_min))
    }

    /// The stops of a leg that begins after so many minutes, with where and when each is left.
    fn left(
        &self,
        (leg, hours, begins_min): (&'a RopedLeg<'a>, &'a Hours, f64),
    ) -> impl Iterator<Item = (&'a Stop, LegSpot, f64)> {
        let stops = hours.parts.iter().filter_map(|part| part.stop.as_ref());
        let factor = self.factor;
        stops.map(move |stop| {
            let (leg, at_m) = (leg.number, stop.at_m);
            let min = begins_min + hours.until_min(at_m, factor) + stop.halt_min;
            (stop, LegSpot { leg, at_m }, min)
        })
    }

    fn ends_where_it_begins(&self) -> bool {
        let points = self.legs.first().map(|leg| leg.stage.stage.points());
        let ends = points.and_then(|points| points.first().zip(points.last()));
        let near_m = self.job.rules[Rule::MarginM];
        ends.is_some_and(|(a, b)| a.distance_m(*b) <= near_m)
    }

    /// Each leg with its hours and the minutes from the start until it begins.
    fn begun(&self) -> impl Iterator<Item = (&'a RopedLeg<'a>, &'a Hours, f64)> {
        let (factor, mut now_min) = (self.factor, 0.0);
        self.legs.iter().zip(self.hours).map(move |(leg, hours)| {
            let begins_min = now_min;
            now_min += hours.total_min(factor);
            (leg, hours, begins_min)
        })
    }

    /// The last place from which the way back along the line as walked ends in time.
    fn last_return(&self, done_min: f64) -> Option<LatestTurn> {
        let mut last = None;
        // Minutes back from the begin of the leg to the start, the rope handled as on the way out.
        let mut home_min = 0.0;
        for (leg, hours, begins_min) in self.begun() {
            let number = leg.number;
            let at = |at_m: f64, back_min: f64| LatestTurn {
                spot: LegSpot { leg: number, at_m },
                min: done_min - back_min,
                of_line: false,
            };
            if begins_min + home_min > done_min {
                return last;
            }
            last = Some(at(leg.sketch.stretch.from_m, home_min));
            let off_min = self.factor * (hours.rope_min - hours.rope_up_min);
            let mut back_min = home_min + off_min;
            let mut now_min = begins_min + self.factor * hours.rope_up_min;
            for part in &hours.parts {
                if now_min + back_min > done_min {
                    return last;
                }
                let share = self.share_in_time(part, done_min - now_min - back_min);
                let length_m = part.stretch.length_m();
                let here_min = back_min + self.factor * share * part.back_min;
                last = Some(at(part.stretch.from_m + share * length_m, here_min));
                if share < 1.0 {
                    return last;
                }
                back_min += self.factor * part.back_min;
                now_min += self.factor * part.out_min + part.halt_min();
            }
            home_min = back_min + self.factor * hours.rope_up_min;
        }
        last
    }

    /// How much of a part can be walked and walked back within so many minutes, 0 to 1.
    fn share_in_time(&self, part: &PartHours, spare_min: f64) -> f64 {
        let both_min = self.factor * (part.out_min + part.back_min);
        if both_min <= spare_min {
            1.0
        } else {
            (spare_min / both_min).clamp(0.0, 1.0)
        }
    }
}
