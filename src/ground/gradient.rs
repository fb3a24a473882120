//! How steep a line is about a place: the slope of the straight line that fits its heights best, so that one noisy height
//! decides nothing.
//!
//! *Model:* least squares over a window of the profile, heights linear in between; with c the middle of a window of width
//! w it is 12/w³ · ∫(x − c)·h dx, `[derived]`. *Checked:* below, against a fit of many points.

use crate::{
    ground::{
        lone::least_steep,
        profile::Profile,
        samples::{Sample, Samples},
    },
    trip::route::Stretch,
};

/// The heights of a profile, run by run: a window never reaches across a jump, so heights count as they are.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Gradient<'p>(&'p Profile);

/// The heights of a run. Integrals are taken of a window at a time, about its middle and over its first height: as differences
/// of integrals from the beginning of the stage they are off by a millionth of a degree after twenty kilometres.
#[derive(Clone, Debug)]
struct Run<'p> {
    known: Stretch,
    samples: Samples<'p>,
}

impl<'p> Gradient<'p> {
    pub(crate) fn of(profile: &'p Profile) -> Self {
        Self(profile)
    }

    /// Rise over run about a place of the line fitted to a window, as far as heights reach in it; positive uphill in
    /// walking direction, whichever height that stands alone is doubted. `None` where they do not reach the place itself.
    #[must_use]
    pub(crate) fn rise(self, at_m: f64, window: Stretch) -> Option<f64> {
        let run = Run::of(self.0.run_of(at_m)?)?;
        let window = run.part(at_m, window)?;
        let plain = run.rise(window)?;
        let lone = self.0.lone_in(window);
        let doubted = lone.map(|l| plain + slope(l.moment(window), window));
        Some(least_steep(plain, doubted))
    }
}

impl<'p> Run<'p> {
    fn of(samples: Samples<'p>) -> Option<Self> {
        let known = Stretch {
            from_m: samples.get(0)?.at_m,
            to_m: samples.iter().next_back()?.at_m,
        };
        Some(Self { known, samples })
    }

    /// As far as heights reach in a window about a place, if they reach the place.
    fn part(&self, at_m: f64, window: Stretch) -> Option<Stretch> {
        let part = Stretch {
            from_m: window.from_m.max(self.known.from_m),
            to_m: window.to_m.min(self.known.to_m),
        };
        (part.length_m() > 0.0 && at_m <= self.known.to_m).then_some(part)
    }

    fn rise(&self, window: Stretch) -> Option<f64> {
        let middle_m = f64::midpoint(window.from_m, window.to_m);
        let (first, last) = (self.at(window.from_m)?, self.at(window.to_m)?);
        let about = |sample: Sample| Sample {
            at_m: sample.at_m - middle_m,
            height_m: sample.height_m - first.height_m,
        };
        let (from, to) = (
            self.samples.up_to(window.from_m),
            self.samples.before(window.to_m),
        );
        let between = self.samples.part(from..to);
        let (mut before, mut sum) = (about(first), 0.0);
        for next in between.iter().chain([last]).map(about) {
            sum += moment(&before, &next);
            before = next;
        }
        Some(slope(sum, window))
    }

    /// The height at a chainage.
    fn at(&self, at_m: f64) -> Option<Sample> {
        let after = self.samples.up_to(at_m);
        let before = self.samples.get(after.checked_sub(1)?)?;
        let Some(next) = self.samples.get(after) else {
            return Some(before);
        };
        let t = (at_m - before.at_m) / (next.at_m - before.at_m);
        let height_m = before.height_m + t * (next.height_m - before.height_m);
        Some(Sample { at_m, height_m })
    }
}

/// The slope of a window by ∫(x − c)·h dx.
fn slope(moment: f64, window: Stretch) -> f64 {
    12.0 * moment / window.length_m().powi(3)
}

/// ∫x·h dx over one straight piece, by Simpson's rule, which is exact for it.
fn moment(from: &Sample, to: &Sample) -> f64 {
    let (middle_m, middle_height_m) = (
        f64::midpoint(from.at_m, to.at_m),
        f64::midpoint(from.height_m, to.height_m),
    );
    let sum = from.at_m * from.height_m + 4.0 * middle_m * middle_height_m + to.at_m * to.height_m;
    (to.at_m - from.at_m) * sum / 6.0
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

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

    fn about_middle(gradient: Gradient<'_>, window: Stretch) -> Option<f64> {
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
                about_middle(gradient, window).unwrap(),
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

    /// Thirty kilometres on and three thousand metres up nothing is another slope, to the digits that are written.
    #[test]
    fn far_along_a_stage_a_slope_is_what_it_is_at_its_begin() {
        let heights = [(0.0, 0.0), (13.0, 7.0), (31.0, 9.0), (50.0, 30.0)];
        let rise = |on_m: f64, up_m: f64| {
            // From the begin of the stage on, as integrals from there would reach.
            let far = heights.map(|(at_m, height_m)| (on_m + at_m, up_m + height_m));
            let all = [(0.0, up_m)].into_iter().filter(|_| on_m > 0.0).chain(far);
            let samples: Vec<Sample> = all
                .map(|(at_m, height_m)| Sample { at_m, height_m })
                .collect();
            let (from_m, to_m) = (on_m, on_m + 50.0);
            let profile = Profile::of_samples(&samples);
            let gradient = Gradient::of(&profile);
            about_middle(gradient, Stretch { from_m, to_m }).unwrap()
        };
        let (near, far) = (rise(0.0, 0.0), rise(32_768.0, 3072.0));
        assert!((near - far).abs() < 1e-13, "{near}, {far}");
    }

    /// A dip of 24 m: 2089, 2065 and 2080 m within 41 m, as a receiver wrote them down on a path along a moraine.
    #[test]
    fn a_dip_of_one_height_decides_no_slope() {
        let heights = [2084.0, 2087.0, 2089.0, 2065.0, 2080.0, 2084.0, 2087.0];
        let sample = |(i, height_m): (usize, f64)| Sample {
            at_m: 20.5 * i as f64,
            height_m,
        };
        let samples: Vec<Sample> = heights.into_iter().enumerate().map(sample).collect();
        let steepest_deg = |profile: Profile| {
            let gradient = Gradient::of(&profile);
            let windows = (0..73).map(f64::from);
            let windows = windows.map(|from_m| Stretch {
                from_m,
                to_m: from_m + 50.0,
            });
            let rises = windows.filter_map(|w| about_middle(gradient, w));
            rises.map(f64::abs).fold(0.0, f64::max).atan().to_degrees()
        };
        let profile = Profile::of_samples(&samples);
        assert!(steepest_deg(profile.clone()) > 25.0);
        assert!(steepest_deg(profile.measured(30.0)) < 12.0);
    }

    /// Heights 1 to 40 m apart, and a window somewhere among them.
    fn any_window() -> impl Strategy<Value = (Vec<Sample>, Stretch)> {
        let steps = proptest::collection::vec((1.0..40.0_f64, -20.0..20.0_f64), 3..30);
        (steps, 0.0..1.0_f64, 0.2..1.0_f64).prop_map(|(steps, share, width)| {
            let mut at_m = 0.0;
            let samples = steps.into_iter().map(|(step_m, height_m)| {
                at_m += step_m;
                Sample { at_m, height_m }
            });
            let samples: Vec<Sample> = samples.collect();
            let (first_m, last_m) = (samples[0].at_m, at_m);
            let width_m = (60.0 * width).min(last_m - first_m);
            let from_m = first_m + share * (last_m - first_m - width_m);
            let to_m = from_m + width_m;
            (samples, Stretch { from_m, to_m })
        })
    }

    proptest! {
        #[test]
        fn doubt_never_makes_steeper_and_the_way_back_is_as_steep((samples, window) in any_window()) {
            let rise = |samples: &[Sample], window: Stretch, within_m: f64| {
                let profile = Profile::of_samples(samples).measured(within_m);
                about_middle(Gradient::of(&profile), window).unwrap()
            };
            let (plain, sure) = (rise(&samples, window, 0.0), rise(&samples, window, 30.0));
            prop_assert!(sure.abs() <= plain.abs() && sure * plain >= 0.0, "{plain}, {sure}");
            let back = |s: &Sample| Sample { at_m: 1000.0 - s.at_m, ..*s };
            let reversed: Vec<Sample> = samples.iter().rev().map(back).collect();
            let (from_m, to_m) = (1000.0 - window.to_m, 1000.0 - window.from_m);
            let behind = rise(&reversed, Stretch { from_m, to_m }, 30.0);
            prop_assert!((sure + behind).abs() < 1e-6, "{sure}, {behind}");
        }

        #[test]
        fn downhill_all_the_way_nothing_is_doubted((mut samples, window) in any_window()) {
            let mut heights: Vec<f64> = samples.iter().map(|s| s.height_m).collect();
            heights.sort_by(|a, b| b.total_cmp(a));
            for (sample, height_m) in samples.iter_mut().zip(heights) {
                sample.height_m = height_m;
            }
            let profile = Profile::of_samples(&samples);
            let measured = profile.clone().measured(30.0);
            let sure = about_middle(Gradient::of(&measured), window);
            prop_assert_eq!(sure, about_middle(Gradient::of(&profile), window));
        }
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
            let profile = Profile::of_route(&stage);
            let gradient = Gradient::of(&profile);
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
            assert!(is_slope(about_middle(gradient, behind)));
            let found = about_middle(gradient, before);
            assert_eq!(is_slope(found), at_jump.is_some(), "{found:?}");
            assert_eq!(found.is_none(), at_jump.is_none(), "{found:?}");
        }
    }
}
