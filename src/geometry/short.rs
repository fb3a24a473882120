//! Lengths of short lines, without the series of a geodesic: a track has thousands of them.
//!
//! *Model:* flat ground half way between them, the mid-latitude rule. *Valid:* where its error, which grows as
//! length³ / (radius · cos(lat))², is below a hundredth of a micrometre: 150 m at 46° N, nothing at a pole.
//! *Error:* there below 1e-8 m. *Source:* the radii of `ellipsoid`, `[derived]`. *Checked:* below, against geodesics.

use super::ellipsoid::{WGS84_A_M, m_per_deg};

/// What it may be off by, metres: as much as the geodesic itself.
const EXACT_M: f64 = 1e-8;
/// What it is off by, as a part of length³ / (radius · cos(lat))²: measured on the random lines of the test below, where the
/// largest lies between 0.04 and 0.05.
const OFF: f64 = 0.05;

/// Metres between two places near each other, each by its degrees of longitude and latitude; `None` where this would not be
/// exact.
pub(super) fn length_m(a: (f64, f64), b: (f64, f64)) -> Option<f64> {
    let length_m = half_way_m(a, b);
    let lat_deg = a.1.abs().max(b.1.abs()).min(90.0);
    let parallel_m = WGS84_A_M * lat_deg.to_radians().cos();
    (OFF * length_m.powi(3) < EXACT_M * parallel_m * parallel_m).then_some(length_m)
}

fn half_way_m(a: (f64, f64), b: (f64, f64)) -> f64 {
    let (east_m, north_m) = m_per_deg(f64::midpoint(a.1, b.1));
    ((b.0 - a.0) * east_m).hypot((b.1 - a.1) * north_m)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::LonLat;
    use geo::{Distance, Geodesic};

    /// A hundredth of a golden turn, again and again: spread evenly, the same every time.
    fn spread(i: u32, salt: f64) -> f64 {
        (f64::from(i) * 0.618_033_988_749_894_9 * salt).fract()
    }

    fn degrees(p: LonLat) -> (f64, f64) {
        (p.lon_deg, p.lat_deg)
    }

    #[test]
    fn it_is_as_long_as_the_geodesic_or_is_not_told() {
        let (mut told, mut worst) = (0, 0.0_f64);
        for i in 1..40_000 {
            let a = LonLat::new(10.0, 179.8 * spread(i, 1.0) - 89.9);
            let b = a.toward(
                360.0 * spread(i, 2.3),
                10.0_f64.powf(6.0 * spread(i, 1.7) - 2.0),
            );
            let Some(length_m) = length_m(degrees(a), degrees(b)) else {
                continue;
            };
            let geodesic_m = Geodesic.distance(a.into(), b.into());
            let off_m = (length_m - geodesic_m).abs();
            told += 1;
            worst = worst.max(off_m);
        }
        assert!(worst < 2.0 * EXACT_M, "{worst} m off");
        assert!(told > 20_000, "only {told} told");
    }

    #[test]
    fn what_it_is_off_by_grows_as_is_said() {
        let mut most = 0.0_f64;
        for i in 1..20_000 {
            let a = LonLat::new(10.0, 170.0 * spread(i, 1.0) - 85.0);
            let b = a.toward(360.0 * spread(i, 2.3), 3_000.0 + 3_000.0 * spread(i, 1.7));
            let length_m = half_way_m(degrees(a), degrees(b));
            let geodesic_m = Geodesic.distance(a.into(), b.into());
            let lat = a.lat_deg.abs().max(b.lat_deg.abs());
            let parallel_m = WGS84_A_M * lat.to_radians().cos();
            most =
                most.max((length_m - geodesic_m).abs() / geodesic_m.powi(3) * parallel_m.powi(2));
        }
        assert!((0.8 * OFF..=OFF).contains(&most), "{most}");
    }
}
