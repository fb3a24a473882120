//! The geometry of a feature: its polygons, whatever they are wrapped in, and what is wrong with it.
//!
//! The `geojson` crate reads it. Only where that fails is the text read again, slowly, to say in words
//! what is wrong, or to take what the crate refuses although it is plain (a `MultiPolygon` whose first
//! part is empty).

use geojson::{Geometry, GeometryValue, PolygonType, Position};
use serde_json::Value;

use super::{
    at, crs,
    document::Piece,
    kind::document_type,
    nowhere,
    text::{Spot, quoted},
};
use crate::fault::{Code, Problem};

/// What is no polygon, counted.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Skipped {
    pub(super) points: usize,
    pub(super) lines: usize,
    pub(super) empty: usize,
}

/// Reads one geometry; its polygons are added to `polygons`, the rest is counted.
pub(super) fn read(
    piece: &Piece,
    file: &str,
    skipped: &mut Skipped,
    polygons: &mut Vec<PolygonType>,
) -> Result<(), Problem> {
    match piece.json.parse::<Geometry>() {
        Ok(geometry) => gather(geometry, file, skipped, polygons),
        Err(error) => {
            let spot = spot_of(&error, piece);
            let value = serde_json::from_str::<Value>(&piece.json);
            let value = value.map_err(|error| unreadable(&error, piece))?;
            examine(&value, skipped, polygons).map_err(|mut problem| {
                problem.place.line = Some(spot.line);
                problem.place.column = Some(spot.column);
                problem
            })
        }
    }
}

fn gather(
    geometry: Geometry,
    file: &str,
    skipped: &mut Skipped,
    polygons: &mut Vec<PolygonType>,
) -> Result<(), Problem> {
    let foreign = geometry.foreign_members.as_ref();
    if let Some(value) = foreign.and_then(|members| members.get("crs")) {
        crs::check(value, file)?;
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
                gather(part, file, skipped, polygons)?;
            }
        }
    }
    Ok(())
}

/// Adds the polygons that hold a ring; without one the geometry is empty.
fn take(found: Vec<PolygonType>, skipped: &mut Skipped, polygons: &mut Vec<PolygonType>) {
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
    skipped: &mut Skipped,
    polygons: &mut Vec<PolygonType>,
) -> Result<(), Problem> {
    let Value::Object(members) = value else {
        return match value {
            Value::Null => {
                skipped.empty += 1;
                Ok(())
            }
            other => Err(fault(format!(
                "the geometry is {}, not an object",
                named(other)
            ))),
        };
    };
    let kind = document_type(members.get("type"), "geometry", &WORDS)?;
    let Some((_, levels)) = KINDS.iter().find(|(name, _)| *name == kind) else {
        return examine_parts(members.get("geometries"), skipped, polygons);
    };
    let Some(coordinates) = members.get("coordinates") else {
        return Err(fault(format!("the {kind} has no `coordinates`")));
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
    skipped: &mut Skipped,
    polygons: &mut Vec<PolygonType>,
) -> Result<(), Problem> {
    let Some(Value::Array(parts)) = parts else {
        return Err(fault(
            "the GeometryCollection has no list of `geometries`".to_owned(),
        ));
    };
    skipped.empty += usize::from(parts.is_empty());
    for part in parts {
        examine(part, skipped, polygons)?;
    }
    Ok(())
}

/// Looks for the first thing that is not as deep as it should be; `path` holds the way there, from 1.
fn check(value: &Value, kind: &str, levels: &[&str], path: &mut Vec<usize>) -> Result<(), Problem> {
    let Some(depth) = levels.len().checked_sub(path.len()).filter(|d| *d > 0) else {
        return position(value).map_err(|says| {
            let whole = format!("{}{says}", way(levels, path));
            fault(whole).hint("a position is [longitude, latitude], two plain numbers in degrees")
        });
    };
    let Value::Array(inner) = value else {
        let what = if depth == 1 { "positions" } else { "lists" };
        let says = format!(
            "{}holds {} where a list of {what} should stand",
            way(levels, path),
            quoted(&value.to_string())
        );
        return Err(fault(says).hint(format!("this is not how the coordinates of a {kind} look")));
    };
    for (index, item) in inner.iter().enumerate() {
        path.push(index + 1);
        check(item, kind, levels, path)?;
        path.pop();
    }
    Ok(())
}

/// `polygon 2, ring 1, position 5 `, or what the coordinates as a whole are called.
fn way(levels: &[&str], path: &[usize]) -> String {
    if path.is_empty() {
        return "`coordinates` ".to_owned();
    }
    let steps = levels.iter().zip(path);
    let steps: Vec<_> = steps.map(|(level, n)| format!("{level} {n}")).collect();
    format!("{} ", steps.join(", "))
}

fn position(value: &Value) -> Result<(), String> {
    let Value::Array(numbers) = value else {
        return Err(format!("is {}, not a position", quoted(&value.to_string())));
    };
    if let Some(wrong) = numbers.iter().find(|n| !n.is_number()) {
        return Err(format!(
            "holds {} where a number should stand",
            quoted(&wrong.to_string())
        ));
    }
    match numbers.len() {
        0 => Err("is empty".to_owned()),
        1 => Err(format!(
            "has one number only: {}",
            quoted(&value.to_string())
        )),
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

/// What a value is, in words.
pub(super) fn named(value: &Value) -> String {
    match value {
        Value::Null => "null".to_owned(),
        Value::Array(_) => "a list".to_owned(),
        Value::Object(_) => "an object".to_owned(),
        _ => quoted(&value.to_string()),
    }
}

fn fault(says: String) -> Problem {
    Problem::new(Code::BadGeojson, nowhere(), says)
}

/// JSON that is whole but cannot be held: a number too large, or lists within lists without end.
fn unreadable(error: &serde_json::Error, piece: &Piece) -> Problem {
    let place = at(piece.spot(offset(&piece.json, error.line(), error.column())));
    if error.to_string().starts_with("number out of range") {
        let says = "a coordinate is too large to be a number";
        return Problem::new(Code::BadPosition, place, says)
            .hint("longitudes and latitudes are degrees");
    }
    Problem::new(
        Code::BadGeojson,
        place,
        "the geometry is nested too deeply to be read",
    )
}

/// Where the crate gave up, or where the geometry begins.
fn spot_of(error: &geojson::Error, piece: &Piece) -> Spot {
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
