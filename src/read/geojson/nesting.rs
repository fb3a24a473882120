//! Which ring of a polygon is the outer one, which are holes in it, and which are ice of their own.
//!
//! The first ring ought to be the outer one and the others holes in it `[rfc7946]`. Files that say otherwise are
//! read so that no ice is lost: a hole cuts out what it covers of its outer ring, and everything else is ice.

use crate::{
    geometry::{Bounds, LonLat, area::Area, lie::Lie},
    trip::zone::{Outline, Polygon},
};

/// Rings larger than the outer one that are looked at before the largest is taken for it: none is expected. Our
/// judgement.
const MOST_LOOKED_AT: usize = 50;

/// Rings that do not lie as they should, counted over the file.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Misnested {
    /// Polygons whose first ring is not the outer one.
    pub(super) order: usize,
    /// Rings that lie apart from the outer one.
    pub(super) apart: usize,
    /// Holes that stick out.
    pub(super) partly: usize,
}

/// The polygons that these rings come to.
pub(super) fn nested(mut rings: Vec<Vec<LonLat>>, misnested: &mut Misnested) -> Vec<Polygon> {
    if rings.len() < 2 {
        return rings.into_iter().map(alone).collect();
    }
    let index = outer_of(&rings);
    misnested.order += usize::from(index > 0);
    let outer = rings.remove(index);
    let Some(area) = area_of(&outer) else {
        return rings.into_iter().map(alone).collect();
    };
    let (mut holes, mut ice) = (Vec::new(), Vec::new());
    for ring in rings {
        let ring = beside(ring, &outer);
        match area.lie_of(&ring) {
            Lie::Within => holes.push(ring),
            Lie::Partly => {
                misnested.partly += 1;
                holes.push(ring);
            }
            Lie::Apart => {
                misnested.apart += 1;
                ice.push(alone(ring));
            }
        }
    }
    holes.shrink_to_fit();
    let whole = Polygon { outer, holes };
    std::iter::once(whole).chain(ice).collect()
}

fn alone(outer: Vec<LonLat>) -> Polygon {
    Polygon {
        outer,
        holes: Vec::new(),
    }
}

fn area_of(ring: &[LonLat]) -> Option<Area> {
    let polygons = vec![alone(ring.to_vec())];
    Area::new(&Outline { polygons }, 0.0)
}

/// The largest ring that another lies in; the first where none lies in another.
fn outer_of(rings: &[Vec<LonLat>]) -> usize {
    let mut sized: Vec<(usize, Bounds)> = rings
        .iter()
        .enumerate()
        .filter_map(|(i, ring)| Some((i, Bounds::of(ring)?)))
        .collect();
    // Of rings with one box the one that covers more; of equal ones the first.
    let size = |(i, bounds): &(usize, Bounds)| (bounds.size(), covers(&rings[*i]));
    sized.sort_by(|a, b| {
        let (a, b) = (size(a), size(b));
        b.0.total_cmp(&a.0).then(b.1.total_cmp(&a.1))
    });
    let holds_another = |&(i, bounds): &(usize, Bounds)| {
        let mut inside = sized
            .iter()
            .filter(|(j, other)| *j != i && bounds.holds(other));
        let Some(first) = inside.next() else {
            return false;
        };
        area_of(&rings[i]).is_some_and(|area| {
            let mut inside = std::iter::once(first).chain(inside);
            inside.any(|(j, _)| area.lie_of(&rings[*j]) == Lie::Within)
        })
    };
    let mut large = sized.iter().take(MOST_LOOKED_AT);
    large
        .find(|ring| holds_another(ring))
        .map_or(0, |(i, _)| *i)
}

/// The area of a ring that does not cross itself, square degrees: only for comparing.
fn covers(ring: &[LonLat]) -> f64 {
    let Some(origin) = ring.first() else {
        return 0.0;
    };
    let at = |p: &LonLat| (p.lon_deg - origin.lon_deg, p.lat_deg - origin.lat_deg);
    let pairs = ring
        .iter()
        .zip(ring.iter().skip(1))
        .map(|(a, b)| (at(a), at(b)));
    pairs.map(|(a, b)| a.0 * b.1 - a.1 * b.0).sum::<f64>().abs() / 2.0
}

/// The hole moved by whole turns to where its outer ring was unrolled to.
fn beside(hole: Vec<LonLat>, outer: &[LonLat]) -> Vec<LonLat> {
    let middle = |(west, east): (f64, f64)| west.midpoint(east);
    let (own, of_outer) = (extent_deg(&hole), extent_deg(outer));
    let plain = |(west, east): (f64, f64)| west >= -180.0 && east <= 180.0;
    let turns = ((middle(of_outer) - middle(own)) / 360.0).round();
    if turns == 0.0 || plain(own) && plain(of_outer) {
        return hole;
    }
    let moved = hole.into_iter();
    moved
        .map(|p| LonLat::new(p.lon_deg + 360.0 * turns, p.lat_deg))
        .collect()
}

/// Westernmost and easternmost longitude.
pub(super) fn extent_deg(ring: &[LonLat]) -> (f64, f64) {
    let start = (f64::INFINITY, f64::NEG_INFINITY);
    ring.iter().fold(start, |(west, east), p| {
        (west.min(p.lon_deg), east.max(p.lon_deg))
    })
}
