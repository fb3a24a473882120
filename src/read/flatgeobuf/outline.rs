//! The outline of a feature as GeoJSON: longitudes and latitudes, heights and measures left out.

use flatgeobuf::{Geometry, GeometryType};

use super::{near::Corners, properties};
use crate::fault::flatgeobuf::{FlatgeobufPart, InFlatgeobuf};

const BROKEN: InFlatgeobuf = InFlatgeobuf::Broken(FlatgeobufPart::Geometry);

/// Longitude and latitude.
type Position = [f64; 2];

/// The box round all positions; no numbers where one of them is none, nothing without a position.
pub(super) fn corners(shape: &Geometry<'_>) -> Option<Corners> {
    let round = |corners: Option<Corners>, [x, y]: Position| {
        let [west, south, east, north] = corners.unwrap_or([x, y, x, y]);
        if [x, y, west].into_iter().any(f64::is_nan) {
            return Some([f64::NAN; 4]);
        }
        Some([west.min(x), south.min(y), east.max(x), north.max(y)])
    };
    let own = positions(shape).unwrap_or_default();
    let own = own.into_iter().fold(None, round);
    let parts = shape.parts().into_iter().flatten();
    parts.fold(own, |all, part| {
        let Some([west, south, east, north]) = corners(&part) else {
            return all;
        };
        round(round(all, [west, south]), [east, north])
    })
}

/// Lists in lists of positions: polygons, of each its rings.
pub(super) type Polygons = Vec<Vec<Vec<Position>>>;

/// The type of a geometry; what is of no type of its own is of that of all.
fn kind(shape: &Geometry<'_>, of_all: GeometryType) -> GeometryType {
    match shape.type_() {
        GeometryType::Unknown => of_all,
        own => own,
    }
}

/// The polygons of a geometry that is some.
///
/// # Errors
/// It makes no sense.
pub(super) fn polygons(
    shape: &Geometry<'_>,
    of_all: GeometryType,
) -> Result<Option<Polygons>, InFlatgeobuf> {
    Ok(match kind(shape, of_all) {
        GeometryType::Polygon => Some(vec![rings(shape)?]),
        GeometryType::MultiPolygon => Some(parts(shape)?),
        _ => None,
    })
}

/// Writes a geometry; what is of no type of its own is of that of all.
///
/// # Errors
/// It makes no sense, or is no polygon and might be ice.
pub(super) fn write(
    shape: &Geometry<'_>,
    of_all: GeometryType,
    text: &mut Vec<u8>,
) -> Result<(), InFlatgeobuf> {
    let kind = kind(shape, of_all);
    let name = match kind {
        GeometryType::Point => "Point",
        GeometryType::MultiPoint => "MultiPoint",
        // What is made of curved lines is a line all the same, and left out as one.
        GeometryType::LineString
        | GeometryType::CircularString
        | GeometryType::CompoundCurve
        | GeometryType::Curve => "LineString",
        GeometryType::MultiLineString | GeometryType::MultiCurve => "MultiLineString",
        GeometryType::Polygon => "Polygon",
        GeometryType::MultiPolygon => "MultiPolygon",
        GeometryType::GeometryCollection => return collection(shape, text),
        GeometryType::Unknown => return Err(BROKEN),
        other => return Err(other.variant_name().map_or(BROKEN, InFlatgeobuf::Curved)),
    };
    text.extend(br#"{"type":""#);
    text.extend(name.as_bytes());
    text.extend(br#"","coordinates":"#);
    match kind {
        GeometryType::Point => match positions(shape)?.first() {
            Some(at) => position(at, text),
            None => text.extend(b"[]"),
        },
        GeometryType::MultiLineString | GeometryType::MultiCurve | GeometryType::Polygon => {
            lines(&rings(shape)?, text);
        }
        GeometryType::MultiPolygon => list(&parts(shape)?, text, |rings, text| lines(rings, text)),
        _ => list(&positions(shape)?, text, position),
    }
    text.push(b'}');
    Ok(())
}

fn lines(all: &[Vec<Position>], text: &mut Vec<u8>) {
    list(all, text, |line, text| list(line, text, position));
}

fn collection(shape: &Geometry<'_>, text: &mut Vec<u8>) -> Result<(), InFlatgeobuf> {
    text.extend(br#"{"type":"GeometryCollection","geometries":["#);
    for (index, part) in shape.parts().into_iter().flatten().enumerate() {
        properties::separate(index, text);
        write(&part, GeometryType::Unknown, text)?;
    }
    text.extend(b"]}");
    Ok(())
}

/// The parts of a multipolygon; without parts it is one polygon.
fn parts(shape: &Geometry<'_>) -> Result<Polygons, InFlatgeobuf> {
    let mut polygons = Vec::new();
    if shape.xy().is_some_and(|xy| !xy.is_empty()) {
        polygons.push(rings(shape)?);
    }
    for part in shape.parts().into_iter().flatten() {
        match part.type_() {
            // Parts of parts would be ice that is lost.
            _ if part.parts().is_some_and(|parts| !parts.is_empty()) => return Err(BROKEN),
            // Some writers give a part the type of the whole.
            GeometryType::Unknown | GeometryType::Polygon | GeometryType::MultiPolygon => {
                polygons.push(rings(&part)?);
            }
            other => return Err(other.variant_name().map_or(BROKEN, InFlatgeobuf::Curved)),
        }
    }
    Ok(polygons)
}

/// Rings or lines: all positions in a row, and where each ends among them; without ends there is one.
fn rings(shape: &Geometry<'_>) -> Result<Vec<Vec<Position>>, InFlatgeobuf> {
    let at = positions(shape)?;
    let ends = shape.ends().filter(|ends| !ends.is_empty());
    let whole = u32::try_from(at.len()).map_err(|_| BROKEN)?;
    let ends: Vec<u32> = match ends {
        Some(ends) => ends.iter().collect(),
        None if at.is_empty() => return Ok(Vec::new()),
        None => return Ok(vec![at]),
    };
    // Positions behind the last end would be ice that is lost.
    if ends.last().copied().unwrap_or(0) != whole {
        return Err(BROKEN);
    }
    let mut from = 0;
    let ring = |end| {
        let to = usize::try_from(end).map_err(|_| BROKEN)?;
        let ring = at.get(from..to).ok_or(BROKEN)?.to_vec();
        from = to;
        Ok(ring)
    };
    ends.into_iter().map(ring).collect()
}

/// The positions of a geometry itself, not of its parts.
fn positions(shape: &Geometry<'_>) -> Result<Vec<Position>, InFlatgeobuf> {
    let bytes = shape.xy().map(|xy| xy.bytes()).unwrap_or_default();
    let (pairs, rest) = bytes.as_chunks::<16>();
    if !rest.is_empty() {
        return Err(BROKEN);
    }
    let number = |bytes: &[u8]| {
        let bytes = bytes.first_chunk::<8>();
        bytes.map_or(f64::NAN, |bytes| f64::from_le_bytes(*bytes))
    };
    let pair = |pair: &[u8; 16]| {
        let (x, y) = pair.split_at(8);
        [number(x), number(y)]
    };
    Ok(pairs.iter().map(pair).collect())
}

fn list<T>(all: &[T], text: &mut Vec<u8>, write: impl Fn(&T, &mut Vec<u8>)) {
    text.push(b'[');
    for (index, one) in all.iter().enumerate() {
        properties::separate(index, text);
        write(one, text);
    }
    text.push(b']');
}

fn position([lon_deg, lat_deg]: &Position, text: &mut Vec<u8>) {
    text.push(b'[');
    properties::number(*lon_deg, text);
    text.push(b',');
    properties::number(*lat_deg, text);
    text.push(b']');
}
