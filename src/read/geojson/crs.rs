//! The old `crs` member: longitude/latitude on WGS 84 passes, anything else needs converting.

use serde_json::Value;

use super::{nowhere, shape::named};
use crate::fault::{Code, Problem};

/// Passes WGS 84 in any spelling; the error holds the command that converts the file.
pub(super) fn check(value: &Value, file: &str) -> Result<(), Problem> {
    if value.is_null() {
        return Ok(());
    }
    let name = value.pointer("/properties/name").and_then(Value::as_str);
    let says = match name {
        Some(name) if is_wgs84(name) => return Ok(()),
        Some(name) => format!("the file says its coordinates are in \"{name}\""),
        None => format!(
            "the file has a `crs` that names no known system: {}",
            shown(value)
        ),
    };
    let place = nowhere().with_property("crs");
    Err(Problem::new(Code::ForeignCrs, place, says).hint(format!(
        "convert it to longitude/latitude on WGS 84: {}",
        command(file, "")
    )))
}

fn shown(value: &Value) -> String {
    match value {
        Value::Object(_) => super::text::quoted(&value.to_string()),
        other => named(other),
    }
}

/// `CRS84` of the OGC or EPSG 4326, as a short name, a URN or an address.
fn is_wgs84(name: &str) -> bool {
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

/// What to do about coordinates that are metres while the file does not say of which grid.
/// The two EPSG numbers are from memory.
pub(super) fn convert_unnamed(file: &str) -> String {
    format!(
        "find out which map grid it is (2056 is Swiss LV95, 25832 is UTM 32N) and convert: {}",
        command(file, "-s_srs EPSG:2056 ")
    )
}

/// The command of GDAL that writes the file anew on WGS 84.
fn command(file: &str, from: &str) -> String {
    let input = if file.ends_with("json") {
        file
    } else {
        "zones.geojson"
    };
    let name = input.rsplit(['/', '\\']).next().unwrap_or(input);
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    let output = format!("{stem}-wgs84.geojson");
    format!(
        "ogr2ogr {from}-t_srs EPSG:4326 -lco RFC7946=YES {} {}",
        in_shell(&output),
        in_shell(input)
    )
}

fn in_shell(path: &str) -> String {
    let plain = |c: char| c.is_alphanumeric() || "._-/\\:".contains(c);
    if path.chars().all(plain) {
        path.to_owned()
    } else {
        format!("\"{path}\"")
    }
}
