//! What a rope of some spacing meets on a leg, and how steep a stretch is, asked once: they are the dear parts of a plan.

use std::{
    collections::BTreeMap,
    sync::{Mutex, MutexGuard, PoisonError},
};

use crate::{
    ground::{line::GroundLine, steep::Steepness},
    legs::worst::{Meeting, Worst},
    practice::{Rule, Rules},
    trip::route::Stretch,
};

/// Answers of one job by what they rest on.
#[derive(Debug, Default)]
pub(crate) struct Memo {
    /// By what is met, and by spacing.
    met: Mutex<Meetings>,
    /// By stage, stretch and window.
    steep: Mutex<BTreeMap<[u64; 4], Steepness>>,
}

type Meetings = BTreeMap<Vec<u64>, BTreeMap<u64, Meeting>>;

impl Memo {
    /// What a rope with this spacing meets.
    pub(crate) fn at(&self, worst: &Worst<'_>, key: &[u64], spacing_m: f64) -> Meeting {
        let spacing = spacing_m.to_bits();
        if let Some(met) = locked(&self.met).get(key).and_then(|m| m.get(&spacing)) {
            return *met;
        }
        let met = worst.at(spacing_m);
        let mut all = locked(&self.met);
        all.entry(key.to_vec()).or_default().insert(spacing, met);
        met
    }

    /// How steep the line of a stage is on a stretch.
    pub(crate) fn steepness(
        &self,
        line: &GroundLine,
        (stage, stretch): (usize, Stretch),
        rules: &Rules,
    ) -> Steepness {
        let figures = [stretch.from_m, stretch.to_m, rules[Rule::SteepOverM]];
        let [from, to, over] = figures.map(f64::to_bits);
        let key = [stage as u64, from, to, over];
        if let Some(known) = locked(&self.steep).get(&key) {
            return *known;
        }
        let steepness = line.steepness(stretch, rules);
        locked(&self.steep).insert(key, steepness);
        steepness
    }
}

fn locked<Of>(answers: &Mutex<Of>) -> MutexGuard<'_, Of> {
    answers.lock().unwrap_or_else(PoisonError::into_inner)
}
