//! Where a leg is broken into parts: halts of the leader, and places where the line turns back on itself.

use crate::{
    practice::Rule,
    rope::legs::RopedLeg,
    trip::{halt::Halt, job::Brief},
};

/// A place where the team halts, or where its line turns back.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Stop {
    /// Chainage, metres.
    pub(crate) at_m: f64,
    /// How long the team halts there, minutes; 0 at a turn where nobody said so.
    pub(crate) halt_min: f64,
    /// What the leader calls it.
    pub(crate) name: Option<String>,
    /// How far the line runs back along itself from here, metres; `None` where it does not.
    pub(crate) back_m: Option<f64>,
}

/// The stops of a leg in walking order. One at its end belongs to it, one at the start of the stage to its first leg.
pub(super) fn stops(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Stop> {
    let stretch = leg.sketch.stretch;
    let on_leg = |stop: &Stop| {
        let first = stretch.from_m <= 0.0 && stop.at_m <= 0.0;
        first || (stretch.from_m < stop.at_m && stop.at_m <= stretch.to_m)
    };
    let mut stops = of_stage(job, leg);
    stops.retain(on_leg);
    stops
}

/// Those of its stage. A halt within the margin of a turn is one at the turn, and halts at one place are one.
fn of_stage(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Stop> {
    let turns = leg.stage.met.under.line.turns.iter().map(|turn| Stop {
        at_m: turn.at_m,
        halt_min: 0.0,
        name: None,
        back_m: Some(turn.back_m),
    });
    let mut stops: Vec<Stop> = turns.collect();
    let number = leg.stage.stage.number;
    for halt in job.halts.iter().filter(|halt| halt.stage == number) {
        let near = |stop: &&mut Stop| {
            let away_m = (stop.at_m - halt.at_m).abs();
            let within_m = if stop.back_m.is_some() {
                job.rules[Rule::MarginM]
            } else {
                job.rules[Rule::OnePlaceM]
            };
            away_m <= within_m
        };
        match stops.iter_mut().find(near) {
            Some(turn) => turn.halt(halt),
            None => stops.push(Stop::of(halt)),
        }
    }
    stops.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    stops
}

impl Stop {
    fn of(halt: &Halt) -> Self {
        Self {
            at_m: halt.at_m,
            halt_min: halt.minutes,
            name: halt.name.clone(),
            back_m: None,
        }
    }

    fn halt(&mut self, halt: &Halt) {
        self.halt_min += halt.minutes;
        self.name = self.name.take().or_else(|| halt.name.clone());
    }
}
