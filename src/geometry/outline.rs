//! Areas as files hold them: polygons of rings in longitude/latitude.

use super::{Bounds, LonLat};

/// Several polygons seen as one area; edges straight in longitude/latitude.
///
/// A ring covers what it winds round (non-zero rule), in any direction; holes are taken out of it.
/// Rings are stored closed (first = last), with doubled vertices dropped. Longitudes of a ring that
/// crosses the antimeridian are unrolled where that closes it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    /// The polygons. Never empty in a [`Zone`](crate::zone::Zone).
    pub polygons: Vec<Polygon>,
}

/// One outer ring and its holes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Polygon {
    /// The outer ring.
    pub outer: Vec<LonLat>,
    /// Rock islands: outside the area.
    pub holes: Vec<Vec<LonLat>>,
}

impl Outline {
    /// The smallest box round all outer rings; `None` for an outline without points.
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        self.polygons
            .iter()
            .filter_map(|p| Bounds::of(&p.outer))
            .reduce(Bounds::with)
    }
}
