//! How far two sources of heights agree along a stage.

use crate::{ground::profile::Profile, trip::route::Stage};

/// Differences of one source from another, metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Agreement {
    /// The middle one of the differences, with its sign.
    pub(crate) median_m: f64,
    /// The one farthest from nought, with its sign.
    pub(crate) worst_m: f64,
    /// Chainage of that one.
    pub(crate) worst_at_m: f64,
    /// How many heights were compared.
    pub(crate) compared: usize,
}

/// `heights` minus `other`, both along this stage, at every height of `heights` that the other one spans; not at
/// jumps, where two places share a chainage. `None` where nothing can be compared.
#[must_use]
pub(crate) fn agreement(stage: &Stage, heights: &Profile, other: &Profile) -> Option<Agreement> {
    let jumps_m: Vec<f64> = stage.jumps().map(|j| j.at_m).collect();
    let at_jump = |at_m: f64| {
        let next = jumps_m.partition_point(|&j| j < at_m);
        jumps_m.get(next) == Some(&at_m)
    };
    let samples = heights.samples().iter().filter(|s| !at_jump(s.at_m));
    let differences = samples.filter_map(|s| {
        let there_m = other.height_m(s.at_m)?;
        Some((s.height_m - there_m, s.at_m))
    });
    let mut differences: Vec<(f64, f64)> = differences.collect();
    differences.sort_by(|a, b| a.0.total_cmp(&b.0));
    let least = differences.first()?;
    let most = differences.last()?;
    let worst = if least.0.abs() > most.0.abs() {
        least
    } else {
        most
    };
    let median = differences.get(differences.len() / 2)?;
    Some(Agreement {
        median_m: median.0,
        worst_m: worst.0,
        worst_at_m: worst.1,
        compared: differences.len(),
    })
}
