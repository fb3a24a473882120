//! Zones files in words.

use super::{counted, numbers, place::as_it_stands};
use crate::fault::geojson::{
    InGeojson, Misplaced, NoLonLat, NoPosition, NoType, NotPolygons, Object, Thing,
};

const COLLECTION: &str =
    "a file of zones is {\"type\": \"FeatureCollection\", \"features\": [ … ]}";
const KEEP_ONE: &str = "keep the one that is right";

pub(super) fn says(what: &InGeojson) -> String {
    match what {
        InGeojson::Empty => "the file is empty".to_owned(),
        InGeojson::IsXml => "this is XML, not GeoJSON".to_owned(),
        InGeojson::IsUtf16 => "this is UTF-16 text".to_owned(),
        InGeojson::CutOff => "the text stops before the JSON is complete".to_owned(),
        InGeojson::Broken(words) => format!("broken JSON: {words}"),
        InGeojson::ForeignCrs(name) => {
            format!("the file says its coordinates are in \"{name}\"")
        }
        InGeojson::UnknownCrs(found) => format!(
            "the file has a `crs` that names no known system: {}",
            thing(found)
        ),
        InGeojson::Twice(None) => "the property stands there twice".to_owned(),
        InGeojson::Twice(Some(name)) => format!("`{name}` stands there twice"),
        InGeojson::SwappedAxes => "no zone lies near the route, but with longitude and latitude swapped zones would meet it".to_owned(),
        InGeojson::NoZones(features) => no_zones(*features),
        InGeojson::NotPolygons(left_out) => not_polygons(*left_out),
        InGeojson::NoArea(n) => format!(
            "{} left out: fewer than three different points cover nothing",
            counted(*n, "polygon")
        ),
        InGeojson::RingsClosed(n) => format!(
            "{} closed: the last point was not the first",
            counted(*n, "ring")
        ),
        InGeojson::RingsTangled(n) => format!(
            "{} with a line that touches or crosses itself: what a ring winds round counts as ice",
            counted(*n, "ring")
        ),
        what => form(what).unwrap_or_else(|| numbers::says(what)),
    }
}

/// What is wrong with the form of objects and coordinates.
fn form(what: &InGeojson) -> Option<String> {
    Some(match what {
        InGeojson::Type { of, why, .. } => no_type(*of, why),
        InGeojson::Stands { found, due } => {
            let due = match due {
                Object::Feature => "a Feature",
                _ => "a GeoJSON object",
            };
            format!("{} stands where {due} should", thing(found))
        }
        InGeojson::HoldsFeatures(kind) => format!("a {kind} holds `features`"),
        InGeojson::FeaturesNoList(found) => format!("`features` is {}, not a list", thing(found)),
        InGeojson::NoFeatures => "the FeatureCollection has no `features`".to_owned(),
        InGeojson::PropertiesNoObject(found) => {
            format!("`properties` is {}, not an object", thing(found))
        }
        InGeojson::GeometryNoObject(found) => {
            format!("the geometry is {}, not an object", thing(found))
        }
        InGeojson::NoCoordinates(kind) => format!("the {kind} has no `coordinates`"),
        InGeojson::NoGeometries => "the GeometryCollection has no list of `geometries`".to_owned(),
        InGeojson::Shallow {
            way,
            found,
            positions,
            ..
        } => {
            let due = if *positions { "positions" } else { "lists" };
            let (way, found) = (way_to(way), as_it_stands(found));
            format!("{way}holds {found} where a list of {due} should stand")
        }
        InGeojson::NoPosition { way, why } => format!("{}{}", way_to(way), no_position(why)),
        InGeojson::Misplaced(misplaced) => self::misplaced(misplaced),
        InGeojson::Huge => "a coordinate is too large to be a number".to_owned(),
        InGeojson::Deep => "the geometry is nested too deeply to be read".to_owned(),
        _ => return None,
    })
}

/// How to mend it; `file` is where it stands.
pub(super) fn hint(what: &InGeojson, file: &str) -> Option<String> {
    let hint = match what {
        InGeojson::Empty => "draw the zones as polygons in a map editor and save them as GeoJSON",
        InGeojson::IsXml => "save or convert the zones as GeoJSON; a GPX file is the route",
        InGeojson::IsUtf16 => "save the file as UTF-8",
        InGeojson::CutOff => "the file was cut off: save or download it again",
        InGeojson::Broken(_) => "mend the text here, or save it again from the map editor",
        InGeojson::ForeignCrs(_) | InGeojson::UnknownCrs(_) => {
            let command = command(file, "");
            return Some(format!(
                "convert it to longitude/latitude on WGS 84: {command}"
            ));
        }
        InGeojson::Type { why, known, .. } => return Some(type_hint(why, known)),
        InGeojson::Stands {
            due: Object::Feature,
            ..
        } => "take it out of the list",
        InGeojson::Stands { .. } | InGeojson::FeaturesNoList(_) | InGeojson::NoFeatures => {
            COLLECTION
        }
        InGeojson::HoldsFeatures(_) => "if it is a collection, its `type` is \"FeatureCollection\"",
        InGeojson::Twice(_) => KEEP_ONE,
        InGeojson::PropertiesNoObject(_) => "`properties` is a list of names and values in braces",
        InGeojson::Shallow { kind, .. } => {
            return Some(format!("this is not how the coordinates of a {kind} look"));
        }
        InGeojson::NoPosition { .. } => {
            "a position is [longitude, latitude], two plain numbers in degrees"
        }
        InGeojson::Misplaced(misplaced) => return Some(misplaced_hint(misplaced.why, file)),
        InGeojson::Huge => "longitudes and latitudes are degrees",
        InGeojson::SwappedAxes => {
            "GeoJSON positions are [longitude, latitude]; swap the two numbers of each"
        }
        InGeojson::NoZones(_) => "draw the broken ice as polygons and give each a `gap_m`",
        what => return numbers::hint(what),
    };
    Some(hint.to_owned())
}

/// What a JSON value is, in words.
fn thing(found: &Thing) -> String {
    let words = match found {
        Thing::Null => "null",
        Thing::List => "a list",
        Thing::Object => "an object",
        Thing::Truth => "true or false",
        Thing::Number => "a number",
        Thing::Text => "a text",
        Thing::Value(value) => return as_it_stands(value),
    };
    words.to_owned()
}

fn object(of: Object) -> &'static str {
    match of {
        Object::File => "file",
        Object::Feature => "feature",
        Object::Geometry => "geometry",
    }
}

fn no_type(of: Object, why: &NoType) -> String {
    let of = object(of);
    match why {
        NoType::Missing => format!("the {of} has no `type`"),
        NoType::NoWord(found) => format!("the `type` of the {of} is {}, not a word", thing(found)),
        NoType::Misspelt { given, .. } => format!("\"{given}\" is not spelt as GeoJSON has it"),
        NoType::Unknown(given) => format!("\"{given}\" is no type of a {of}"),
    }
}

fn type_hint(why: &NoType, known: &[&str]) -> String {
    match (why, known) {
        (NoType::Misspelt { right, .. }, _) => format!("write \"{right}\""),
        (_, [word]) => format!("write \"{word}\""),
        (_, words) => format!("write one of {}", words.join(", ")),
    }
}

/// `polygon 2, ring 1, position 5 `, or what the coordinates as a whole are called.
fn way_to(way: &[(&str, usize)]) -> String {
    if way.is_empty() {
        return "`coordinates` ".to_owned();
    }
    let steps: Vec<_> = way.iter().map(|(what, n)| format!("{what} {n}")).collect();
    format!("{} ", steps.join(", "))
}

fn no_position(why: &NoPosition) -> String {
    match why {
        NoPosition::Is(found) => format!("is {}, not a position", as_it_stands(found)),
        NoPosition::Holds(found) => {
            format!("holds {} where a number should stand", as_it_stands(found))
        }
        NoPosition::Empty => "is empty".to_owned(),
        NoPosition::OneNumber(found) => format!("has one number only: {}", as_it_stands(found)),
    }
}

fn misplaced(misplaced: &Misplaced) -> String {
    let plain = |n: &f64| {
        if n.abs() < 1e15 {
            n.to_string()
        } else {
            format!("{n:e}")
        }
    };
    let two: Vec<String> = misplaced.numbers.iter().take(2).map(plain).collect();
    let says = match misplaced.why {
        NoLonLat::TooShort => "is no position: it takes two numbers",
        NoLonLat::Projected => {
            "cannot be degrees, for a number lies beyond ±360; it looks like metres of a map grid"
        }
        NoLonLat::Longitude => "has a longitude beyond ±180°",
        NoLonLat::Latitude => "has a latitude beyond ±90°",
        NoLonLat::Swapped => {
            "has a latitude beyond ±90°; the other way round it would be a position"
        }
    };
    let ring = match misplaced.ring {
        0 => "outer ring".to_owned(),
        n => format!("hole {n}"),
    };
    let polygon = misplaced.polygon;
    let polygon = polygon.map_or(String::new(), |n| format!(" of polygon {n}"));
    let position = misplaced.position;
    format!(
        "[{}] {says} (position {position}, {ring}{polygon})",
        two.join(", ")
    )
}

/// The two EPSG numbers are from memory.
fn misplaced_hint(why: NoLonLat, file: &str) -> String {
    match why {
        NoLonLat::Projected => format!(
            "find out which map grid it is (2056 is Swiss LV95, 25832 is UTM 32N) and convert: {}",
            command(file, "-s_srs EPSG:2056 ")
        ),
        NoLonLat::Longitude => {
            "longitudes run from -180 to 180: add or take away 360 where the map was scrolled on"
                .to_owned()
        }
        NoLonLat::Swapped => "GeoJSON has the longitude first: swap the two numbers".to_owned(),
        NoLonLat::TooShort | NoLonLat::Latitude => {
            "a position is [longitude, latitude] in degrees".to_owned()
        }
    }
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

fn no_zones(features: usize) -> String {
    match features {
        0 => "the file holds no feature at all".to_owned(),
        1 => "the only feature is no polygon with an area".to_owned(),
        n => format!("none of the {n} features is a polygon with an area"),
    }
}

fn not_polygons(left_out: NotPolygons) -> String {
    let left_out = [
        (left_out.points, "point"),
        (left_out.lines, "line"),
        (left_out.empty, "empty geometry"),
    ];
    let left_out = left_out.into_iter().filter(|(n, _)| *n > 0);
    let left_out: Vec<String> = left_out.map(|(n, noun)| counted(n, noun)).collect();
    format!("{} left out: only polygons are zones", left_out.join(", "))
}
