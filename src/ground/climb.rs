//! Metres up and down: from turning point to turning point, small ones not counted.

use crate::{
    ground::{profile::Profile, samples::Sample},
    trip::route::Stretch,
};

/// Metres up and down.
///
/// ```
/// use schrund::{ground::{profile::Profile, samples::Sample}, trip::route::Stretch};
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
        self.walked(stretch).nth(1)?;
        Some(climb_by_turning_points(self.walked(stretch), threshold_m))
    }

    /// The same as far as places of the stretch, given in walking order; nothing up or down where no heights are known.
    pub(crate) fn climbed(&self, stretch: Stretch, threshold_m: f64, places: &[f64]) -> Vec<Climb> {
        let turning = turning_points(self.walked(stretch), threshold_m);
        at_places(climbed(self.walked(stretch), &turning), places)
    }
}

/// Metres up and down from the begin of a stretch as far as a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Climbed {
    /// Chainage, metres.
    pub(crate) at_m: f64,
    pub(crate) climb: Climb,
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

    /// A share of the way to another, 0 to 1.
    pub(crate) fn toward(self, other: Self, share: f64) -> Self {
        let between = |a: f64, b: f64| a + share * (b - a);
        Self {
            ascent_m: between(self.ascent_m, other.ascent_m),
            descent_m: between(self.descent_m, other.descent_m),
            rising_m: between(self.rising_m, other.rising_m),
            falling_m: between(self.falling_m, other.falling_m),
        }
    }

    /// What it has more than an earlier one.
    pub(crate) fn since(self, earlier: Self) -> Self {
        Self {
            ascent_m: self.ascent_m - earlier.ascent_m,
            descent_m: self.descent_m - earlier.descent_m,
            rising_m: self.rising_m - earlier.rising_m,
            falling_m: self.falling_m - earlier.falling_m,
        }
    }
}

/// Sums from one turning point to the next. With a threshold of 0 every wiggle counts.
fn climb_by_turning_points(heights: impl Iterator<Item = Sample>, threshold_m: f64) -> Climb {
    let mut climb = Climb::default();
    let turning = turning_points(heights, threshold_m);
    for (from, to) in turning.iter().zip(turning.iter().skip(1)) {
        climb.add(from.1, to.1);
    }
    climb
}

/// The same as far as each height: between turning points it goes on as far as the highest or lowest one yet.
fn climbed(
    heights: impl Iterator<Item = Sample>,
    turning: &[(usize, Sample)],
) -> impl Iterator<Item = Climbed> {
    let mut runs = turning.iter().zip(turning.iter().skip(1)).peekable();
    let (mut climb, mut risen) = (Climb::default(), 0.0_f64);
    heights.enumerate().map(move |(i, height)| {
        while let Some((from, to)) = runs.next_if(|(_, to)| to.0 <= i) {
            climb.add(from.1, to.1);
            risen = 0.0;
        }
        let climb = match runs.peek() {
            Some((from, to)) => along_run(climb, &mut risen, height, [from.1, to.1]),
            None => climb,
        };
        Climbed {
            at_m: height.at_m,
            climb,
        }
    })
}

/// As far as a height of a run that ends at its highest or lowest one, when a share of it was risen before.
fn along_run(before: Climb, risen: &mut f64, height: Sample, [from, to]: [Sample; 2]) -> Climb {
    let mut after = before;
    after.add(from, to);
    let part = |of: f64, whole: f64| if whole == 0.0 { 0.0 } else { of / whole };
    let height_m = height.height_m - from.height_m;
    *risen = risen.max(part(height_m, to.height_m - from.height_m));
    let walked = part(height.at_m - from.at_m, to.at_m - from.at_m);
    let (climbed, way) = (before.toward(after, *risen), before.toward(after, walked));
    Climb {
        rising_m: way.rising_m,
        falling_m: way.falling_m,
        ..climbed
    }
}

/// Ups and downs as far as places, both in walking order; none before the first height.
pub(crate) fn at_places(climbed: impl Iterator<Item = Climbed>, places: &[f64]) -> Vec<Climb> {
    let mut ahead = climbed.peekable();
    let mut before: Option<Climbed> = None;
    let mut climb_at = |&at_m: &f64| {
        while let Some(passed) = ahead.next_if(|climbed| climbed.at_m <= at_m) {
            before = Some(passed);
        }
        match (before, ahead.peek()) {
            (Some(before), Some(next)) => {
                let share = (at_m - before.at_m) / (next.at_m - before.at_m);
                before.climb.toward(next.climb, share)
            }
            (Some(last), None) => last.climb,
            (None, _) => Climb::default(),
        }
    };
    places.iter().map(&mut climb_at).collect()
}

/// The heights at which it turns, with their index, the first and where the last run ends among them.
fn turning_points(heights: impl Iterator<Item = Sample>, threshold_m: f64) -> Vec<(usize, Sample)> {
    let mut heights = heights.enumerate();
    let Some(first) = heights.next() else {
        return Vec::new();
    };
    let mut turning = vec![first];
    let (mut low, mut high) = (first, first);
    let mut rising: Option<bool> = None;
    for h in heights {
        if h.1.height_m <= low.1.height_m {
            low = h;
        }
        if h.1.height_m >= high.1.height_m {
            high = h;
        }
        let drop_m = high.1.height_m - h.1.height_m;
        let rise_m = h.1.height_m - low.1.height_m;
        if rising != Some(false) && drop_m >= threshold_m && drop_m > 0.0 {
            turning.push(high);
            (low, rising) = (h, Some(false));
        } else if rising != Some(true) && rise_m >= threshold_m && rise_m > 0.0 {
            turning.push(low);
            (high, rising) = (h, Some(true));
        }
    }
    turning.push(match rising {
        Some(true) => high,
        Some(false) => low,
        None => first,
    });
    turning
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
        let c = climb_by_turning_points(samples.into_iter(), threshold_m);
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
        let climb = climb_by_turning_points(samples.into_iter(), 10.0);
        assert_eq!(
            (climb.rising_m, climb.falling_m),
            (600.0, 500.0),
            "{climb:?}"
        );
    }
}
