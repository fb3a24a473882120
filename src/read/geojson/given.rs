//! What the leader says where a zones file is silent.

use super::number::{GAP, admits};
use crate::fault::{Fault, Place, trip::InTrip};

/// What the leader says to assume where a file is silent.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Given {
    /// Width of the gaps of zones that give none, metres (`--gap`).
    pub gap_m: Option<f64>,
}

impl Given {
    /// What is wrong with it; `place` is where it was said.
    #[must_use]
    pub fn fault(&self, place: &Place) -> Option<Fault> {
        let gap_m = self.gap_m.filter(|gap_m| !admits(GAP, *gap_m))?;
        let within_m = [GAP.min, GAP.max];
        let place = place.clone().with_property("gap_m");
        Some(Fault::new(InTrip::Gap { gap_m, within_m }, place))
    }
}
