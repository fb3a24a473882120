//! Areas as files hold them: polygons of rings in longitude/latitude.

use geo::{
    Area, BooleanOps, LineString, MultiPolygon,
    bool_ops::{FillRule, OpType},
};

use super::{Bounds, LonLat, ellipsoid::WGS84_A_M};

/// A tangled polygon with more vertices is not drawn anew: that takes 15 s for 300 000 of them, measured once, and
/// grows with their square. Our judgement.
const MOST_REDRAWN: usize = 60_000;

/// Several polygons seen as one area; edges straight in longitude/latitude.
///
/// A ring covers what it winds round (non-zero rule), in any direction; holes are taken out of it where they lie in
/// it. What of a hole lies outside its outer ring is ice, not nothing: no ice is ever lost to a ring in the wrong place.
/// Rings are stored closed (first = last), with doubled vertices dropped. Longitudes of a ring that
/// crosses the antimeridian are unrolled where that closes it.
///
/// ```
/// use schrund::geometry::LonLat;
///
/// let outline = &schrund::example::job()?.zones[0].outline;
/// assert_eq!(outline.vertices(), 5, "a square, its last point being its first");
/// let bounds = outline.bounds().expect("a zone is never without points");
/// assert_eq!((bounds.low, bounds.high), (LonLat::new(1.99, 66.511), LonLat::new(2.01, 66.517)));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    /// The polygons. Never empty in a [`Zone`](crate::trip::zone::Zone).
    pub polygons: Vec<Polygon>,
}

/// One outer ring and its holes.
///
/// ```
/// use schrund::geometry::{LonLat, Polygon};
///
/// let bow = [(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0), (0.0, 0.0)];
/// let outer = bow.map(|(x, y)| LonLat::new(x, y)).to_vec();
/// let wings = Polygon { outer, holes: Vec::new() }.untangled();
/// assert_eq!(wings.len(), 2, "a bow tie crosses itself once");
/// assert!(wings.iter().all(|wing| wing.outer.len() == 4), "each wing is a triangle, closed");
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Polygon {
    /// The outer ring.
    pub outer: Vec<LonLat>,
    /// Rock islands: no ice where they lie in the outer ring, ice where they stick out of it.
    pub holes: Vec<Vec<LonLat>>,
}

impl Outline {
    /// The smallest box round all rings; `None` for an outline without points.
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        self.polygons
            .iter()
            .flat_map(Polygon::rings)
            .filter_map(|ring| Bounds::of(ring))
            .reduce(Bounds::with)
    }
}

impl Outline {
    /// How many vertices all rings have.
    #[must_use]
    pub fn vertices(&self) -> usize {
        self.polygons.iter().map(Polygon::vertices).sum()
    }
}

impl Polygon {
    /// The outer ring and its holes.
    pub(crate) fn rings(&self) -> impl Iterator<Item = &Vec<LonLat>> {
        std::iter::once(&self.outer).chain(&self.holes)
    }

    /// How many vertices all rings have.
    #[must_use]
    pub fn vertices(&self) -> usize {
        self.outer.len() + self.holes.iter().map(Vec::len).sum::<usize>()
    }

    /// The same ground in rings that do not cross themselves (they may touch), so that a viewer which fills
    /// by another rule shows no less of it. A polygon that is sound, or so large that this would take seconds,
    /// stays as it is; another is drawn anew by `geo`, on a grid of about a millimetre.
    #[must_use]
    pub fn untangled(&self) -> Vec<Self> {
        if self.is_tangled() != Some(true) || self.vertices() > MOST_REDRAWN {
            return vec![self.clone()];
        }
        let mut holes = self.holes.iter().map(|hole| ground_of(hole));
        let first = holes
            .next()
            .unwrap_or_else(|| MultiPolygon::new(Vec::new()));
        let holes = holes.fold(first, |all, hole| all.union(&hole));
        let ground = ground_of(&self.outer).xor(&holes);
        ground.iter().map(|p| from_geo(p, 0.0)).collect()
    }
}

/// What may be left of a covered ring by rounding, square metres. Our judgement: nobody stands on less.
const SLIVER_M2: f64 = 1.0;

/// Whether outlines cover all that a ring winds round.
#[must_use]
pub fn is_covered<'o>(ring: &[LonLat], by: impl Iterator<Item = &'o Outline>) -> bool {
    let cover = by.flat_map(|o| &o.polygons).flat_map(Polygon::untangled);
    let left = cover.fold(ground_of(ring), |left, p| left.difference(&to_geo(&p)));
    let degree_m2 = WGS84_A_M.to_radians().powi(2);
    left.unsigned_area() * degree_m2 < SLIVER_M2
}

/// What a ring winds round.
fn ground_of(ring: &[LonLat]) -> MultiPolygon {
    let alone = geo::Polygon::new(to_geo_ring(ring), Vec::new());
    let nothing = MultiPolygon::new(Vec::new());
    alone.boolean_op_with_fill_rule(&nothing, OpType::Union, FillRule::NonZero)
}

fn to_geo_ring(points: &[LonLat]) -> LineString {
    LineString::from_iter(points.iter().map(|p| (p.lon_deg, p.lat_deg)))
}

/// As `geo` holds it.
pub(super) fn to_geo(polygon: &Polygon) -> geo::Polygon {
    let holes = polygon.holes.iter().map(|hole| to_geo_ring(hole)).collect();
    geo::Polygon::new(to_geo_ring(&polygon.outer), holes)
}

/// Back from `geo`, moved west by whole turns.
pub(super) fn from_geo(polygon: &geo::Polygon, turn: f64) -> Polygon {
    let ring = |line: &LineString| {
        line.coords()
            .map(|c| LonLat::new(c.x - 360.0 * turn, c.y))
            .collect()
    };
    Polygon {
        outer: ring(polygon.exterior()),
        holes: polygon.interiors().iter().map(ring).collect(),
    }
}

#[cfg(test)]
mod tests {
    use geo::{Area, Validation};

    use super::*;

    #[test]
    fn a_star_keeps_its_middle_and_a_bow_tie_both_its_wings() {
        let ring = |points: &[(f64, f64)]| points.iter().map(|&(x, y)| LonLat::new(x, y)).collect();
        let star = [
            (0.0, 3.0),
            (1.8, -2.4),
            (-2.9, 0.9),
            (2.9, 0.9),
            (-1.8, -2.4),
            (0.0, 3.0),
        ];
        let bow = [(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0), (0.0, 0.0)];
        for (drawn, parts, hole_less) in [(&star[..], 1, true), (&bow[..], 2, true)] {
            let polygon = Polygon {
                outer: ring(drawn),
                holes: Vec::new(),
            };
            let anew = polygon.untangled();
            assert_eq!(anew.len(), parts, "{anew:?}");
            assert_eq!(
                anew.iter().all(|p| p.holes.is_empty()),
                hole_less,
                "{anew:?}"
            );
            assert!(anew.iter().all(|p| to_geo(p).is_valid()), "{anew:?}");
        }
        // A hole that sticks out of a square of 4: 1 of it is rock, 1 ice.
        let square = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0), (0.0, 0.0)];
        let hole = [(1.0, 0.5), (3.0, 0.5), (3.0, 1.5), (1.0, 1.5), (1.0, 0.5)];
        let sticking_out = Polygon {
            outer: ring(&square),
            holes: vec![ring(&hole)],
        };
        let anew = sticking_out.untangled();
        let ice: f64 = anew.iter().map(|p| to_geo(p).unsigned_area()).sum();
        assert!((ice - 4.0).abs() < 1e-6, "{ice}: {anew:?}");
        let wings: f64 = Polygon {
            outer: ring(&bow),
            holes: Vec::new(),
        }
        .untangled()
        .iter()
        .map(|p| to_geo(p).unsigned_area())
        .sum();
        assert!(
            (wings - 2.0).abs() < 1e-6,
            "two triangles of area one: {wings}"
        );
    }
}
