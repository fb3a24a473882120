//! Files that are missing from a call, or that are one too many.

use super::{
    values::kept,
    words::{ends, value_of},
};
use crate::help;

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
    let (route, zones) = (
        with(&["gpx"], "route.gpx"),
        with(&["geojson", "json"], "zones.geojson"),
    );
    format!("schrund {command} {route} {zones}")
}

/// What must be given and is not.
pub(super) fn missing(given: &str, args: &[String]) -> (String, String) {
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
        let command = args.first().map_or("plan", String::as_str);
        let says = format!("`schrund {command}` wants a word more: {given}");
        let calls = help::examples(command).iter().map(|(call, _)| *call);
        let calls: Vec<String> = calls.map(|call| format!("`{call}`")).collect();
        return (says, format!("as in {}", calls.join(" or ")));
    };
    (says.to_owned(), cure.to_owned())
}

fn route_or_ice(given: &str, args: &[String]) -> (String, String) {
    let is_ice = |arg: &String| ends(arg, &["geojson", "json"]);
    let kept = kept(args);
    let call = format!("{}{kept}", call(args, None));
    let more = if kept.contains("--party") || kept.contains("--trip") {
        ""
    } else {
        " --party 3 --rope 60"
    };
    let (says, cure) = if given.contains("<ROUTE>") {
        (
            "the route and the ice are missing",
            format!(
                "`{call}{more}`: the line as GPX, then the ice as GeoJSON; `schrund new tour` makes a file to draw the ice in"
            ),
        )
    } else if args.iter().any(is_ice) {
        (
            "the route is missing",
            format!("it comes first, as GPX: `{call}`"),
        )
    } else {
        (
            "the ice is missing",
            format!(
                "it comes second, as GeoJSON polygons with the width of their gaps: `{call}`; `schrund new tour` makes a file to draw it in"
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
    } else if ends(given, &["geojson", "json"]) {
        format!(
            "a glacier inventory has its flag: `--glaciers {given}`; zones stand in one file, so those of {given} have to go into the other"
        )
    } else if ends(given, &["gpx"]) {
        "one route at a time: join the files, a track each, and plan them as stages".to_owned()
    } else if let Some(list) = torn(given, args) {
        format!("a list has commas and no blanks: `{list}`")
    } else {
        "take it out; a name with blanks stands between quotation marks".to_owned()
    };
    (format!("`{given}` is one word too many"), cure)
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
        "--party" | "--teams" if whole => Some(format!("{flag} {}", pieces.join(","))),
        "--rope" if whole => Some(
            pieces
                .iter()
                .map(|m| format!("--rope {m}"))
                .collect::<Vec<_>>()
                .join(" "),
        ),
        _ => None,
    }
}
