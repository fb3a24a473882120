//! Faults of several readers, so that all are told at once.

use crate::fault::Fault;

/// Faults of several readers, gathered.
#[derive(Default)]
pub(super) struct Faults(pub(super) Vec<Fault>);

impl Faults {
    /// What was read; what was wrong with it is kept.
    pub(super) fn take<T>(&mut self, result: Result<T, Vec<Fault>>) -> Option<T> {
        result.map_err(|faults| self.0.extend(faults)).ok()
    }

    /// Keeps what a check found.
    pub(super) fn check(&mut self, found: Vec<Fault>) {
        self.0.extend(found);
    }
}
