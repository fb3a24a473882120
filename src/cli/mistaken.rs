//! Calls that were not understood, each answered with what to write, out of the words of the call itself.

mod files;
mod typing;
mod values;
mod words;

pub(crate) use self::{files::with_trip, words::ends};

use clap::error::{ContextKind, ContextValue, Error, ErrorKind};

use self::{
    values::{kept, nearest},
    words::{flag_of, value_of},
};
use crate::{answer::Answer, help};

/// What to write in place of a flag that there is not; `{}` is the value that stands behind it, or else the other one.
struct Meant {
    names: &'static [&'static str],
    says: &'static str,
    value: &'static str,
}

const fn meant(names: &'static [&'static str], says: &'static str, value: &'static str) -> Meant {
    Meant { names, says, value }
}

/// Flags that people try. Our judgement.
const MEANT: [Meant; 14] = [
    meant(
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
        "`--party {}`: how many go, or their masses with pack in kg, such as `--party 82,75,90`",
        "3",
    ),
    meant(
        &["--ropes", "--length", "-r"],
        "`--rope {}`, once for each rope",
        "60",
    ),
    meant(
        &["--dem", "--heights", "--elevation", "--model", "--dtm"],
        "`--terrain {}`, once for each file",
        "heights.tif",
    ),
    meant(
        &["--glacier", "--inventory", "--outlines"],
        "`--glaciers {}`",
        "glaciers.geojson",
    ),
    meant(
        &["--config", "--conf", "-c", "-t"],
        "`--trip {}`",
        "trip.toml",
    ),
    meant(
        &["--html", "--report", "--pdf", "-f"],
        "`--format html --output plan.html`: print that from the browser, on paper or as PDF",
        "",
    ),
    meant(
        &["--json"],
        "`--format json`; `--out plan` writes all formats into a folder",
        "",
    ),
    meant(
        &["--csv"],
        "`--format csv`; `--out plan` writes all formats into a folder",
        "",
    ),
    meant(
        &["--kml"],
        "`--format kml`; `--out plan` writes all formats into a folder",
        "",
    ),
    meant(
        &["--table", "--text"],
        "the table is printed without a flag; `--format text` is for a message",
        "",
    ),
    meant(
        &["--crevasse", "--crevasses", "--width", "--gap-m", "--gaps"],
        "`--gap {}`, for zones that give no width; each zone has its own `gap_m` in the zones file",
        "6",
    ),
    meant(
        &["--spacing", "--distance", "--knots", "--coils", "--coil"],
        "what is taught comes from a practice set: `schrund practice` lists them, `--practice NAME` takes one",
        "",
    ),
    meant(
        &["--feet", "--ft", "--imperial", "--miles"],
        "`--units imperial`",
        "",
    ),
    meant(
        &["--output-dir", "--dir", "-d"],
        "`--out {}`, a folder",
        "plan",
    ),
];

/// What to answer; nothing where it is no mistake, or where clap says it well enough.
pub(crate) fn answer(error: &Error, args: &[String]) -> Option<Answer> {
    let given = given(error);
    let wrong = error.use_stderr();
    let wrong = wrong && error.kind() != ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand;
    if let Some((says, cure)) = typing::slip(args).filter(|_| wrong) {
        return Some(Answer { says, cure });
    }
    let (says, cure) = match error.kind() {
        ErrorKind::UnknownArgument => unknown(&given, args),
        ErrorKind::MissingRequiredArgument => files::missing(&given, args),
        ErrorKind::InvalidValue | ErrorKind::ValueValidation => {
            values::refused(error, &given, args).unwrap_or_else(|| other(error, args))
        }
        ErrorKind::InvalidSubcommand => {
            no_command(error, args).unwrap_or_else(|| other(error, args))
        }
        ErrorKind::ArgumentConflict
            if error.get(ContextKind::PriorArg) == error.get(ContextKind::InvalidArg) =>
        {
            let flag = flag_of(&given);
            (
                format!("`{flag}` is given twice"),
                format!("give `{flag}` once"),
            )
        }
        ErrorKind::TooManyValues => {
            let flag = flag_of(&given);
            (
                format!("`{flag}` takes no value"),
                format!("write `{flag}` alone"),
            )
        }
        _ if wrong => other(error, args),
        _ => return None,
    };
    Some(Answer { says, cure })
}

/// A mistake that has no answer of its own: what is wrong in the words of the parser of flags, and where all is told.
fn other(error: &Error, args: &[String]) -> (String, String) {
    let text = error.to_string();
    let first = text.lines().next().unwrap_or_default();
    let says = first.strip_prefix("error: ").unwrap_or(first).to_owned();
    let commands = help::commands();
    let help = match args.iter().find(|arg| commands.contains(&arg.as_str())) {
        Some(command) => format!("`schrund help {command}`"),
        None => "`schrund --help`".to_owned(),
    };
    (says, format!("{help} shows what goes where, with examples"))
}

/// The command of a call.
fn command_of(args: &[String]) -> &str {
    let commands = help::commands();
    let mut args = args.iter().map(String::as_str);
    args.find(|arg| commands.contains(arg)).unwrap_or("plan")
}

#[cfg(feature = "shell")]
/// A manual page that there is not.
pub(crate) fn no_page(name: &str) -> Answer {
    let commands = help::commands();
    let pages = commands.join(", ");
    let like = nearest(name, commands.iter().copied());
    let first = like.map_or_else(
        || "`schrund man` prints the page of the program".to_owned(),
        |like| format!("`schrund man {like}`"),
    );
    Answer {
        says: format!("there is no page of `{name}`"),
        cure: format!("{first}; there are pages of {pages}"),
    }
}

/// What clap stumbled over: a flag with its placeholder, a word, or the names of all that is missing.
fn given(error: &Error) -> String {
    match error.get(ContextKind::InvalidArg) {
        Some(ContextValue::String(given)) => given.clone(),
        Some(ContextValue::Strings(missing)) => missing.join(" "),
        _ => String::new(),
    }
}

/// A flag that there is not, or a word too many.
fn unknown(given: &str, args: &[String]) -> (String, String) {
    let name = flag_of(given);
    if !name.starts_with('-') {
        return files::left_over(given, args);
    }
    let says = format!("there is no flag `{name}`");
    let value = value_of(args, name);
    let own_call = format!("{}{}", files::call(args, value), kept(args));
    let cure = match name {
        "--route" | "--gpx" | "--track" | "--line" => {
            format!("the route comes first, without a flag: `{own_call}`")
        }
        "--zones" | "--zone" | "--ice" | "--geojson" => {
            format!("the ice comes second, without a flag: `{own_call}`")
        }
        "--date" | "--day" => date(value.unwrap_or("2027-08-21"), value_of(args, "--trip")),
        _ if is_own(name) => return misplaced(name, args),
        _ => known(name, value, args),
    };
    (says, cure)
}

/// Whether the program has this flag, for this command or for another one.
fn is_own(name: &str) -> bool {
    values::like(name).as_deref() == Some(name) || !values::having(name).is_empty()
}

/// A flag of the program that stands before its command, or that another command has.
fn misplaced(name: &str, args: &[String]) -> (String, String) {
    let commands = help::commands();
    let at = |arg: &String| commands.contains(&arg.as_str());
    let (flag, command) = (
        args.iter().position(|arg| flag_of(arg) == name),
        args.iter().position(at),
    );
    let command = command.and_then(|at| Some((at, args.get(at)?)));
    match command {
        Some((at, command)) if flag.is_some_and(|flag| flag < at) => {
            let words = args.iter().map(String::as_str);
            let behind = words.clone().skip(at + 1);
            let before = words.clone().take(at);
            let call = typing::call([command.as_str()].into_iter().chain(behind).chain(before));
            let says = format!("`{name}` stands before `{command}`");
            (says, format!("put it behind: {call}"))
        }
        command => {
            let own = command.map_or("schrund", |(_, command)| command);
            let having = values::having(name);
            let have = if having.len() == 1 { "has" } else { "have" };
            let having = match having.as_slice() {
                [all @ .., last] if !all.is_empty() => format!("{} and {last}", all.join(", ")),
                all => all.concat(),
            };
            let without = typing::call(values::without(args, name));
            (
                format!("`{name}` is no flag of `{own}`"),
                format!("leave it out: {without}; {having} {have} it"),
            )
        }
    }
}

fn known(name: &str, value: Option<&str>, args: &[String]) -> String {
    match MEANT.iter().find(|meant| meant.names.contains(&name)) {
        Some(meant) => meant.says.replace("{}", value.unwrap_or(meant.value)),
        None => match values::like(name) {
            Some(like) => format!("perhaps `{like}` is meant"),
            None => format!("`schrund help {}` lists the flags", command_of(args)),
        },
    }
}

fn date(day: &str, trip: Option<&str>) -> String {
    match trip {
        Some(trip) => format!("write it into {trip}, as a line of its own: `date = \"{day}\"`"),
        None => format!(
            "write it into a trip file, as a line `date = \"{day}\"`, and give that with `--trip trip.toml`; `schrund new tour` writes one to fill in"
        ),
    }
}

/// The call again with the command that is spelt alike; where none is, what there are.
fn no_command(error: &Error, args: &[String]) -> Option<(String, String)> {
    let Some(ContextValue::String(given)) = error.get(ContextKind::InvalidSubcommand) else {
        return None;
    };
    let says = format!("there is no command `{given}`");
    let like = match error.get(ContextKind::SuggestedSubcommand) {
        Some(ContextValue::String(like)) => Some(like),
        Some(ContextValue::Strings(all)) => all.first(),
        _ => None,
    };
    let commands = help::commands();
    let like = nearest(given, commands.iter().copied()).or(like.map(String::as_str));
    let cure = match like {
        Some(like) => {
            let words = args.iter().map(String::as_str);
            let words: Vec<&str> = words
                .map(|arg| if arg == given { like } else { arg })
                .collect();
            format!("`schrund {}`", words.join(" "))
        }
        None if ends(given, &["gpx", "geojson"]) => {
            let call = format!("{}{}", files::call(args, None), kept(args));
            format!("name the command first: `{call}`")
        }
        None => format!(
            "the commands are {}; `schrund --help` says what each does",
            commands.join(", ")
        ),
    };
    Some((says, cure))
}
