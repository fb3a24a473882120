//! From the earth to the paper: metres round the middle of the map, scaled to drawing units, north up.
//!
//! *Model:* [`Frame`] at the middle. *Error:* that frame's; a drawing of
//! 20 km is off by a few metres at its edges, less than the width of a line.

use std::fmt::Write as _;

use geo::{Coord, LineString, Rect, Simplify};

use crate::geometry::{Bounds, LonLat, frame::Frame};

/// Width of every drawing, in its own units; the page scales it. Our judgement: signs of 10 units are
/// read on a telephone and on paper.
pub(super) const WIDTH: f64 = 480.0;
/// Least and greatest height of a map for its width. Our judgement.
const HEIGHT_SHARE: (f64, f64) = (0.5, 1.0);
/// Detail below this is not drawn, units.
const DETAIL: f64 = 0.3;
/// Units are cut into so many parts before detail is looked for, so that of points equally far from a line the last bit of a
/// cosine, which no two platforms promise alike, does not choose one. A hundred times finer than what is drawn.
const PARTS: f64 = 1024.0;
/// Most points that a line is thinned to before it is simplified exactly.
const MOST_POINTS: usize = 8000;

/// Most steps of a ruler or a walk along it; more is a slip.
const MOST_STEPS: usize = 1_000_000;

/// A place on the paper, units right of and below its top left corner.
pub(super) type PaperSpot = (f64, f64);

/// One map's view of the ground.
#[derive(Clone, Copy, Debug)]
pub(super) struct Paper {
    frame: Frame,
    centre: LonLat,
    /// Metres in a degree of longitude and of latitude.
    m_per_deg: (f64, f64),
    /// Units in a metre.
    pub(super) scale: f64,
    /// Units.
    pub(super) width: f64,
    /// Units.
    pub(super) height: f64,
}

impl Paper {
    /// A paper of this width that shows all of the box.
    pub(super) fn showing(bounds: &Bounds, width: f64) -> Self {
        let centre = bounds.low.along_edge(bounds.high, 0.5);
        let frame = Frame::at(centre);
        let (east, north) = (
            frame.local(LonLat::new(centre.lon_deg + 1.0, centre.lat_deg)),
            frame.local(LonLat::new(centre.lon_deg, centre.lat_deg + 1.0)),
        );
        let (low, high) = (frame.local(bounds.low), frame.local(bounds.high));
        let (w_m, h_m) = ((high.x_m - low.x_m).max(1.0), (high.y_m - low.y_m).max(1.0));
        let height = width * (h_m / w_m).clamp(HEIGHT_SHARE.0, HEIGHT_SHARE.1);
        Self {
            frame,
            centre,
            m_per_deg: (east.x_m, north.y_m),
            scale: (width / w_m).min(height / h_m),
            width,
            height,
        }
    }

    /// Where a position lies on it.
    pub(super) fn at(&self, p: LonLat) -> PaperSpot {
        let local = self.frame.local(p);
        (
            self.width / 2.0 + local.x_m * self.scale,
            self.height / 2.0 - local.y_m * self.scale,
        )
    }

    /// The same of a position as it lies on an unrolled line, which may be turns of the earth away.
    pub(super) fn at_wherever(&self, p: LonLat) -> PaperSpot {
        let straight = self.at(p);
        let turns = ((self.bounds().low.lon_deg - p.lon_deg) / 360.0).round();
        let turned = LonLat::new(p.lon_deg + 360.0 * turns, p.lat_deg);
        if self.holds(straight) {
            straight
        } else {
            self.at(turned)
        }
    }

    /// What position lies there.
    pub(super) fn position(&self, (x, y): PaperSpot) -> LonLat {
        let east_m = (x - self.width / 2.0) / self.scale;
        let north_m = (self.height / 2.0 - y) / self.scale;
        LonLat::new(
            self.centre.lon_deg + east_m / self.m_per_deg.0,
            self.centre.lat_deg + north_m / self.m_per_deg.1,
        )
    }

    /// The ground it shows.
    pub(super) fn bounds(&self) -> Bounds {
        Bounds {
            low: self.position((0.0, self.height)),
            high: self.position((self.width, 0.0)),
        }
    }

    /// Whether a spot lies on it.
    pub(super) fn holds(&self, (x, y): PaperSpot) -> bool {
        (0.0..=self.width).contains(&x) && (0.0..=self.height).contains(&y)
    }

    pub(super) fn rect(&self) -> Rect {
        Rect::new(
            Coord { x: 0.0, y: 0.0 },
            Coord {
                x: self.width,
                y: self.height,
            },
        )
    }

    /// A line without the detail that is too small to see.
    pub(super) fn line(&self, points: &[LonLat]) -> LineString {
        simplified(points.iter().map(|&p| self.at(p)))
    }
}

/// A line in drawing units without the detail that is too small to see, and without places that are none: broken heights
/// make contour lines of them.
pub(super) fn simplified(spots: impl Iterator<Item = PaperSpot>) -> LineString {
    let drawn = spots.filter(|(x, y)| x.is_finite() && y.is_finite());
    let drawn = drawn.map(|(x, y)| [x, y].map(|at| (at * PARTS).round() / PARTS));
    let all: Vec<Coord> = drawn.map(Coord::from).collect();
    let mut step = DETAIL / 2.0;
    let mut thin = thinned(&all, step);
    while thin.len() > MOST_POINTS {
        step *= 2.0;
        thin = thinned(&thin, step);
    }
    LineString(thin).simplify(DETAIL)
}

/// The line without points closer than `step` to the last one kept; its ends stay.
fn thinned(line: &[Coord], step: f64) -> Vec<Coord> {
    let mut kept: Vec<Coord> = Vec::new();
    for &c in line {
        let far = |last: &Coord| (c.x - last.x).hypot(c.y - last.y) >= step;
        if kept.last().is_none_or(far) {
            kept.push(c);
        }
    }
    match (kept.last(), line.last()) {
        (Some(last), Some(end)) if last != end => kept.push(*end),
        _ => {}
    }
    kept
}

/// The line as path data, tenths of units, each step from the last point.
pub(super) fn path(line: &LineString, closed: bool) -> String {
    let mut data = String::new();
    let mut last: Option<(i64, i64)> = None;
    for c in line.coords() {
        let here = (tenths(c.x), tenths(c.y));
        match last {
            None => push(&mut data, 'M', here),
            Some(last) if last == here => continue,
            Some(last) => push(&mut data, 'l', (here.0 - last.0, here.1 - last.1)),
        }
        last = Some(here);
    }
    if closed {
        data.push('z');
    }
    data
}

fn push(data: &mut String, command: char, (x, y): (i64, i64)) {
    // Writing to a string cannot fail.
    let _ = write!(data, "{command}{} {}", number(x), number(y));
}

fn number(tenths: i64) -> String {
    let (sign, whole, rest) = (
        if tenths < 0 { "-" } else { "" },
        tenths.unsigned_abs() / 10,
        tenths.unsigned_abs() % 10,
    );
    match rest {
        0 => format!("{sign}{whole}"),
        rest => format!("{sign}{whole}.{rest}"),
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "drawings are some hundred units wide, and `as` saturates"
)]
fn tenths(units: f64) -> i64 {
    (units * 10.0).round() as i64
}

/// A length in units for an attribute, one decimal.
pub(super) fn u(units: f64) -> String {
    number(tenths(units))
}

/// Of 1, 2 and 5 times a power of ten the least that is not below `least`.
pub(in crate::write) fn round_step(least: f64) -> f64 {
    if !(least.is_finite() && least > 0.0) {
        return 1.0;
    }
    let power = 10_f64.powf(least.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|digit| digit * power)
        .find(|&step| step >= least * (1.0 - 1e-9))
        .unwrap_or(10.0 * power)
}

/// The multiples of `step` from `low` to `high`.
pub(in crate::write) fn steps(low: f64, high: f64, step: f64) -> Vec<f64> {
    let first = (low / step).ceil();
    std::iter::successors(Some(first), |n| Some(n + 1.0))
        .map(|n| n * step)
        .take_while(|&x| x <= high)
        .take(MOST_STEPS)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_position_comes_back_from_the_paper() {
        let bounds = Bounds {
            low: LonLat::new(7.9, 46.4),
            high: LonLat::new(8.1, 46.5),
        };
        let paper = Paper::showing(&bounds, WIDTH);
        let at = LonLat::new(7.95, 46.47);
        let back = paper.position(paper.at(at));
        assert!(at.distance_m(back) < 1e-3, "{back:?}");
        let (x, y) = paper.at(bounds.low);
        assert!(x >= -0.01 && y <= paper.height + 0.01, "{x} {y}");
    }

    #[test]
    fn places_that_are_none_are_left_out_of_a_line() {
        let line = [
            (0.0, 0.0),
            (f64::NAN, 3.0),
            (5.0, f64::INFINITY),
            (9.0, 9.0),
        ];
        let drawn = simplified(line.into_iter());
        assert_eq!(drawn.0.len(), 2, "{drawn:?}");
    }

    #[test]
    fn steps_are_round() {
        for (least, want) in [
            (0.7, 1.0),
            (1.0, 1.0),
            (1.1, 2.0),
            (30.0, 50.0),
            (0.003, 0.005),
        ] {
            assert!((round_step(least) - want).abs() < 1e-12, "{least}");
        }
        assert_eq!(steps(-0.5, 2.0, 1.0).len(), 3);
    }

    #[test]
    fn paths_are_short() {
        let line = LineString::from(vec![(1.0, 2.0), (1.04, 2.0), (0.5, 12.25)]);
        assert_eq!(path(&line, true), "M1 2l-0.5 10.3z");
    }
}
