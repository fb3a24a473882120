//! UTM zone, easting and northing of a position, as printed on maps and shown by receivers.
//!
//! *Model:* transverse Mercator of `proj4rs` on WGS 84, scale 0.9996. *Valid:* 80° S to 84° N.
//! *Error:* below 1 mm within a zone. *Source:* zones, bands and the exceptions of Norway and Svalbard
//! from memory. *Checked:* tests/reference/utm.csv

use std::fmt;

use super::{LonLat, projection::Projection};

/// Bands of 8° from 80° S upwards, the last one 12° high.
const BANDS: &[u8; 20] = b"CDEFGHJKLMNPQRSTUVWX";

/// A position in the Universal Transverse Mercator grid on WGS 84.
///
/// ```
/// use schrund::geometry::{LonLat, Utm};
///
/// let at = Utm::of(LonLat::new(7.6586, 45.9763)).expect("between 80° S and 84° N");
/// assert_eq!(at.to_string(), "32T 396088 5092288", "pyproj 3.7.2, see tests/reference/utm.csv");
/// assert_eq!(Utm::of(LonLat::new(6.5, 59.0)).map(|at| at.zone), Some(32), "the exception of southern Norway");
/// assert_eq!(Utm::of(LonLat::new(0.0, 89.0)), None, "no UTM at the poles");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Utm {
    /// 1 to 60.
    pub zone: u8,
    /// Letter of the latitude band, `C` to `X`; `N` and later lie north of the equator.
    pub band: char,
    /// Metres, 500 000 on the middle of the zone.
    pub easting_m: f64,
    /// Metres from the equator, or south of it counted up to 10 000 000 at the equator.
    pub northing_m: f64,
}

impl Utm {
    /// The grid position; `None` outside 80° S to 84° N or if the position is no number.
    #[must_use]
    pub fn of(at: LonLat) -> Option<Self> {
        let at = at.normal();
        let band = band(at.lat_deg)?;
        let zone = zone(at);
        let south = if at.lat_deg < 0.0 { " +south" } else { "" };
        let grid = Projection::parse(&format!("+proj=utm +zone={zone}{south} +datum=WGS84"))?;
        let (easting_m, northing_m) = grid.forward(at)?;
        Some(Self {
            zone,
            band,
            easting_m,
            northing_m,
        })
    }
}

impl Utm {
    /// The place that a text such as `32T 396088 5092288` names; `None` where it names none, or where the letter is
    /// not that of the band the place lies in: what else it may mean is not guessed.
    ///
    /// ```
    /// use schrund::geometry::Utm;
    ///
    /// let at = Utm::place("32T 396088 5092288").expect("a place");
    /// assert_eq!(Utm::of(at).map(|at| at.to_string()).as_deref(), Some("32T 396088 5092288"));
    /// assert_eq!(Utm::place("32N 396088 5092288"), None, "the letter of a hemisphere is none of a band");
    /// ```
    #[must_use]
    pub fn place(text: &str) -> Option<LonLat> {
        let text = text.trim();
        let digits = text.find(|c: char| !c.is_ascii_digit())?;
        let (zone, rest) = text.split_at_checked(digits)?;
        let zone: u8 = zone.parse().ok().filter(|zone| (1..=60).contains(zone))?;
        let mut rest = rest.trim_start().chars();
        let letter = rest.next()?.to_ascii_uppercase();
        let mut numbers = rest
            .as_str()
            .split([' ', ',', '\t'])
            .filter(|n| !n.is_empty());
        let (east, north): (f64, f64) =
            (numbers.next()?.parse().ok()?, numbers.next()?.parse().ok()?);
        let south = if letter < 'N' { " +south" } else { "" };
        let grid = Projection::parse(&format!("+proj=utm +zone={zone}{south} +datum=WGS84"))?;
        // In the middle of the metre that is named, so that it is named alike again.
        let middle = |m: f64| if m.fract() == 0.0 { m + 0.5 } else { m };
        let at = grid.inverse(middle(east), middle(north))?;
        (numbers.next().is_none() && band(at.lat_deg) == Some(letter)).then_some(at)
    }
}

/// `32T 412345 5098765`: the metre the position lies in, cut off and not rounded, as grid references are read.
impl fmt::Display for Utm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (east, north) = (self.easting_m.floor(), self.northing_m.floor());
        write!(f, "{}{} {east:06.0} {north:07.0}", self.zone, self.band)
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the latitude was checked: 0 to 20"
)]
fn band(lat_deg: f64) -> Option<char> {
    if !(-80.0..=84.0).contains(&lat_deg) {
        return None;
    }
    let step = ((lat_deg + 80.0) / 8.0).floor() as usize;
    BANDS.get(step.min(BANDS.len() - 1)).map(|&b| char::from(b))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the longitude is normal: 1 to 60 after the clamp"
)]
fn zone(at: LonLat) -> u8 {
    let (lon, lat) = (at.lon_deg, at.lat_deg);
    if (56.0..64.0).contains(&lat) && (3.0..12.0).contains(&lon) {
        return 32;
    }
    if lat >= 72.0 && (0.0..42.0).contains(&lon) {
        return match lon {
            x if x < 9.0 => 31,
            x if x < 21.0 => 33,
            x if x < 33.0 => 35,
            _ => 37,
        };
    }
    let lon = if lon >= 180.0 { -180.0 } else { lon };
    (((lon + 180.0) / 6.0).floor() + 1.0).clamp(1.0, 60.0) as u8
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_and_limits() {
        for (lat, want) in [
            (-80.0, Some('C')),
            (-0.1, Some('M')),
            (0.0, Some('N')),
            (46.0, Some('T')),
            (83.9, Some('X')),
            (84.0, Some('X')),
            (84.1, None),
            (-80.1, None),
            (f64::NAN, None),
        ] {
            assert_eq!(band(lat), want, "band of {lat}");
        }
    }

    #[test]
    fn a_line_as_receivers_show_it() {
        let at = Utm::of(LonLat::new(7.6586, 45.9763)).unwrap();
        assert_eq!(
            at.to_string(),
            "32T 396088 5092288",
            "pyproj, tests/reference/utm.csv"
        );
    }
}
