//! Places on an edge by the metres walked from its begin.
//!
//! *Model:* an edge is straight in longitude/latitude `[rfc7946]`, so equal parts of it are not equally long; their
//! length is taken to change evenly from one end to the other, and where that is not enough it is corrected by geodesics.
//! *Error:* a thousandth of a millimetre; *Checked:* below, against geodesics.

use super::{LonLat, ellipsoid::bent_m, frame::Frame};

/// How far the geodesic to a place may be from what was asked, metres: our judgement, a hundredth of the chainage's
/// own millimetre.
const EXACT_M: f64 = 1e-6;

/// What even change is off by, as a part of length³ / (radius · cos(lat))²: measured on the random edges of the test
/// below, where the largest lies between 0.01 and 0.02.
const UNEVEN: f64 = 0.02;

impl LonLat {
    /// The place on the edge to `end`, which is `edge_m` long, whose geodesic from here is `walked_m` long.
    #[must_use]
    pub(crate) fn walked(self, end: Self, edge_m: f64, walked_m: f64) -> Self {
        if edge_m <= 0.0 {
            return self;
        }
        let mut t = even_change(self, end, walked_m / edge_m);
        if !changes_evenly(self, end, edge_m) {
            for _ in 0..4 {
                let miss_m = walked_m - self.distance_m(self.along_edge(end, t));
                t += miss_m / edge_m;
                if miss_m.abs() < EXACT_M {
                    break;
                }
            }
        }
        self.along_edge(end, t)
    }
}

/// The fraction in degrees that belongs to a fraction of the length.
fn even_change(a: LonLat, b: LonLat, part: f64) -> f64 {
    let (begin, end) = (
        Frame::at(a).local(b).length_m(),
        Frame::at(b).local(a).length_m(),
    );
    let grows = (end - begin) / (end + begin);
    let root = ((1.0 - grows).powi(2) + 4.0 * grows * part).sqrt();
    2.0 * part / (1.0 - grows + root)
}

fn changes_evenly(a: LonLat, b: LonLat, edge_m: f64) -> bool {
    UNEVEN * bent_m(edge_m, [a.lat_deg, b.lat_deg]) < EXACT_M
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::spread::spread;

    #[test]
    fn the_geodesic_to_a_place_is_what_was_walked() {
        for i in 1..20_000 {
            let a = LonLat::new(10.0, 170.0 * spread(i, 1.0) - 85.0);
            let b = a.toward(360.0 * spread(i, 2.3), 10.0_f64.powf(5.0 * spread(i, 1.7)));
            let edge_m = a.distance_m(b);
            let walked_m = edge_m * spread(i, 3.1);
            let off_m = |p: LonLat| (a.distance_m(p) - walked_m).abs();
            let miss_m = off_m(a.walked(b, edge_m, walked_m));
            assert!(miss_m < 2.0 * EXACT_M, "{miss_m} m off from {a:?} to {b:?}");
            let even = a.along_edge(b, even_change(a, b, walked_m / edge_m));
            let allowed_m = UNEVEN * bent_m(edge_m, [a.lat_deg, b.lat_deg]) + 1e-8;
            assert!(
                off_m(even) < allowed_m,
                "{} of {allowed_m} m from {a:?} to {b:?}",
                off_m(even)
            );
        }
    }
}
