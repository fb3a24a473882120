//! What a rope of some spacing meets on a leg, asked once: the angle of a rope to the crevasses is the dear part of a plan.

use std::{cell::RefCell, collections::BTreeMap};

use crate::legs::worst::{Meeting, Worst};

/// Answers by what they rest on, and by spacing.
#[derive(Debug, Default)]
pub(crate) struct Memo(RefCell<BTreeMap<Vec<u64>, BTreeMap<u64, Meeting>>>);

impl Memo {
    /// What a rope with this spacing meets.
    pub(crate) fn at(&self, worst: &Worst<'_>, key: &[u64], spacing_m: f64) -> Meeting {
        let spacing = spacing_m.to_bits();
        if let Some(met) = self.0.borrow().get(key).and_then(|m| m.get(&spacing)) {
            return *met;
        }
        let met = worst.at(spacing_m);
        let mut all = self.0.borrow_mut();
        all.entry(key.to_vec()).or_default().insert(spacing, met);
        met
    }
}
