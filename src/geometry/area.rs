//! An outline made ready for asking: is this point inside, and where does a line cross it?
//!
//! Ring edges are kept in runs of [`RUN`] with a box round each run, so a question touches only the
//! runs near it. Inside is decided by the non-zero rule with exact side tests; the border belongs to
//! the area. A hole is cut out where it lies in its outer ring; what of it lies outside is ice.

use geo::algorithm::kernels::Orientation;

use super::{Bounds, LonLat, outline::Outline, segment};

/// Edges in one run: small enough to skip most, large enough to keep the boxes few. Our judgement.
pub const RUN: usize = 32;

/// An [`Outline`] with boxes round its runs of edges.
///
/// ```
/// use schrund::geometry::{LonLat, Outline, Polygon, area::Area};
///
/// let square = |a: f64, b: f64| [(a, a), (b, a), (b, b), (a, b), (a, a)].map(|(x, y)| LonLat::new(x, y)).to_vec();
/// let ice = Polygon { outer: square(0.0, 8.0), holes: vec![square(2.0, 4.0)] };
/// let area = Area::new(&Outline { polygons: vec![ice] }, 0.0).expect("it has edges");
/// let rock = LonLat::new(3.0, 3.0);
/// assert!(!area.contains(rock) && area.encloses(rock), "a rock island in the ice");
/// assert!(area.contains(LonLat::new(2.0, 3.0)), "a line along the border is on ice as far as anybody can tell");
/// ```
#[derive(Debug)]
pub struct Area {
    polygons: Vec<(Ring, Vec<Ring>)>,
    bounds: Bounds,
}

/// One closed ring with its boxes.
#[derive(Debug)]
struct Ring {
    points: Vec<LonLat>,
    runs: Vec<Bounds>,
    bounds: Bounds,
    hole: Option<HoleIndex>,
}

/// Which hole of an outline; both counts are from 0.
///
/// ```
/// use schrund::geometry::{LonLat, Outline, Polygon, area::{Area, HoleIndex}};
///
/// let square = |low: f64, high: f64| [(low, low), (high, low), (high, high), (low, high), (low, low)]
///     .map(|(x, y)| LonLat::new(x, y)).to_vec();
/// let polygon = Polygon { outer: square(0.0, 8.0), holes: vec![square(2.0, 4.0)] };
/// let area = Area::new(&Outline { polygons: vec![polygon] }, 0.0).expect("it has edges");
/// let hole = Some(HoleIndex { polygon: 0, hole: 0 });
/// assert_eq!(area.edges_near(area.bounds()).filter(|edge| edge.hole == hole).count(), 4);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HoleIndex {
    /// The polygon.
    pub polygon: usize,
    /// The hole in it.
    pub hole: usize,
}

/// How a ring lies about a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Winding {
    OnBorder,
    Times(i32),
}

/// A straight edge of a ring.
///
/// ```
/// use schrund::geometry::{Bounds, LonLat, Outline, Polygon, area::{Area, Edge}};
///
/// let outer = [(0.0, 0.0), (4.0, 0.0), (0.0, 3.0), (0.0, 0.0)].map(|(x, y)| LonLat::new(x, y)).to_vec();
/// let ice = Outline { polygons: vec![Polygon { outer, holes: Vec::new() }] };
/// let area = Area::new(&ice, 0.0).expect("it has edges");
/// let edges: Vec<Edge> = area.edges_near(area.bounds()).collect();
/// assert_eq!((edges[1].from, edges[1].to, edges[1].hole), (LonLat::new(4.0, 0.0), LonLat::new(0.0, 3.0), None));
/// assert_eq!(edges[1].bounds(), Bounds { low: LonLat::new(0.0, 0.0), high: LonLat::new(4.0, 3.0) });
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// Where it begins.
    pub from: LonLat,
    /// Where it ends.
    pub to: LonLat,
    /// The hole that it bounds, if it is no edge of an outer ring.
    pub hole: Option<HoleIndex>,
}

impl Area {
    /// The outline moved east by whole turns (`east_deg` a multiple of 360); `None` if it has no edge.
    #[must_use]
    pub fn new(outline: &Outline, east_deg: f64) -> Option<Self> {
        let ring = |points: &Vec<LonLat>, hole| Ring::new(points, east_deg, hole);
        let holes = |polygon: usize, holes: &[Vec<LonLat>]| {
            let index = |hole| Some(HoleIndex { polygon, hole });
            let holes = holes.iter().enumerate();
            holes
                .filter_map(|(i, points)| ring(points, index(i)))
                .collect()
        };
        let polygons: Vec<_> = outline
            .polygons
            .iter()
            .enumerate()
            .filter_map(|(i, p)| Some((ring(&p.outer, None)?, holes(i, &p.holes))))
            .collect();
        let bounds = polygons
            .iter()
            .flat_map(|(outer, holes): &(Ring, Vec<Ring>)| std::iter::once(outer).chain(holes))
            .map(|ring| ring.bounds)
            .reduce(Bounds::with)?;
        Some(Self { polygons, bounds })
    }

    /// The box round it.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        self.bounds
    }

    /// Whether the point is inside or on the border.
    #[must_use]
    pub fn contains(&self, p: LonLat) -> bool {
        self.polygons
            .iter()
            .any(|(outer, holes)| match outer.winding(p) {
                Winding::OnBorder => true,
                Winding::Times(0) => holes.iter().any(|h| h.winding(p) != Winding::Times(0)),
                Winding::Times(_) => holes
                    .iter()
                    .all(|h| matches!(h.winding(p), Winding::OnBorder | Winding::Times(0))),
            })
    }

    /// Whether the point is inside some outer ring or on its border, holes left aside.
    #[must_use]
    pub fn encloses(&self, p: LonLat) -> bool {
        let mut outer = self.polygons.iter().map(|(outer, _)| outer);
        outer.any(|ring| ring.winding(p) != Winding::Times(0))
    }

    /// All ring edges in runs whose boxes meet `bounds`.
    pub fn edges_near(&self, bounds: Bounds) -> impl Iterator<Item = Edge> + '_ {
        self.polygons
            .iter()
            .flat_map(|(outer, holes)| std::iter::once(outer).chain(holes))
            .filter(move |ring| ring.bounds.meets(&bounds))
            .flat_map(move |ring| ring.runs_near(bounds))
    }
}

impl Ring {
    fn new(points: &[LonLat], east_deg: f64, hole: Option<HoleIndex>) -> Option<Self> {
        let points: Vec<LonLat> = points
            .iter()
            .map(|p| LonLat::new(p.lon_deg + east_deg, p.lat_deg))
            .collect();
        let last = points.len().checked_sub(1).filter(|&n| n > 0)?;
        let runs: Vec<Bounds> = (0..last)
            .step_by(RUN)
            .filter_map(|i| Bounds::of(&points[i..=(i + RUN).min(last)]))
            .collect();
        let bounds = runs.iter().copied().reduce(Bounds::with)?;
        Some(Self {
            points,
            runs,
            bounds,
            hole,
        })
    }

    fn edges_of_run(&self, run: usize) -> impl Iterator<Item = Edge> + '_ {
        let end = ((run + 1) * RUN).min(self.points.len() - 1);
        (run * RUN..end).map(|i| Edge {
            from: self.points[i],
            to: self.points[i + 1],
            hole: self.hole,
        })
    }

    fn runs_near(&self, bounds: Bounds) -> impl Iterator<Item = Edge> + '_ {
        (0..self.runs.len())
            .filter(move |&run| self.runs[run].meets(&bounds))
            .flat_map(|run| self.edges_of_run(run))
    }

    /// How often the ring winds round `p`, counted where a ray to the east meets it.
    fn winding(&self, p: LonLat) -> Winding {
        if !self.bounds.meets(&Bounds { low: p, high: p }) {
            return Winding::Times(0);
        }
        let ray = Bounds {
            low: p,
            high: LonLat::new(f64::INFINITY, p.lat_deg),
        };
        let mut times = 0;
        for edge in self.runs_near(ray) {
            match edge.turn(p) {
                None => return Winding::OnBorder,
                Some(turn) => times += turn,
            }
        }
        Winding::Times(times)
    }
}

impl Edge {
    /// The box round it.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        Bounds {
            low: self.from,
            high: self.from,
        }
        .with(Bounds {
            low: self.to,
            high: self.to,
        })
    }

    /// What the edge adds to the winding round `p`: −1, 0 or 1; `None` if `p` lies on it.
    fn turn(&self, p: LonLat) -> Option<i32> {
        let side = segment::side(self.from, self.to, p);
        if side == Orientation::Collinear && self.bounds().meets(&Bounds { low: p, high: p }) {
            return None;
        }
        let upward = self.from.lat_deg <= p.lat_deg && self.to.lat_deg > p.lat_deg;
        let downward = self.from.lat_deg > p.lat_deg && self.to.lat_deg <= p.lat_deg;
        Some(match side {
            Orientation::CounterClockwise if upward => 1,
            Orientation::Clockwise if downward => -1,
            _ => 0,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::{super::outline::Polygon, *};

    fn ring(points: &[(f64, f64)]) -> Vec<LonLat> {
        points.iter().map(|&(x, y)| LonLat::new(x, y)).collect()
    }

    fn area(outer: &[(f64, f64)], holes: &[&[(f64, f64)]]) -> Area {
        let polygon = Polygon {
            outer: ring(outer),
            holes: holes.iter().map(|h| ring(h)).collect(),
        };
        Area::new(
            &Outline {
                polygons: vec![polygon],
            },
            0.0,
        )
        .unwrap()
    }

    const SQUARE: [(f64, f64); 5] = [(0.0, 0.0), (8.0, 0.0), (8.0, 8.0), (0.0, 8.0), (0.0, 0.0)];

    #[test]
    fn the_border_belongs_to_the_area_and_the_inside_of_a_hole_does_not() {
        let donut = area(
            &SQUARE,
            &[&[(2.0, 2.0), (4.0, 2.0), (4.0, 4.0), (2.0, 4.0), (2.0, 2.0)]],
        );
        for (x, y, inside) in [
            (1.0, 1.0, true),
            (3.0, 3.0, false),
            (2.0, 3.0, true),
            (0.0, 5.0, true),
            (8.0, 8.0, true),
            (9.0, 1.0, false),
        ] {
            assert_eq!(donut.contains(LonLat::new(x, y)), inside, "{x} {y}");
        }
    }

    #[test]
    fn a_hole_is_cut_out_where_it_lies_inside_and_is_ice_where_it_sticks_out() {
        let ledge = [(6.0, 2.0), (12.0, 2.0), (12.0, 4.0), (6.0, 4.0), (6.0, 2.0)];
        let apart = [(20.0, 0.0), (21.0, 0.0), (21.0, 1.0), (20.0, 0.0)];
        let area = area(&SQUARE, &[&ledge, &apart]);
        for (x, y, inside) in [
            (7.0, 3.0, false),
            (8.0, 3.0, true),
            (10.0, 3.0, true),
            (12.0, 3.0, true),
            (10.0, 5.0, false),
            (20.8, 0.2, true),
        ] {
            assert_eq!(area.contains(LonLat::new(x, y)), inside, "{x} {y}");
        }
        assert!(
            (area.bounds().high.lon_deg - 21.0).abs() < 1e-12,
            "the box holds all of it"
        );
    }

    #[test]
    fn a_ring_walked_twice_or_over_itself_still_covers_what_it_winds_round() {
        // A five-pointed star: its middle is wound round twice, and even-odd counting would lose it.
        let star = area(
            &[
                (0.0, 3.0),
                (1.8, -2.4),
                (-2.9, 0.9),
                (2.9, 0.9),
                (-1.8, -2.4),
                (0.0, 3.0),
            ],
            &[],
        );
        assert!(
            star.contains(LonLat::new(0.0, 0.0)),
            "the middle of the star is ice"
        );
        assert!(
            !star.contains(LonLat::new(0.0, -2.4)),
            "between two points of the star is not"
        );
    }
}
