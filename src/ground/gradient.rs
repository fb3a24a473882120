//! How steep a line is about a place: the slope of the straight line that fits its heights best, so that one noisy height
//! decides nothing.
//!
//! *Model:* least squares over a window of the profile, heights linear in between; with c the middle of a window of width
//! w it is 12/w³ · ∫(x − c)·h dx, `[derived]`. *Checked:* below, against a fit of many points.

use crate::{
    ground::profile::{Profile, Sample},
    trip::route::Stretch,
};

/// The integrals of a profile, run by run: a window never reaches across a jump, so heights count as they are.
#[derive(Clone, Debug, Default)]
pub(crate) struct Gradient {
    runs: Vec<Run>,
}

/// The integrals up to each of the heights of a run.
#[derive(Clone, Debug)]
struct Run {
    known: Stretch,
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
        Self {
            runs: profile.runs().filter_map(Run::of).collect(),
        }
    }

    /// Rise over run about a place of the line fitted to a window, as far as heights reach in it; positive uphill in
    /// walking direction. `None` where they do not reach the place itself.
    #[must_use]
    pub(crate) fn rise(&self, at_m: f64, window: Stretch) -> Option<f64> {
        let after = self.runs.partition_point(|r| r.known.from_m <= at_m);
        self.runs.get(after.checked_sub(1)?)?.rise(at_m, window)
    }
}

impl Run {
    fn of(samples: &[Sample]) -> Option<Self> {
        let known = Stretch {
            from_m: samples.first()?.at_m,
            to_m: samples.last()?.at_m,
        };
        let mut knots: Vec<Knot> = Vec::with_capacity(samples.len());
        for sample in samples {
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
        Some(Self { known, knots })
    }

    fn rise(&self, at_m: f64, window: Stretch) -> Option<f64> {
        let window = Stretch {
            from_m: window.from_m.max(self.known.from_m),
            to_m: window.to_m.min(self.known.to_m),
        };
        let width_m = window.length_m();
        if width_m <= 0.0 || at_m > self.known.to_m {
            return None;
        }
        let (from, to) = (self.upto(window.from_m)?, self.upto(window.to_m)?);
        let middle_m = f64::midpoint(window.from_m, window.to_m);
        let (area, moment) = (to.0 - from.0, to.1 - from.1);
        Some(12.0 * (moment - middle_m * area) / width_m.powi(3))
    }

    /// Both integrals up to a chainage.
    fn upto(&self, at_m: f64) -> Option<(f64, f64)> {
        let after = self.knots.partition_point(|k| k.at_m <= at_m);
        let before = self.knots.get(after.checked_sub(1)?)?;
        let Some(next) = self.knots.get(after) else {
            return Some((before.area, before.moment));
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
    use crate::{geometry::LonLat, trip::route::Stage};

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

    fn about_middle(gradient: &Gradient, window: Stretch) -> Option<f64> {
        gradient.rise(f64::midpoint(window.from_m, window.to_m), window)
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
        let profile = Profile::of_samples(&samples);
        let gradient = Gradient::of(&profile);
        for (from_m, to_m) in [(0.0, 130.0), (5.0, 55.0), (20.0, 70.0), (60.0, 110.0)] {
            let window = Stretch { from_m, to_m };
            let (got, want) = (
                about_middle(&gradient, window).unwrap(),
                fitted(&profile, window),
            );
            assert!((got - want).abs() < 1e-4, "{window:?}: {got}, {want}");
        }
        let beyond = Stretch {
            from_m: 100.0,
            to_m: 140.0,
        };
        let known = Stretch {
            to_m: 130.0,
            ..beyond
        };
        assert_eq!(
            gradient.rise(129.0, beyond),
            gradient.rise(129.0, known),
            "as far as known"
        );
        assert_eq!(gradient.rise(131.0, beyond), None);
    }

    #[test]
    fn a_jump_is_no_slope_whether_heights_are_known_at_it_or_not() {
        for at_jump in [Some(2010.0), None] {
            let mut stage = Stage::new(None);
            stage.push(LonLat::new(8.0, 46.500), Some(2000.0));
            stage.push(LonLat::new(8.0, 46.501), Some(2010.0));
            stage.push(LonLat::new(8.0, 46.502), at_jump.map(|m| m + 10.0));
            let jump_m = stage.length_m();
            stage.break_segment();
            stage.push(LonLat::new(8.0, 46.510), Some(3000.0));
            stage.push(LonLat::new(8.0, 46.511), Some(3010.0));
            let gradient = Gradient::of(&Profile::of_route(&stage));
            let (before, behind) = (
                Stretch {
                    from_m: jump_m - 60.0,
                    to_m: jump_m.next_down(),
                },
                Stretch {
                    from_m: jump_m,
                    to_m: jump_m + 60.0,
                },
            );
            let slope = 10.0 / (stage.length_m() - jump_m);
            let is_slope = |rise: Option<f64>| rise.is_some_and(|r| (r - slope).abs() < 1e-3);
            assert!(is_slope(about_middle(&gradient, behind)));
            let found = about_middle(&gradient, before);
            assert_eq!(is_slope(found), at_jump.is_some(), "{found:?}");
            assert_eq!(found.is_none(), at_jump.is_none(), "{found:?}");
        }
    }
}
