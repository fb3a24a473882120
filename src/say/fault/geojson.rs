//! Zones files in words.

use super::{
    numbers,
    phrase::{Phrase, PhraseArgs, list, name, number},
    quote::{self, as_it_stands},
};
use crate::{
    fault::{
        coordinates::{MapGrid, Misplaced, NoLonLat, NoPosition},
        geojson::{InGeojson, NoType, NotPolygons, Object, Thing},
        place::{Excerpt, STANDARD_INPUT},
    },
    say::{arg::Arg, span::Said, voice::Voice},
};

/// `file` is where it stands.
pub(super) fn phrase(what: &InGeojson, file: &str, voice: Voice) -> Phrase {
    match what {
        InGeojson::Empty => Phrase::plain("zones-empty"),
        InGeojson::Is(instead) => Phrase::of(
            "zones-is",
            [
                ("what", Arg::Word(super::gpx::word(instead))),
                ("command", command(file, "")),
                ("file", name(file)),
            ],
        ),
        InGeojson::IsUtf16 => Phrase::plain("zones-utf16"),
        InGeojson::CutOff => Phrase::plain("zones-cut-off"),
        InGeojson::Broken(words) => Phrase::of("zones-broken", [("words", name(words))]),
        InGeojson::ForeignCrs(system) => Phrase::of(
            "zones-foreign-crs",
            [("name", name(system)), ("command", command(file, ""))],
        ),
        InGeojson::UnknownCrs(found) => {
            Phrase::of("zones-unknown-crs", [("command", command(file, ""))]).and(thing(found))
        }
        InGeojson::Misplaced(misplaced) => self::misplaced(misplaced, file),
        InGeojson::SwappedAxes => Phrase::plain("zones-swapped-axes"),
        InGeojson::NoZones(n, left_out) => no_zones(*n, *left_out, voice),
        InGeojson::NoIce(n) => Phrase::of("inventory-none", [("features", Arg::Count(*n))]),
        InGeojson::InventoryGaps(n) => Phrase::of("inventory-gaps", [("outlines", Arg::Count(*n))]),
        InGeojson::EmptyInventory => Phrase::plain("inventory-empty"),
        InGeojson::NotPolygons(left_out) => not_polygons("zones-not-polygons", *left_out, voice),
        InGeojson::IceUndrawn(property) => {
            Phrase::of("zones-ice-undrawn", [("property", Arg::Code(property))])
        }
        InGeojson::NoArea(n) => Phrase::of("zones-no-area", [("n", Arg::Count(*n))]),
        InGeojson::LongitudesTakenBack(n) => {
            Phrase::of("longitudes-taken-back", [("n", Arg::Count(*n))])
        }
        InGeojson::RingsClosed(n) => Phrase::of("zones-rings-closed", [("n", Arg::Count(*n))]),
        InGeojson::RingsTangled(n) => Phrase::of("zones-rings-tangled", [("n", Arg::Count(*n))]),
        InGeojson::OuterNotFirst(n) => Phrase::of("zones-outer-not-first", [("n", Arg::Count(*n))]),
        InGeojson::RingsApart(n) => Phrase::of("zones-rings-apart", [("n", Arg::Count(*n))]),
        InGeojson::HolesStickOut(n) => Phrase::of("zones-holes-stick-out", [("n", Arg::Count(*n))]),
        what => form(what, voice).unwrap_or_else(|| numbers::phrase(what, voice)),
    }
}

/// What is wrong with the form of objects and coordinates.
fn form(what: &InGeojson, voice: Voice) -> Option<Phrase> {
    Some(match what {
        InGeojson::Type { of, why, known } => no_type(*of, why, known),
        InGeojson::Stands { found, due } => Phrase::plain(match due {
            Object::Feature => "zones-no-feature",
            _ => "zones-no-object",
        })
        .and(thing(found)),
        InGeojson::HoldsFeatures(kind) => {
            Phrase::of("zones-holds-features", [("kind", name(*kind))])
        }
        InGeojson::FeaturesNoList(found) => {
            Phrase::plain("zones-features-no-list").and(thing(found))
        }
        InGeojson::NoFeatures => Phrase::plain("zones-no-features"),
        InGeojson::PropertyTwice { found } => {
            Phrase::of("zones-property-twice", [("found", each_found(found))])
        }
        InGeojson::MemberTwice(member) => {
            Phrase::of("zones-member-twice", [("name", name(*member))])
        }
        InGeojson::PropertiesNoObject(found) => {
            Phrase::plain("zones-properties-no-object").and(thing(found))
        }
        InGeojson::GeometryNoObject(found) => {
            Phrase::plain("zones-geometry-no-object").and(thing(found))
        }
        InGeojson::NoCoordinates(kind) => {
            Phrase::of("zones-no-coordinates", [("kind", name(*kind))])
        }
        InGeojson::NoGeometries => Phrase::plain("zones-no-geometries"),
        InGeojson::Shallow {
            way,
            found,
            positions,
            kind,
        } => Phrase::of(
            "zones-shallow",
            [
                ("way", way_to(way, voice)),
                ("found", as_it_stands(found)),
                (
                    "due",
                    Arg::Word(if *positions { "positions" } else { "lists" }),
                ),
                ("kind", name(*kind)),
            ],
        ),
        InGeojson::NoPosition { way, why } => {
            Phrase::of("zones-no-position", [("way", way_to(way, voice))]).and(no_position(why))
        }
        InGeojson::Huge => Phrase::plain("zones-huge"),
        InGeojson::Deep => Phrase::plain("zones-deep"),
        _ => return None,
    })
}

/// Several values of a file in a row.
fn each_found(found: &[Excerpt]) -> Arg<'static> {
    Arg::Said(Said::join(found.iter().map(quote::said), ", "))
}

/// What a JSON value is.
fn thing(found: &Thing) -> PhraseArgs {
    let word = match found {
        Thing::Null => "null",
        Thing::List => "list",
        Thing::Object => "object",
        Thing::Truth => "truth",
        Thing::Number => "number",
        Thing::Text => "text",
        Thing::Value(_) => "value",
    };
    let found = match found {
        Thing::Value(value) => as_it_stands(value),
        _ => name(""),
    };
    vec![("thing", Arg::Word(word)), ("found", found)]
}

fn no_type(of: Object, why: &NoType, known: &[&'static str]) -> Phrase {
    let of = match of {
        Object::File => "file",
        Object::Feature => "feature",
        Object::Geometry => "geometry",
    };
    let words = match known {
        [word] => name(format!("\"{word}\"")),
        words => list(words.iter().copied()),
    };
    let args = vec![
        ("of", Arg::Word(of)),
        ("count", Arg::Count(known.len())),
        ("words", words),
    ];
    match why {
        NoType::Missing => Phrase::plain("zones-no-type"),
        NoType::NoWord(found) => Phrase::plain("zones-type-no-word").and(thing(found)),
        NoType::Misspelt { given, right } => Phrase::of(
            "zones-type-misspelt",
            [("given", name(given)), ("right", name(*right))],
        ),
        NoType::Unknown(given) => Phrase::of("zones-type-unknown", [("given", name(given))]),
    }
    .and(args)
}

/// `polygon 2, ring 1, position 5`, or what the coordinates as a whole are called.
fn way_to(way: &[(&'static str, usize)], voice: Voice) -> Arg<'static> {
    if way.is_empty() {
        return Arg::Said(voice.say("way-whole", &[]));
    }
    let step = |(level, n): &(&'static str, usize)| {
        let args = [("level", Arg::Word(level)), ("n", Arg::Count(*n))];
        voice.say("way-step", &args)
    };
    Arg::Said(Said::join(way.iter().map(step), ", "))
}

fn no_position(why: &NoPosition) -> PhraseArgs {
    let (why, found) = match why {
        NoPosition::Is(found) => ("is", as_it_stands(found)),
        NoPosition::Holds(found) => ("holds", as_it_stands(found)),
        NoPosition::Empty => ("empty", name("")),
        NoPosition::OneNumber(found) => ("one", as_it_stands(found)),
    };
    vec![("why", Arg::Word(why)), ("found", found)]
}

fn misplaced(misplaced: &Misplaced, file: &str) -> Phrase {
    let plain = |n: &f64| {
        if n.abs() < 1e15 {
            n.to_string()
        } else {
            format!("{n:e}")
        }
    };
    let two: Vec<String> = misplaced.numbers.iter().take(2).map(plain).collect();
    let why = match misplaced.why {
        NoLonLat::TooShort => "short",
        NoLonLat::Projected => "projected",
        NoLonLat::Longitude => "longitude",
        NoLonLat::Latitude => "latitude",
        NoLonLat::Swapped => "swapped",
    };
    Phrase::of(
        "zones-misplaced",
        [
            ("numbers", number(two.join(", "))),
            ("why", Arg::Word(why)),
            ("position", Arg::Count(misplaced.position)),
            ("ring", Arg::Count(misplaced.ring)),
            ("polygon", Arg::Count(misplaced.polygon.unwrap_or(0))),
        ],
    )
    .and(grid(&misplaced.grids, file))
}

/// The command with the map grid; it is told where one alone fits.
fn grid(grids: &[MapGrid], file: &str) -> PhraseArgs {
    let number = grids.first().map_or(0, |grid| grid.epsg);
    let names = grids
        .iter()
        .map(|grid| format!("EPSG:{} ({})", grid.epsg, grid.name));
    let from = format!("-s_srs EPSG:{number} ");
    vec![
        ("fitting", Arg::Count(grids.len())),
        ("grids", list(names)),
        ("command", command(file, &from)),
    ]
}

/// The command of GDAL that writes the file anew on WGS 84.
pub(super) fn command(file: &str, from: &str) -> Arg<'static> {
    let is_file = file != STANDARD_INPUT && !file.contains("://");
    let input = if is_file { file } else { "zones.geojson" };
    let last = input.rsplit(['/', '\\']).next().unwrap_or(input);
    let stem = last.rsplit_once('.').map_or(last, |(stem, _)| stem);
    let output = format!("{stem}-wgs84.geojson");
    name(format!(
        "ogr2ogr {from}-t_srs EPSG:4326 -lco RFC7946=YES {} {}",
        in_shell(&output),
        in_shell(input)
    ))
}

fn in_shell(path: &str) -> String {
    let plain = |c: char| c.is_alphanumeric() || "._-/\\:".contains(c);
    if path.chars().all(plain) {
        path.to_owned()
    } else {
        format!("\"{path}\"")
    }
}

fn no_zones(features: usize, left_out: NotPolygons, voice: Voice) -> Phrase {
    let NotPolygons {
        points,
        lines,
        empty,
    } = left_out;
    let args = vec![
        ("features", Arg::Count(features)),
        ("others", Arg::Count(points + lines + empty)),
    ];
    not_polygons("zones-none", left_out, voice).and(args)
}

fn not_polygons(key: &'static str, left_out: NotPolygons, voice: Voice) -> Phrase {
    let left_out = [
        ("left-out-points", left_out.points),
        ("left-out-lines", left_out.lines),
        ("left-out-empty", left_out.empty),
    ];
    let left_out = left_out.into_iter().filter(|(_, n)| *n > 0);
    let left_out = left_out.map(|(key, n)| voice.say(key, &[("n", Arg::Count(n))]));
    let left_out = Arg::Said(Said::join(left_out, ", "));
    Phrase::of(key, [("left-out", left_out)])
}
