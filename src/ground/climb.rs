//! Metres up and down: from turning point to turning point, small ones not counted.

use crate::{
    ground::profile::{Profile, Sample},
    trip::route::Stretch,
};

/// Metres up and down.
///
/// ```
/// use schrund::{ground::profile::{Profile, Sample}, trip::route::Stretch};
///
/// let read = [(0.0, 100.0), (100.0, 150.0), (200.0, 147.0), (300.0, 200.0)];
/// let profile = Profile::of_samples(&read.map(|(at_m, height_m)| Sample { at_m, height_m }));
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

impl Profile {
    /// Metres up and down over a stretch: from turning point to turning point, where a turn counts once
    /// the line has come back by `threshold_m`. What a jump rises is not climbed. `None` where no heights are known.
    #[must_use]
    pub fn climb(&self, stretch: Stretch, threshold_m: f64) -> Option<Climb> {
        let heights = self.walked(stretch);
        (heights.len() >= 2).then(|| climb_by_turning_points(&heights, threshold_m))
    }
}

impl Climb {
    /// The same way walked the other way round.
    #[must_use]
    pub fn reversed(self) -> Self {
        Self {
            ascent_m: self.descent_m,
            descent_m: self.ascent_m,
            rising_m: self.falling_m,
            falling_m: self.rising_m,
        }
    }

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
}
