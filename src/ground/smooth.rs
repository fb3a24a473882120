//! Heights of a model as they count for climbs: the noise of a raster is not climbing.
//!
//! *Model:* heights a cell apart along the line, each the mean over `climb_cells` cells of line around it, less towards
//! the ends of a segment, where the height itself stands. Five cells (our judgement) bring an error of 10 m in every
//! cell, each by itself, down to 4.5 m, so that it seldom passes the threshold of climbs; real errors of neighbouring
//! cells are alike, so some noise stays. *Valid:* for climbs. A plane stays as it is; a step, a crest or a hollow
//! shorter than the cells is flattened, so slopes never come from here. *Checked:* below, tests/ground/climbs.rs.

use crate::{
    ground::{
        profile::{Gathering, Profile},
        samples::Sample,
    },
    trip::route::Stretch,
};

/// A height and the cell of the model that gave it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Weighed {
    pub(super) sample: Sample,
    /// Metres.
    pub(super) cell_m: f64,
}

/// Smooths segment by segment: a jump is never averaged over.
#[derive(Debug)]
pub(super) struct Smoothing {
    cells: f64,
    /// Least step between two heights, metres.
    least_m: f64,
    gathering: Gathering,
}

impl Smoothing {
    /// The mean over so many cells, the heights no nearer than a cell and than `least_m`.
    pub(super) fn over(cells: f64, least_m: f64) -> Self {
        Self {
            cells,
            least_m,
            gathering: Gathering::default(),
        }
    }

    /// The next segment of the line, in walking order.
    pub(super) fn segment(&mut self, heights: &[Weighed]) {
        let areas = areas(heights);
        let line = Line {
            heights,
            areas: &areas,
        };
        let ends = (heights.first(), heights.last());
        if let (Some(first), Some(last)) = ends {
            let whole = Stretch {
                from_m: first.sample.at_m,
                to_m: last.sample.at_m,
            };
            self.walk(&line, whole);
        }
        self.gathering.jump();
    }

    fn walk(&mut self, line: &Line<'_>, whole: Stretch) {
        let mut at_m = whole.from_m;
        while at_m < whole.to_m {
            let cell_m = line.cell_m(at_m);
            let half_m = (self.cells * cell_m / 2.0)
                .min(at_m - whole.from_m)
                .min(whole.to_m - at_m);
            self.gathering.place(at_m, line.mean_m(at_m, half_m));
            at_m += cell_m.max(self.least_m);
        }
        self.gathering
            .place(whole.to_m, line.mean_m(whole.to_m, 0.0));
    }

    /// The profile for climbs.
    pub(super) fn done(self) -> Profile {
        self.gathering.done()
    }
}

/// One segment, linear between its heights.
struct Line<'a> {
    heights: &'a [Weighed],
    /// By height: the area under the line up to it, m².
    areas: &'a [f64],
}

/// The area under the line up to each height, above the first one: less is lost to rounding there.
fn areas(heights: &[Weighed]) -> Vec<f64> {
    let base_m = heights.first().map_or(0.0, |w| w.sample.height_m);
    let mut area = 0.0;
    let first = heights.first().map(|_| 0.0);
    let rest = heights.windows(2).map(|pair| {
        if let [a, b] = pair {
            let (a, b) = (a.sample, b.sample);
            area += (f64::midpoint(a.height_m, b.height_m) - base_m) * (b.at_m - a.at_m);
        }
        area
    });
    first.into_iter().chain(rest).collect()
}

impl Line<'_> {
    /// Index of the last height at or before a place.
    fn before(&self, at_m: f64) -> usize {
        let after = self.heights.partition_point(|w| w.sample.at_m <= at_m);
        after.saturating_sub(1)
    }

    fn cell_m(&self, at_m: f64) -> f64 {
        self.heights
            .get(self.before(at_m))
            .map_or(f64::INFINITY, |w| w.cell_m)
    }

    /// The mean height within `half_m` of a place; the height itself where that is nothing.
    fn mean_m(&self, at_m: f64, half_m: f64) -> Option<f64> {
        if half_m <= 0.0 {
            return self.height_m(at_m);
        }
        let base_m = self.heights.first()?.sample.height_m;
        let area = self.area(at_m + half_m)? - self.area(at_m - half_m)?;
        Some(base_m + area / (2.0 * half_m))
    }

    fn height_m(&self, at_m: f64) -> Option<f64> {
        let before = self.before(at_m);
        let here = self.heights.get(before)?.sample;
        let Some(next) = self.heights.get(before + 1).map(|w| w.sample) else {
            return Some(here.height_m);
        };
        let share = (at_m - here.at_m) / (next.at_m - here.at_m);
        Some(here.height_m + share * (next.height_m - here.height_m))
    }

    fn area(&self, at_m: f64) -> Option<f64> {
        let before = self.before(at_m);
        let here = self.heights.get(before)?.sample;
        let base_m = self.heights.first()?.sample.height_m;
        let mean_m = f64::midpoint(here.height_m, self.height_m(at_m)?);
        Some(self.areas.get(before)? + (mean_m - base_m) * (at_m - here.at_m))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Heights every 10 m over a kilometre, from cells of 30 m.
    fn smoothed(cells: f64, height_m: impl Fn(f64) -> f64) -> Profile {
        let heights: Vec<Weighed> = (0..=100)
            .map(|i| {
                let at_m = 10.0 * f64::from(i);
                let height_m = height_m(at_m);
                Weighed {
                    sample: Sample { at_m, height_m },
                    cell_m: 30.0,
                }
            })
            .collect();
        let mut smoothing = Smoothing::over(cells, 15.0);
        smoothing.segment(&heights);
        smoothing.done()
    }

    #[test]
    fn a_slope_stays_as_it_is_to_its_very_ends() {
        let profile = smoothed(5.0, |at_m| 4000.0 + 0.4 * at_m);
        assert_eq!(profile.samples().len(), 35, "a cell apart, and the end");
        for s in profile.samples().iter() {
            assert!((s.height_m - 4000.0 - 0.4 * s.at_m).abs() < 1e-9, "{s:?}");
        }
    }

    #[test]
    fn noise_from_cell_to_cell_is_averaged_away() {
        // ±10 m from one cell to the next.
        let noise = |at_m: f64| {
            if (at_m / 60.0).fract() < 0.5 {
                10.0
            } else {
                -10.0
            }
        };
        let whole = Stretch {
            from_m: 0.0,
            to_m: 1000.0,
        };
        let ascent_m = |cells: f64| smoothed(cells, noise).climb(whole, 10.0).unwrap().ascent_m;
        assert!(ascent_m(0.0) > 250.0, "{}", ascent_m(0.0));
        assert!(ascent_m(5.0) < 21.0, "{}", ascent_m(5.0));
    }
}
