//! Lengths of short lines, without the series of a geodesic: a track has thousands of them.
//!
//! *Model:* flat ground half way between them, the mid-latitude rule. *Valid:* where its error, which grows as
//! length³ / (radius · cos(lat))², is below a hundredth of a micrometre: 150 m at 46° N, nothing at a pole.
//! *Error:* there below 1e-8 m. *Source:* the radii of `ellipsoid`, `[derived]`. *Checked:* below, against geodesics.

use super::ellipsoid::{bent_m, m_per_deg};

/// What it may be off by, metres: as much as the geodesic itself.
const EXACT_M: f64 = 1e-8;
/// What it is off by, as a part of length³ / (radius · cos(lat))²: measured on the random lines of the test below, where the
/// largest lies between 0.04 and 0.05.
const OFF: f64 = 0.05;

/// Metres between two places near each other, each by its degrees of longitude and latitude; `None` where this would not be
/// exact.
pub(super) fn length_m(a: (f64, f64), b: (f64, f64)) -> Option<f64> {
    let length_m = half_way_m(a, b);
    (OFF * bent_m(length_m, [a.1, b.1]) < EXACT_M).then_some(length_m)
}

fn half_way_m(a: (f64, f64), b: (f64, f64)) -> f64 {
    let (east_m, north_m) = m_per_deg(f64::midpoint(a.1, b.1));
    ((b.0 - a.0) * east_m).hypot((b.1 - a.1) * north_m)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{LonLat, spread::spread};
    use geo::{Distance, Geodesic};

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
            let off_m = (length_m - geodesic_m).abs();
            most = most.max(off_m / bent_m(geodesic_m, [a.lat_deg, b.lat_deg]));
        }
        assert!((0.8 * OFF..=OFF).contains(&most), "{most}");
    }
}
