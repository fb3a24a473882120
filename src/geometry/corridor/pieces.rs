//! What the strip of a line is put together from in a plane, in metres: the rectangle of an edge, what is missing at a bend,
//! and many of them made one.

use geo::{Coord, LineString, MultiPolygon, Polygon, bool_ops::unary_union};

/// An arc on the outer side of a bend has a spot at least so often, radians. Our judgement.
const ARC_STEP: f64 = std::f64::consts::FRAC_PI_6;
/// So many pieces are joined at once: of a line that winds over itself a hundred times all of them at once would cross each
/// other ten thousand times. Our judgement.
const TOGETHER: usize = 16;

/// Pieces made one, neighbours first.
pub(super) fn joined(mut pieces: Vec<MultiPolygon>) -> MultiPolygon {
    while pieces.len() > 1 {
        pieces = pieces.chunks(TOGETHER).map(unary_union).collect();
    }
    pieces
        .pop()
        .unwrap_or_else(|| MultiPolygon::new(Vec::new()))
}

/// As wide to the left as to the right of an edge.
pub(super) fn rectangle(a: Coord, b: Coord, half_m: f64) -> Option<Polygon> {
    let ahead = unit(b - a)?;
    let left = left_of(ahead) * half_m;
    Some(ring([a - left, b - left, b + left, a + left].to_vec()))
}

/// What is missing between the rectangles of two edges on the outer side of their bend: a tip of a small bend, an arc of a
/// great one. It reaches back into both of them: where pieces only share a side, `geo` leaves slits of less than a
/// micrometre along it, which would have to be taken off again.
pub(super) fn outside(a: Coord, at: Coord, b: Coord, half_m: f64) -> Option<Polygon> {
    let (before, after) = (unit(at - a)?, unit(b - at)?);
    let cross = before.x * after.y - before.y * after.x;
    let bend = cross.atan2(before.x * after.x + before.y * after.y);
    let outward = left_of(before) * if bend > 0.0 { -half_m } else { half_m };
    let turned = |by: f64, far: f64| {
        let (sin, cos) = by.sin_cos();
        let way = Coord {
            x: outward.x * cos - outward.y * sin,
            y: outward.x * sin + outward.y * cos,
        };
        at + way * far
    };
    if bend == 0.0 {
        return None;
    }
    let inward = BACK
        .min(length_m(at - a) / half_m)
        .min(length_m(b - at) / half_m);
    let mut spots = vec![turned(bend / 2.0, -inward), turned(0.0, 1.0)];
    if bend.abs() <= 2.0 * ARC_STEP {
        spots.push(turned(bend / 2.0, 1.0 / (bend / 2.0).cos()));
    } else {
        let steps = (bend.abs() / ARC_STEP).ceil();
        let each = std::iter::successors(Some(1.0), |i| Some(i + 1.0)).take_while(|i| *i < steps);
        spots.extend(each.map(|i| turned(bend * i / steps, 1.0)));
    }
    spots.push(turned(bend, 1.0));
    if bend < 0.0 {
        spots.reverse();
    }
    Some(ring(spots))
}

/// So far, as a share of the half width, the piece at a bend reaches back over the rectangles beside it. Our judgement.
const BACK: f64 = 0.1;

pub(super) fn left_of(way: Coord) -> Coord {
    Coord {
        x: -way.y,
        y: way.x,
    }
}

pub(super) fn ring(spots: Vec<Coord>) -> Polygon {
    Polygon::new(LineString::new(spots), Vec::new())
}

pub(super) fn length_m(way: Coord) -> f64 {
    way.x.hypot(way.y)
}

pub(super) fn unit(way: Coord) -> Option<Coord> {
    let metres = length_m(way);
    (metres > 0.0).then(|| way / metres)
}

/// How far a spot is from the straight way between two others.
pub(super) fn off(spot: Coord, a: Coord, b: Coord) -> f64 {
    let (way, to) = (b - a, spot - a);
    let squared = way.x * way.x + way.y * way.y;
    let t = if squared > 0.0 {
        ((to.x * way.x + to.y * way.y) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    length_m(to - way * t)
}
