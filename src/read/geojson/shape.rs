//! The geometry of a feature: its polygons, whatever they are wrapped in, and what is wrong with it.
//!
//! The `geojson` crate reads it. Only where that fails is the text read again, slowly, to say in words
//! what is wrong, or to take what the crate refuses although it is plain (a `MultiPolygon` whose first
//! part is empty).

use geojson::{Geometry, GeometryValue, PolygonType, Position};
use serde_json::Value;

use super::{
    crs,
    doubled::doubled,
    kind::document_type,
    members::MemberText,
    quote::{quoted, thing},
    text::Spot,
};
use crate::fault::{
    Fault, Place,
    coordinates::NoPosition,
    geojson::{InGeojson, NotPolygons, Object},
};

/// Reads one geometry; its polygons are added to `polygons`, the rest is counted.
pub(super) fn read(
    piece: &MemberText,
    skipped: &mut NotPolygons,
    polygons: &mut Vec<PolygonType>,
) -> Result<(), Fault> {
    if let Some((name, at)) = doubled(&piece.json) {
        let twice = InGeojson::MemberTwice(name);
        return Err(Fault::new(twice, piece.spot(at).place()));
    }
    match piece.json.parse::<Geometry>() {
        Ok(geometry) => gather(geometry, skipped, polygons),
        Err(error) => {
            let spot = spot_of(&error, piece);
            let value = serde_json::from_str::<Value>(&piece.json);
            let value = value.map_err(|error| unreadable(&error, piece))?;
            examine(&value, skipped, polygons).map_err(|mut fault| {
                fault.at.line = Some(spot.line);
                fault.at.column = Some(spot.column);
                fault
            })
        }
    }
}

fn gather(
    geometry: Geometry,
    skipped: &mut NotPolygons,
    polygons: &mut Vec<PolygonType>,
) -> Result<(), Fault> {
    let foreign = geometry.foreign_members.as_ref();
    if let Some(value) = foreign.and_then(|members| members.get("crs")) {
        crs::check(value)?;
    }
    match geometry.value {
        GeometryValue::Point { .. } | GeometryValue::MultiPoint { .. } => skipped.points += 1,
        GeometryValue::LineString { .. } | GeometryValue::MultiLineString { .. } => {
            skipped.lines += 1;
        }
        GeometryValue::Polygon { coordinates } => take(vec![coordinates], skipped, polygons),
        GeometryValue::MultiPolygon { coordinates } => take(coordinates, skipped, polygons),
        GeometryValue::GeometryCollection { geometries } => {
            skipped.empty += usize::from(geometries.is_empty());
            for part in geometries {
                gather(part, skipped, polygons)?;
            }
        }
    }
    Ok(())
}

/// Adds the polygons that hold a ring; without one the geometry is empty.
pub(super) fn take<R>(found: Vec<Vec<R>>, skipped: &mut NotPolygons, polygons: &mut Vec<Vec<R>>) {
    let before = polygons.len();
    polygons.extend(found.into_iter().filter(|rings| !rings.is_empty()));
    skipped.empty += usize::from(polygons.len() == before);
}

/// Each kind of geometry, how deep its positions lie, and what each level is called from the outside in.
const KINDS: [(&str, &[&str]); 6] = [
    ("Point", &[]),
    ("MultiPoint", &["point"]),
    ("LineString", &["position"]),
    ("MultiLineString", &["line", "position"]),
    ("Polygon", &["ring", "position"]),
    ("MultiPolygon", &["polygon", "ring", "position"]),
];

/// The words a geometry may have as its `type`.
pub(super) const WORDS: [&str; 7] = [
    "Polygon",
    "MultiPolygon",
    "GeometryCollection",
    "Point",
    "MultiPoint",
    "LineString",
    "MultiLineString",
];

/// Reads a geometry the crate refused, or says why it is none.
fn examine(
    value: &Value,
    skipped: &mut NotPolygons,
    polygons: &mut Vec<PolygonType>,
) -> Result<(), Fault> {
    let Value::Object(members) = value else {
        return match value {
            Value::Null => {
                skipped.empty += 1;
                Ok(())
            }
            other => Err(fault(InGeojson::GeometryNoObject(thing(other)))),
        };
    };
    let kind = document_type(members.get("type"), Object::Geometry, &WORDS)?;
    let Some((_, levels)) = KINDS.iter().find(|(name, _)| *name == kind) else {
        return examine_parts(members.get("geometries"), skipped, polygons);
    };
    let Some(coordinates) = members.get("coordinates") else {
        return Err(fault(InGeojson::NoCoordinates(kind)));
    };
    if coordinates.as_array().is_some_and(Vec::is_empty) {
        skipped.empty += 1;
        return Ok(());
    }
    check(coordinates, kind, levels, &mut Vec::new())?;
    match kind {
        "Polygon" => take(vec![positions(coordinates)], skipped, polygons),
        "MultiPolygon" => {
            let parts = coordinates.as_array().into_iter().flatten();
            take(parts.map(positions).collect(), skipped, polygons);
        }
        "Point" | "MultiPoint" => skipped.points += 1,
        _ => skipped.lines += 1,
    }
    Ok(())
}

fn examine_parts(
    parts: Option<&Value>,
    skipped: &mut NotPolygons,
    polygons: &mut Vec<PolygonType>,
) -> Result<(), Fault> {
    let Some(Value::Array(parts)) = parts else {
        return Err(fault(InGeojson::NoGeometries));
    };
    skipped.empty += usize::from(parts.is_empty());
    for part in parts {
        examine(part, skipped, polygons)?;
    }
    Ok(())
}

/// Looks for the first thing that is not as deep as it should be; `path` holds the way there, from 1.
fn check(
    value: &Value,
    kind: &'static str,
    levels: &[&'static str],
    path: &mut Vec<usize>,
) -> Result<(), Fault> {
    let Some(depth) = levels.len().checked_sub(path.len()).filter(|d| *d > 0) else {
        return position(value).map_err(|why| {
            let way = way(levels, path);
            fault(InGeojson::NoPosition { way, why })
        });
    };
    let Value::Array(inner) = value else {
        return Err(fault(InGeojson::Shallow {
            way: way(levels, path),
            found: quoted(&value.to_string()),
            positions: depth == 1,
            kind,
        }));
    };
    for (index, item) in inner.iter().enumerate() {
        path.push(index + 1);
        check(item, kind, levels, path)?;
        path.pop();
    }
    Ok(())
}

/// What each level on the way is called, and the number in it.
fn way(levels: &[&'static str], path: &[usize]) -> Vec<(&'static str, usize)> {
    levels.iter().copied().zip(path.iter().copied()).collect()
}

fn position(value: &Value) -> Result<(), NoPosition> {
    let Value::Array(numbers) = value else {
        return Err(NoPosition::Is(quoted(&value.to_string())));
    };
    if let Some(wrong) = numbers.iter().find(|n| !n.is_number()) {
        return Err(NoPosition::Holds(quoted(&wrong.to_string())));
    }
    match numbers.len() {
        0 => Err(NoPosition::Empty),
        1 => Err(NoPosition::OneNumber(quoted(&value.to_string()))),
        _ => Ok(()),
    }
}

/// The rings of a polygon that [`check`] found sound.
fn positions(polygon: &Value) -> PolygonType {
    let list = |value: &Value| value.as_array().cloned().unwrap_or_default();
    let position = |value: &Value| -> Position {
        let numbers: Vec<f64> = list(value).iter().filter_map(Value::as_f64).collect();
        numbers.into()
    };
    let rings = list(polygon);
    rings
        .iter()
        .map(|ring| list(ring).iter().map(position).collect())
        .collect()
}

fn fault(what: InGeojson) -> Fault {
    Fault::new(what, Place::default())
}

/// JSON that is whole but cannot be held: a number too large, or lists within lists without end.
fn unreadable(error: &serde_json::Error, piece: &MemberText) -> Fault {
    let spot = piece.spot(offset(&piece.json, error.line(), error.column()));
    let what = if error.to_string().starts_with("number out of range") {
        InGeojson::Huge
    } else {
        InGeojson::Deep
    };
    Fault::new(what, spot.place())
}

/// Where the crate gave up, or where the geometry begins.
fn spot_of(error: &geojson::Error, piece: &MemberText) -> Spot {
    match error {
        geojson::Error::MalformedGeoJson(e) if e.line() > 0 => {
            piece.spot(offset(&piece.json, e.line(), e.column()))
        }
        _ => piece.at,
    }
}

/// Byte offset of a line and column in bytes, both from 1.
fn offset(json: &str, line: usize, column: usize) -> usize {
    let before = json.split_inclusive('\n').take(line.saturating_sub(1));
    before.map(str::len).sum::<usize>() + column.saturating_sub(1)
}
