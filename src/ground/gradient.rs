//! How steep a line is about a place: the slope of the straight line that fits its heights best, so that one noisy height
//! decides nothing.
//!
//! *Model:* least squares over a window of the profile, heights linear in between; with c the middle of a window of width
//! w it is 12/w³ · ∫(x − c)·h dx, `[derived]`. *Checked:* below, against a fit of many points.

use crate::{ground::profile::Profile, trip::route::Stretch};

/// The integrals of a profile up to each of its heights.
#[derive(Clone, Debug, Default)]
pub(crate) struct Gradient {
    knots: Vec<Knot>,
}

#[derive(Clone, Copy, Debug)]
struct Knot {
    at_m: f64,
    height_m: f64,
    /// ∫h dx from the first height to here.
    area: f64,
    /// ∫x·h dx likewise.
    moment: f64,
}

impl Gradient {
    pub(crate) fn of(profile: &Profile) -> Self {
        let mut knots: Vec<Knot> = Vec::with_capacity(profile.samples().len());
        for sample in profile.samples() {
            let mut next = Knot {
                at_m: sample.at_m,
                height_m: sample.height_m,
                area: 0.0,
                moment: 0.0,
            };
            if let Some(last) = knots.last() {
                let (area, moment) = between(last, next.at_m, next.height_m);
                next.area = last.area + area;
                next.moment = last.moment + moment;
            }
            knots.push(next);
        }
        Self { knots }
    }

    /// Rise over run of the line fitted to a window, positive uphill in walking direction; `None` where heights are
    /// missing at one of its ends.
    #[must_use]
    pub(crate) fn rise(&self, window: Stretch) -> Option<f64> {
        let width_m = window.length_m();
        let (from, to) = (self.upto(window.from_m)?, self.upto(window.to_m)?);
        if width_m <= 0.0 {
            return None;
        }
        let middle_m = f64::midpoint(window.from_m, window.to_m);
        let (area, moment) = (to.0 - from.0, to.1 - from.1);
        Some(12.0 * (moment - middle_m * area) / width_m.powi(3))
    }

    /// Both integrals up to a chainage.
    fn upto(&self, at_m: f64) -> Option<(f64, f64)> {
        let after = self.knots.partition_point(|k| k.at_m <= at_m);
        let before = self.knots.get(after.checked_sub(1)?)?;
        let Some(next) = self.knots.get(after) else {
            let at_end = at_m - before.at_m < 1e-6;
            return at_end.then_some((before.area, before.moment));
        };
        let t = (at_m - before.at_m) / (next.at_m - before.at_m);
        let height_m = before.height_m + t * (next.height_m - before.height_m);
        let (area, moment) = between(before, at_m, height_m);
        Some((before.area + area, before.moment + moment))
    }
}

/// Both integrals over one straight piece, by Simpson's rule, which is exact for it.
fn between(from: &Knot, to_m: f64, to_height_m: f64) -> (f64, f64) {
    let width_m = to_m - from.at_m;
    let (middle_m, middle_height_m) = (
        f64::midpoint(from.at_m, to_m),
        f64::midpoint(from.height_m, to_height_m),
    );
    let moment = from.at_m * from.height_m + 4.0 * middle_m * middle_height_m + to_m * to_height_m;
    (width_m * middle_height_m, width_m * moment / 6.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ground::profile::Sample;

    /// The same by a fit of evenly spaced points.
    fn fitted(profile: &Profile, window: Stretch) -> f64 {
        let points: Vec<(f64, f64)> = (0..=20_000)
            .map(|i| window.from_m + f64::from(i) / 20_000.0 * window.length_m())
            .filter_map(|x| Some((x, profile.height_m(x)?)))
            .collect();
        let n = 20_001.0;
        let (mx, my) = points
            .iter()
            .fold((0.0, 0.0), |s, p| (s.0 + p.0 / n, s.1 + p.1 / n));
        let (top, under) = points.iter().fold((0.0, 0.0), |s, p| {
            (s.0 + (p.0 - mx) * (p.1 - my), s.1 + (p.0 - mx).powi(2))
        });
        top / under
    }

    #[test]
    fn it_is_the_least_squares_line() {
        let heights = [
            (0.0, 100.0),
            (13.0, 120.0),
            (40.0, 118.0),
            (41.0, 160.0),
            (130.0, 90.0),
        ];
        let samples = heights.map(|(at_m, height_m)| Sample { at_m, height_m });
        let profile = Profile::of_samples(samples.to_vec());
        let gradient = Gradient::of(&profile);
        for (from_m, to_m) in [(0.0, 130.0), (5.0, 55.0), (20.0, 70.0), (60.0, 110.0)] {
            let window = Stretch { from_m, to_m };
            let (got, want) = (gradient.rise(window).unwrap(), fitted(&profile, window));
            assert!((got - want).abs() < 1e-4, "{window:?}: {got}, {want}");
        }
        assert_eq!(
            gradient.rise(Stretch {
                from_m: 100.0,
                to_m: 140.0
            }),
            None
        );
    }
}
