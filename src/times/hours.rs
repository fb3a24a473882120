//! The hours of every leg: walking, handling the rope, resting, halting, and when that is by the clock.

use crate::{
    ground::climb::Climb,
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
    times::{
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
    /// The leg from stop to stop, at least one part.
    pub(crate) parts: Vec<PartHours>,
    /// When it begins, roping up included, and when it ends; `None` where nobody said when to start.
    pub(crate) clock: Option<[Clock; 2]>,
}

/// The hours of a leg from one stop to the next.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PartHours {
    /// From where to where.
    pub(crate) stretch: Stretch,
    /// Minutes of walking and the rest that goes with it.
    pub(crate) out_min: f64,
    /// The same the other way round.
    pub(crate) back_min: f64,
    /// The stop at its end; `None` where the leg goes on without one or ends.
    pub(crate) stop: Option<Stop>,
}

impl PartHours {
    /// Minutes halted at its end.
    pub(crate) fn halt_min(&self) -> f64 {
        self.stop.as_ref().map_or(0.0, |stop| stop.halt_min)
    }

    /// How much of it lies before a place; all of a part without length.
    pub(crate) fn share(&self, at_m: f64) -> f64 {
        let length_m = self.stretch.length_m();
        if length_m > 0.0 {
            (at_m - self.stretch.from_m) / length_m
        } else {
            1.0
        }
    }
}

/// The hours of all legs, in order. Every stage is started at the time that the leader gives.
pub(crate) fn hours(job: &Brief<'_>, legs: &[RopedLeg<'_>]) -> Vec<Hours> {
    let start = job.timetable.start.value;
    let (mut stage, mut now) = (None, start);
    let mut all = Vec::new();
    for leg in legs {
        let number = leg.stage.stage.number;
        if stage != Some(number) {
            (stage, now) = (Some(number), start);
        }
        let mut hours = unclocked(job, leg);
        let end = now.map(|begin| begin.after(hours.total_min(1.0)));
        hours.clock = now.zip(end).map(|(begin, end)| [begin, end]);
        now = end;
        all.push(hours);
    }
    all
}

fn unclocked(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Hours {
    let rules = job.rules;
    let length_m = leg.sketch.stretch.length_m();
    let climb = leg.footing.climb.unwrap_or_default();
    let walking_min = pace::walking_min(length_m, climb, rules);
    let rope = |rule: Rule| if leg.sketch.roped { rules[rule] } else { 0.0 };
    let stops = stops(job, leg);
    Hours {
        walking_min,
        rope_min: rope(Rule::RopeUpMin) + rope(Rule::ChangeMin),
        rope_up_min: rope(Rule::RopeUpMin),
        break_min: pace::break_min(walking_min, rules),
        halt_min: stops.iter().map(|stop| stop.halt_min).sum::<f64>() + 0.0,
        parts: parts(leg, stops, rules),
        clock: None,
    }
}

/// The leg cut at its stops.
fn parts(leg: &RopedLeg<'_>, stops: Vec<Stop>, rules: &Rules) -> Vec<PartHours> {
    let whole = leg.sketch.stretch;
    let mut parts = Vec::new();
    let mut from_m = whole.from_m;
    for stop in stops.into_iter().map(Some).chain([None]) {
        let to_m = stop.as_ref().map_or(whole.to_m, |stop| stop.at_m);
        parts.push(PartHours {
            stretch: Stretch { from_m, to_m },
            out_min: 0.0,
            back_min: 0.0,
            stop,
        });
        from_m = to_m;
    }
    let all = leg.footing.climb.unwrap_or_default();
    let climbs: Vec<Climb> = match parts.len() {
        1 => vec![all],
        _ => parts
            .iter()
            .map(|part| climb(leg, part.stretch, rules))
            .collect(),
    };
    let lengths: Vec<f64> = parts.iter().map(|part| part.stretch.length_m()).collect();
    let minutes = |of: fn(Climb) -> Climb| {
        let each = lengths.iter().zip(&climbs);
        let each: Vec<f64> = each
            .map(|(m, climb)| with_rest(*m, of(*climb), rules))
            .collect();
        shared_out(with_rest(whole.length_m(), of(all), rules), &each, &lengths)
    };
    let (out, back) = (minutes(|climb| climb), minutes(Climb::reversed));
    for (part, (out_min, back_min)) in parts.iter_mut().zip(out.into_iter().zip(back)) {
        (part.out_min, part.back_min) = (out_min, back_min);
    }
    parts
}

fn climb(leg: &RopedLeg<'_>, stretch: Stretch, rules: &Rules) -> Climb {
    let heights = leg.stage.met.under.climbing();
    let climb = heights.climb(stretch, rules[Rule::AscentThresholdM]);
    climb.unwrap_or_default()
}

fn with_rest(length_m: f64, climb: Climb, rules: &Rules) -> f64 {
    let walking_min = pace::walking_min(length_m, climb, rules);
    walking_min + pace::break_min(walking_min, rules)
}

/// The minutes of a whole given out to its parts as they would take them alone: a stop changes when the team is where,
/// never how long it walks.
fn shared_out(whole_min: f64, each_min: &[f64], lengths_m: &[f64]) -> Vec<f64> {
    let weights = if each_min.iter().sum::<f64>() > 0.0 {
        each_min
    } else {
        lengths_m
    };
    let sum: f64 = weights.iter().sum();
    let share = |weight: &f64| match weights.len() {
        1 => whole_min,
        _ if sum > 0.0 => whole_min * weight / sum,
        _ => 0.0,
    };
    weights.iter().map(share).collect()
}

impl Hours {
    /// All minutes, all but halts so many times as long as planned.
    pub(crate) fn total_min(&self, factor: f64) -> f64 {
        factor * (self.walking_min + self.rope_min + self.break_min) + self.halt_min
    }

    /// Minutes from the begin of the leg until a place of it is reached, breaks spread evenly over each part, all but
    /// halts so many times as long as planned.
    pub(crate) fn until_min(&self, at_m: f64, factor: f64) -> f64 {
        let mut min = factor * self.rope_up_min;
        for part in &self.parts {
            if at_m <= part.stretch.to_m {
                return min + factor * part.share(at_m) * part.out_min;
            }
            min += factor * part.out_min + part.halt_min();
        }
        min
    }

    /// The time of day at a chainage of the leg.
    pub(crate) fn at(&self, at_m: f64) -> Option<Clock> {
        let [begins, _] = self.clock?;
        Some(begins.after(self.until_min(at_m, 1.0)))
    }
}
