//! The strip of a line in a plane, in metres.

use geo::{
    Area, BooleanOps, Contains, Coord, LineString, MultiPolygon, Polygon, bool_ops::unary_union,
};

use super::pieces::{joined, left_of, length_m, off, outside, rectangle, ring, unit};

/// Bends of a line that are smaller than this share of the half width are let go: fewer spots to drag in a map editor.
/// Our judgement.
const LET_GO: f64 = 0.08;

/// What seven decimals and the taking off of needles may move a side, metres: a side that was moved ahead of the line lies
/// so much farther.
const ROUNDED_M: f64 = 0.1;

/// As straight as seven decimals of a degree are, twice over, metres.
const STRAIGHT_M: f64 = 0.02;

/// Farther from its ends than that a line is in its strip, and so far beside it at least, metres. Our judgement.
const BESIDE_M: f64 = 1.0;

/// A line in a plane, no spot twice in a row.
#[derive(Clone, Debug)]
pub(super) struct FlatLine {
    spots: Vec<Coord>,
    /// How far along each spot lies, metres; of a thinned line as far as it lay along the whole one.
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
        let area = tidied(all, half_m * LET_GO);
        let strays = self.strays(&area);
        if strays.is_empty() {
            return Some(area);
        }
        Some(unary_union(&[area, joined(strays)]))
    }

    /// A narrow strip of each piece of the line that is not in an area: what was let go of a line that turns to and fro
    /// about its end may lie past the cut there.
    fn strays(&self, area: &MultiPolygon) -> Vec<MultiPolygon> {
        let ends = [self.spots.first(), self.spots.last()];
        let at_an_end = |spot: Coord| {
            let near = |end: &&Coord| length_m(spot - **end) <= BESIDE_M;
            ends.iter().flatten().any(near)
        };
        let inner = self.spots.windows(3).zip(self.along_m.windows(3));
        let stray = inner.filter(
            |(spots, _)| matches!(spots, [_, spot, _] if !at_an_end(*spot) && !area.contains(spot)),
        );
        let pieces = stray.filter_map(|(_, along_m)| match along_m {
            [from_m, _, to_m] => Some(self.part(*from_m, *to_m)),
            _ => None,
        });
        pieces.map(|piece| piece.widened(BESIDE_M)).collect()
    }

    /// The ground beside it, cut square to its first and last edge: a rectangle for each edge, the tip or arc that is
    /// missing on the outer side of each bend, and all of them made one by `geo`.
    ///
    /// Its own `buffer_with_style` (0.33, over i_overlay 4.5) loses ground at bends of edges that are shorter than the strip
    /// is wide: of 3000 random lines 2583 had less than the rectangles of their edges, one of them by a fifth.
    fn widened(&self, half_m: f64) -> MultiPolygon {
        let edges: Vec<(Coord, Coord)> = self
            .spots
            .iter()
            .copied()
            .zip(self.spots.iter().skip(1).copied())
            .collect();
        let sides = edges.iter().filter_map(|(a, b)| rectangle(*a, *b, half_m));
        let bends = edges.iter().zip(edges.iter().skip(1));
        let bends = bends.filter_map(|((a, at), (_, b))| outside(*a, *at, *b, half_m));
        joined(sides.chain(bends).map(MultiPolygon::from).collect())
    }

    fn reversed(&self) -> Self {
        let length_m = self.length_m();
        Self {
            spots: self.spots.iter().rev().copied().collect(),
            along_m: self.along_m.iter().rev().map(|m| length_m - m).collect(),
        }
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
        let mut thin = Self {
            spots: Vec::new(),
            along_m: Vec::new(),
        };
        let spots = self.spots.iter().zip(&self.along_m).zip(kept);
        for ((spot, along_m), _) in spots.filter(|(_, keep)| *keep) {
            // What was let go between may have been a way out and back.
            if thin.spots.last() == Some(spot) {
                thin.along_m.pop();
            } else {
                thin.spots.push(*spot);
            }
            thin.along_m.push(*along_m);
        }
        thin
    }

    /// The spot between two that lies farthest from the straight way between them.
    fn farthest(&self, from: usize, to: usize) -> Option<(usize, f64)> {
        let (a, b) = (*self.spots.get(from)?, *self.spots.get(to)?);
        let between = self.spots.get(from + 1..to)?.iter().enumerate();
        let away = between.map(|(i, spot)| (from + 1 + i, off(*spot, a, b)));
        away.max_by(|(_, one), (_, other)| one.total_cmp(other))
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
    let ahead_m = behind_all(line, end, ahead);
    let cut = end + ahead * ahead_m;
    let on = FlatLine::of(thin.spots.iter().copied().chain([cut + ahead * half_m]));
    let left = left_of(ahead) * (CUT * half_m);
    let deep = ahead * (CUT * half_m);
    let beyond = ring([cut - left, cut - left + deep, cut + left + deep, cut + left].to_vec());
    on.widened(half_m).difference(&beyond)
}

/// How far ahead of its end, metres, a line is cut so that all of it is kept, what runs along the cut too. At once where
/// nothing of it is as far ahead.
fn behind_all(line: &FlatLine, end: Coord, ahead: Coord) -> f64 {
    let beyond_m = |spot: Coord| (spot.x - end.x) * ahead.x + (spot.y - end.y) * ahead.y;
    let most_m = line.spots.iter().map(|spot| beyond_m(*spot));
    let most_m = most_m.fold(0.0, f64::max);
    let edges = line.spots.iter().zip(line.spots.iter().skip(1));
    let along = |(a, b): (&Coord, &Coord)| {
        let kept = [(*a, *b), (*b, *a)].map(|(from, to)| near_cut(from, to, beyond_m));
        kept.into_iter()
            .flatten()
            .any(|spot| length_m(spot - end) > BESIDE_M)
    };
    if most_m > STRAIGHT_M || edges.into_iter().any(along) {
        most_m + ROUNDED_M
    } else {
        0.0
    }
}

/// Where the piece of an edge that rounding can move over a cut begins; `None` of an edge that has no such piece.
fn near_cut(from: Coord, to: Coord, beyond_m: impl Fn(Coord) -> f64) -> Option<Coord> {
    let [at_m, to_m] = [from, to].map(|spot| beyond_m(spot) + ROUNDED_M);
    match (at_m > 0.0, to_m > 0.0) {
        (true, _) => Some(from),
        (false, true) => Some(from + (to - from) * (at_m / (at_m - to_m))),
        (false, false) => None,
    }
}

/// What is cut off behind an end reaches so many half widths to either side and ahead: the end is no longer than one, and
/// so wide, so that three would do.
const CUT: f64 = 4.0;

/// Without holes that are smaller than what is let go, squared, since nobody stays on such rock, and without spots on a
/// straight side, where pieces were put together.
fn tidied(area: MultiPolygon, reach_m: f64) -> MultiPolygon {
    let parts = area.into_iter().map(|part| {
        let (outer, holes) = part.into_inner();
        let is_hole = |hole: &LineString| {
            let alone = Polygon::new(hole.clone(), Vec::new());
            alone.unsigned_area() > (2.0 * reach_m).powi(2)
        };
        let holes = holes.into_iter().filter(is_hole);
        Polygon::new(
            straightened(&outer),
            holes.map(|hole| straightened(&hole)).collect(),
        )
    });
    MultiPolygon::new(parts.collect())
}

/// A ring without spots that lie nearer to the straight way past them than what is written can tell. It begins at a
/// corner: that spot stays.
fn straightened(ring: &LineString) -> LineString {
    let spots = ring.0.split_last().map_or(&[][..], |(_, spots)| spots);
    let Some(first) = spots.first() else {
        return ring.clone();
    };
    let off = spots.iter().enumerate();
    let off = off.map(|(i, spot)| (i, length_m(*spot - *first)));
    let (corner, _) = off
        .max_by(|(_, a), (_, b)| a.total_cmp(b))
        .unwrap_or_default();
    let round = spots.iter().cycle().skip(corner).take(spots.len() + 1);
    let thin = FlatLine::of(round.copied()).thinned(STRAIGHT_M);
    if thin.spots.len() > 3 {
        LineString::new(thin.spots)
    } else {
        ring.clone()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A line of random turns of up to a quarter, its edges up to 40 m long.
    fn turning(seed: u32) -> FlatLine {
        let at = |i: u32| f64::from((i * 7919 + seed * 104_729) % 1009) / 1009.0;
        let mut heading: f64 = 0.0;
        let steps = (1..25).map(|i| {
            heading += 3.0 * at(i) - 1.5;
            Coord {
                x: heading.cos(),
                y: heading.sin(),
            } * (1.0 + 39.0 * at(i + 50))
        });
        let mut spot = Coord { x: 0.0, y: 0.0 };
        FlatLine::of(steps.map(|step| {
            spot = spot + step;
            spot
        }))
    }

    #[test]
    fn a_widened_line_holds_the_rectangles_of_its_edges() {
        for seed in 0..150 {
            let line = turning(seed);
            let wide = line.widened(150.0);
            for pair in line.spots.windows(2) {
                let side = rectangle(pair[0], pair[1], 150.0).unwrap();
                let lost_m2 = side.difference(&wide).unsigned_area();
                assert!(lost_m2 < 0.01, "{lost_m2} m² of {seed}");
            }
        }
    }

    #[test]
    fn a_thinned_line_is_nowhere_farther_off_than_it_may_be() {
        for seed in 0..150 {
            let line = turning(seed);
            let thin = line.thinned(12.0);
            assert!(thin.spots.len() < line.spots.len());
            for spot in &line.spots {
                let away = thin
                    .spots
                    .windows(2)
                    .map(|pair| off(*spot, pair[0], pair[1]));
                assert!(
                    away.fold(f64::INFINITY, f64::min) <= 12.0,
                    "{spot:?} of {seed}"
                );
            }
        }
    }
}
