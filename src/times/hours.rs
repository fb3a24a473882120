//! The hours of every leg: walking, handling the rope, resting, and when that is by the clock.

use crate::{
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
    times::pace,
    trip::{clock::Clock, job::Brief},
};

/// The hours of one leg, minutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Hours {
    /// Walking.
    pub(crate) walking_min: f64,
    /// Roping up before and unroping after; 0 on unroped legs.
    pub(crate) rope_min: f64,
    /// Rest that goes with the walking.
    pub(crate) break_min: f64,
    /// When it begins, roping up included, and when it ends; `None` where nobody said when to start.
    pub(crate) clock: Option<[Clock; 2]>,
}

impl Hours {
    /// All minutes.
    pub(crate) fn total_min(&self) -> f64 {
        self.walking_min + self.rope_min + self.break_min
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
        let mut hours = unclocked(leg, job.rules);
        let end = now.map(|begin| begin.after(hours.total_min()));
        hours.clock = now.zip(end).map(|(begin, end)| [begin, end]);
        now = end;
        all.push(hours);
    }
    all
}

fn unclocked(leg: &RopedLeg<'_>, rules: &Rules) -> Hours {
    let length_m = leg.sketch.stretch.length_m();
    let climb = leg.footing.climb.unwrap_or_default();
    let walking_min = pace::walking_min(length_m, climb, rules);
    Hours {
        walking_min,
        rope_min: if leg.sketch.roped {
            rules[Rule::RopeUpMin] + rules[Rule::ChangeMin]
        } else {
            0.0
        },
        break_min: pace::break_min(walking_min, rules),
        clock: None,
    }
}

impl Hours {
    /// The time of day at a chainage of the leg, breaks spread evenly.
    pub(crate) fn at(&self, leg: &RopedLeg<'_>, at_m: f64, rules: &Rules) -> Option<Clock> {
        let [begins, _] = self.clock?;
        let stretch = leg.sketch.stretch;
        let share = if stretch.length_m() > 0.0 {
            (at_m - stretch.from_m) / stretch.length_m()
        } else {
            1.0
        };
        let roping_up_min = if leg.sketch.roped {
            rules[Rule::RopeUpMin]
        } else {
            0.0
        };
        let walked_min = share * (self.walking_min + self.break_min);
        Some(begins.after(roping_up_min + walked_min))
    }
}
