//! Counts rings that touch or cross themselves, where that can be told quickly.

use geo::{Coord, Intersects, Line};

use crate::{geometry::LonLat, trip::zone::Zone};

/// Files with more vertices are not examined, for the count is a courtesy and must cost no time; our judgement.
const MOST_VERTICES: usize = 200_000;
/// Pairs of edges compared over the whole file before giving up: about 0.2 s; our judgement.
const MOST_PAIRS: usize = 5_000_000;

/// How many rings touch or cross themselves; `None` where it would take too long to say.
pub(super) fn count(zones: &[Zone]) -> Option<usize> {
    let polygons = || zones.iter().flat_map(|zone| &zone.outline.polygons);
    let rings = || polygons().flat_map(|p| std::iter::once(&p.outer).chain(&p.holes));
    if rings().map(Vec::len).sum::<usize>() > MOST_VERTICES {
        return None;
    }
    let mut pairs = MOST_PAIRS;
    let mut tangled = 0;
    for ring in rings() {
        tangled += usize::from(is_tangled(ring, &mut pairs)?);
    }
    Some(tangled)
}

struct TangleEdge {
    line: Line<f64>,
    index: usize,
    west_deg: f64,
    east_deg: f64,
}

/// Whether two edges of a closed ring meet elsewhere than where one follows the other.
fn is_tangled(ring: &[LonLat], pairs: &mut usize) -> Option<bool> {
    let mut edges: Vec<TangleEdge> = ring.windows(2).enumerate().filter_map(edge).collect();
    let count = edges.len();
    edges.sort_by(|a, b| a.west_deg.total_cmp(&b.west_deg));
    for (i, one) in edges.iter().enumerate() {
        let beside = edges.iter().skip(i + 1);
        for other in beside.take_while(|other| other.west_deg <= one.east_deg) {
            *pairs = pairs.checked_sub(1)?;
            if meet(one, other, count) {
                return Some(true);
            }
        }
    }
    Some(false)
}

fn edge((index, ends): (usize, &[LonLat])) -> Option<TangleEdge> {
    let [a, b] = ends else { return None };
    let coord = |p: &LonLat| Coord {
        x: p.lon_deg,
        y: p.lat_deg,
    };
    Some(TangleEdge {
        line: Line::new(coord(a), coord(b)),
        index,
        west_deg: a.lon_deg.min(b.lon_deg),
        east_deg: a.lon_deg.max(b.lon_deg),
    })
}

fn meet(one: &TangleEdge, other: &TangleEdge, count: usize) -> bool {
    let follows = |a: &TangleEdge, b: &TangleEdge| (a.index + 1) % count == b.index;
    if follows(one, other) {
        turns_back(one, other)
    } else if follows(other, one) {
        turns_back(other, one)
    } else {
        one.line.intersects(&other.line)
    }
}

/// Whether the second of two edges runs back over the first.
fn turns_back(first: &TangleEdge, second: &TangleEdge) -> bool {
    let (a, b) = (first.line.delta(), second.line.delta());
    let runs_back = a.x * b.x + a.y * b.y < 0.0;
    runs_back
        && (first.line.intersects(&second.line.end) || second.line.intersects(&first.line.start))
}
