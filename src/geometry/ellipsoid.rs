//! The ellipsoid that positions lie on.
//!
//! *Source:* `[wgs84]`. *Checked:* in `frame` and in tests/meet/reference.rs, against geodesics.

/// Equatorial radius of the WGS 84 ellipsoid, metres. Defining value `[wgs84]`.
pub const WGS84_A_M: f64 = 6_378_137.0;
/// Flattening of the WGS 84 ellipsoid. Defining value `[wgs84]`.
pub const WGS84_F: f64 = 1.0 / 298.257_223_563;
/// First eccentricity squared; derived.
pub const WGS84_E2: f64 = WGS84_F * (2.0 - WGS84_F);

/// What a flat length errs by grows as length³ / (radius · cos(lat))²: this, metres, where the line comes so near to a pole.
#[must_use]
pub(super) fn bent_m(length_m: f64, lat_deg: [f64; 2]) -> f64 {
    let [a, b] = lat_deg.map(f64::abs);
    let parallel_m = WGS84_A_M * a.max(b).min(90.0).to_radians().cos();
    length_m.powi(3) / parallel_m.powi(2)
}

/// Metres in a degree of longitude and in one of latitude, where the latitude is so many degrees: by the prime-vertical and
/// the meridian radius of curvature.
#[must_use]
pub(super) fn m_per_deg(lat_deg: f64) -> (f64, f64) {
    let (sin, cos) = lat_deg.to_radians().sin_cos();
    let w2 = 1.0 - WGS84_E2 * sin * sin;
    let prime_vertical_m = WGS84_A_M / w2.sqrt();
    let meridian_m = prime_vertical_m * (1.0 - WGS84_E2) / w2;
    (
        (prime_vertical_m * cos).to_radians(),
        meridian_m.to_radians(),
    )
}
