//! Heights that were asked before, for those who ask for the same places again and again.

use std::collections::HashMap;

use super::met::CellsMet;
use crate::geometry::LonLat;

/// Heights of places in one model each, with what is counted of them, so that nobody can tell them from new ones.
#[derive(Debug, Default)]
pub(super) struct Remembered(HashMap<Asked, Answered>);

/// A model by its number, and a place to the last bit.
type Asked = (usize, [u64; 2]);

/// What a place was answered with.
#[derive(Clone, Debug)]
pub(super) struct Answered {
    pub(super) height_m: Option<f64>,
    /// What was met on the way, by model; models that met nothing are left out.
    pub(super) met: Vec<(usize, CellsMet)>,
}

/// Places that are remembered: a hundred bytes each, some tens of megabytes at most `[ours]`.
const MOST: usize = 300_000;

impl Remembered {
    pub(super) fn answer(&self, model: usize, at: LonLat) -> Option<Answered> {
        self.0.get(&asked(model, at)).cloned()
    }

    pub(super) fn remember(&mut self, model: usize, at: LonLat, answered: Answered) {
        if self.0.len() < MOST {
            self.0.insert(asked(model, at), answered);
        }
    }
}

fn asked(model: usize, at: LonLat) -> Asked {
    (model, [at.lon_deg, at.lat_deg].map(f64::to_bits))
}
