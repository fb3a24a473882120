//! Between longitude/latitude on WGS 84 and the plane or datum of a map, given as a projection string.
//!
//! *Model:* the `proj4rs` library. *Valid:* where the projection is; a position that does not come back
//! to itself is refused. *Error:* below 1 mm against PROJ for the strings of data/crs.toml; the strings themselves stand
//! for a datum shift of up to 2 m (column `stray_m`). *Checked:* tests/reference/crs.csv

use proj4rs::{Proj, adaptors::transform_xy};

use super::LonLat;

/// How far a position may come back from where it started, degrees; about 0.1 m (our judgement:
/// far outside the valid range the formulas stray by kilometres, inside by less than a millimetre).
const THERE_AND_BACK_DEG: f64 = 1e-6;

/// One coordinate system of a map or terrain model.
///
/// Its coordinates are metres east and north, or degrees east and north when [`Projection::is_geographic`].
///
/// ```
/// use schrund::geometry::{LonLat, projection::Projection};
///
/// let utm = Projection::parse("+proj=utm +zone=31 +datum=WGS84").expect("a known projection");
/// let at = LonLat::new(4.5, 63.0);
/// let (x, y) = utm.forward(at).expect("it reaches there");
/// // pyproj 3.7.2, see tests/reference/crs.csv; to a millimetre
/// assert!((x - 575_973.732_69).abs() < 0.001 && (y - 6_986_475.387_15).abs() < 0.001);
/// assert!(utm.leads_back(at, (x, y)) && !utm.leads_back(at, (x + 1.0, y)));
/// ```
pub struct Projection {
    map: Proj,
    wgs84: Proj,
    text: String,
}

impl Projection {
    /// The system a string such as `+proj=utm +zone=32 +datum=WGS84` means; `None` if it is not understood.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        Some(Self {
            map: Proj::from_proj_string(text).ok()?,
            wgs84: Proj::from_proj_string("+proj=longlat +datum=WGS84").ok()?,
            text: text.to_owned(),
        })
    }

    /// The string it was made from.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Coordinates are degrees, not metres.
    #[must_use]
    pub fn is_geographic(&self) -> bool {
        self.map.is_latlong()
    }

    /// Coordinates of a position: metres, or degrees if geographic; `None` where the projection does not reach.
    #[must_use]
    pub fn forward(&self, at: LonLat) -> Option<(f64, f64)> {
        let at = at.normal();
        let (lon, lat) = (at.lon_deg.to_radians(), at.lat_deg.to_radians());
        let (x, y) = transform_xy(&self.wgs84, &self.map, lon, lat).ok()?;
        let found = if self.is_geographic() {
            (x.to_degrees(), y.to_degrees())
        } else {
            (x, y)
        };
        (found.0.is_finite() && found.1.is_finite()).then_some(found)
    }

    /// The position that has these coordinates.
    #[must_use]
    pub fn inverse(&self, x: f64, y: f64) -> Option<LonLat> {
        let (x, y) = if self.is_geographic() {
            (x.to_radians(), y.to_radians())
        } else {
            (x, y)
        };
        let (lon, lat) = transform_xy(&self.map, &self.wgs84, x, y).ok()?;
        let at = LonLat::new(lon.to_degrees(), lat.to_degrees());
        (at.lon_deg.is_finite() && at.lat_deg.is_finite()).then_some(at)
    }

    /// True if the coordinates lead back to the position, as they do wherever the projection is valid.
    #[must_use]
    pub fn leads_back(&self, at: LonLat, (x, y): (f64, f64)) -> bool {
        self.inverse(x, y).is_some_and(|back| {
            let east = LonLat::new(back.lon_deg - at.lon_deg, 0.0).normal().lon_deg;
            let east = east * at.lat_deg.to_radians().cos();
            east.abs() < THERE_AND_BACK_DEG
                && (back.lat_deg - at.lat_deg).abs() < THERE_AND_BACK_DEG
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_its_own_coordinates_lead_back() {
        let utm = Projection::parse("+proj=utm +zone=32 +datum=WGS84").unwrap();
        let at = LonLat::new(9.5, 46.0);
        let (x, y) = utm.forward(at).unwrap();
        assert!(utm.leads_back(at, (x, y)), "the right ones do");
        assert!(!utm.leads_back(at, (x + 1.0, y)), "a metre off does not");
        let unrolled = LonLat::new(369.5, 46.0);
        assert!(
            utm.leads_back(unrolled, (x, y)),
            "a full turn changes nothing"
        );
        assert!(Projection::parse("+proj=nonsense").is_none(), "unknown");
    }
}
