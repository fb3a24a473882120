//! Where two straight edges meet, and what lies in a ring: fractions of whole numbers, nothing is rounded.

use std::cmp::Ordering;

use super::case::{Patch, Spot, edges};

/// A share of an edge: numerator, and a denominator above nothing.
#[derive(Clone, Copy, Debug)]
pub(super) struct Share(i128, i128);

impl Share {
    pub(super) const START: Self = Self(0, 1);
    pub(super) const END: Self = Self(1, 1);

    fn of(numerator: i128, denominator: i128) -> Option<Self> {
        let share = if denominator < 0 {
            Self(-numerator, -denominator)
        } else {
            Self(numerator, denominator)
        };
        (share.0 >= 0 && share.0 <= share.1).then_some(share)
    }

    pub(super) fn order(&self, other: &Self) -> Ordering {
        (self.0 * other.1).cmp(&(other.0 * self.1))
    }

    fn between(self, other: Self) -> Self {
        Self(self.0 * other.1 + other.0 * self.1, 2 * self.1 * other.1)
    }

    pub(super) fn value(self) -> f64 {
        self.0 as f64 / self.1 as f64
    }
}

type Wide = (i128, i128);

fn minus(a: Spot, b: Spot) -> Wide {
    (i128::from(a.0 - b.0), i128::from(a.1 - b.1))
}

fn cross(a: Wide, b: Wide) -> i128 {
    a.0 * b.1 - a.1 * b.0
}

fn dot(a: Wide, b: Wide) -> i128 {
    a.0 * b.0 + a.1 * b.1
}

/// Shares of the edge from `a` to `b` at which it meets the edge from `c` to `d`: none, one, or the ends of a run.
fn meetings(a: Spot, b: Spot, c: Spot, d: Spot) -> Vec<Share> {
    let (along, other, off) = (minus(b, a), minus(d, c), minus(c, a));
    let turn = cross(along, other);
    if turn != 0 {
        let on_other = Share::of(cross(off, along), turn);
        return on_other
            .and_then(|_| Share::of(cross(off, other), turn))
            .into_iter()
            .collect();
    }
    if cross(off, along) != 0 {
        return Vec::new();
    }
    let length = dot(along, along);
    let at = |p: Spot| Share::of(dot(minus(p, a), along), length);
    // A run may reach beyond both ends of the edge: then it is cut nowhere.
    [at(c), at(d)].into_iter().flatten().collect()
}

/// Where a point lies to a ring.
#[derive(PartialEq)]
enum Side {
    In,
    On,
    Out,
}

/// The point `scale` times as far from the origin as it is, so that it is whole.
struct Scaled {
    at: Wide,
    scale: i128,
}

/// The non-zero rule; the border is told apart.
fn side(point: &Scaled, ring: &[Spot]) -> Side {
    let mut turns = 0;
    for (c, d) in edges(ring) {
        let wide = |p: Spot| (i128::from(p.0) * point.scale, i128::from(p.1) * point.scale);
        let (from, to) = (wide(c), wide(d));
        let way = minus(d, c);
        let off = (point.at.0 - from.0, point.at.1 - from.1);
        let left = cross(way, off);
        let within = |v: i128, a: i128, b: i128| v >= a.min(b) && v <= a.max(b);
        if left == 0 && within(point.at.0, from.0, to.0) && within(point.at.1, from.1, to.1) {
            return Side::On;
        }
        if from.1 <= point.at.1 && to.1 > point.at.1 && left > 0 {
            turns += 1;
        }
        if from.1 > point.at.1 && to.1 <= point.at.1 && left < 0 {
            turns -= 1;
        }
    }
    if turns == 0 { Side::Out } else { Side::In }
}

/// The border belongs to the ice, that of a hole too: the rules do not say, and on the border nobody can tell.
fn is_in(point: &Scaled, patches: &[Patch]) -> bool {
    patches.iter().any(|patch| {
        side(point, &patch.outer) != Side::Out
            && patch.holes.iter().all(|h| side(point, h) != Side::In)
    })
}

/// The pieces of the edge from `a` to `b` inside the patches, as shares of it.
pub(super) fn pieces(a: Spot, b: Spot, patches: &[Patch]) -> Vec<(Share, Share)> {
    let mut cuts = vec![Share::START, Share::END];
    for ring in patches.iter().flat_map(Patch::rings) {
        for (c, d) in edges(ring) {
            if c != d {
                cuts.extend(meetings(a, b, c, d));
            }
        }
    }
    cuts.sort_by(Share::order);
    cuts.dedup_by(|x, y| x.order(y).is_eq());
    let inside = |pair: &&[Share]| {
        let Share(numerator, scale) = pair[0].between(pair[1]);
        let (along, from) = (minus(b, a), (i128::from(a.0), i128::from(a.1)));
        let at = (
            from.0 * scale + numerator * along.0,
            from.1 * scale + numerator * along.1,
        );
        is_in(&Scaled { at, scale }, patches)
    };
    let kept = cuts.windows(2).filter(inside);
    kept.map(|pair| (pair[0], pair[1])).collect()
}
