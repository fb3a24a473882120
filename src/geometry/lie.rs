//! How a ring lies to an area: within it, apart from it, or partly in it.

use super::{
    Bounds, LonLat,
    area::{Area, Edge, RUN},
    segment::{self, EdgePart},
};

/// How a ring lies to an area.
///
/// ```
/// use schrund::geometry::{LonLat, Outline, Polygon, area::Area, lie::Lie};
///
/// let square = |low: f64, high: f64| [(low, low), (high, low), (high, high), (low, high), (low, low)]
///     .map(|(x, y)| LonLat::new(x, y)).to_vec();
/// let polygon = Polygon { outer: square(0.0, 8.0), holes: Vec::new() };
/// let area = Area::new(&Outline { polygons: vec![polygon] }, 0.0).expect("it has edges");
/// let lies = [square(2.0, 4.0), square(7.0, 9.0), square(10.0, 12.0)].map(|ring| area.lie_of(&ring));
/// assert_eq!(lies, [Lie::Within, Lie::Partly, Lie::Apart]);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lie {
    /// Its line runs inside, if not along the border.
    Within,
    /// Its line never runs inside: outside, along the border, or round the area.
    Apart,
    /// Partly inside, partly outside.
    Partly,
}

impl Area {
    /// How a closed ring lies to this area. It is told by its line: where that touches no edge of the area one exact
    /// question settles it up to the next touch; where it does, it is cut there and each piece is asked at its middle.
    #[must_use]
    pub fn lie_of(&self, ring: &[LonLat]) -> Lie {
        let mut met = Met::default();
        let mut known = None;
        // Each run begins with the point that the last one ended with.
        for run in (0..ring.len().saturating_sub(1)).step_by(RUN) {
            let run = ring.get(run..=(run + RUN).min(ring.len() - 1));
            known = self.follow(run.unwrap_or_default(), known, &mut met);
            if met.inside && met.outside {
                return Lie::Partly;
            }
        }
        if met.inside { Lie::Within } else { Lie::Apart }
    }

    /// Walks a run of edges; whether its last point is inside, if that is settled.
    fn follow(&self, run: &[LonLat], known: Option<bool>, met: &mut Met) -> Option<bool> {
        let near: Vec<Edge> = Bounds::of(run).map_or(Vec::new(), |b| self.edges_near(b).collect());
        let mut known = known;
        for pair in run.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            let touches = touches(a, b, &near);
            if touches.is_empty() {
                let inside = known.unwrap_or_else(|| self.contains(a));
                known = Some(inside);
                met.at(inside);
                continue;
            }
            known = None;
            for piece in EdgePart::pieces(touches.iter().copied()) {
                if !touches.iter().any(|t| t.holds(&piece)) {
                    met.at(self.contains(a.along_edge(b, piece.middle())));
                }
            }
        }
        known
    }
}

/// Where a line was met.
#[derive(Clone, Copy, Debug, Default)]
struct Met {
    inside: bool,
    outside: bool,
}

impl Met {
    fn at(&mut self, inside: bool) {
        if inside {
            self.inside = true;
        } else {
            self.outside = true;
        }
    }
}

fn touches(a: LonLat, b: LonLat, near: &[Edge]) -> Vec<EdgePart> {
    let low_high = |p: LonLat| Bounds { low: p, high: p };
    let bounds = low_high(a).with(low_high(b));
    let near = near.iter().filter(|e| e.bounds().meets(&bounds));
    near.filter_map(|e| segment::contact(a, b, e.from, e.to))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{
        super::outline::{Outline, Polygon},
        *,
    };

    fn ring(points: &[(f64, f64)]) -> Vec<LonLat> {
        let all = points.iter().chain(points.first());
        all.map(|&(x, y)| LonLat::new(x, y)).collect()
    }

    #[test]
    fn a_ring_is_told_by_what_its_line_runs_through() {
        // An L: a square of 8 without its upper right quarter.
        let outer = ring(&[
            (0.0, 0.0),
            (8.0, 0.0),
            (8.0, 4.0),
            (4.0, 4.0),
            (4.0, 8.0),
            (0.0, 8.0),
        ]);
        let outline = Outline {
            polygons: vec![Polygon {
                outer: outer.clone(),
                holes: Vec::new(),
            }],
        };
        let area = Area::new(&outline, 0.0).unwrap();
        let box_of = |x0, y0, x1, y1| ring(&[(x0, y0), (x1, y0), (x1, y1), (x0, y1)]);
        for (what, drawn, lie) in [
            ("inside", box_of(1.0, 1.0, 3.0, 3.0), Lie::Within),
            ("on a border", box_of(0.0, 1.0, 3.0, 3.0), Lie::Within),
            (
                "from corner to corner",
                ring(&[(0.0, 0.0), (8.0, 4.0), (4.0, 4.0)]),
                Lie::Within,
            ),
            ("beside", box_of(9.0, 1.0, 10.0, 3.0), Lie::Apart),
            (
                "touching from outside",
                box_of(8.0, 1.0, 10.0, 3.0),
                Lie::Apart,
            ),
            ("in the notch", box_of(4.0, 4.0, 8.0, 8.0), Lie::Apart),
            ("round it", box_of(-1.0, -1.0, 9.0, 9.0), Lie::Apart),
            ("the same", outer, Lie::Apart),
            ("sticking out", box_of(7.0, 1.0, 9.0, 3.0), Lie::Partly),
            (
                "all corners inside",
                ring(&[(3.0, 7.0), (7.0, 3.0), (1.0, 1.0)]),
                Lie::Partly,
            ),
            ("nothing", Vec::new(), Lie::Apart),
        ] {
            assert_eq!(area.lie_of(&drawn), lie, "{what}");
        }
    }
}
