//! A flat metre grid around one spot of the earth.
//!
//! *Model:* scaling with the meridian and prime-vertical radii of curvature; straight lines in
//! longitude/latitude stay straight.
//! *Valid:* near the origin, |latitude| < 89.9°.
//! *Error* of a length from the origin at 46° N: 1 km 0.03 m · 5 km 0.8 m · 20 km 12 m (so it measures
//! margins, chords and slopes of a few hundred metres, and never chainage).
//! *Source:* `[wgs84]`. *Checked:* tests/meet/reference.rs against geodesics.

use super::{LonLat, ellipsoid};

/// No degree of latitude is shorter than this many metres: its length at the equator is
/// a(1 − e²)·π/180 = 110 574.3 m; derived, rounded down.
pub const LEAST_M_PER_DEG_LAT: f64 = 110_574.0;

/// Metres east and north of a frame's origin.
///
/// ```
/// use schrund::geometry::frame::Local;
///
/// let (walk, rope) = (Local { x_m: 3.0, y_m: 4.0 }, Local { x_m: -4.0, y_m: 3.0 });
/// assert_eq!(walk.length_m(), 5.0);
/// assert_eq!(walk.dot(rope), 0.0, "square to each other");
/// assert_eq!(walk.cross(rope), 25.0, "and to the left");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Local {
    /// Metres east.
    pub x_m: f64,
    /// Metres north.
    pub y_m: f64,
}

impl Local {
    /// From here to `other`.
    #[must_use]
    pub fn to(self, other: Self) -> Self {
        Self {
            x_m: other.x_m - self.x_m,
            y_m: other.y_m - self.y_m,
        }
    }

    /// Scalar product, square metres.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x_m * other.x_m + self.y_m * other.y_m
    }

    /// Cross product, square metres; positive when `other` lies to the left.
    #[must_use]
    pub fn cross(self, other: Self) -> f64 {
        self.x_m * other.y_m - self.y_m * other.x_m
    }

    /// Distance from the origin, metres.
    #[must_use]
    pub fn length_m(self) -> f64 {
        self.x_m.hypot(self.y_m)
    }
}

/// The grid itself.
///
/// ```
/// use schrund::geometry::{LonLat, frame::{Frame, LEAST_M_PER_DEG_LAT}};
///
/// let equator = Frame::at(LonLat::new(30.0, 0.0));
/// let there = equator.local(LonLat::new(31.0, 1.0));
/// assert!((there.x_m - 111_319.49).abs() < 0.01, "a degree of the equator: a · π / 180");
/// assert!((there.y_m - 110_574.3).abs() < 0.1, "a degree of its meridian: a (1 − e²) · π / 180");
/// assert!(there.y_m > LEAST_M_PER_DEG_LAT);
/// assert!(equator.lonlat(there).distance_m(LonLat::new(31.0, 1.0)) < 1e-6, "and back");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    origin: LonLat,
    east_m_per_deg: f64,
    north_m_per_deg: f64,
}

impl Frame {
    /// A frame whose axes point east and north at `origin`.
    #[must_use]
    pub fn at(origin: LonLat) -> Self {
        let (east_m_per_deg, north_m_per_deg) = ellipsoid::m_per_deg(origin.lat_deg);
        Self {
            origin,
            east_m_per_deg,
            north_m_per_deg,
        }
    }

    /// Metres east and north of the origin.
    #[must_use]
    pub fn local(&self, p: LonLat) -> Local {
        Local {
            x_m: (p.lon_deg - self.origin.lon_deg) * self.east_m_per_deg,
            y_m: (p.lat_deg - self.origin.lat_deg) * self.north_m_per_deg,
        }
    }

    /// The place so many metres east and north of the origin.
    #[must_use]
    pub fn lonlat(&self, p: Local) -> LonLat {
        LonLat::new(
            self.origin.lon_deg + p.x_m / self.east_m_per_deg,
            self.origin.lat_deg + p.y_m / self.north_m_per_deg,
        )
    }
}
