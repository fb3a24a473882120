//! Heights along a stage: ascent by turning points, and how steep the line is.

use crate::trip::route::{Stage, Stretch};

/// Heights at chainages, in walking order; chainages never decrease.
///
/// ```
/// use schrund::ground::profile::Profile;
///
/// let stage = &schrund::example::job()?.route.stages[0];
/// let profile = Profile::of_route(stage);
/// let (first, second) = (profile.samples()[0], profile.samples()[1]);
/// let between_m = (first.at_m + second.at_m) / 2.0;
/// assert_eq!(profile.height_m(between_m), Some(1250.0), "half way from 1200 to 1300 m");
/// assert_eq!(profile.height_m(stage.length_m() + 1.0), None, "nothing is made up beyond the end");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Profile {
    samples: Vec<Sample>,
}

/// One height.
///
/// ```
/// use schrund::{ground::profile::{Profile, Sample}, trip::route::Stretch};
///
/// // Heights of one's own, say of an altimeter: level, then down by 30 m in 100 m.
/// let read = [(0.0, 2500.0), (100.0, 2500.0), (200.0, 2470.0)];
/// let samples = read.map(|(at_m, height_m)| Sample { at_m, height_m });
/// let profile = Profile::of_samples(samples.to_vec());
/// let whole = Stretch { from_m: 0.0, to_m: 200.0 };
/// assert_eq!(profile.steep_descent_m(whole, 0.2, 100.0), Some(30.0), "steeper than 1 in 5");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Metres of chainage.
    pub at_m: f64,
    /// Metres above the datum of the source.
    pub height_m: f64,
}

/// Metres up and down.
///
/// ```
/// use schrund::{ground::profile::{Profile, Sample}, trip::route::Stretch};
///
/// let heights = [100.0, 150.0, 147.0, 200.0];
/// let at = |(i, height_m)| Sample { at_m: 100.0 * i as f64, height_m };
/// let profile = Profile::of_samples(heights.into_iter().enumerate().map(at).collect());
/// let whole = Stretch { from_m: 0.0, to_m: 300.0 };
/// // A dip of 3 m is none where ups and downs under 10 m do not count (our judgement).
/// let ups_and_downs = |least_m| profile.climb(whole, least_m).map(|c| (c.ascent_m, c.descent_m));
/// assert_eq!(ups_and_downs(10.0), Some((100.0, 0.0)));
/// assert_eq!(ups_and_downs(0.0), Some((103.0, 3.0)));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Climb {
    /// Up.
    pub ascent_m: f64,
    /// Down, positive.
    pub descent_m: f64,
    /// Metres of chainage walked while going up, from turning point to turning point.
    pub rising_m: f64,
    /// Metres of chainage walked while going down.
    pub falling_m: f64,
}

/// A slope along the line.
///
/// ```
/// use schrund::{ground::profile::{Profile, Sample}, trip::route::Stretch};
///
/// let read = [(0.0, 2000.0), (500.0, 2050.0), (550.0, 2000.0)];
/// let profile = Profile::of_samples(read.map(|(at_m, height_m)| Sample { at_m, height_m }).to_vec());
/// let whole = Stretch { from_m: 0.0, to_m: 550.0 };
/// let steep = profile.steepest(whole, 50.0).expect("heights");
/// assert_eq!((steep.deg.round(), steep.at_m), (-45.0, 525.0), "down by 50 m in 50 m");
/// ```
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
        let heights = self.within(stretch);
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

    /// Slopes of a stretch, degrees, positive uphill, over windows that begin or end at a height.
    pub fn slopes_deg(&self, stretch: Stretch, over_m: f64) -> impl Iterator<Item = f64> + use<> {
        self.slopes(stretch, over_m).into_iter().map(|s| s.deg)
    }

    /// Metres that a stretch goes down in pieces steeper than `share` (rise over run), taken over `over_m`.
    #[must_use]
    pub fn steep_descent_m(&self, stretch: Stretch, share: f64, over_m: f64) -> Option<f64> {
        if self.is_empty() || over_m <= 0.0 {
            return None;
        }
        let mut from_m = stretch.from_m;
        let mut steep_m = 0.0;
        while from_m < stretch.to_m {
            let to_m = (from_m + over_m).min(stretch.to_m);
            if let (Some(from), Some(to)) = (self.height_m(from_m), self.height_m(to_m)) {
                let drop_m = from - to;
                if drop_m > share * (to_m - from_m) {
                    steep_m += drop_m;
                }
            }
            from_m = if to_m > from_m { to_m } else { stretch.to_m };
        }
        Some(steep_m)
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

impl Climb {
    /// Walked from one turning point to the next.
    fn add(&mut self, from: Sample, to: Sample) {
        let (rise_m, length_m) = (to.height_m - from.height_m, to.at_m - from.at_m);
        if rise_m > 0.0 {
            self.ascent_m += rise_m;
            self.rising_m += length_m;
        } else if rise_m < 0.0 {
            self.descent_m -= rise_m;
            self.falling_m += length_m;
        }
    }
}

/// Sums from one turning point to the next. With a threshold of 0 every wiggle counts.
fn climb_by_turning_points(heights: &[Sample], threshold_m: f64) -> Climb {
    let mut climb = Climb::default();
    let Some(&first) = heights.first() else {
        return climb;
    };
    let (mut settled, mut low, mut high) = (first, first, first);
    let mut rising: Option<bool> = None;
    for &h in heights {
        if h.height_m <= low.height_m {
            low = h;
        }
        if h.height_m >= high.height_m {
            high = h;
        }
        let (drop_m, rise_m) = (high.height_m - h.height_m, h.height_m - low.height_m);
        if rising != Some(false) && drop_m >= threshold_m && drop_m > 0.0 {
            climb.add(settled, high);
            (settled, low, rising) = (high, h, Some(false));
        } else if rising != Some(true) && rise_m >= threshold_m && rise_m > 0.0 {
            climb.add(settled, low);
            (settled, high, rising) = (low, h, Some(true));
        }
    }
    let end = match rising {
        Some(true) => high,
        Some(false) => low,
        None => first,
    };
    climb.add(settled, end);
    climb
}

#[cfg(test)]
mod tests {
    use super::*;

    fn climb(heights: &[f64], threshold_m: f64) -> (f64, f64) {
        let at = |(i, &height_m): (usize, &f64)| Sample {
            at_m: 100.0 * i as f64,
            height_m,
        };
        let samples: Vec<Sample> = heights.iter().enumerate().map(at).collect();
        let c = climb_by_turning_points(&samples, threshold_m);
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
    fn the_way_up_and_the_way_down_are_told_apart_from_the_flat() {
        let samples = [
            (0.0, 100.0),
            (400.0, 100.0),
            (1000.0, 200.0),
            (1500.0, 120.0),
            (1900.0, 121.0),
        ];
        let samples = samples.map(|(at_m, height_m)| Sample { at_m, height_m });
        let climb = climb_by_turning_points(&samples, 10.0);
        assert_eq!(
            (climb.rising_m, climb.falling_m),
            (600.0, 500.0),
            "{climb:?}"
        );
    }

    #[test]
    fn only_steep_descents_are_summed() {
        let samples = [(0.0, 500.0), (100.0, 470.0), (200.0, 451.0), (300.0, 500.0)];
        let samples = samples.map(|(at_m, height_m)| Sample { at_m, height_m });
        let profile = Profile::of_samples(samples.to_vec());
        let whole = Stretch {
            from_m: 0.0,
            to_m: 300.0,
        };
        let steep = profile.steep_descent_m(whole, 0.2, 50.0).unwrap();
        assert!((steep - 30.0).abs() < 1e-9, "{steep}");
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
