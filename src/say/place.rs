//! Positions and directions as a leader reads them from a map or a receiver.

use crate::geometry::{LonLat, utm::Utm};

use super::{arg::Arg, span::Said, voice::Voice};

/// `45.97630° N 7.65860° E`: decimal degrees on WGS 84, about a metre, with the letters that keep the two apart.
#[must_use]
pub fn degrees([lon_deg, lat_deg]: [f64; 2]) -> String {
    let north = if lat_deg < 0.0 { 'S' } else { 'N' };
    let east = if lon_deg < 0.0 { 'W' } else { 'E' };
    format!("{:.5}° {north} {:.5}° {east}", lat_deg.abs(), lon_deg.abs())
}

/// `32T 396088 5092288`; `None` near the poles, where the grid ends.
#[must_use]
pub fn utm([lon_deg, lat_deg]: [f64; 2]) -> Option<String> {
    Utm::of(LonLat::new(lon_deg, lat_deg)).map(|utm| utm.to_string())
}

/// `047° true`: clockwise from true north, not from the compass needle.
#[must_use]
pub fn bearing(deg: f64, voice: Voice) -> Said {
    let bearing = Said::figure(format!("{:03.0}°", deg.round().rem_euclid(360.0)));
    voice.say("bearing-true", &[("bearing", Arg::Said(bearing))])
}

/// The eight winds from north round by east, as the catalogue chooses by them.
const WINDS: [&str; 8] = ["n", "ne", "e", "se", "s", "sw", "w", "nw"];

/// In which direction of eight, by its keyword.
#[must_use]
pub(crate) fn wind(bearing_deg: f64) -> &'static str {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "0 to 8; what is no number is 0"
    )]
    let eighth = (bearing_deg.rem_euclid(360.0) / 45.0).round() as usize;
    WINDS[eighth % WINDS.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_and_bearings_are_read_without_doubt() {
        assert_eq!(degrees([7.6586, 45.9763]), "45.97630° N 7.65860° E");
        assert_eq!(degrees([-73.5, -46.25]), "46.25000° S 73.50000° W");
        assert_eq!(utm([0.0, 89.0]), None);
        assert_eq!(bearing(359.7, Voice::default()).to_string(), "000° true");
        assert_eq!(bearing(46.6, Voice::default()).to_string(), "047° true");
    }
}
