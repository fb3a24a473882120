//! Rings that touch or cross themselves or each other, where that can be told quickly.

use geo::{Coord, Intersects, Line};
use rstar::{
    AABB, RTree,
    primitives::{GeomWithData, Rectangle},
};

use super::{LonLat, Outline, Polygon, area::Area};

/// Pairs of edges compared for each edge before giving up: a thousand cost about a microsecond; our judgement.
const MOST_PAIRS: usize = 1_000;

impl Outline {
    /// How many rings touch or cross themselves; a ring that would take too long to say of is not counted.
    #[must_use]
    pub(crate) fn tangled_rings(&self) -> usize {
        let rings = self.polygons.iter().flat_map(Polygon::rings);
        rings
            .filter(|ring| meet_somewhere(edges(ring, 0)) == Some(true))
            .count()
    }
}

impl Polygon {
    /// Whether a ring touches or crosses itself or another, or a hole lies outside or in another hole. `None` where
    /// it would take too long to say.
    #[must_use]
    pub(crate) fn is_tangled(&self) -> Option<bool> {
        let all = self
            .rings()
            .enumerate()
            .flat_map(|(i, ring)| edges(ring, i));
        Some(meet_somewhere(all.collect())? || !self.holes_lie_inside())
    }

    fn holes_lie_inside(&self) -> bool {
        let outline = Outline {
            polygons: vec![self.clone()],
        };
        let inside = |area: Area| {
            self.holes
                .iter()
                .filter_map(|h| h.first())
                .all(|p| area.encloses(*p) && area.contains(*p))
        };
        self.holes.is_empty() || Area::new(&outline, 0.0).is_some_and(inside)
    }
}

struct RingEdge {
    line: Line<f64>,
    /// Which ring of how many edges, and where in it.
    ring: usize,
    of: usize,
    index: usize,
    low: Coord,
    high: Coord,
}

/// From so many edges on they are looked up in a tree, which costs more to make and does not grow with how ragged a ring is. Our
/// judgement.
const MANY: usize = 1000;

/// Whether two edges meet elsewhere than where one follows the other in its ring.
fn meet_somewhere(edges: Vec<RingEdge>) -> Option<bool> {
    if edges.len() < MANY {
        meet_in_order(edges)
    } else {
        meet_in_tree(&edges)
    }
}

fn meet_in_tree(edges: &[RingEdge]) -> Option<bool> {
    let mut pairs = MOST_PAIRS.saturating_mul(edges.len());
    let boxed = |(i, edge): (usize, &RingEdge)| {
        let corners = [edge.low, edge.high].map(|at| [at.x, at.y]);
        GeomWithData::new(Rectangle::from_corners(corners[0], corners[1]), i)
    };
    let tree = RTree::bulk_load(edges.iter().enumerate().map(boxed).collect());
    for (i, one) in edges.iter().enumerate() {
        let near = AABB::from_corners([one.low.x, one.low.y], [one.high.x, one.high.y]);
        for other in tree.locate_in_envelope_intersecting(&near) {
            if other.data <= i {
                continue;
            }
            pairs = pairs.checked_sub(1)?;
            if meet(one, &edges[other.data]) {
                return Some(true);
            }
        }
    }
    Some(false)
}

/// The same from west to east, beside all that lie at the same longitudes.
fn meet_in_order(mut edges: Vec<RingEdge>) -> Option<bool> {
    let mut pairs = MOST_PAIRS.saturating_mul(edges.len());
    edges.sort_by(|a, b| a.low.x.total_cmp(&b.low.x));
    for (i, one) in edges.iter().enumerate() {
        let beside = edges.iter().skip(i + 1);
        for other in beside.take_while(|other| other.low.x <= one.high.x) {
            pairs = pairs.checked_sub(1)?;
            if one.low.y <= other.high.y && other.low.y <= one.high.y && meet(one, other) {
                return Some(true);
            }
        }
    }
    Some(false)
}

fn edges(points: &[LonLat], ring: usize) -> Vec<RingEdge> {
    let coord = |p: LonLat| Coord {
        x: p.lon_deg,
        y: p.lat_deg,
    };
    let of = points.len().saturating_sub(1);
    let ends = points.iter().zip(points.iter().skip(1));
    let edge = |(index, (a, b)): (usize, (&LonLat, &LonLat))| {
        let (a, b) = (coord(*a), coord(*b));
        RingEdge {
            line: Line::new(a, b),
            ring,
            of,
            index,
            low: Coord {
                x: a.x.min(b.x),
                y: a.y.min(b.y),
            },
            high: Coord {
                x: a.x.max(b.x),
                y: a.y.max(b.y),
            },
        }
    };
    ends.enumerate().map(edge).collect()
}

fn meet(one: &RingEdge, other: &RingEdge) -> bool {
    let follows = |a: &RingEdge, b: &RingEdge| a.ring == b.ring && (a.index + 1) % a.of == b.index;
    if follows(one, other) {
        turns_back(one, other)
    } else if follows(other, one) {
        turns_back(other, one)
    } else {
        one.line.intersects(&other.line)
    }
}

/// Whether the second of two edges runs back over the first.
fn turns_back(first: &RingEdge, second: &RingEdge) -> bool {
    let (a, b) = (first.line.delta(), second.line.delta());
    let runs_back = a.x * b.x + a.y * b.y < 0.0;
    runs_back
        && (first.line.intersects(&second.line.end) || second.line.intersects(&first.line.start))
}

#[cfg(test)]
mod tests {
    use geo::Validation;

    use super::{super::outline::to_geo, *};

    /// A wheel whose rim jumps in and out and runs back now and then.
    fn wheel(rim: u32, seed: u32, middle: (f64, f64), size: f64) -> Vec<LonLat> {
        let at = |i: u32| f64::from((i * 7919 + seed * 104_729) % 1009) / 1009.0;
        let point = |i: u32| {
            let turn = f64::from(i) + 1.6 * at(i);
            let (sin, cos) = (turn / f64::from(rim) * std::f64::consts::TAU).sin_cos();
            let out = size * (0.4 + at(i + rim));
            LonLat::new(middle.0 + out * cos, middle.1 + out * sin)
        };
        (0..rim).chain([0]).map(point).collect()
    }

    #[test]
    fn a_tree_finds_what_the_order_finds() {
        let (mut sound, mut tangled) = (0, 0);
        for seed in 0..600 {
            let ring = wheel(4 + seed % 9, seed, (7.0, 46.0), 0.1);
            let found = meet_in_tree(&edges(&ring, 0));
            assert_eq!(found, meet_in_order(edges(&ring, 0)), "seed {seed}");
            match found {
                Some(true) => tangled += 1,
                _ => sound += 1,
            }
        }
        assert!(sound > 50 && tangled > 10, "{sound} {tangled}");
    }

    #[test]
    fn tangled_is_what_the_library_calls_invalid() {
        let (mut sound, mut tangled) = (0, 0);
        for seed in 0..4_000 {
            let hole = |i: u32| wheel(5, seed + i, (0.4 * f64::from(i) - 0.4, 0.1), 0.15);
            let polygon = Polygon {
                outer: wheel(4 + seed % 9, seed, (0.0, 0.0), 1.0),
                holes: (0..seed % 3).map(hole).collect(),
            };
            let ours = polygon.is_tangled();
            assert_eq!(ours, Some(!to_geo(&polygon).is_valid()), "{polygon:?}");
            *if ours == Some(true) {
                &mut tangled
            } else {
                &mut sound
            } += 1;
        }
        assert!(
            sound > 500 && tangled > 500,
            "{sound} sound, {tangled} tangled"
        );
    }

    /// Teeth from west to east and back, or slanting ones whose boxes all overlap.
    fn comb(slant: f64) -> Polygon {
        let tooth = |i: u32| {
            let at = f64::from(i);
            let (root, tip) = (
                LonLat::new(0.0, 2.0 * at),
                LonLat::new(1.0, 2.0 * at + slant),
            );
            let next = LonLat::new(1.0, 2.0 * at + 1.0 + slant);
            [root, tip, next, LonLat::new(0.0, 2.0 * at + 1.0)]
        };
        let mut outer: Vec<LonLat> = (0..1_020).flat_map(tooth).collect();
        outer.extend([
            LonLat::new(-1.0, 2_040.0),
            LonLat::new(-1.0, 0.0),
            LonLat::new(0.0, 0.0),
        ]);
        Polygon {
            outer,
            holes: Vec::new(),
        }
    }

    #[test]
    fn a_comb_is_looked_through() {
        assert_eq!(comb(0.0).is_tangled(), Some(false));
    }

    #[test]
    fn a_ring_too_large_to_look_through_is_neither() {
        let polygon = comb(1e5);
        assert_eq!(polygon.is_tangled(), None);
        assert_eq!(polygon.untangled(), std::slice::from_ref(&polygon));
    }
}
