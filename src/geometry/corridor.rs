//! The strip of ground along a line, as wide to the left as to the right, its ends square across the line.
//!
//! *Model:* the line thinned, each of its edges and bends widened in a flat frame about its middle, all pieces made one by
//! `geo`.
//! *Valid:* as far as [`stretching`] says how wrong widths become. *Error:* the sides lie nearer to the line or farther
//! off by the share `LET_GO` at bends that were let go, and by 3 % of the half width on the arcs of outer sides; where
//! the strip begins and ends along the line is right to a centimetre, to decimetres where it turns back at its end.
//! *Checked:* tests/geometry/corridor.rs on random lines.

mod flat;
mod pieces;

use geo::{
    BooleanOps, Coord, GeodesicArea, LineString, MultiPolygon, Orient, Polygon as GeoPolygon,
    Validation,
    bool_ops::{FillRule, OpType, unary_union},
    orient::Direction,
};

use self::{flat::FlatLine, pieces::off};
use super::{
    Bounds, LonLat, Outline, Polygon,
    antimeridian::cut_polygon,
    frame::{Frame, Local},
    lonlat::ROUNDING_DEG,
    outline::{from_geo, to_geo},
};

/// Steps of the lattice in a degree: 11 mm of latitude each.
const STEPS_PER_DEG: f64 = 1e7;
/// A slit or spike that is no wider is none, degrees: five steps of the lattice. Our judgement.
const NEEDLE_DEG: f64 = 5.0 / STEPS_PER_DEG;
/// Rings that rounding made touch themselves are drawn anew so often at most. Our judgement.
const MOST_REDRAWN: usize = 8;

/// By which share widths are wrong at most in the strip of a line: east and north have one scale about its middle, and the
/// scale changes with latitude. Infinite where the strip would reach a pole.
#[must_use]
pub fn stretching(line: &[LonLat], half_m: f64) -> f64 {
    let Some(bounds) = Bounds::of(line).map(|bounds| bounds.widened(half_m)) else {
        return 0.0;
    };
    let (low, high) = (bounds.low.lat_deg, bounds.high.lat_deg);
    let most = low.abs().max(high.abs());
    if most >= 89.9 {
        return f64::INFINITY;
    }
    most.to_radians().tan() * (high - low).to_radians() / 2.0
}

/// The ground within `half_m` metres beside lines, each a line of its own: nothing bridges what lies between them. Rings
/// are simple, on a lattice of seven decimals of a degree, outer ones counter-clockwise, cut at the antimeridian.
/// Longitudes of the lines may be unrolled.
#[must_use]
pub fn corridor(lines: &[Vec<LonLat>], half_m: f64) -> Outline {
    let strips: Vec<MultiPolygon> = lines.iter().map(|line| strip(line, half_m)).collect();
    let whole = unary_union(&strips);
    let parts = whole
        .iter()
        .flat_map(|part| cut_polygon(&from_geo(part, 0.0)));
    let parts: Vec<GeoPolygon> = parts.map(|part| to_geo(&part)).collect();
    Outline {
        polygons: settled(MultiPolygon::new(parts)),
    }
}

/// Square metres on the ellipsoid, of an outline whose rings are simple.
#[must_use]
pub fn area_m2(outline: &Outline) -> f64 {
    let parts = outline.polygons.iter().map(to_geo);
    parts.map(|part| part.geodesic_area_unsigned()).sum()
}

/// On the lattice, with rings that neither touch nor cross themselves or each other.
fn settled(area: MultiPolygon) -> Vec<Polygon> {
    let mut area = rounded(&area);
    for _ in 0..MOST_REDRAWN {
        if area.is_valid() {
            break;
        }
        let nothing = MultiPolygon::new(Vec::new());
        let anew = area.boolean_op_with_fill_rule(&nothing, OpType::Union, FillRule::NonZero);
        area = rounded(&anew);
    }
    let area = area.orient(Direction::Default);
    area.iter().map(|part| from_geo(part, 0.0)).collect()
}

fn rounded(area: &MultiPolygon) -> MultiPolygon {
    let round = |deg: f64| (deg * STEPS_PER_DEG).round() / STEPS_PER_DEG;
    let east = |deg: f64| match deg {
        // Cutting has a lattice of its own, and both sides are to end on the antimeridian itself.
        deg if (deg.abs() - 180.0).abs() < ROUNDING_DEG => 180.0_f64.copysign(deg),
        deg => round(deg),
    };
    let spot = |c: &Coord| Coord {
        x: east(c.x),
        y: round(c.y),
    };
    let ring = |ring: &LineString| {
        let spots = ring.0.split_last().map_or(&[][..], |(_, spots)| spots);
        let mut spots = without_needles(spots.iter().map(spot).collect());
        spots.extend(spots.first().copied());
        LineString::new(spots)
    };
    // Three different spots, and the first one again.
    let is_ring = |ring: &LineString| ring.0.len() > 3;
    let parts = area.iter().map(|part| {
        let holes = part.interiors().iter().map(ring).filter(is_ring);
        GeoPolygon::new(ring(part.exterior()), holes.collect())
    });
    MultiPolygon::new(parts.filter(|part| is_ring(part.exterior())).collect())
}

/// A ring, its first spot not told again, without slits and spikes that are no wider than a few steps of the lattice: where
/// two pieces were joined whose sides ran nearly alike. Rounding makes them cross themselves.
fn without_needles(mut spots: Vec<Coord>) -> Vec<Coord> {
    // The second time round it begins elsewhere, so that the first spot is looked at too.
    for _ in 0..2 {
        let mut kept: Vec<Coord> = Vec::with_capacity(spots.len());
        for spot in spots {
            kept.push(spot);
            while let [.., a, b, c] = kept[..]
                && (off(c, a, b) < NEEDLE_DEG || off(a, b, c) < NEEDLE_DEG)
            {
                kept.truncate(kept.len() - 2);
                kept.push(c);
            }
        }
        let half = kept.len() / 2;
        kept.rotate_left(half);
        spots = kept;
    }
    spots
}

/// The strip of one line, in degrees.
fn strip(line: &[LonLat], half_m: f64) -> MultiPolygon {
    let nothing = || MultiPolygon::new(Vec::new());
    let Some(bounds) = Bounds::of(line) else {
        return nothing();
    };
    let frame = Frame::at(bounds.low.along_edge(bounds.high, 0.5));
    let line = FlatLine::of(line.iter().map(|at| {
        let Local { x_m, y_m } = frame.local(*at);
        Coord { x: x_m, y: y_m }
    }));
    let Some(area) = line.strip(half_m) else {
        return nothing();
    };
    let back = |c: &Coord| {
        let at = frame.lonlat(Local { x_m: c.x, y_m: c.y });
        Coord {
            x: at.lon_deg,
            y: at.lat_deg,
        }
    };
    let ring = |ring: &LineString| LineString::new(ring.coords().map(back).collect());
    let parts = area.iter().map(|part| {
        GeoPolygon::new(
            ring(part.exterior()),
            part.interiors().iter().map(ring).collect(),
        )
    });
    MultiPolygon::new(parts.collect())
}
