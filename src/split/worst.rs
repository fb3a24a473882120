//! The worst that a leg holds: the longest way over a gap, for a given spacing.
//!
//! A gap of width w met at the angle θ is w / sin θ long along the route. Below the angle at which the
//! team runs along the crevasses no spacing helps; the arithmetic stops there and the leg is marked.

use super::{angle, contact::Contact};
use crate::{
    route::{Stage, Stretch},
    rules::{Rule, Rules},
    zone::Zone,
};

/// What a rope of one spacing meets on a leg.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Meeting {
    /// Longest way over a gap along the route, metres.
    pub effective_gap_m: f64,
    /// How many times longer than the gap is wide that way is, in the zone that decides.
    pub factor: f64,
    /// Index of the zone that decides.
    pub zone: Option<usize>,
    /// Where the team runs along crevasses, if anywhere: zone index and chainage.
    pub along: Option<(usize, f64)>,
}

/// A leg's zones, ready to be met with any spacing.
#[derive(Clone, Debug)]
pub struct Worst<'a> {
    stage: &'a Stage,
    /// Zone index, zone, and the touches of it on this leg.
    held: Vec<(usize, &'a Zone, Vec<Stretch>)>,
    along_deg: f64,
}

impl<'a> Worst<'a> {
    /// The contacts `held` of a stage, as far as they lie on `stretch`.
    #[must_use]
    pub fn new(
        stage: &'a Stage,
        zones: &'a [Zone],
        contacts: &[Contact],
        held: &[usize],
        stretch: Stretch,
        rules: &Rules,
    ) -> Self {
        let on_leg = |c: &Contact| {
            c.touches
                .iter()
                .copied()
                .filter(|t| t.meets(&stretch))
                .collect()
        };
        let held = held
            .iter()
            .filter_map(|&i| contacts.get(i))
            .filter_map(|c| Some((c.zone, zones.get(c.zone)?, on_leg(c))))
            .collect();
        Self {
            stage,
            held,
            along_deg: rules[Rule::AlongDeg],
        }
    }

    /// What a rope with this spacing meets.
    #[must_use]
    pub fn at(&self, spacing_m: f64) -> Meeting {
        let mut worst = Meeting {
            factor: 1.0,
            ..Meeting::default()
        };
        for (index, zone, touches) in &self.held {
            let (factor, along) = self.factor(zone, touches, spacing_m);
            let effective_gap_m = factor * zone.gap.max_m;
            if worst.zone.is_none() || effective_gap_m > worst.effective_gap_m {
                worst.effective_gap_m = effective_gap_m;
                worst.factor = factor;
                worst.zone = Some(*index);
            }
            worst.along = worst.along.or(along.map(|at_m| (*index, at_m)));
        }
        worst
    }

    /// Length of the way over a gap in widths, and where it runs along, if it does.
    fn factor(&self, zone: &Zone, touches: &[Stretch], spacing_m: f64) -> (f64, Option<f64>) {
        let Some(strike) = zone.strike else {
            return (1.0, None);
        };
        let Some(worst) = angle::worst_angle(self.stage, touches, spacing_m, strike) else {
            return (1.0, None);
        };
        // Compared with a hair to spare: at the angle itself the way is as long as the limit.
        let along = worst.deg < self.along_deg - 1e-9;
        let sin = worst.deg.max(self.along_deg).to_radians().sin();
        (1.0 / sin, along.then_some(worst.at_m))
    }
}
