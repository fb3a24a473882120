//! Slopes along a profile: the steepest of a stretch, and what it goes down steeply.

use crate::{ground::profile::Profile, trip::route::Stretch};

/// A slope along the line.
///
/// ```
/// use schrund::{ground::profile::{Profile, Sample}, trip::route::Stretch};
///
/// let read = [(0.0, 2000.0), (500.0, 2050.0), (550.0, 2000.0)];
/// let profile = Profile::of_samples(&read.map(|(at_m, height_m)| Sample { at_m, height_m }));
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

/// Rises that differ by less count as much, metres `[ours]`: where a line is straight all windows of it do, and no last bit may
/// choose among them.
const ALIKE_M: f64 = 1e-9;

impl Profile {
    /// The steepest slope of a stretch, taken over `over_m` (over all of it where it is shorter).
    #[must_use]
    pub fn steepest(&self, stretch: Stretch, over_m: f64) -> Option<Steep> {
        self.steepest_by(stretch, over_m, f64::abs)
    }

    /// The steepest descent of a stretch, degrees, positive; 0 where it never goes down.
    #[must_use]
    pub fn steepest_descent_deg(&self, stretch: Stretch, over_m: f64) -> Option<f64> {
        let steepest = self.steepest_by(stretch, over_m, |rise_m| -rise_m);
        steepest.map(|s| (-s.deg).max(0.0))
    }

    /// Metres that a stretch goes down in pieces steeper than `share` (rise over run), taken over `over_m`; `None` where
    /// heights are missing on one of them: how it falls there is unknown, not level.
    #[must_use]
    pub fn steep_descent_m(&self, stretch: Stretch, share: f64, over_m: f64) -> Option<f64> {
        if self.is_empty() || over_m <= 0.0 {
            return None;
        }
        let mut from_m = stretch.from_m;
        let mut steep_m = 0.0;
        while from_m < stretch.to_m {
            let to_m = (from_m + over_m).min(stretch.to_m);
            let drop_m = -self.rise_m(Stretch { from_m, to_m })?;
            if drop_m > share * (to_m - from_m) {
                steep_m += drop_m;
            }
            from_m = if to_m > from_m { to_m } else { stretch.to_m };
        }
        Some(steep_m)
    }

    /// The window whose rise counts most, the last of those that count as much; windows begin or end at a height.
    ///
    /// To doubt a height makes a slope gentler, so that it is only asked for what would be steepest without.
    fn steepest_by(
        &self,
        stretch: Stretch,
        over_m: f64,
        counts: impl Fn(f64) -> f64,
    ) -> Option<Steep> {
        let over_m = over_m.min(stretch.length_m());
        if over_m <= 0.0 {
            return None;
        }
        let mut best: Option<(f64, Stretch)> = None;
        for (rise_m, over) in self.rises(stretch, over_m) {
            let enough = |rise_m: f64| {
                best.is_none_or(|(most_m, _)| counts(rise_m) >= counts(most_m) - ALIKE_M)
            };
            if !enough(rise_m) {
                continue;
            }
            let rise_m = self.doubted_m(rise_m, over);
            if enough(rise_m) {
                best = Some((rise_m, over));
            }
        }
        best.map(|(rise_m, over)| Steep {
            deg: (rise_m / over_m).atan().to_degrees(),
            at_m: over.from_m + over_m / 2.0,
        })
    }

    /// What the line rises over windows that begin or end at a height, no height doubted.
    fn rises(&self, stretch: Stretch, over_m: f64) -> impl Iterator<Item = (f64, Stretch)> {
        let last_start = stretch.to_m - over_m;
        // Windows that begin at a height and those that end at one, each in walking order; where the last ones were.
        let first = self.first_behind(stretch.from_m);
        let mut near = [[first; 2]; 2];
        let inner = self.inner(stretch).iter();
        let starts = inner.flat_map(move |s| [(0, s.at_m), (1, s.at_m - over_m)]);
        let starts = starts.chain([(0, stretch.from_m), (0, last_start)]);
        let within = move |&(_, s): &(usize, f64)| s >= stretch.from_m && s <= last_start;
        starts.filter(within).filter_map(move |(sort, start)| {
            let over = Stretch {
                from_m: start,
                to_m: start + over_m,
            };
            let [begins, ends] = near.get_mut(sort)?;
            let from = self.find_on(begins, over.from_m)?;
            let to = self.find_on(ends, over.to_m)?;
            Some((self.rise_between_m(&from, &to)?, over))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ground::profile::Sample;

    #[test]
    fn only_steep_descents_are_summed() {
        let samples = [(0.0, 500.0), (100.0, 470.0), (200.0, 451.0), (300.0, 500.0)];
        let samples = samples.map(|(at_m, height_m)| Sample { at_m, height_m });
        let profile = Profile::of_samples(&samples);
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
        let profile = Profile::of_samples(&samples);
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
