//! Files that are missing from a call, or that are one too many.

use std::{fs, path::Path};

use super::{
    values::{kept, takes_value, without},
    words::{ends, value_of},
};
use schrund::strip::asked::{self, KILOMETRES};

use crate::{help, naming};

/// Files that nobody named, in a call to be filled in: in capitals, so that it is seen that they are to be replaced.
const ROUTE: &str = "ROUTE.gpx";
const ZONES: &str = "ZONES.geojson";
/// How the names of files of ice end.
const ICE: [&str; 3] = ["geojson", "json", "fgb"];

/// The call for a plan with the files of this call, as far as it names them.
pub(super) fn call(args: &[String], more: Option<&str>) -> String {
    let with = |end: &[&str], other| {
        let own = [value_of(args, "--glaciers"), value_of(args, "--trip")];
        let words = args.iter().map(String::as_str).chain(more);
        let mut files = words.filter(|arg| ends(arg, end) && !own.contains(&Some(*arg)));
        files.next().unwrap_or(other)
    };
    let command = args
        .iter()
        .find(|arg| *arg == "options")
        .map_or("plan", String::as_str);
    let (route, zones) = (with(&["gpx"], ROUTE), with(&ICE, ZONES));
    naming::call([command, route, zones])
}

/// The call for a plan with a trip file that stood in the place of the route or of the ice.
pub(crate) fn with_trip(args: &[String], trip: &str) -> String {
    let mut others: Vec<String> = Vec::new();
    for arg in args {
        if arg != trip {
            others.push(arg.clone());
        } else if others.last().is_some_and(|flag| takes_value(flag)) {
            // It was the value of another flag.
            others.pop();
        }
    }
    let flag = naming::typed(trip);
    format!("{}{} --trip {flag}", call(&others, None), kept(&others))
}

/// What must be given and is not.
pub(super) fn missing(given: &str, args: &[String]) -> (String, String) {
    if args.first().is_some_and(|arg| arg == "zone") {
        return of_zone(given, args);
    }
    if given.contains("<ROUTE>") || given.contains("<ZONES>") {
        return route_or_ice(given, args);
    }
    let of_heights = args.iter().any(|arg| arg == "height");
    let (says, cure) = if given.contains("<FILES>") && of_heights {
        (
            "no terrain model is named",
            "`schrund height heights.tif --at 7.65,45.97`",
        )
    } else if given.contains("<FILES>") {
        (
            "no file is named",
            "name what is to be checked: `schrund check route.gpx zones.geojson`",
        )
    } else if given.contains("--at") {
        (
            "no place is named",
            "longitude and latitude, as in `--at 7.65,45.97`, or a place of the UTM grid with its zone, as in `--at \"32T 396088 5092288\"`",
        )
    } else if given.contains("NAME") {
        (
            "no practice set is named",
            "`schrund practice short-alpine --toml`; `schrund practice` lists the sets",
        )
    } else if given.contains("<DIR>") {
        ("no folder is named", "name a new one: `schrund new tour`")
    } else {
        return of_which(given, args);
    };
    (says.to_owned(), cure.to_owned())
}

/// A zone by kilometre: the line, from where to where, the file.
fn of_zone(given: &str, args: &[String]) -> (String, String) {
    let route = args.iter().find(|arg| ends(arg, &["gpx"]));
    let route = naming::typed(route.map_or(ROUTE, String::as_str));
    let says = if given.contains("<ROUTE>") {
        "the line, from where to where, and the zones file are missing"
    } else if given.contains(KILOMETRES) {
        "nobody said from which kilometre to which"
    } else {
        "nobody said into which zones file"
    };
    let km = args.iter().skip(1).find(|arg| asked::stretch(arg).is_ok());
    let km = km.map_or(KILOMETRES, String::as_str);
    let into = naming::typed(value_of(args, "--into").unwrap_or("zones.geojson"));
    let others = without(args, "--into").into_iter().map(str::to_owned);
    let kept = kept(&others.collect::<Vec<String>>());
    let call = format!("`schrund zone {route} {km}{kept} --into {into}`");
    let more = match kept.contains("--gap") {
        true => "",
        false => ", and `--gap` with the widest gap that you expect, in metres",
    };
    let cure = format!("{call}, with kilometres as in `5.9-8.3`{more}");
    (says.to_owned(), cure)
}

/// A command that wants one of a few words behind it.
fn of_which(given: &str, args: &[String]) -> (String, String) {
    let command = args.first().map_or("plan", String::as_str);
    let plain = help::plain();
    let words = plain
        .find_subcommand(command)
        .into_iter()
        .flat_map(clap::Command::get_positionals)
        .flat_map(clap::Arg::get_possible_values)
        .map(|word| word.get_name().to_owned());
    let words: Vec<String> = words.collect();
    let says = match given {
        "<OF>" => "no document is named".to_owned(),
        "<SHELL>" => "no shell is named".to_owned(),
        given => format!("{given} is missing"),
    };
    let calls = help::examples(command).iter().map(|(call, _)| *call);
    let calls: Vec<String> = calls.take(1).map(|call| format!("`{call}`")).collect();
    let cure = format!("{}; there are {}", calls.join(""), words.join(", "));
    (says, cure)
}

fn route_or_ice(given: &str, args: &[String]) -> (String, String) {
    let is_ice = |arg: &String| ends(arg, &ICE);
    let kept = kept(args);
    let call = format!("{}{kept}", call(args, None));
    let more = if kept.contains("--party") || kept.contains("--trip") {
        ""
    } else {
        " --party 3"
    };
    let (says, cure) = if let Some(trip) = loose(args, &["toml"]) {
        (
            "route or ice is missing",
            format!("a trip file has its flag: `{call} --trip {trip}`"),
        )
    } else if given.contains("<ROUTE>") {
        (
            "the route and the ice are missing",
            format!(
                "`{call}{more}`: the line as GPX, the ice as GeoJSON, how many go; `--rope 60` for each rope at hand. `schrund new tour` makes a file to draw the ice in"
            ),
        )
    } else if args.iter().any(is_ice) {
        (
            "the route is missing",
            format!("it comes first, as GPX: `{call}{more}`"),
        )
    } else {
        (
            "the ice is missing",
            format!(
                "it comes second, as GeoJSON polygons with the width of their gaps: `{call}{more}`; `schrund new tour` makes a file to draw it in"
            ),
        )
    };
    (says.to_owned(), cure)
}

/// A word too many is a file that wants a flag, or a list that was torn by a blank.
pub(super) fn left_over(given: &str, args: &[String]) -> (String, String) {
    let cure = if ends(given, &["toml"]) {
        format!("a trip file has its flag: `--trip {given}`")
    } else if ends(given, &["tif", "tiff", "hgt"]) {
        format!("a terrain model has its flag: `--terrain {given}`")
    } else if ends(given, &ICE) {
        more_ice(given, args)
    } else if ends(given, &["gpx"]) {
        "one route at a time: join the files, a track each, and plan them as stages".to_owned()
    } else if ends(given, &["html", "htm", "csv", "kml", "txt"]) && !Path::new(given).exists() {
        format!("a file that is written has its flag: `--output {given}`")
    } else if let Some(list) = torn(given, args) {
        list
    } else {
        "take it out; a name with blanks stands between quotation marks".to_owned()
    };
    (format!("`{given}` is one word too many"), cure)
}

/// A second file of ice. Zones with gap widths are never offered as an inventory: their widths would be lost, and the
/// plan would be the lighter for it.
fn more_ice(given: &str, args: &[String]) -> String {
    let is_first = |arg: &&String| ends(arg, &ICE) && *arg != given;
    let Some(first) = args.iter().find(is_first) else {
        return among(args, given);
    };
    let copy = format!(
        "copy the polygons of {given} into {first} in the map editor; a wider gap along a part of the line is added with `schrund zone {ROUTE} 2-3 --gap 6 --into {first}`, the wider one counts"
    );
    match tells_gaps(given) {
        Some(false) => format!(
            "one zones file is read: {copy}; if {given} is a glacier inventory, outlines without gap widths, give it with `--glaciers {given}`"
        ),
        _ => format!("one zones file is read: {copy}"),
    }
}

/// The only file of ice is one word too many: another word has its flag, or the two come first.
fn among(args: &[String], ice: &str) -> String {
    match loose(args, &["toml", "tif", "tiff", "hgt"]) {
        Some(trip) if ends(trip, &["toml"]) => {
            format!("a trip file has its flag: `--trip {trip}`; route and ice come first")
        }
        Some(model) => {
            format!("a terrain model has its flag: `--terrain {model}`; route and ice come first")
        }
        None => format!("it comes second, behind the route: `schrund plan {ROUTE} {ice}`"),
    }
}

/// The first word with such an ending that stands behind no flag.
fn loose<'a>(args: &'a [String], wanted: &[&str]) -> Option<&'a str> {
    let pairs = args.iter().zip(args.iter().skip(1));
    let mut loose = pairs.filter(|(before, word)| !before.starts_with('-') && ends(word, wanted));
    loose.next().map(|(_, word)| word.as_str())
}

/// Whether a file of ice has a word of gaps in it, however spelt; nothing where it cannot be read.
fn tells_gaps(name: &str) -> Option<bool> {
    let text = fs::read(name).ok()?.to_ascii_lowercase();
    Some(memchr::memmem::find(&text, b"gap").is_some())
}

/// The list of a flag that a blank tore in pieces, put together.
fn torn(given: &str, args: &[String]) -> Option<String> {
    let at = args.iter().position(|arg| arg == given)?;
    let before = args.get(..at)?;
    let flag = before.iter().rposition(|arg| arg.starts_with("--"))?;
    let pieces = args.get(flag + 1..)?.iter();
    let is_piece = |arg: &&String| arg.starts_with(|c: char| c.is_ascii_digit());
    let pieces: Vec<&str> = pieces
        .take_while(is_piece)
        .map(|p| p.trim_matches(','))
        .collect();
    let flag = args.get(flag)?;
    let whole = pieces.len() > at - before.iter().rposition(|arg| arg == flag)? - 1;
    match flag.as_str() {
        "--party" | "--teams" if whole => Some(format!(
            "a list has commas and no blanks: `{flag} {}`",
            pieces.join(",")
        )),
        "--rope" if whole => {
            let each: Vec<String> = pieces.iter().map(|m| format!("--rope {m}")).collect();
            Some(format!("each rope has its own flag: `{}`", each.join(" ")))
        }
        _ => None,
    }
}
