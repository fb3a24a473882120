//! How late a team may turn round: to be done by an hour, and to have left the hidden gaps of the way back by another.
//!
//! Where the line itself goes out and back that is at its turn, and the rest of the line is the way back. Elsewhere, and where
//! that turn is not reached in time, it is the last place from which the way back along the line as walked still ends in time.
//! Nobody waits for a decision among hidden gaps: where such ground begins not far before that place, it is where it begins.

use crate::{
    practice::Rule,
    rope::legs::RopedLeg,
    times::{
        backwards::{LegSpot, WalkedStage},
        bridges,
        hours::{Hours, PartHours},
        stops::Stop,
    },
    trip::route::Stretch,
};

/// So far before the last place a leg over hidden gaps may begin, metres, for the team to turn there instead. Our judgement: on
/// glaciers that are longer than that one turns on them.
const BEGIN_M: f64 = 1000.0;

/// Where and how late the team may turn round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LatestTurn {
    pub(crate) spot: LegSpot,
    /// Minutes from the start.
    pub(crate) min: f64,
    /// Whether the line itself turns back there; else the team leaves it.
    pub(crate) of_line: bool,
    /// When the way back then leaves the last hidden gaps, likewise; `None` where it crosses none.
    pub(crate) bridges_left_min: Option<f64>,
    /// Whether it lies off ice with hidden gaps, and the last place not far behind it among them, where nobody waits.
    pub(crate) on_firm_ground: bool,
}

impl<'a> WalkedStage<'a> {
    /// How late the team may turn round ahead of where it stands so that it is done after so many minutes, before a leg to which the
    /// way is barred.
    pub(crate) fn latest_turn(&self, done_min: f64, barred: Option<usize>) -> Option<LatestTurn> {
        let later_min = done_min - self.arrival_min();
        let of_line = self.turn_of_line(barred);
        let in_time = of_line.and_then(|(reached_min, turn)| turn.later_by(later_min, reached_min));
        let turn =
            in_time.or_else(|| Some(self.last_return(done_min, barred)?.not_beyond(of_line)));
        turn.filter(|turn| self.is_ahead(turn))
    }

    /// Whether it lies ahead of the team; where the stage begins nobody turns.
    fn is_ahead(&self, turn: &LatestTurn) -> bool {
        turn.spot.at_m > self.passed_m().max(0.0)
    }

    /// How late it may turn round so that the way back has left all hidden gaps after so many minutes, before a leg to which the way
    /// is barred; `None` where there are no hidden gaps before it, and where no turn beyond the first of them is early enough and
    /// ahead of where the team stands.
    pub(crate) fn latest_turn_off_bridges(
        &self,
        until_min: f64,
        barred: Option<usize>,
    ) -> Option<LatestTurn> {
        let of_line = self.turn_of_line(barred);
        let in_time = of_line.and_then(|(reached_min, turn)| {
            turn.later_by(until_min - turn.bridges_left_min?, reached_min)
        });
        let elsewhere = || {
            let (gaps, home_min) = self.first_hidden()?;
            let turn = self.last_return(until_min + home_min, barred)?;
            let turn = turn.not_beyond(of_line);
            turn.spot.is_beyond(gaps).then_some(turn)
        };
        let turn = in_time.or_else(elsewhere);
        turn.filter(|turn| self.is_ahead(turn))
    }

    /// Where the line goes out and back, left as planned, and the minutes until it is reached: the turn that is found, if it
    /// takes most of the line, or the longest halt of a line that ends where it begins. None behind a leg that is barred.
    fn turn_of_line(&self, barred: Option<usize>) -> Option<(f64, LatestTurn)> {
        let stops = || self.begun().flat_map(|of| self.left(of));
        let length_m = self.legs.first()?.stage.stage.length_m();
        let back_m = |stop: &Stop| stop.back_m.unwrap_or_default();
        let longest = stops().max_by(|a, b| back_m(a.0).total_cmp(&back_m(b.0)));
        let most = longest.filter(|(stop, ..)| 4.0 * back_m(stop) >= length_m);
        let halts = || stops().filter(|(stop, ..)| stop.halt_min > 0.0);
        let goal = || halts().max_by(|a, b| a.0.halt_min.total_cmp(&b.0.halt_min));
        let turn = most.or_else(|| goal().filter(|_| self.ends_where_it_begins()));
        let turn = turn.filter(|(_, spot, _)| barred.is_none_or(|leg| spot.leg < leg));
        turn.map(|(stop, spot, min)| {
            let left_min = self.bridges_left_min();
            let turn = LatestTurn {
                spot,
                min,
                of_line: true,
                bridges_left_min: left_min.filter(|left_min| *left_min > min),
                on_firm_ground: false,
            };
            (min - stop.halt_min, turn)
        })
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
            let min = begins_min + hours.left_min(at_m, factor);
            (stop, LegSpot { leg, at_m }, min)
        })
    }

    fn ends_where_it_begins(&self) -> bool {
        let points = self.legs.first().map(|leg| leg.stage.stage.points());
        let ends = points.and_then(|points| points.first().zip(points.last()));
        let near_m = self.job.rules[Rule::MarginM];
        ends.is_some_and(|(a, b)| a.distance_m(b) <= near_m)
    }

    /// The last place from which the way back along the line as walked is done after so many minutes.
    fn last_return(&self, done_min: f64, barred: Option<usize>) -> Option<LatestTurn> {
        let hidden = self.first_hidden();
        let (spot, home_min) = self.last_spot(done_min, barred)?;
        let begin = hidden.and_then(|(gaps, _)| self.begin_before(spot, gaps));
        let (spot, home_min) = begin.unwrap_or((spot, home_min));
        let over = hidden.filter(|(gaps, _)| spot.is_beyond(*gaps));
        Some(LatestTurn {
            spot,
            min: done_min - home_min,
            of_line: false,
            bridges_left_min: over.map(|(_, from_gaps_min)| done_min - from_gaps_min),
            on_firm_ground: begin.is_some_and(|(begin, _)| self.is_firm(begin)),
        })
    }

    /// Where the leg of a place among hidden gaps begins, and the minutes from there back to the start: not where that is far
    /// off, nor before the first of all hidden gaps, nor behind who is under way.
    fn begin_before(&self, spot: LegSpot, first_gaps: LegSpot) -> Option<(LegSpot, f64)> {
        let back = self.ways_back().find(|back| back.leg.number == spot.leg)?;
        let at_m = back.leg.sketch.stretch.from_m;
        let begin = LegSpot { at_m, ..spot };
        let gaps = bridges::hidden(self.job, back.leg);
        let behind_m = spot.at_m - at_m;
        let among = !gaps.is_empty() && (1e-6..=BEGIN_M).contains(&behind_m);
        let ahead = !self.job.timetable.is_past(at_m);
        (among && ahead && begin.is_beyond(first_gaps)).then_some((begin, back.home_min))
    }

    /// Whether a place where a leg begins lies off the ice with hidden gaps of the one before.
    fn is_firm(&self, begin: LegSpot) -> bool {
        let mut before = self.legs.iter().filter(|leg| leg.number < begin.leg);
        let hidden = before.next_back().map(|leg| bridges::hidden(self.job, leg));
        let mut hidden = hidden.into_iter().flatten();
        hidden.all(|gaps| gaps.ends_m < begin.at_m - 1e-6)
    }

    /// The last place from which the way back is done after so many minutes, and the minutes from there back to the start.
    fn last_spot(&self, done_min: f64, barred: Option<usize>) -> Option<(LegSpot, f64)> {
        let mut last = None;
        let ways = self.ways_back();
        for back in ways.take_while(|back| barred.is_none_or(|leg| back.leg.number < leg)) {
            let spot = |at_m: f64| LegSpot {
                leg: back.leg.number,
                at_m,
            };
            if back.begins_min + back.home_min > done_min {
                return last;
            }
            last = Some((spot(back.leg.sketch.stretch.from_m), back.home_min));
            for (part, now_min, home_min) in back.parts(self.factor) {
                if now_min + home_min > done_min {
                    return last;
                }
                let spare_min = (done_min - now_min - home_min) / self.factor;
                let inside = &back.hours.inside;
                let at_m = inside.out_and_back_in(part.stretch, spare_min);
                let way = Stretch {
                    to_m: at_m,
                    ..part.stretch
                };
                let back_min = inside.back_over_min(way) + inside.turn_min(at_m);
                let there_min = home_min + self.factor * back_min;
                last = Some((spot(at_m), there_min));
                if at_m < part.stretch.to_m {
                    return last;
                }
            }
        }
        last
    }

    /// Whether the first hidden gaps begin before a chainage, metres.
    pub(crate) fn is_over_hidden(&self, at_m: f64) -> bool {
        let first = self.first_hidden();
        first.is_some_and(|(gaps, _)| gaps.at_m < at_m)
    }

    /// Where the first hidden gaps begin, which are the last on the way back, and the minutes from there to the start.
    fn first_hidden(&self) -> Option<(LegSpot, f64)> {
        self.ways_back().find_map(|back| {
            let gaps = bridges::hidden(self.job, back.leg).into_iter();
            let at_m = gaps.map(|gaps| gaps.begins_m).reduce(f64::min)?;
            let leg = back.leg.number;
            let mut parts = back.parts(self.factor);
            let (part, _, home_min) = parts.find(|(part, ..)| at_m <= part.stretch.to_m)?;
            let way = Stretch {
                to_m: at_m,
                ..part.stretch
            };
            let back_min = back.hours.inside.back_over_min(way);
            Some((LegSpot { leg, at_m }, home_min + self.factor * back_min))
        })
    }

    /// The ways back over hidden gaps; `None` where the stage has none.
    pub(crate) fn off_bridges(&self) -> Option<OffBridges<'a>> {
        let (first, from_gaps_min) = self.first_hidden()?;
        Some(OffBridges {
            first,
            from_gaps_min,
            factor: self.factor,
            ways: self.ways_back().collect(),
        })
    }

    /// Minutes from a place of the stage back to its start along the line, halts left out.
    pub(crate) fn home_min(&self, at_m: f64) -> f64 {
        let mut ways = self.ways_back();
        let back = ways.find(|back| at_m <= back.leg.sketch.stretch.to_m);
        back.map_or(0.0, |back| back.home_min_from(at_m, self.factor))
    }

    /// Minutes from the start to a place of the stage, halts left out.
    pub(crate) fn moving_min(&self, at_m: f64) -> f64 {
        let on_leg = |(leg, hours): (&RopedLeg<'_>, &Hours)| {
            let Stretch { from_m, to_m } = leg.sketch.stretch;
            match at_m {
                at_m if at_m <= from_m => 0.0,
                at_m if at_m <= to_m => {
                    self.factor * (hours.rope_up_min + hours.inside.out_min(at_m))
                }
                _ => hours.total_min(self.factor) - hours.halt_min,
            }
        };
        self.legs.iter().zip(self.hours).map(on_leg).sum()
    }

    /// Each leg, with the way back from its begin.
    fn ways_back(&self) -> impl Iterator<Item = WayBack<'a>> {
        let (factor, mut home_min) = (self.factor, 0.0);
        self.begun().map(move |(leg, hours, begins_min)| {
            let back = WayBack {
                leg,
                hours,
                begins_min,
                home_min,
            };
            let walking_min = hours.inside.back_min(leg.sketch.stretch.to_m);
            home_min += factor * (hours.rope_min + walking_min);
            back
        })
    }
}

/// When whoever turns back has left the hidden gaps of the way back.
pub(crate) struct OffBridges<'a> {
    /// Where the first hidden gaps begin.
    first: LegSpot,
    /// Minutes from there back to the start.
    from_gaps_min: f64,
    factor: f64,
    /// By leg of the stage.
    ways: Vec<WayBack<'a>>,
}

impl OffBridges<'_> {
    /// Minutes from the start until then, for who leaves a place of a leg as planned; `None` before the first of them.
    pub(crate) fn left_min(&self, spot: LegSpot) -> Option<f64> {
        let back = self.ways.iter().find(|way| way.leg.number == spot.leg)?;
        let turn_min = self.factor * back.hours.inside.turn_min(spot.at_m);
        let there_min = back.begins_min + back.hours.left_min(spot.at_m, self.factor) + turn_min;
        let home_min = back.home_min_from(spot.at_m, self.factor);
        let beyond = spot.is_beyond(self.first);
        beyond.then_some(there_min + home_min - self.from_gaps_min)
    }
}

/// A leg and the way back from it.
struct WayBack<'a> {
    leg: &'a RopedLeg<'a>,
    hours: &'a Hours,
    /// Minutes from the start until it begins.
    begins_min: f64,
    /// Minutes from its begin back to the start, the rope handled as on the way out.
    home_min: f64,
}

impl<'a> WayBack<'a> {
    /// Minutes from a place of the leg back to the start, the rope off again at the begin of the leg.
    fn home_min_from(&self, at_m: f64, factor: f64) -> f64 {
        let hours = self.hours;
        let off_min = hours.rope_min - hours.rope_up_min;
        self.home_min + factor * (off_min + hours.inside.back_min(at_m))
    }

    /// The parts of the leg, each with the minutes until it begins and those from there back to the start, the rope off again
    /// at the begin of the leg.
    fn parts(&self, factor: f64) -> impl Iterator<Item = (&'a PartHours, f64, f64)> + use<'a> {
        let hours = self.hours;
        let off_min = factor * (hours.rope_min - hours.rope_up_min);
        let mut now_min = self.begins_min + factor * hours.rope_up_min;
        let mut home_min = self.home_min + off_min;
        hours.parts.iter().map(move |part| {
            let begun = (part, now_min, home_min);
            home_min += factor * hours.inside.back_over_min(part.stretch);
            now_min += factor * hours.inside.over_min(part.stretch) + part.halt_min();
            begun
        })
    }
}

impl LatestTurn {
    /// The same, or the turn of the line where that comes first: with its halts left out the way back is in time from there.
    /// Never later than the turn of the line is reached.
    fn not_beyond(self, of_line: Option<(f64, Self)>) -> Self {
        let Some((reached_min, turn)) = of_line else {
            return self;
        };
        let beyond = self.spot.is_beyond(turn.spot);
        Self {
            spot: if beyond { turn.spot } else { self.spot },
            min: self.min.min(reached_min),
            of_line: beyond,
            on_firm_ground: self.on_firm_ground && !beyond,
            ..self
        }
    }

    /// The same, so many minutes later; `None` where that is before it is reached.
    fn later_by(self, min: f64, reached_min: f64) -> Option<Self> {
        let later = Self {
            min: self.min + min,
            bridges_left_min: self.bridges_left_min.map(|left_min| left_min + min),
            ..self
        };
        (later.min >= reached_min).then_some(later)
    }
}

impl LegSpot {
    /// Whether it lies behind another on the line.
    fn is_beyond(self, other: Self) -> bool {
        (self.leg, self.at_m) > (other.leg, other.at_m)
    }
}
