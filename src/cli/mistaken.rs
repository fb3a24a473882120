//! Arguments that were meant otherwise, each answered with what to write.

use std::slice;

use clap::error::{ContextKind, ContextValue, Error, ErrorKind};

/// What to write in place of flags that there are not. Our judgement of what people try.
const MEANT: [(&[&str], &str); 14] = [
    (
        &["--route", "--gpx", "--track", "--line"],
        "the route comes first, without a flag: `schrund plan route.gpx zones.geojson`",
    ),
    (
        &["--zones", "--zone", "--ice", "--geojson"],
        "the zones come second, without a flag: `schrund plan route.gpx zones.geojson`",
    ),
    (
        &[
            "--people",
            "--persons",
            "--person",
            "--team",
            "--members",
            "--n",
            "-p",
            "-n",
        ],
        "`--party 3`, or their masses with pack in kg: `--party 82,75,90`",
    ),
    (
        &["--ropes", "--length", "-r"],
        "`--rope 60`, once for each rope",
    ),
    (
        &["--date", "--day"],
        "the date stands in the trip file, as `date = \"2027-08-21\"`: `schrund new DIR` makes one, `--trip trip.toml` takes it",
    ),
    (
        &["--dem", "--heights", "--elevation", "--model", "--dtm"],
        "`--terrain FILE`, once for each file",
    ),
    (
        &["--glacier", "--inventory", "--outlines"],
        "`--glaciers FILE`",
    ),
    (&["--config", "--conf", "-c", "-t"], "`--trip trip.toml`"),
    (
        &[
            "--json", "--html", "--csv", "--kml", "--table", "--text", "--report", "-f",
        ],
        "`--format json`, or html, csv, geojson, kml, gpx, text; `--out DIR` writes all of them",
    ),
    (
        &["--crevasse", "--crevasses", "--width", "--gap-m", "--gaps"],
        "`--gap 6` for zones that give no width; each zone has its own `gap_m` in the zones file",
    ),
    (
        &["--spacing", "--distance", "--knots", "--coils", "--coil"],
        "what is taught comes from a practice set: `--practice NAME`, or one figure of it: `--assume NAME=VALUE`",
    ),
    (
        &["--feet", "--ft", "--imperial", "--metric"],
        "`--units imperial`",
    ),
    (
        &["--all", "--details", "--full"],
        "`--detail` prints all there is",
    ),
    (&["--output-dir", "--dir", "-d"], "`--out DIR`"),
];

/// What to do about a call that was not understood; nothing where clap says it well enough.
pub(crate) fn cure(error: &Error) -> Option<String> {
    let named: &[String] = match error.get(ContextKind::InvalidArg) {
        Some(ContextValue::String(given)) => slice::from_ref(given),
        Some(ContextValue::Strings(missing)) => missing,
        _ => &[],
    };
    let given = named.last().map_or("", String::as_str);
    let missing = |name: &str| named.iter().any(|one| one.contains(name));
    let refused = match error.get(ContextKind::InvalidValue) {
        Some(ContextValue::String(value)) => value.as_str(),
        _ => "",
    };
    match error.kind() {
        ErrorKind::UnknownArgument => flag(given).map_or_else(|| left_over(given), |says| Some(says.to_owned())),
        ErrorKind::MissingRequiredArgument if missing("ROUTE") => Some(
            "the line comes first, as GPX, then the ice, as GeoJSON: `schrund plan route.gpx zones.geojson --party 3 --rope 60`; `schrund new DIR` makes files to fill in".to_owned(),
        ),
        ErrorKind::MissingRequiredArgument if missing("ZONES") => Some(
            "the ice comes second, as GeoJSON polygons with the width of the gaps: `schrund new DIR` makes files to fill in".to_owned(),
        ),
        ErrorKind::MissingRequiredArgument if missing("FILES") => {
            Some("name what is to be checked: `schrund check route.gpx zones.geojson trip.toml`".to_owned())
        }
        ErrorKind::InvalidValue | ErrorKind::ValueValidation => value(given, refused),
        _ => None,
    }
}

/// How the value of a flag is written. Our judgement of what people try.
fn value(given: &str, refused: &str) -> Option<String> {
    let name = given.split(' ').next().unwrap_or(given);
    let says = match (name, refused) {
        ("--gap", "") => "write it behind the flag: `--gap 6`",
        ("--format", "pdf" | "PDF") => {
            "`--format html -o plan.html`, then open it in a browser and print it as PDF"
        }
        ("--format", _) => "take one of these, or `--out DIR` for all of them",
        ("--party", _) => "`--party 3`, or their masses with pack in kg: `--party 82,75,90`",
        ("--rope", list) if list.split(',').all(|one| one.parse::<f64>().is_ok()) => {
            let flags: Vec<String> = list.split(',').map(|one| format!("--rope {one}")).collect();
            return Some(format!("`{}`, a flag for each rope", flags.join(" ")));
        }
        ("--rope", _) => "`--rope 60`, once for each rope",
        ("--start", _) => "`--start 04:30`",
        ("--margin", _) => "`--margin 20`, in metres",
        ("--gap", _) => "`--gap 6`, in metres",
        ("--units", "feet" | "ft") => "`--units imperial` shows feet",
        ("--at", _) => "latitude and longitude with a comma between: `--at 46.5,7.98`",
        _ => return None,
    };
    Some(says.to_owned())
}

fn flag(given: &str) -> Option<&'static str> {
    let name = given.split('=').next().unwrap_or(given);
    let known = MEANT.iter().find(|(names, _)| names.contains(&name));
    known.map(|(_, says)| *says)
}

/// A word too many is a file that wants a flag, or a list that was torn by a blank.
fn left_over(given: &str) -> Option<String> {
    let lower = given.to_lowercase();
    let ends = |ends: &[&str]| ends.iter().any(|end| lower.ends_with(end));
    if given.starts_with('-') {
        None
    } else if ends(&[".toml"]) {
        Some(format!("a trip file has its flag: `--trip {given}`"))
    } else if ends(&[".tif", ".tiff", ".hgt"]) {
        Some(format!("a terrain model has its flag: `--terrain {given}`"))
    } else if ends(&[".geojson", ".json"]) {
        Some(format!(
            "all zones stand in one file; a glacier inventory has its flag: `--glaciers {given}`"
        ))
    } else if ends(&[".gpx"]) {
        Some(
            "one route at a time: join the files, a track each, and plan them as stages".to_owned(),
        )
    } else if given.parse::<f64>().is_ok() {
        Some(
            "a list has commas and no blanks: `--party 82,75,90`; each rope has its own `--rope`"
                .to_owned(),
        )
    } else {
        None
    }
}
