//! Boxes in longitude and latitude.

use super::{LonLat, frame};

/// A box in degrees, edges included; west may lie below −180 or east above 180 for unrolled lines.
///
/// ```
/// use schrund::geometry::{Bounds, LonLat};
///
/// let hut = LonLat::new(8.0, 46.5);
/// let line = Bounds::of(&[hut, LonLat::new(8.1, 46.6)]).expect("two points");
/// let beside = hut.toward(270.0, 99.0); // 99 m to the west
/// let beside = Bounds { low: beside, high: beside };
/// assert!(!line.meets(&beside));
/// assert!(line.widened(100.0).meets(&beside), "everything within the margin lies in the wider box");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// South-west corner.
    pub low: LonLat,
    /// North-east corner.
    pub high: LonLat,
}

impl Bounds {
    /// The smallest box round the points; `None` without points.
    #[must_use]
    pub fn of(points: &[LonLat]) -> Option<Self> {
        Self::over(points.iter().copied())
    }

    /// The same of points that come one by one.
    #[must_use]
    pub fn over(points: impl IntoIterator<Item = LonLat>) -> Option<Self> {
        let boxes = points.into_iter().map(|at| Self { low: at, high: at });
        boxes.reduce(Self::with)
    }

    /// The smallest box round both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self {
            low: LonLat::new(
                self.low.lon_deg.min(other.low.lon_deg),
                self.low.lat_deg.min(other.low.lat_deg),
            ),
            high: LonLat::new(
                self.high.lon_deg.max(other.high.lon_deg),
                self.high.lat_deg.max(other.high.lat_deg),
            ),
        }
    }

    /// Whether the two share a point, edges included.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        self.low.lon_deg <= other.high.lon_deg
            && other.low.lon_deg <= self.high.lon_deg
            && self.low.lat_deg <= other.high.lat_deg
            && other.low.lat_deg <= self.high.lat_deg
    }

    /// Whether all of another lies in it, edges included.
    #[must_use]
    pub fn holds(&self, other: &Self) -> bool {
        self.with(*other) == *self
    }

    /// How large it is, square degrees: only for comparing.
    #[must_use]
    pub fn size(&self) -> f64 {
        (self.high.lon_deg - self.low.lon_deg) * (self.high.lat_deg - self.low.lat_deg)
    }

    /// The box moved east by a longitude in degrees.
    #[must_use]
    pub fn moved_east(&self, by_deg: f64) -> Self {
        let moved = |p: LonLat| LonLat::new(p.lon_deg + by_deg, p.lat_deg);
        Self {
            low: moved(self.low),
            high: moved(self.high),
        }
    }

    /// A box that holds everything within `margin_m` metres of this one (and a little more).
    #[must_use]
    pub fn widened(&self, margin_m: f64) -> Self {
        let lat = margin_m / frame::LEAST_M_PER_DEG_LAT;
        let farthest = self.low.lat_deg.abs().max(self.high.lat_deg.abs()) + lat;
        let lon = match farthest.to_radians().cos() {
            cos if farthest < 89.9 => lat / cos,
            _ => 360.0,
        };
        Self {
            low: LonLat::new(self.low.lon_deg - lon, self.low.lat_deg - lat),
            high: LonLat::new(self.high.lon_deg + lon, self.high.lat_deg + lat),
        }
    }
}
