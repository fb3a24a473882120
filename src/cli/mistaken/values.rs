//! Values that a flag does not take, and flags whose value is missing.

use clap::{
    CommandFactory,
    error::{ContextKind, ContextValue, Error},
};
use schrund::trip::clock::Clock;

use super::words::{flag_of, value_of};
use crate::{args::Args, naming::typed};

/// A value for each flag, to show how one looks.
const EXAMPLES: [(&str, &str); 21] = [
    ("--party", "3"),
    ("--teams", "3,2"),
    ("--rope", "60"),
    ("--practice", "arm-span"),
    ("--trip", "trip.toml"),
    ("--margin", "20"),
    ("--gap", "6"),
    ("--stage", "1"),
    ("--terrain", "heights.tif"),
    ("--glaciers", "glaciers.geojson"),
    ("--start", "04:30"),
    ("--bridges-until", "10:00"),
    ("--back-by", "16:00"),
    ("--assume", "margin_m=30"),
    ("--out", "plan"),
    ("--output", "plan.html"),
    ("--into", "zones.geojson"),
    ("--half-width", "150"),
    ("--strike", "130"),
    ("--at", "7.65,45.97"),
    ("--explain", "gap-not-given"),
];

/// What people write for a word that there is. Our judgement.
const ALSO: [(&str, &[&str], &str); 6] = [
    ("--format", &["txt", "message"], "text"),
    ("--format", &["xls", "xlsx", "excel", "ods"], "csv"),
    ("--format", &["kmz"], "kml"),
    (
        "--units",
        &["feet", "ft", "miles", "us", "foot"],
        "imperial",
    ),
    ("--units", &["m", "metres", "meters", "si"], "metric"),
    ("--travel", &["skis", "skiing"], "ski"),
];

/// Least likeness, of 1, at which a word is offered for another one. Our judgement.
const ALIKE: f64 = 0.6;

/// Up to so many words are shown as they are typed, more only named. Our judgement.
const SHOWN_WHOLE: usize = 3;

/// A flag whose value was left out, so that the next flag stands in its place.
pub(super) fn skipped(args: &[String]) -> Option<(String, String)> {
    let pairs = args.iter().zip(args.iter().skip(1));
    let mut skipped = pairs.filter(|(flag, next)| takes_here(args, flag) && is_own(next));
    let (flag, _) = skipped.next()?;
    let example = EXAMPLES.iter().find(|(name, _)| name == flag);
    let (_, value) = example.filter(|_| flag != "--explain")?;
    let cure = no_value(flag, &format!("`{flag} {value}`"));
    Some((format!("`{flag}` has no value"), cure))
}

/// Whether some command has this flag.
fn is_own(flag: &str) -> bool {
    flag.starts_with("--") && !having(flag_of(flag)).is_empty()
}

/// What is wrong with the value of a flag, and what to write.
pub(super) fn refused(error: &Error, given: &str, args: &[String]) -> Option<(String, String)> {
    let flag = match args.first() {
        // A word without a flag stands behind its command.
        Some(command) if given.starts_with(['<', '[']) => &format!("schrund {command}"),
        _ => flag_of(given),
    };
    let text = |kind| match error.get(kind) {
        Some(ContextValue::String(text)) => Some(text.as_str()),
        _ => None,
    };
    let value = text(ContextKind::InvalidValue).unwrap_or_default();
    let says = match value {
        "" => format!("`{flag}` has no value"),
        value => format!("`{flag}` does not take `{value}`"),
    };
    let words = match error.get(ContextKind::ValidValue) {
        Some(ContextValue::Strings(words)) => words.as_slice(),
        _ => &[],
    };
    let example = EXAMPLES.iter().find(|(name, _)| *name == flag);
    let example = example.map(|(flag, value)| format!("`{flag} {value}`"));
    let started = ["--start", "--trip"]
        .iter()
        .any(|flag| value_of(args, flag).is_some());
    let source = std::error::Error::source(error).map(ToString::to_string);
    let cure = match (value, words, source) {
        ("", [], _) => no_value(flag, &example?),
        (value, [_, ..], _) => one_of(flag, value, words),
        (value, [], source) => parsed(flag, value, source, example, started)?,
    };
    Some((says, cure))
}

/// What to write behind a flag that has no value.
fn no_value(flag: &str, example: &str) -> String {
    match flag {
        "--gap" => {
            format!("a number goes after it, the widest gap that you expect, in metres: {example}")
        }
        _ => format!("write one behind it, such as {example}"),
    }
}

/// A flag that takes one of a few words.
fn one_of(flag: &str, value: &str, words: &[String]) -> String {
    if (flag, value) == ("--format", "pdf") {
        return "`--format html --output plan.html`, and print that from the browser, on paper or as PDF".to_owned();
    }
    if flag == "--snow" && value.starts_with(|c: char| c.is_ascii_digit()) {
        return format!(
            "it is the kind of snow, one of {}; how deep it lies belongs to a zone, as `snow_depth_m`",
            words.join(", ")
        );
    }
    let lower = value.to_lowercase();
    let also = ALSO
        .iter()
        .find(|(of, names, _)| *of == flag && names.contains(&lower.as_str()));
    let like = also
        .map(|(_, _, word)| *word)
        .or_else(|| nearest(value, words.iter().map(String::as_str)));
    let all = words.join(", ");
    match like {
        Some(like) => format!("`{flag} {like}`; there are {all}"),
        None => {
            let each = words
                .iter()
                .take(SHOWN_WHOLE)
                .map(|word| format!("`{flag} {word}`"));
            match words.len() {
                ..=SHOWN_WHOLE => each.collect::<Vec<_>>().join(" or "),
                _ => format!("use one of {all}"),
            }
        }
    }
}

/// A flag whose value was read and refused.
fn parsed(
    flag: &str,
    value: &str,
    source: Option<String>,
    example: Option<String>,
    started: bool,
) -> Option<String> {
    if let Some(clock) = Clock::meant(value).filter(|_| is_time(flag)) {
        return Some(format!("write `{flag} {clock}`"));
    }
    Some(match (source, example) {
        (_, Some(example)) if is_time(flag) => {
            let more = if flag == "--start" || started {
                ""
            } else {
                ", with `--start 04:30`"
            };
            format!("write a time of day from 00:00 to 23:59, such as {example}{more}")
        }
        (_, Some(example)) if flag == "--teams" => format!("how many go on each rope: {example}"),
        (Some(says), Some(example)) if !says.contains(['-', '`']) => {
            format!("{says}, such as {example}")
        }
        (Some(says), _) => says,
        (None, example) => format!("write {}", example?),
    })
}

fn is_time(flag: &str) -> bool {
    ["--start", "--bridges-until", "--back-by"].contains(&flag)
}

/// The flags of a call that the program has, with their values, each with a blank before it.
pub(super) fn kept(args: &[String]) -> String {
    let command = Args::command();
    // A flag that another command alone has is not kept.
    let used = args.iter().find_map(|word| command.find_subcommand(word));
    let any = |sub: &&clap::Command| used.is_none_or(|used| used.get_name() == sub.get_name());
    let own = command
        .get_subcommands()
        .filter(any)
        .flat_map(clap::Command::get_arguments);
    let known: Vec<&clap::Arg> = own.chain(command.get_arguments()).collect();
    let named = |flag: &str| {
        let long = flag.strip_prefix("--")?;
        known.iter().find(|arg| arg.get_long() == Some(long))
    };
    let mut kept = String::new();
    let mut words = args.iter().peekable();
    while let Some(word) = words.next() {
        let Some(arg) = named(flag_of(word)) else {
            continue;
        };
        kept += &format!(" {}", typed(word));
        let wants = arg.get_action().takes_values() && !word.contains('=');
        if let Some(value) = words.next_if(|next| wants && !next.starts_with('-')) {
            kept += &format!(" {}", typed(value));
        }
    }
    kept
}

/// The words of a call without a flag and its values.
pub(super) fn without<'a>(args: &'a [String], flag: &str) -> Vec<&'a str> {
    let with_value = takes_value(flag);
    let mut words = args.iter().map(String::as_str).peekable();
    let mut left = Vec::new();
    while let Some(word) = words.next() {
        if flag_of(word) == flag {
            words.next_if(|next| with_value && !word.contains('=') && !next.starts_with("--"));
        } else {
            left.push(word);
        }
    }
    left
}

/// Whether a flag takes a value, in whichever command has it.
pub(super) fn takes_value(flag: &str) -> bool {
    let command = Args::command();
    let own = command
        .get_subcommands()
        .flat_map(clap::Command::get_arguments);
    let mut all = own.chain(command.get_arguments());
    all.any(|arg| is_named(arg, flag) && arg.get_action().takes_values())
}

/// The flags of the command of a call, as far as they take a value.
fn takes_here(args: &[String], flag: &str) -> bool {
    let program = Args::command();
    let name = args.first().map_or("", String::as_str);
    let own = program.find_subcommand(name).into_iter();
    let mut own = own.flat_map(clap::Command::get_arguments);
    own.any(|arg| is_named(arg, flag) && arg.get_action().takes_values())
}

/// Whether an argument is called so, by its long name or by its letter.
fn is_named(arg: &clap::Arg, flag: &str) -> bool {
    match (flag.strip_prefix("--"), flag.strip_prefix('-')) {
        (Some(long), _) => arg.get_long() == Some(long),
        (None, Some(short)) => arg.get_short().map(String::from).as_deref() == Some(short),
        (None, None) => false,
    }
}

/// The commands that have a flag, as they are typed.
pub(super) fn having(flag: &str) -> Vec<String> {
    let has = |command: &&clap::Command| {
        let mut args = command.get_arguments();
        args.any(|arg| is_named(arg, flag))
    };
    let command = Args::command();
    let having = command.get_subcommands().filter(has);
    having
        .map(|command| format!("`schrund {}`", command.get_name()))
        .collect()
}

/// The flag of the program that is most like one that there is not.
pub(super) fn like(name: &str) -> Option<String> {
    let command = Args::command();
    let commands = command
        .get_subcommands()
        .flat_map(clap::Command::get_arguments);
    let flags = commands
        .chain(command.get_arguments())
        .filter_map(|arg| arg.get_long());
    let flags: Vec<String> = flags.map(|long| format!("--{long}")).collect();
    nearest(name, flags.iter().map(String::as_str)).map(str::to_owned)
}

/// The word most like another one, where one is like it.
pub(super) fn nearest<'w>(given: &str, words: impl Iterator<Item = &'w str>) -> Option<&'w str> {
    let alike = |word: &str| strsim::normalized_damerau_levenshtein(word, given);
    let found = words.max_by(|a, b| alike(a).total_cmp(&alike(b)));
    found.filter(|word| alike(word) >= ALIKE)
}
