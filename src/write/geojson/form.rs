//! The form of a feature: rounded positions and lengths, members that are never null.

use geojson::{Feature, Geometry, GeometryValue, JsonObject};
use serde_json::Value;

use crate::geometry::LonLat;

/// Decimals of coordinates: about a centimetre.
const SCALE: f64 = 1e7;

fn rounded(deg: f64) -> f64 {
    (deg * SCALE).round() / SCALE + 0.0
}

pub(in crate::write) fn position(p: LonLat) -> [f64; 2] {
    [rounded(p.lon_deg), rounded(p.lat_deg)]
}

/// The same of a line.
pub(in crate::write) fn positions(line: &[LonLat]) -> Vec<[f64; 2]> {
    line.iter().map(|at| position(*at)).collect()
}

pub(super) fn feature(value: GeometryValue, properties: JsonObject) -> Feature {
    Feature {
        bbox: None,
        geometry: Some(Geometry::new(value)),
        id: None,
        properties: Some(properties),
        foreign_members: None,
    }
}

/// Adds members to an object; a null is not added.
pub(super) fn put(object: &mut JsonObject, members: Value) {
    if let Value::Object(members) = members {
        object.extend(members.into_iter().filter(|(_, v)| !v.is_null()));
    }
}

pub(in crate::write) fn mm(x: f64) -> f64 {
    (x * 1000.0).round() / 1000.0 + 0.0
}
