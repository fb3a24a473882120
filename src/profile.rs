//! Heights along a stage: ascent by turning points, and how steep the line is.

use crate::route::{Stage, Stretch};

/// Heights at chainages, in walking order; chainages never decrease.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Profile {
    samples: Vec<Sample>,
}

/// One height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Metres of chainage.
    pub at_m: f64,
    /// Metres above the datum of the source.
    pub height_m: f64,
}

/// Metres up and down.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Climb {
    /// Up.
    pub ascent_m: f64,
    /// Down, positive.
    pub descent_m: f64,
}

/// A slope along the line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steep {
    /// Degrees, positive uphill in walking direction.
    pub deg: f64,
    /// Chainage of the middle of the stretch it was taken over.
    pub at_m: f64,
}

impl Profile {
    /// The heights that the route file gives; points without one are left out.
    #[must_use]
    pub fn of_route(stage: &Stage) -> Self {
        let samples = stage.chainage_m().iter().zip(stage.heights_m());
        Self {
            samples: samples
                .filter_map(|(&at_m, height)| {
                    Some(Sample {
                        at_m,
                        height_m: f64::from((*height)?),
                    })
                })
                .collect(),
        }
    }

    /// Heights from elsewhere, in walking order.
    #[must_use]
    pub fn of_samples(samples: Vec<Sample>) -> Self {
        Self { samples }
    }

    /// All heights.
    #[must_use]
    pub fn samples(&self) -> &[Sample] {
        &self.samples
    }

    /// Whether there are heights to go by.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.samples.len() < 2
    }

    /// Height at a chainage, linear between neighbours; `None` outside the heights known.
    #[must_use]
    pub fn height_m(&self, at_m: f64) -> Option<f64> {
        let after = self.samples.partition_point(|s| s.at_m <= at_m);
        let before = self.samples.get(after.checked_sub(1)?)?;
        match self.samples.get(after) {
            Some(next) => {
                let t = (at_m - before.at_m) / (next.at_m - before.at_m);
                Some(before.height_m + t * (next.height_m - before.height_m))
            }
            None => (at_m - before.at_m < 1e-6).then_some(before.height_m),
        }
    }

    /// The heights of a stretch, its ends included.
    fn within(&self, stretch: Stretch) -> Vec<Sample> {
        let end = |at_m: f64| {
            self.height_m(at_m)
                .map(|height_m| Sample { at_m, height_m })
        };
        let from = self.samples.partition_point(|s| s.at_m <= stretch.from_m);
        let to = self
            .samples
            .partition_point(|s| s.at_m < stretch.to_m)
            .max(from);
        let inner = self.samples[from..to].iter().copied();
        end(stretch.from_m)
            .into_iter()
            .chain(inner)
            .chain(end(stretch.to_m))
            .collect()
    }

    /// Metres up and down over a stretch: from turning point to turning point, where a turn counts once
    /// the line has come back by `threshold_m`. `None` where no heights are known.
    #[must_use]
    pub fn climb(&self, stretch: Stretch, threshold_m: f64) -> Option<Climb> {
        let heights: Vec<f64> = self.within(stretch).iter().map(|s| s.height_m).collect();
        (heights.len() >= 2).then(|| climb_by_turning_points(&heights, threshold_m))
    }

    /// The steepest slope of a stretch, taken over `over_m` (over all of it where it is shorter).
    #[must_use]
    pub fn steepest(&self, stretch: Stretch, over_m: f64) -> Option<Steep> {
        let slopes = self.slopes(stretch, over_m);
        slopes
            .into_iter()
            .max_by(|a, b| a.deg.abs().total_cmp(&b.deg.abs()))
    }

    /// The steepest descent of a stretch, degrees, positive; 0 where it never goes down.
    #[must_use]
    pub fn steepest_descent_deg(&self, stretch: Stretch, over_m: f64) -> Option<f64> {
        let slopes = self.slopes(stretch, over_m);
        slopes
            .into_iter()
            .map(|s| (-s.deg).max(0.0))
            .max_by(f64::total_cmp)
    }

    /// Slopes over windows that begin or end at a height.
    fn slopes(&self, stretch: Stretch, over_m: f64) -> Vec<Steep> {
        let over_m = over_m.min(stretch.length_m());
        if over_m <= 0.0 {
            return Vec::new();
        }
        let last_start = stretch.to_m - over_m;
        let inner = self.within(stretch);
        let starts = inner.iter().flat_map(|s| [s.at_m, s.at_m - over_m]);
        let starts = starts.chain([stretch.from_m, last_start]);
        starts
            .filter(|&s| s >= stretch.from_m && s <= last_start)
            .filter_map(|start| {
                let rise_m = self.height_m(start + over_m)? - self.height_m(start)?;
                Some(Steep {
                    deg: (rise_m / over_m).atan().to_degrees(),
                    at_m: start + over_m / 2.0,
                })
            })
            .collect()
    }
}

/// Sums from one turning point to the next. With a threshold of 0 every wiggle counts.
fn climb_by_turning_points(heights: &[f64], threshold_m: f64) -> Climb {
    let mut climb = Climb::default();
    let Some(&first) = heights.first() else {
        return climb;
    };
    let (mut settled, mut low, mut high) = (first, first, first);
    let mut add = |from: f64, to: f64| {
        if to > from {
            climb.ascent_m += to - from;
        } else {
            climb.descent_m += from - to;
        }
    };
    let mut rising: Option<bool> = None;
    for &h in heights {
        low = low.min(h);
        high = high.max(h);
        let turned_down = rising != Some(false) && high - h >= threshold_m && h < high;
        let turned_up = rising != Some(true) && h - low >= threshold_m && h > low;
        if turned_down {
            add(settled, high);
            (settled, low, rising) = (high, h, Some(false));
        } else if turned_up {
            add(settled, low);
            (settled, high, rising) = (low, h, Some(true));
        }
    }
    let end = match rising {
        Some(true) => high,
        Some(false) => low,
        None => first,
    };
    add(settled, end);
    climb
}

#[cfg(test)]
mod tests {
    use super::*;

    fn climb(heights: &[f64], threshold_m: f64) -> (f64, f64) {
        let c = climb_by_turning_points(heights, threshold_m);
        (c.ascent_m, c.descent_m)
    }

    #[test]
    fn wiggles_below_the_threshold_are_not_counted() {
        assert_eq!(
            climb(&[100.0, 104.0, 101.0, 105.0, 100.0], 10.0),
            (0.0, 0.0)
        );
        assert_eq!(climb(&[100.0, 150.0, 147.0, 200.0], 10.0), (100.0, 0.0));
        assert_eq!(climb(&[100.0, 150.0, 130.0, 200.0], 10.0), (120.0, 20.0));
        assert_eq!(
            climb(&[200.0, 100.0, 109.0, 50.0, 80.0], 10.0),
            (30.0, 150.0)
        );
        assert_eq!(
            climb(&[100.0, 101.0, 100.0], 0.0),
            (1.0, 1.0),
            "without a threshold all counts"
        );
    }

    #[test]
    fn the_steepest_piece_is_found_wherever_it_lies() {
        let samples = [
            (0.0, 0.0),
            (100.0, 0.0),
            (150.0, 50.0),
            (300.0, 50.0),
            (330.0, 20.0),
            (500.0, 20.0),
        ];
        let samples = samples.map(|(at_m, height_m)| Sample { at_m, height_m });
        let profile = Profile::of_samples(samples.to_vec());
        let whole = Stretch {
            from_m: 0.0,
            to_m: 500.0,
        };
        let steep = profile.steepest(whole, 50.0).unwrap();
        assert!(
            (steep.deg - 45.0).abs() < 1e-9 && (steep.at_m - 125.0).abs() < 1e-9,
            "{steep:?}"
        );
        let down = profile.steepest_descent_deg(whole, 50.0).unwrap();
        assert!(
            (down - (30.0_f64 / 50.0).atan().to_degrees()).abs() < 1e-9,
            "{down}"
        );
    }
}
