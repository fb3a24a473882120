//! The strip of a line in a plane, in metres.

use geo::{
    Area, BooleanOps, Buffer, Coord, LineString, MultiPolygon, Polygon,
    algorithm::buffer::{BufferStyle, LineCap, LineJoin},
    bool_ops::unary_union,
};

/// Bends of a line that are smaller than this share of the half width are let go: fewer spots to drag in a map editor.
/// Our judgement.
const LET_GO: f64 = 0.08;
/// An arc on the outer side of a bend has a spot at least so often, radians. Our judgement.
const ARC_STEP: f64 = 0.5;

/// A line in a plane, no spot twice in a row.
#[derive(Clone, Debug)]
pub(super) struct FlatLine {
    spots: Vec<Coord>,
    /// How far along each spot lies, metres.
    along_m: Vec<f64>,
}

impl FlatLine {
    pub(super) fn of(spots: impl IntoIterator<Item = Coord>) -> Self {
        let mut line = Self {
            spots: Vec::new(),
            along_m: Vec::new(),
        };
        for spot in spots {
            let step_m = line.spots.last().map_or(0.0, |last| length_m(spot - *last));
            if line.spots.is_empty() || step_m > 0.0 {
                line.along_m.push(line.length_m() + step_m);
                line.spots.push(spot);
            }
        }
        line
    }

    fn length_m(&self) -> f64 {
        self.along_m.last().copied().unwrap_or(0.0)
    }

    /// The ground beside it; `None` where the line has no length.
    ///
    /// Its two ends are cut square to the way that the line takes over its last metres, and not over its last edge: a
    /// receiver that trembles at the end would else turn the whole side about. What lies between is the strip of the rest,
    /// so that a line which comes back past its own end keeps the ground beside it.
    pub(super) fn strip(&self, half_m: f64) -> Option<MultiPolygon> {
        if self.length_m() <= 0.0 {
            return None;
        }
        let end_m = half_m.min(self.length_m() / 2.0);
        let thin = self.thinned(half_m * LET_GO);
        let back = self.reversed();
        let ends = [(self, &thin), (&back, &thin.reversed())];
        let ends = ends.map(|(line, thin)| ending(&line.last(end_m), &thin.last(end_m), half_m));
        let middle = thin.part(end_m / 2.0, thin.length_m() - end_m / 2.0);
        let [end, beginning] = ends;
        let all = unary_union(&[middle.widened(half_m), end, beginning]);
        Some(without_specks(all, half_m * LET_GO))
    }

    /// The ground beside it, cut square to its first and last edge.
    fn widened(&self, half_m: f64) -> MultiPolygon {
        let style = BufferStyle::new(half_m)
            .line_cap(LineCap::Butt)
            .line_join(LineJoin::Round(ARC_STEP));
        LineString::new(self.spots.clone()).buffer_with_style(style)
    }

    fn reversed(&self) -> Self {
        Self::of(self.spots.iter().rev().copied())
    }

    fn last(&self, metres: f64) -> Self {
        self.part(self.length_m() - metres, self.length_m())
    }

    fn part(&self, from_m: f64, to_m: f64) -> Self {
        let inner = self.spots.iter().zip(&self.along_m);
        let inner = inner.filter(|(_, at_m)| **at_m > from_m && **at_m < to_m);
        let inner = inner.map(|(spot, _)| *spot);
        let ends = [from_m, to_m].map(|at_m| self.at(at_m));
        let [first, last] = ends;
        Self::of(first.into_iter().chain(inner).chain(last))
    }

    fn at(&self, at_m: f64) -> Option<Coord> {
        let after = self.along_m.partition_point(|m| *m <= at_m);
        let before = after.checked_sub(1);
        let Some(from) = before else {
            return self.spots.first().copied();
        };
        let (Some(a), Some(b)) = (self.spots.get(from), self.spots.get(after)) else {
            return self.spots.last().copied();
        };
        let (from_m, to_m) = (self.along_m.get(from)?, self.along_m.get(after)?);
        Some(*a + (*b - *a) * ((at_m - from_m) / (to_m - from_m)))
    }

    /// With fewer spots, none of those that are left out farther off than that: of a run the spot farthest from its chord
    /// is kept, and each half looked at again (`geo` has the same, but calls itself as deep as the line is long).
    fn thinned(&self, reach_m: f64) -> Self {
        let mut kept = vec![false; self.spots.len()];
        let last = self.spots.len().saturating_sub(1);
        for end in [0, last] {
            if let Some(keep) = kept.get_mut(end) {
                *keep = true;
            }
        }
        let mut runs = vec![(0, last)];
        while let Some((from, to)) = runs.pop() {
            let Some((at, off_m)) = self.farthest(from, to) else {
                continue;
            };
            if off_m > reach_m {
                kept[at] = true;
                runs.extend([(from, at), (at, to)]);
            }
        }
        let spots = self.spots.iter().zip(kept).filter(|(_, keep)| *keep);
        Self::of(spots.map(|(spot, _)| *spot))
    }

    /// The spot between two that lies farthest from the straight way between them.
    fn farthest(&self, from: usize, to: usize) -> Option<(usize, f64)> {
        let (a, b) = (*self.spots.get(from)?, *self.spots.get(to)?);
        let between = self.spots.get(from + 1..to)?.iter().enumerate();
        let off = between.map(|(i, spot)| (from + 1 + i, off_m(*spot, a, b)));
        off.max_by(|(_, one), (_, other)| one.total_cmp(other))
    }
}

/// The last metres of a line and of the same thinned, widened and cut off square behind all of the former.
fn ending(line: &FlatLine, thin: &FlatLine, half_m: f64) -> MultiPolygon {
    let way = |line: &FlatLine, back: usize| {
        let (at, end) = (line.spots.iter().rev().nth(back)?, line.spots.last()?);
        unit(*end - *at)
    };
    let whole = thin.spots.len().saturating_sub(1);
    let (Some(end), Some(ahead)) = (
        thin.spots.last().copied(),
        way(thin, whole).or_else(|| way(thin, 1)),
    ) else {
        return MultiPolygon::new(Vec::new());
    };
    let beyond_m = |spot: &Coord| (spot.x - end.x) * ahead.x + (spot.y - end.y) * ahead.y;
    let beyond_m = line.spots.iter().map(beyond_m).fold(0.0, f64::max);
    let cut = end + ahead * beyond_m;
    let on = FlatLine::of(thin.spots.iter().copied().chain([cut + ahead * half_m]));
    let left = Coord {
        x: -ahead.y,
        y: ahead.x,
    } * (CUT * half_m);
    let deep = ahead * (CUT * half_m);
    let ring = [
        cut - left,
        cut - left + deep,
        cut + left + deep,
        cut + left,
        cut - left,
    ];
    let beyond = Polygon::new(LineString::new(ring.to_vec()), Vec::new());
    on.widened(half_m).difference(&beyond)
}

/// What is cut off behind an end reaches so many half widths to either side and ahead: the end is no longer than one, and
/// so wide, so that three would do.
const CUT: f64 = 4.0;

/// Without holes that are smaller than what is let go, squared: nobody stays on such rock.
fn without_specks(area: MultiPolygon, reach_m: f64) -> MultiPolygon {
    let parts = area.into_iter().map(|part| {
        let (outer, holes) = part.into_inner();
        let is_hole = |hole: &LineString| {
            let alone = Polygon::new(hole.clone(), Vec::new());
            alone.unsigned_area() > (2.0 * reach_m).powi(2)
        };
        Polygon::new(outer, holes.into_iter().filter(is_hole).collect())
    });
    MultiPolygon::new(parts.collect())
}

fn length_m(way: Coord) -> f64 {
    way.x.hypot(way.y)
}

fn unit(way: Coord) -> Option<Coord> {
    let metres = length_m(way);
    (metres > 0.0).then(|| way / metres)
}

/// How far a spot is from the straight way between two others.
fn off_m(spot: Coord, a: Coord, b: Coord) -> f64 {
    let (way, to) = (b - a, spot - a);
    let squared = way.x * way.x + way.y * way.y;
    let t = if squared > 0.0 {
        ((to.x * way.x + to.y * way.y) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    length_m(to - way * t)
}
