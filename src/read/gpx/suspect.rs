//! What of a line may be a device's error. It is told with its place, and never mended.
//!
//! A planner's coarse line is not judged by what is odd in a track: an edge or a point counts as far off only against
//! the line's own step, the median length of its edges. All figures here are our judgement.

use std::cell::OnceCell;

use crate::{
    fault::gpx::{InGpx, Suspect, Suspicion},
    geometry::{
        LonLat,
        frame::{Frame, Local},
    },
    trip::route::Stage,
};

/// An edge longer than this may be one that nobody walked, metres.
const LONG_EDGE_M: f64 = 5_000.0;
/// And as many times as long as the line's step.
const LONG_EDGE_STEPS: f64 = 10.0;
/// A point further than this off the line of its neighbours may be none, metres. A line whose step is longer has corners
/// that lie as far off, and is not asked.
const LONE_OFF_M: f64 = 150.0;
/// And as many times as far from both neighbours as those are from theirs: a bend of an even line is none.
const LONE_TIMES: f64 = 1.5;
/// And the line turns back there by a sharper angle than this, by its cosine: 75 degrees.
const LONE_SHARP: f64 = 0.259;
/// A height further than this off those of its neighbours may be none, metres.
const LONE_HEIGHT_M: f64 = 150.0;
/// And steeper than this to both sides, rise over run: 60 degrees, which nobody walks.
const LONE_STEEP: f64 = 1.732;
/// A point no further than this from longitude 0, latitude 0 stands there, degrees.
const ZERO_DEG: f64 = 1e-6;

/// All of it, in walking order.
pub(super) fn suspicions(stage: &Stage) -> Vec<InGpx> {
    // Of a line without a long edge nobody asks for it.
    let step = OnceCell::new();
    let mut found = Vec::new();
    for segment in stage.segments() {
        let line = Line {
            stage,
            first: segment.start,
            chainage_m: &stage.chainage_m()[segment],
            step: &step,
        };
        for i in 0..line.chainage_m.len() {
            found.extend(line.suspect(i));
        }
    }
    found
}

/// The median length of the edges of a stage, metres; of an even number the lower one.
fn step_m(stage: &Stage) -> f64 {
    let mut edges = Vec::with_capacity(stage.points().len());
    edges.extend(edges_m(stage).map(|(_, length_m)| length_m));
    let middle = edges.len().saturating_sub(1) / 2;
    if edges.is_empty() {
        return 0.0;
    }
    let (_, median_m, _) = edges.select_nth_unstable_by(middle, f64::total_cmp);
    *median_m
}

/// Where the edges of a stage begin, metres of chainage, and how long they are.
pub(in crate::read) fn edges_m(stage: &Stage) -> impl Iterator<Item = (f64, f64)> {
    stage.segments().flat_map(|segment| {
        let chainage = &stage.chainage_m()[segment];
        chainage
            .iter()
            .zip(chainage.iter().skip(1))
            .map(|(a, b)| (*a, b - a))
    })
}

/// One segment.
struct Line<'a> {
    stage: &'a Stage,
    /// Which of its points is the first of the segment.
    first: usize,
    chainage_m: &'a [f64],
    /// The step of the stage, once it is asked for.
    step: &'a OnceCell<f64>,
}

impl Line<'_> {
    fn step_m(&self) -> f64 {
        *self.step.get_or_init(|| step_m(self.stage))
    }

    /// Which of the points of the stage it is.
    fn place(&self, i: usize) -> Option<usize> {
        (i < self.chainage_m.len()).then_some(self.first + i)
    }

    fn point(&self, i: usize) -> Option<LonLat> {
        self.stage.points().get(self.place(i)?)
    }

    fn height_m(&self, i: usize) -> Option<f64> {
        self.stage.height_m(self.place(i)?).map(f64::from)
    }

    /// What is odd about a point, or the edge that begins there; the gravest only.
    fn suspect(&self, i: usize) -> Option<InGpx> {
        let odd = self.zero_point(i).or_else(|| self.lone_point(i));
        let odd = odd.or_else(|| self.lone_height(i));
        let what = odd.or_else(|| self.long_edge(i))?;
        let place = self.point(i)?.normal();
        Some(InGpx::Suspect(Suspicion {
            what,
            at_m: *self.chainage_m.get(i)?,
            lon_lat: [place.lon_deg, place.lat_deg],
        }))
    }

    /// Length of the edge that ends at a point, metres.
    fn edge_m(&self, to: usize) -> Option<f64> {
        Some(self.chainage_m.get(to)? - self.chainage_m.get(to.checked_sub(1)?)?)
    }

    fn is_zero(&self, i: usize) -> bool {
        let place = self.point(i).map(|p| p.normal());
        place.is_some_and(|p| p.lon_deg.abs() <= ZERO_DEG && p.lat_deg.abs() <= ZERO_DEG)
    }

    fn zero_point(&self, i: usize) -> Option<Suspect> {
        if !self.is_zero(i) {
            return None;
        }
        let edges = [self.edge_m(i), self.edge_m(i + 1)].into_iter();
        let off_m = edges.flatten().reduce(f64::min)?;
        (off_m > LONG_EDGE_M).then_some(Suspect::ZeroPoint { off_m })
    }

    fn long_edge(&self, i: usize) -> Option<Suspect> {
        let length_m = self.edge_m(i + 1)?;
        let long = length_m > LONG_EDGE_M && length_m > LONG_EDGE_STEPS * self.step_m();
        let told = self.is_zero(i) || self.is_zero(i + 1);
        (long && !told).then_some(Suspect::LongEdge { length_m })
    }

    fn lone_point(&self, i: usize) -> Option<Suspect> {
        let (before, after) = (i.checked_sub(1)?, i + 1);
        let least_m = self.edge_m(i)?.min(self.edge_m(after)?);
        if least_m <= LONE_OFF_M || self.step_m() > LONE_OFF_M {
            return None;
        }
        let around = [self.edge_m(before), self.edge_m(after + 1)];
        let around_m = around.into_iter().flatten().reduce(f64::max)?;
        if least_m < LONE_TIMES * around_m {
            return None;
        }
        let corner = Corner::of(self.point(i)?, self.point(before)?, self.point(after)?);
        let aside_m = corner.aside_m();
        (aside_m > LONE_OFF_M && corner.is_sharp()).then_some(Suspect::LonePoint { aside_m })
    }

    fn lone_height(&self, i: usize) -> Option<Suspect> {
        let here_m = self.height_m(i)?;
        let (before_m, after_m) = (
            here_m - self.height_m(i.checked_sub(1)?)?,
            here_m - self.height_m(i + 1)?,
        );
        let (to_m, on_m) = (self.edge_m(i)?, self.edge_m(i + 1)?);
        let share = to_m / (to_m + on_m);
        let above_m = before_m + share * (after_m - before_m);
        let steep = |rise_m: f64, length_m: f64| rise_m * above_m.signum() > LONE_STEEP * length_m;
        let lone = above_m.abs() > LONE_HEIGHT_M && steep(before_m, to_m) && steep(after_m, on_m);
        lone.then_some(Suspect::LoneHeight {
            height_m: here_m,
            above_m,
        })
    }
}

/// A point of the line, seen from there: the way back to the one before, and on to the one behind.
struct Corner {
    back: Local,
    on: Local,
}

impl Corner {
    fn of(point: LonLat, before: LonLat, after: LonLat) -> Self {
        let frame = Frame::at(point);
        Self {
            back: frame.local(before),
            on: frame.local(after),
        }
    }

    fn is_sharp(&self) -> bool {
        self.back.dot(self.on) > LONE_SHARP * self.back.length_m() * self.on.length_m()
    }

    /// Metres from the point to the straight piece between its neighbours.
    fn aside_m(&self) -> f64 {
        let chord = self.back.to(self.on);
        let share = -self.back.dot(chord) / chord.dot(chord);
        let share = if share.is_finite() {
            share.clamp(0.0, 1.0)
        } else {
            0.0
        };
        let (east_m, north_m) = (
            self.back.x_m + share * chord.x_m,
            self.back.y_m + share * chord.y_m,
        );
        east_m.hypot(north_m)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_step_is_the_edge_in_the_middle() {
        for count in 2..60 {
            let mut stage = Stage::new(None);
            for i in 0..count {
                // Edges of many lengths in no order, some of them alike.
                let lat_deg = f64::from(i) * 0.01 + f64::from(i * 37 % 11) * 0.0004;
                stage.push(LonLat::new(8.0, lat_deg), None);
                if i % 13 == 5 {
                    stage.break_segment();
                }
            }
            let edges = edges_m(&stage).map(|(_, length_m)| length_m);
            let mut edges: Vec<f64> = edges.collect();
            edges.sort_by(f64::total_cmp);
            let middle = edges.len().saturating_sub(1) / 2;
            let want_m = edges.get(middle).copied().unwrap_or_default();
            assert_eq!(step_m(&stage).to_bits(), want_m.to_bits(), "{count}");
        }
    }
}
