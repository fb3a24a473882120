//! What a rope of some spacing meets on a leg, asked once: the angle of a rope to the crevasses is the dear part of a plan.

use std::{
    collections::BTreeMap,
    sync::{Mutex, MutexGuard, PoisonError},
};

use crate::legs::worst::{Meeting, Worst};

/// Answers by what they rest on, and by spacing.
#[derive(Debug, Default)]
pub(crate) struct Memo(Mutex<Meetings>);

type Meetings = BTreeMap<Vec<u64>, BTreeMap<u64, Meeting>>;

impl Memo {
    /// What a rope with this spacing meets.
    pub(crate) fn at(&self, worst: &Worst<'_>, key: &[u64], spacing_m: f64) -> Meeting {
        let spacing = spacing_m.to_bits();
        if let Some(met) = self.known().get(key).and_then(|m| m.get(&spacing)) {
            return *met;
        }
        let met = worst.at(spacing_m);
        let mut all = self.known();
        all.entry(key.to_vec()).or_default().insert(spacing, met);
        met
    }

    fn known(&self) -> MutexGuard<'_, Meetings> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
