//! Slips of the keyboard, of copied text and of the shell, told before what they lead to.

use std::path::Path;

use super::{
    files,
    values::{self, kept},
    words::ends,
};
use crate::{help, naming};

/// What text programs and web pages make of two hyphens.
const LONG_DASHES: [char; 6] = ['\u{2010}', '\u{2011}', '\u{2012}', '–', '—', '−'];

/// How the names of inputs end.
const INPUTS: [&str; 7] = ["gpx", "geojson", "json", "toml", "tif", "tiff", "hgt"];

/// Inputs that stand behind a flag, by how their names end.
const OWN_FLAGS: [(&str, &[&str]); 2] = [
    ("--trip", &["toml"]),
    ("--terrain", &["tif", "tiff", "hgt"]),
];

/// What is wrong with how the call was typed, and the call as it is meant.
pub(super) fn slip(args: &[String]) -> Option<(String, String)> {
    let (says, cure) = long_dash(args)
        .or_else(|| one_word(args))
        .or_else(|| values::skipped(args))
        .or_else(|| torn_name(args))
        .or_else(|| capitals(args))?;
    Some((says, cure))
}

/// A call of these words.
pub(super) fn call<'w>(words: impl IntoIterator<Item = &'w str>) -> String {
    format!("`{}`", naming::call(words))
}

fn long_dash(args: &[String]) -> Option<(String, String)> {
    let joined = joined(args);
    let first = joined.iter().find(|arg| hyphened(arg).is_some())?;
    let meant: Vec<String> = joined
        .iter()
        .map(|arg| hyphened(arg).unwrap_or_else(|| arg.clone()))
        .collect();
    Some((
        format!("`{first}` begins with a long dash, as text programs write it"),
        format!(
            "with two hyphens: {}",
            call(meant.iter().map(String::as_str))
        ),
    ))
}

/// The words of a call; a long dash alone belongs to the word behind it.
fn joined(args: &[String]) -> Vec<String> {
    let is_dash = |arg: &String| !arg.is_empty() && arg.chars().all(|c| LONG_DASHES.contains(&c));
    let mut joined: Vec<String> = Vec::new();
    for arg in args {
        match joined.last_mut().filter(|last| is_dash(last)) {
            Some(dash) => dash.push_str(arg),
            None => joined.push(arg.clone()),
        }
    }
    joined
}

/// A flag that begins with a long dash, as it is meant.
fn hyphened(arg: &str) -> Option<String> {
    let is_dash = |c: char| c == '-' || LONG_DASHES.contains(&c);
    let name = arg.trim_start_matches(is_dash);
    let dashes = arg.strip_suffix(name)?;
    let flag = dashes.contains(LONG_DASHES) && name.starts_with(|c: char| c.is_ascii_alphabetic());
    let hyphens = if name.chars().count() > 1 { "--" } else { "-" };
    flag.then(|| format!("{hyphens}{name}"))
}

/// Two files between one pair of quotation marks.
fn one_word(args: &[String]) -> Option<(String, String)> {
    let files = |arg: &str| arg.split_whitespace().filter(|w| ends(w, &INPUTS)).count();
    let both = args
        .iter()
        .find(|arg| files(arg) > 1 && !Path::new(arg).exists())?;
    let words = args.iter().flat_map(|arg| match arg == both {
        true => arg.split_whitespace().collect::<Vec<_>>(),
        false => vec![arg.as_str()],
    });
    Some((
        format!("`{both}` is one word, because of the quotation marks round it"),
        format!("take them off: {}", call(words)),
    ))
}

/// A name with blanks that the shell tore into words.
fn torn_name(args: &[String]) -> Option<(String, String)> {
    let is_word = |arg: &String| !arg.starts_with('-');
    let commands = help::commands();
    let command = args.iter().position(|arg| commands.contains(&arg.as_str()));
    for from in command.unwrap_or_default() + 1..args.len() {
        let words = args.get(from..)?;
        let words = words.iter().take_while(|arg| is_word(arg)).count();
        for to in (from + 2..=from + words).rev() {
            let pieces = args.get(from..to)?;
            if !is_name(pieces) {
                continue;
            }
            let behind_flag = args
                .get(from - 1)
                .is_some_and(|flag| values::takes_value(flag));
            if behind_flag && pieces.last().is_some_and(|last| Path::new(last).is_file()) {
                // What stands behind a flag is its value, and a file behind that is one.
                continue;
            }
            let name = pieces.join(" ");
            let (before, behind) = (args.get(..from)?, args.get(to..)?);
            let last = pieces.last().map_or("", String::as_str);
            if Path::new(last).is_file() && !Path::new(&name).is_file() {
                return Some((
                    format!("there is no file `{name}`, but there is `{last}`"),
                    mended(before, last, behind),
                ));
            }
            return Some((
                format!("`{name}` has a blank in its name, so it counts as several words"),
                format!(
                    "put it between quotation marks: {}",
                    mended(before, &name, behind)
                ),
            ));
        }
    }
    None
}

/// The call with a name put together; one that is taken behind a flag only gets it.
fn mended(before: &[String], name: &str, behind: &[String]) -> String {
    let plans = before
        .first()
        .is_some_and(|c| c == "plan" || c == "options");
    let flagged = before.last().is_some_and(|word| word.starts_with('-'));
    let own = OWN_FLAGS.iter().find(|(_, own)| ends(name, own));
    match own.filter(|_| plans && !flagged) {
        Some((flag, _)) => {
            let rest = [before, behind].concat();
            let (call, name) = (files::call(&rest, None), naming::typed(name));
            format!("`{call}{} {flag} {name}`", kept(&rest))
        }
        None => {
            let words = before.iter().map(String::as_str).chain([name]);
            call(words.chain(behind.iter().map(String::as_str)))
        }
    }
}

/// Whether words make a name together: there is such a file, or only the last has an ending and none of the others is one.
fn is_name(pieces: &[String]) -> bool {
    let there = |name: &str| Path::new(name).is_file();
    let Some((last, before)) = pieces.split_last() else {
        return false;
    };
    let bare = |name: &String| {
        Path::new(name).extension().is_none()
            && name.starts_with(|c: char| c.is_alphabetic())
            && !there(name)
    };
    there(&pieces.join(" ")) || ends(last, &INPUTS) && before.iter().all(bare)
}

/// A command in capital letters.
fn capitals(args: &[String]) -> Option<(String, String)> {
    let (first, rest) = args.split_first()?;
    let commands = help::commands();
    let meant = commands
        .into_iter()
        .find(|name| *name != first && name.eq_ignore_ascii_case(first))?;
    let words = std::iter::once(meant).chain(rest.iter().map(String::as_str));
    Some((format!("there is no command `{first}`"), call(words)))
}
