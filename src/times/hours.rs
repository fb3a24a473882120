//! The hours of every leg: walking, handling the rope, resting, halting, and when that is by the clock.

use crate::{
    plan::belay::LegBelays,
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
    times::{
        inside::{Belayed, InsideLeg},
        pace,
        stops::{Stop, stops},
    },
    trip::{clock::Clock, job::Brief, route::Stretch},
};

/// The hours of one leg, minutes.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Hours {
    /// Walking.
    pub(crate) walking_min: f64,
    /// Roping up before and unroping after; 0 on unroped legs.
    pub(crate) rope_min: f64,
    /// Of it, roping up.
    pub(crate) rope_up_min: f64,
    /// Rest that goes with the walking.
    pub(crate) break_min: f64,
    /// Halts of the leader.
    pub(crate) halt_min: f64,
    /// Belays that the leg asks for.
    pub(crate) belay_min: f64,
    /// How far into it the team is when.
    pub(crate) inside: InsideLeg,
    /// The leg from stop to stop, at least one part.
    pub(crate) parts: Vec<PartHours>,
    /// When it begins, roping up included, and when it ends; `None` where nobody said when to start.
    pub(crate) clock: Option<[Clock; 2]>,
}

/// A leg from one stop to the next.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PartHours {
    /// From where to where.
    pub(crate) stretch: Stretch,
    /// The stop at its end; `None` where the leg goes on without one or ends.
    pub(crate) stop: Option<Stop>,
}

impl PartHours {
    /// Minutes halted at its end.
    pub(crate) fn halt_min(&self) -> f64 {
        self.stop.as_ref().map_or(0.0, |stop| stop.halt_min)
    }
}

/// The hours of all legs, in order, with the belays that each asks for. Every stage is started at the time that the leader
/// gives, or so that it comes to the place where that hour counts.
pub(crate) fn hours<'b>(
    job: &Brief<'_>,
    legs: &[RopedLeg<'_>],
    belays: impl Iterator<Item = Option<&'b LegBelays>>,
) -> Vec<Hours> {
    let all = legs.iter().zip(belays);
    let mut all: Vec<Hours> = all
        .map(|(leg, belays)| Hours::of(job, leg, belays))
        .collect();
    let mut from = 0;
    for stage in legs.chunk_by(|a, b| a.stage.stage.number == b.stage.stage.number) {
        let to = from + stage.len();
        let of_stage = all.get_mut(from..to).unwrap_or_default();
        let mut now = started(job, stage, of_stage, 1.0);
        for hours in of_stage {
            let end = now.map(|begin| begin.after(hours.total_min(1.0)));
            hours.clock = now.zip(end).map(|(begin, end)| [begin, end]);
            now = end;
        }
        from = to;
    }
    all
}

/// When a stage is started that is walked so many times as slow as planned, by the hour that the leader gives.
pub(crate) fn started(
    job: &Brief<'_>,
    legs: &[RopedLeg<'_>],
    hours: &[Hours],
    factor: f64,
) -> Option<Clock> {
    let times = job.timetable;
    let at = times.start.value?;
    let Some(at_m) = times.start_at_m() else {
        return Some(at);
    };
    let mut begins_min = 0.0;
    let mut left_min = 0.0;
    for (leg, hours) in legs.iter().zip(hours) {
        let Stretch { from_m, to_m } = leg.sketch.stretch;
        if from_m > at_m {
            break;
        }
        left_min = begins_min + hours.left_min(at_m.min(to_m), factor);
        if at_m <= to_m {
            break;
        }
        begins_min += hours.total_min(factor);
    }
    Some(at.after(-left_min))
}

impl Hours {
    /// Those of a leg, no time of day yet, with belays or without.
    pub(crate) fn of(job: &Brief<'_>, leg: &RopedLeg<'_>, belays: Option<&LegBelays>) -> Self {
        let rules = job.rules;
        let length_m = leg.sketch.stretch.length_m();
        let climb = leg.footing.climb.unwrap_or_default();
        let walking_min = pace::walking_min(length_m, climb, leg.sketch.roped, rules);
        let rope = |rule: Rule| if leg.sketch.roped { rules[rule] } else { 0.0 };
        let stops = stops(job, leg);
        let inside = InsideLeg::of(leg, rules);
        Self {
            walking_min,
            rope_min: rope(Rule::RopeUpMin) + rope(Rule::ChangeMin),
            rope_up_min: rope(Rule::RopeUpMin),
            break_min: pace::break_min(walking_min, rules),
            halt_min: stops.iter().map(|stop| stop.halt_min).sum::<f64>() + 0.0,
            belay_min: belays.map_or(0.0, |belays| belays.minutes),
            inside: match belays {
                Some(belays) => inside.with(&belayed(belays)),
                None => inside,
            },
            parts: parts(leg.sketch.stretch, stops),
            clock: None,
        }
    }
}

impl Hours {
    /// The same, the way back without belays.
    pub(crate) fn unbelayed_back(&self, leg: &RopedLeg<'_>, rules: &Rules) -> Self {
        Self {
            inside: self.inside.back_as(&InsideLeg::of(leg, rules)),
            ..self.clone()
        }
    }
}

/// Where belays are made.
fn belayed(belays: &LegBelays) -> Vec<Belayed> {
    let each_min = belays.minutes / count(belays.belays).max(1.0);
    let pieces = belays.pieces.iter().map(|piece| Belayed {
        on: Stretch {
            from_m: piece.from_m,
            to_m: piece.to_m,
        },
        belays: count(piece.belays),
        each_min,
    });
    pieces.collect()
}

#[expect(clippy::cast_precision_loss, reason = "few")]
fn count(belays: usize) -> f64 {
    belays as f64
}

/// A leg cut at its stops.
fn parts(whole: Stretch, stops: Vec<Stop>) -> Vec<PartHours> {
    let mut from_m = whole.from_m;
    let stops = stops.into_iter().map(Some).chain([None]);
    let part = |stop: Option<Stop>| {
        let to_m = stop.as_ref().map_or(whole.to_m, |stop| stop.at_m);
        let stretch = Stretch { from_m, to_m };
        from_m = to_m;
        PartHours { stretch, stop }
    };
    stops.map(part).collect()
}

impl Hours {
    /// All minutes, all but halts so many times as long as planned.
    pub(crate) fn total_min(&self, factor: f64) -> f64 {
        let moving_min = self.walking_min + self.rope_min + self.break_min + self.belay_min;
        factor * moving_min + self.halt_min
    }

    /// Minutes from the begin of the leg until a place of it is left, a halt there being over, all but halts so many times as
    /// long as planned.
    pub(crate) fn left_min(&self, at_m: f64, factor: f64) -> f64 {
        let upto = self
            .parts
            .iter()
            .take_while(|part| part.stretch.to_m <= at_m);
        let halted_min: f64 = upto.map(PartHours::halt_min).sum();
        factor * (self.rope_up_min + self.inside.out_min(at_m)) + halted_min
    }

    /// The chainage reached so many minutes after the leg began, all but halts so many times as slow as planned.
    pub(crate) fn reached_m(&self, mut left_min: f64, factor: f64) -> f64 {
        left_min -= factor * self.rope_up_min;
        let mut at_m = self.parts.first().map_or(0.0, |part| part.stretch.from_m);
        for part in &self.parts {
            let walking_min = factor * self.inside.over_min(part.stretch);
            if left_min <= 0.0 {
                break;
            }
            if left_min < walking_min {
                return self.inside.out_in(part.stretch, left_min / factor);
            }
            at_m = part.stretch.to_m;
            left_min -= walking_min + part.halt_min();
        }
        at_m
    }

    /// Where on the leg the team is at a time of day: at its begin before it comes there, at its end once it is through.
    pub(crate) fn reached_at(&self, time: Clock) -> Option<f64> {
        let [begins, _] = self.clock?;
        Some(self.reached_m(time.min() - begins.min(), 1.0))
    }

    /// The time of day at which the team comes to a chainage of the leg, a halt there still ahead.
    pub(crate) fn arrived_at(&self, at_m: f64) -> Option<Clock> {
        let [begins, _] = self.clock?;
        let halted = self.parts.iter().filter(|part| part.stretch.to_m < at_m);
        let halted_min: f64 = halted.map(PartHours::halt_min).sum();
        let walked_min = self.rope_up_min + self.inside.out_min(at_m);
        Some(begins.after(walked_min + halted_min))
    }

    /// The time of day at which a chainage of the leg is left.
    pub(crate) fn left_at(&self, at_m: f64) -> Option<Clock> {
        let [begins, _] = self.clock?;
        Some(begins.after(self.left_min(at_m, 1.0)))
    }
}
