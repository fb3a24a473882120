//! The old `crs` member: longitude/latitude on WGS 84 passes, anything else needs converting.

use serde_json::Value;

use super::quote::{quoted, thing};
use crate::fault::{
    Fault, Place,
    geojson::{InGeojson, Thing},
};

/// Passes WGS 84 in any spelling.
pub(super) fn check(value: &Value) -> Result<(), Fault> {
    if value.is_null() {
        return Ok(());
    }
    let name = value.pointer("/properties/name").and_then(Value::as_str);
    let what = match name {
        Some(name) if is_wgs84(name) => return Ok(()),
        Some(name) => InGeojson::ForeignCrs(name.to_owned()),
        None => InGeojson::UnknownCrs(found(value)),
    };
    Err(Fault::new(what, Place::default().with_property("crs")))
}

fn found(value: &Value) -> Thing {
    match value {
        Value::Object(_) => Thing::Value(quoted(&value.to_string())),
        other => thing(other),
    }
}

/// `CRS84` of the OGC or EPSG 4326, as a short name, a URN or an address.
pub(in crate::read) fn is_wgs84(name: &str) -> bool {
    let upper = name.trim().to_ascii_uppercase();
    let parts: Vec<&str> = upper
        .split([':', '/', '#'])
        .filter(|p| !p.is_empty())
        .collect();
    match parts.as_slice() {
        ["CRS84" | "WGS84"] => true,
        [from @ .., "CRS84"] => from.contains(&"OGC"),
        [from @ .., "4326"] => from.contains(&"EPSG"),
        _ => false,
    }
}
