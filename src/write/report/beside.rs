//! Who comes back on the way out: each way is drawn to the right of its line, so that both are seen.

use geo::{Coord, Line, LineString};
use rstar::{
    RTree,
    primitives::{GeomWithData, Line as Edge},
};

use super::paper::PaperSpot;

/// How far to the right a way is drawn that is walked the other way too, units: its line, the widest there is, leaves the
/// other one in sight. Our judgement.
pub(super) const ASIDE: f64 = 3.2;
/// Ways nearer than this lie on one another, units; of what was walked so little before or after, a bend is a bend. Our judgement.
const NEAR: f64 = 3.0;
const SAME_BEND: f64 = 24.0;
/// Cosine from which on two directions are opposite ones. Our judgement.
const OPPOSITE: f64 = -0.7;
/// From one place to the next that is asked, units. Our judgement.
const STEP: f64 = 3.0;

/// An edge of the way, its direction, and how far along the drawing it begins.
type Walked = GeomWithData<Edge<[f64; 2]>, (Coord, f64)>;

/// All that is walked, in order.
pub(super) struct Ways {
    edges: RTree<Walked>,
}

impl Ways {
    pub(super) fn of<'l>(lines: impl Iterator<Item = &'l LineString>) -> Self {
        let mut along = 0.0;
        let mut edges = Vec::new();
        for edge in lines.flat_map(LineString::lines) {
            let Some((way, length)) = direction(edge) else {
                continue;
            };
            let ends = [edge.start, edge.end].map(|c| [c.x, c.y]);
            edges.push(GeomWithData::new(Edge::new(ends[0], ends[1]), (way, along)));
            along += length;
        }
        Self {
            edges: RTree::bulk_load(edges),
        }
    }

    /// Whether the way is walked in the other direction too, elsewhere than in this bend.
    fn comes_back(&self, at: Coord, way: Coord, along: f64) -> bool {
        let near = self.edges.locate_within_distance([at.x, at.y], NEAR * NEAR);
        near.into_iter().any(|edge| {
            let (other, begins) = edge.data;
            let length = edge.geom().length_2().sqrt();
            let between = (begins - along).max(along - begins - length);
            way.x * other.x + way.y * other.y < OPPOSITE && between > SAME_BEND
        })
    }

    /// A line moved to its right where it is walked in the other direction too. `along` is how far along the drawing it begins,
    /// and where it ends thereafter.
    pub(super) fn moved(&self, line: &LineString, along: &mut f64) -> LineString {
        let mut spots = Vec::new();
        for edge in line.lines() {
            let Some((way, length)) = direction(edge) else {
                continue;
            };
            let steps = std::iter::successors(Some(0.0), |at| Some(at + STEP));
            let steps = steps.take_while(|at| *at < length);
            for walked in steps.chain([length]) {
                let at = edge.start + way * walked;
                let aside = self.comes_back(at, way, *along + walked);
                spots.push(at + right(way) * if aside { ASIDE } else { 0.0 });
            }
            *along += length;
        }
        if spots.is_empty() {
            return line.clone();
        }
        super::paper::simplified(spots.into_iter().map(|c| (c.x, c.y)))
    }
}

/// The direction of an edge and its length; `None` of one without length.
fn direction(edge: Line) -> Option<(Coord, f64)> {
    let length = edge.delta().x.hypot(edge.delta().y);
    (length > 0.0).then(|| (edge.delta() / length, length))
}

/// To the right of who walks so, on a page whose y grows downward.
fn right(way: Coord) -> Coord {
    Coord {
        x: -way.y,
        y: way.x,
    }
}

/// Places along lines, each with the direction to its right, at shares of the way; the middle first.
pub(super) fn along(lines: &[LineString]) -> Vec<(PaperSpot, PaperSpot)> {
    const SHARES: [f64; 9] = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];
    let edges: Vec<_> = lines.iter().flat_map(LineString::lines).collect();
    let edges = edges.into_iter().filter_map(|e| Some((e, direction(e)?)));
    let edges: Vec<_> = edges.collect();
    let length: f64 = edges.iter().map(|(_, (_, length))| length).sum();
    let at = |share: f64| {
        let mut left = share * length;
        let (edge, (way, of)) = edges.iter().find(|(_, (_, of))| {
            left -= of;
            left <= 0.0
        })?;
        let at = edge.end + *way * left.max(-of);
        let right = right(*way);
        Some(((at.x, at.y), (right.x, right.y)))
    };
    SHARES.into_iter().filter_map(at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moved(line: Vec<(f64, f64)>) -> LineString {
        let line = LineString::from(line);
        Ways::of(std::iter::once(&line)).moved(&line, &mut 0.0)
    }

    #[test]
    fn out_and_back_lie_side_by_side() {
        let way = moved(vec![(10.0, 100.0), (200.0, 100.0), (10.0, 100.0)]);
        let (first, last) = (way.0[0], way.0[way.0.len() - 1]);
        // Lines are drawn in parts of a unit, see `paper`: half of one may be between.
        let part = 0.5 / 1024.0;
        assert!((first.y - 100.0 - ASIDE).abs() <= part, "out: {first:?}");
        assert!((last.y - 100.0 + ASIDE).abs() <= part, "back: {last:?}");
    }

    #[test]
    fn a_way_without_return_stays_and_so_does_a_bend() {
        let way = moved(vec![(10.0, 100.0), (200.0, 100.0), (300.0, 160.0)]);
        assert_eq!(way.0[0].y.to_bits(), 100_f64.to_bits(), "{way:?}");
        let bend = moved(vec![(10.0, 100.0), (20.0, 100.0), (10.0, 101.0)]);
        assert_eq!(bend.0[0].y.to_bits(), 100_f64.to_bits(), "{bend:?}");
    }

    #[test]
    fn the_middle_of_a_way_comes_first() {
        let line = LineString::from(vec![(0.0, 0.0), (10.0, 0.0), (10.0, 30.0)]);
        let ((x, y), right) = along(&[line])[0];
        assert!(
            (x - 10.0).abs() < 1e-9 && (y - 10.0).abs() < 1e-9,
            "{x} {y}"
        );
        assert_eq!(right, (-1.0, 0.0), "west of who goes south");
    }
}
