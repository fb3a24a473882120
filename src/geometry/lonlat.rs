//! Positions on WGS 84 and the geodesics between them.
//!
//! *Model:* Karney's inverse geodesic through `geo::Geodesic`; lengths of some metres by `short`. *Valid:* everywhere.
//! *Error:* below 15 nm. *Source:* `[karney2013]`. *Checked:* tests/read/gpx/real.rs and tests/meet/reference.rs

use super::short;
use geo::{Destination, Distance, Geodesic, Point, algorithm::line_measures::Bearing};

/// A position in degrees on WGS 84, longitude first as RFC 7946 has it.
///
/// The longitude may lie outside ±180 where a line was unrolled across the antimeridian.
/// No `PartialOrd`: neither coordinate comes first on a sphere.
///
/// ```
/// use schrund::geometry::LonLat;
///
/// let (equator, pole) = (LonLat::new(7.0, 0.0), LonLat::new(7.0, 90.0));
/// // The quadrant of the meridian on WGS 84, from memory: 10 001 965.729 m.
/// assert!((equator.distance_m(pole) - 10_001_965.729).abs() < 0.001);
/// assert!((equator.bearing_deg(LonLat::new(6.0, 0.0)) - 270.0).abs() < 1e-9);
/// assert_eq!(LonLat::new(181.0, 52.0).normal(), LonLat::new(-179.0, 52.0), "over the antimeridian");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LonLat {
    /// Degrees east.
    pub lon_deg: f64,
    /// Degrees north.
    pub lat_deg: f64,
}

/// Degrees that a coordinate may lie beyond its range by rounding alone: 0.1 m on the ground; our judgement.
pub const ROUNDING_DEG: f64 = 1e-6;
/// Degrees beyond ±180 by which a program that projects or rounds may miss the antimeridian: 111 m on the equator; our
/// judgement.
pub const ANTIMERIDIAN_MISSED_DEG: f64 = 1e-3;

impl LonLat {
    /// A position from degrees east and north.
    #[must_use]
    pub const fn new(lon_deg: f64, lat_deg: f64) -> Self {
        Self { lon_deg, lat_deg }
    }

    /// Degrees by which the longitude lies beyond ±180; 0 within.
    #[must_use]
    pub fn beyond_deg(self) -> f64 {
        (self.lon_deg.abs() - 180.0).max(0.0)
    }

    /// On the antimeridian, where the longitude lies beyond ±180.
    #[must_use]
    pub fn taken_back(self) -> Self {
        Self::new(self.lon_deg.clamp(-180.0, 180.0), self.lat_deg)
    }

    /// Length of the geodesic to `other`, metres.
    #[must_use]
    pub fn distance_m(self, other: Self) -> f64 {
        if self == other {
            return 0.0;
        }
        let [a, b] = [self, other].map(|p| (p.lon_deg, p.lat_deg));
        short::length_m(a, b).unwrap_or_else(|| Geodesic.distance(self.into(), other.into()))
    }

    /// Initial bearing of the geodesic to `other`, degrees clockwise from true north, 0 ≤ b < 360.
    #[must_use]
    pub fn bearing_deg(self, other: Self) -> f64 {
        Geodesic
            .bearing(self.into(), other.into())
            .rem_euclid(360.0)
    }

    /// The point so many metres away in a direction, degrees clockwise from true north.
    #[must_use]
    pub fn toward(self, bearing_deg: f64, distance_m: f64) -> Self {
        let p = Geodesic.destination(self.into(), bearing_deg, distance_m);
        Self::new(p.x(), p.y())
    }

    /// The point at `t` (0 to 1) of the edge to `other`, straight in longitude/latitude `[rfc7946]`.
    #[must_use]
    pub fn along_edge(self, other: Self, t: f64) -> Self {
        Self {
            lon_deg: self.lon_deg + t * (other.lon_deg - self.lon_deg),
            lat_deg: self.lat_deg + t * (other.lat_deg - self.lat_deg),
        }
    }

    /// The same place with its longitude brought into −180 < lon ≤ 180.
    #[must_use]
    pub fn normal(self) -> Self {
        if self.lon_deg > -180.0 && self.lon_deg <= 180.0 {
            return self;
        }
        let lon = (self.lon_deg + 180.0).rem_euclid(360.0) - 180.0;
        Self {
            lon_deg: if lon <= -180.0 { 180.0 } else { lon },
            lat_deg: self.lat_deg,
        }
    }
}

impl From<LonLat> for Point<f64> {
    fn from(p: LonLat) -> Self {
        Point::new(p.lon_deg, p.lat_deg)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn longitudes_come_back_into_range() {
        for (given, want) in [
            (181.0, -179.0),
            (-181.0, 179.0),
            (540.0, 180.0),
            (-180.0, 180.0),
            (12.0, 12.0),
        ] {
            assert!(
                (LonLat::new(given, 0.0).normal().lon_deg - want).abs() < 1e-12,
                "{given} should become {want}"
            );
        }
    }
}
