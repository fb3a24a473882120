//! Two straight edges: where they meet, and where one runs close to the other.

use geo::{
    Coord,
    algorithm::kernels::{Kernel, Orientation, RobustKernel},
};

use super::{LonLat, frame::Local};

/// A part of an edge, as fractions of it: 0 ≤ from ≤ to ≤ 1.
///
/// ```
/// use schrund::geometry::{LonLat, segment::{EdgePart, contact}};
///
/// let at = LonLat::new;
/// let crossed = contact(at(0.0, 0.0), at(4.0, 0.0), at(1.0, -1.0), at(1.0, 1.0));
/// assert_eq!(crossed, Some(EdgePart { from: 0.25, to: 0.25 }), "a crossing is a single point");
/// let shared = contact(at(0.0, 0.0), at(4.0, 0.0), at(3.0, 0.0), at(9.0, 0.0));
/// assert_eq!(shared, Some(EdgePart { from: 0.75, to: 1.0 }), "edges on one line share a part");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgePart {
    /// Where it begins.
    pub from: f64,
    /// Where it ends; equal to `from` for a single point.
    pub to: f64,
}

impl EdgePart {
    /// A whole edge in pieces, cut wherever one of these parts begins or ends.
    #[must_use]
    pub fn pieces(cuts: impl IntoIterator<Item = Self>) -> Vec<Self> {
        let ends = cuts.into_iter().flat_map(|part| [part.from, part.to]);
        let mut places: Vec<f64> = ends.chain([0.0, 1.0]).collect();
        places.sort_by(f64::total_cmp);
        places.dedup();
        let piece = |pair: &[f64]| match pair {
            [from, to] => Some(Self {
                from: *from,
                to: *to,
            }),
            _ => None,
        };
        places.windows(2).filter_map(piece).collect()
    }

    /// Whether it holds all of another.
    #[must_use]
    pub fn holds(&self, other: &Self) -> bool {
        self.from <= other.from && other.to <= self.to
    }

    /// Half way from its begin to its end.
    #[must_use]
    pub fn middle(&self) -> f64 {
        f64::midpoint(self.from, self.to)
    }
}

/// On which side of the line `p`→`q` the point `r` lies; exact for the given numbers.
#[must_use]
pub fn side(p: LonLat, q: LonLat, r: LonLat) -> Orientation {
    let coord = |p: LonLat| Coord {
        x: p.lon_deg,
        y: p.lat_deg,
    };
    RobustKernel::orient2d(coord(p), coord(q), coord(r))
}

/// The part of edge `a`→`b` that edge `p`→`q` touches or crosses, ends included.
///
/// Whether they meet is decided exactly; where, to the last bits of a double.
#[must_use]
pub fn contact(a: LonLat, b: LonLat, p: LonLat, q: LonLat) -> Option<EdgePart> {
    let (a_side, b_side) = (side(p, q, a), side(p, q, b));
    let (p_side, q_side) = (side(a, b, p), side(a, b, q));
    if a_side == Orientation::Collinear && b_side == Orientation::Collinear {
        return overlap(a, b, p, q);
    }
    if p_side == Orientation::Collinear && q_side == Orientation::Collinear {
        return overlap(a, b, p, q);
    }
    if a_side == b_side || p_side == q_side {
        return None;
    }
    let at = match (a_side, b_side, p_side, q_side) {
        (Orientation::Collinear, ..) => 0.0,
        (_, Orientation::Collinear, ..) => 1.0,
        (_, _, Orientation::Collinear, _) => fraction(a, b, p),
        (_, _, _, Orientation::Collinear) => fraction(a, b, q),
        _ => crossing(a, b, p, q),
    };
    Some(EdgePart { from: at, to: at })
}

/// The shared part of two edges on one line.
fn overlap(a: LonLat, b: LonLat, p: LonLat, q: LonLat) -> Option<EdgePart> {
    let (p_at, q_at) = (raw_fraction(a, b, p), raw_fraction(a, b, q));
    let (from, to) = (p_at.min(q_at).max(0.0), p_at.max(q_at).min(1.0));
    (from <= to).then_some(EdgePart { from, to })
}

/// How far along `a`→`b` a point of its line lies, measured on the longer axis.
fn raw_fraction(a: LonLat, b: LonLat, p: LonLat) -> f64 {
    let (dx, dy) = (b.lon_deg - a.lon_deg, b.lat_deg - a.lat_deg);
    if dx.abs() >= dy.abs() {
        (p.lon_deg - a.lon_deg) / dx
    } else {
        (p.lat_deg - a.lat_deg) / dy
    }
}

fn fraction(a: LonLat, b: LonLat, p: LonLat) -> f64 {
    raw_fraction(a, b, p).clamp(0.0, 1.0)
}

/// Where two edges cross that are known to cross.
fn crossing(a: LonLat, b: LonLat, p: LonLat, q: LonLat) -> f64 {
    let cross = |x0: f64, y0: f64, x1: f64, y1: f64| x0 * y1 - y0 * x1;
    let (rx, ry) = (q.lon_deg - p.lon_deg, q.lat_deg - p.lat_deg);
    let over = cross(p.lon_deg - a.lon_deg, p.lat_deg - a.lat_deg, rx, ry);
    let under = cross(b.lon_deg - a.lon_deg, b.lat_deg - a.lat_deg, rx, ry);
    // Nearly parallel edges can underflow; the middle is as good an answer as any bit of them.
    if under == 0.0 {
        0.5
    } else {
        (over / under).clamp(0.0, 1.0)
    }
}

/// The part of `a`→`b` that lies within `reach_m` of `p`→`q`. It is one part, since the points within
/// a distance of an edge form a convex shape: two discs and the strip between them.
#[must_use]
pub fn within(a: Local, b: Local, p: Local, q: Local, reach_m: f64) -> Option<EdgePart> {
    [
        in_disc(a, b, p, reach_m),
        in_disc(a, b, q, reach_m),
        in_strip(a, b, p, q, reach_m),
    ]
    .into_iter()
    .flatten()
    .reduce(|one, other| EdgePart {
        from: one.from.min(other.from),
        to: one.to.max(other.to),
    })
}

fn in_disc(a: Local, b: Local, centre: Local, radius_m: f64) -> Option<EdgePart> {
    let (along, back) = (a.to(b), centre.to(a));
    let (qa, qb) = (along.dot(along), along.dot(back));
    let qc = back.dot(back) - radius_m * radius_m;
    if qa == 0.0 {
        return (qc <= 0.0).then_some(EdgePart { from: 0.0, to: 1.0 });
    }
    let root = qb * qb - qa * qc;
    if root < 0.0 {
        return None;
    }
    clipped((-qb - root.sqrt()) / qa, (-qb + root.sqrt()) / qa)
}

fn in_strip(a: Local, b: Local, p: Local, q: Local, reach_m: f64) -> Option<EdgePart> {
    let line = p.to(q);
    let length_m = line.length_m();
    if length_m == 0.0 {
        return None;
    }
    let (start, step) = (p.to(a), a.to(b));
    let ahead = between(line.dot(start), line.dot(step), 0.0, length_m * length_m)?;
    let half = reach_m * length_m;
    let beside = between(line.cross(start), line.cross(step), -half, half)?;
    clipped(ahead.0.max(beside.0), ahead.1.min(beside.1))
}

/// The t for which `low ≤ start + t·step ≤ high`.
fn between(start: f64, step: f64, low: f64, high: f64) -> Option<(f64, f64)> {
    if step == 0.0 {
        return (low <= start && start <= high).then_some((f64::NEG_INFINITY, f64::INFINITY));
    }
    let (one, other) = ((low - start) / step, (high - start) / step);
    Some((one.min(other), one.max(other)))
}

fn clipped(from: f64, to: f64) -> Option<EdgePart> {
    let (from, to) = (from.max(0.0), to.min(1.0));
    (from <= to).then_some(EdgePart { from, to })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(x: f64, y: f64) -> LonLat {
        LonLat::new(x, y)
    }

    fn local(x_m: f64, y_m: f64) -> Local {
        Local { x_m, y_m }
    }

    #[test]
    fn crossing_touching_overlapping_and_missing_are_told_apart() {
        let meet =
            |p, q| contact(at(0.0, 0.0), at(4.0, 0.0), p, q).map(|part| (part.from, part.to));
        assert_eq!(
            meet(at(1.0, -1.0), at(1.0, 1.0)),
            Some((0.25, 0.25)),
            "crossing"
        );
        assert_eq!(
            meet(at(2.0, 0.0), at(2.0, 1.0)),
            Some((0.5, 0.5)),
            "touching with an end"
        );
        assert_eq!(
            meet(at(0.0, -1.0), at(0.0, 1.0)),
            Some((0.0, 0.0)),
            "through the start"
        );
        assert_eq!(
            meet(at(3.0, 0.0), at(9.0, 0.0)),
            Some((0.75, 1.0)),
            "overlapping"
        );
        assert_eq!(
            meet(at(5.0, 0.0), at(9.0, 0.0)),
            None,
            "on the same line, apart"
        );
        assert_eq!(meet(at(1.0, 0.1), at(1.0, 1.0)), None, "just short");
    }

    #[test]
    fn the_part_within_a_distance_is_that_of_a_capsule() {
        let near = |p, q, r| {
            within(local(0.0, 0.0), local(100.0, 0.0), p, q, r).map(|part| (part.from, part.to))
        };
        assert_eq!(
            near(local(50.0, 30.0), local(50.0, 90.0), 20.0),
            None,
            "30 m away"
        );
        assert_eq!(
            near(local(50.0, 0.0), local(50.0, 90.0), 20.0),
            Some((0.3, 0.7)),
            "square to the line"
        );
        assert_eq!(
            near(local(40.0, 10.0), local(60.0, 10.0), 10.0),
            Some((0.4, 0.6)),
            "beside, just reaching"
        );
        assert_eq!(
            near(local(-50.0, 5.0), local(500.0, 5.0), 6.0),
            Some((0.0, 1.0)),
            "all along"
        );
    }
}
