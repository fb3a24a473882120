//! Which format is printed: what `--format` names, or else what the ending of `--output` asks for.

use std::path::Path;

use schrund::write::{FORMATS, Format};

use crate::{
    answer::Answer,
    args::{OptionsArgs, OptionsFormat, PlanArgs},
    naming,
};

/// What is printed where nothing asks for anything else.
pub(crate) const UNASKED: &str = "table";

/// Endings beside those of the files in the set, each with its format.
const ALSO: [(&str, &str); 2] = [("txt", UNASKED), ("htm", "html")];

/// Endings that only another program writes: nothing of ours could be opened under them.
const FOREIGN: [&str; 12] = [
    "pdf", "doc", "docx", "odt", "xls", "xlsx", "ods", "png", "jpg", "jpeg", "kmz", "gpkg",
];

/// Characters of an ending; what is longer is part of a name. Our judgement.
const LONGEST: usize = 7;

/// The format that is asked for.
///
/// # Errors
/// The file has an ending that no format has.
pub(crate) fn format(args: &PlanArgs) -> Result<&'static dyn Format, Answer> {
    let ending = args.output.as_deref().and_then(ending);
    let path = args.output.as_deref().unwrap_or(Path::new(""));
    match (&args.format, ending) {
        (_, Some(ending)) if FOREIGN.contains(&ending.as_str()) => Err(no_format(path, &ending)),
        (Some(format), _) => Ok(format.0),
        (None, Some(ending)) => of(&ending).ok_or_else(|| no_format(path, &ending)),
        (None, None) => Ok(named(UNASKED)),
    }
}

/// The form of the options that is asked for.
///
/// # Errors
/// The file has an ending that neither form has.
pub(crate) fn options(args: &OptionsArgs) -> Result<OptionsFormat, Answer> {
    let path = args.output.as_deref().unwrap_or(Path::new(""));
    let ending = ending(path);
    let foreign = ending.as_deref().is_some_and(|e| FOREIGN.contains(&e));
    match (args.format, ending.as_deref()) {
        (Some(format), _) if !foreign => Ok(format),
        (_, None | Some("txt")) => Ok(OptionsFormat::Table),
        (_, Some("json")) => Ok(OptionsFormat::Json),
        (_, Some(ending)) => Err(Answer {
            says: format!("options are not written as .{ending}"),
            cure: format!(
                "`--output {}`: the table, for reading; or all of it as .json",
                naming::free(&path.with_extension("txt"))
            ),
        }),
    }
}

/// The endings that choose a format, each with its dot.
pub(crate) fn endings() -> Vec<String> {
    let files = FORMATS
        .iter()
        .filter_map(|format| ending(Path::new(format.file()?)));
    let mut endings: Vec<String> = Vec::new();
    for ending in files.map(|ending| format!(".{ending}")) {
        if !endings.contains(&ending) {
            endings.push(ending);
        }
    }
    endings
}

/// A name that is free, with an ending that is written.
pub(crate) fn free(path: &Path) -> String {
    match ending(path) {
        Some(ending) if of(&ending).is_none() => naming::free(&path.with_extension("txt")),
        _ => naming::free(path),
    }
}

/// The ending of a file's name in small letters: a few letters or digits, one letter at least.
fn ending(path: &Path) -> Option<String> {
    let ending = path.extension()?.to_str()?.to_ascii_lowercase();
    let plain = ending.chars().all(|c| c.is_ascii_alphanumeric());
    let lettered = ending.contains(|c: char| c.is_ascii_alphabetic());
    (plain && lettered && ending.len() <= LONGEST).then_some(ending)
}

/// The format that writes files with this ending.
fn of(wanted: &str) -> Option<&'static dyn Format> {
    let also = ALSO.iter().find(|(ending, _)| *ending == wanted);
    let own = |format: &&'static dyn Format| {
        let file = format.file().map(Path::new);
        file.and_then(ending).as_deref() == Some(wanted)
    };
    match also {
        Some((_, name)) => Some(named(name)),
        None => FORMATS.into_iter().find(own),
    }
}

fn named(name: &str) -> &'static dyn Format {
    let found = FORMATS.into_iter().find(|format| format.name() == name);
    found.unwrap_or(FORMATS[0])
}

fn no_format(path: &Path, ending: &str) -> Answer {
    let with = |end: &str| naming::free(&path.with_extension(end));
    let cure = match ending {
        "xls" | "xlsx" | "ods" => format!("`--output {}`: a spreadsheet opens that", with("csv")),
        "kmz" => format!("`--output {}`", with("kml")),
        "gpkg" => format!("`--output {}`: map programs open that", with("geojson")),
        "toml" => format!(
            "a trip file is given with `--trip {}`; the plan goes to another file: `--output {}`",
            path.display(),
            with("txt")
        ),
        _ if FOREIGN.contains(&ending) => format!(
            "`--output {}`: print that from the browser, on paper or as PDF",
            with("html")
        ),
        _ => format!(
            "`--output {}`; the endings are {}",
            with("txt"),
            endings().join(" ")
        ),
    };
    Answer {
        says: format!("no format is written as .{ending}"),
        cure,
    }
}
