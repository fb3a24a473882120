//! Files, addresses and flags in words.

use super::{
    phrase::{Phrase, PhraseArgs, list, name, number},
    quote::printable,
};
use crate::{
    fault::{
        files::{InFiles, Network, Refused, WrittenAs},
        place::STANDARD_INPUT,
    },
    say::arg::Arg,
};

pub(super) fn phrase(what: &InFiles) -> Phrase {
    match what {
        InFiles::Unreadable {
            name: file,
            why,
            holds,
        } => about("file-unreadable", file, why).and(vec![
            ("count", Arg::Count(holds.len())),
            ("holds", list(holds)),
        ]),
        InFiles::Stopped(words) => Phrase::of("file-stopped", [("words", name(words))]),
        InFiles::OneStandardInput => Phrase::plain("file-one-standard-input"),
        InFiles::NotSeekable => Phrase::plain("file-not-seekable"),
        InFiles::NotUtf8 => Phrase::plain("file-not-utf8"),
        InFiles::NoToml(instead) => Phrase::of(
            "file-no-toml",
            [("what", Arg::Word(super::gpx::word(instead)))],
        ),
        InFiles::TooLarge { most_mib } => Phrase::of("file-too-large", [("mib", number(most_mib))]),
        InFiles::NulInName(found) => {
            Phrase::of("file-nul-in-name", [("found", name(printable(found)))])
        }
        InFiles::Swapped { route, zones } => swapped(route, zones),
        InFiles::SwappedAxes { route, zones } => Phrase::of(
            "file-swapped-axes",
            [("route", name(route)), ("zones", name(zones))],
        ),
        InFiles::Network(why) => network(why),
        InFiles::NoFolder { .. }
        | InFiles::Unwritable { .. }
        | InFiles::IsInput { .. }
        | InFiles::There { .. } => unwritten(what),
        InFiles::NoCode { name: code, near } => Phrase::of(
            "file-no-code",
            [
                ("name", name(code)),
                ("count", Arg::Count(near.len())),
                ("near", list(near.iter().copied())),
            ],
        ),
        InFiles::NoPlace(found) => Phrase::of("file-no-place", [("found", name(found))]),
    }
}

/// What stands in the way of files to be written.
fn unwritten(what: &InFiles) -> Phrase {
    match what {
        InFiles::NoFolder { path, why, free } => about("file-no-folder", path, why).and(vec![
            ("free", name(free)),
            ("trip", Arg::yes(path.to_lowercase().ends_with(".toml"))),
        ]),
        InFiles::Unwritable { path, why } => about("file-unwritable", path, why),
        InFiles::IsInput {
            name: path,
            kind,
            free,
        } => Phrase::of(
            "file-is-input",
            [
                ("name", name(path)),
                ("kind", Arg::Word(written(*kind))),
                ("free", name(free)),
            ],
        ),
        InFiles::There { names, kind, free } => Phrase::of(
            "file-there",
            [
                ("count", Arg::Count(names.len())),
                ("names", list(names)),
                ("kind", Arg::Word(written(*kind))),
                ("free", name(free)),
            ],
        ),
        _ => Phrase::plain("file-not-utf8"),
    }
}

fn about(key: &'static str, file: &str, why: &Refused) -> Phrase {
    Phrase::of(key, [("name", name(file))]).and(refused(why))
}

fn written(kind: WrittenAs) -> &'static str {
    match kind {
        WrittenAs::Output => "output",
        WrittenAs::Trip => "trip",
        WrittenAs::Set => "set",
        WrittenAs::Start => "start",
    }
}

fn refused(why: &Refused) -> PhraseArgs {
    let (why, words) = match why {
        Refused::Folder => ("folder", ""),
        Refused::File => ("file", ""),
        Refused::NotFound => ("not-found", ""),
        Refused::Permission => ("permission", ""),
        Refused::Other(words) => ("other", words.as_str()),
    };
    vec![("why", Arg::Word(why)), ("words", name(words))]
}

fn swapped(route: &str, zones: &str) -> Phrase {
    Phrase::of(
        "file-swapped",
        [
            ("route", name(route)),
            ("zones", name(zones)),
            ("route-typed", name(typed(route))),
            ("zones-typed", name(typed(zones))),
        ],
    )
}

/// An input as it is typed.
fn typed(file: &str) -> &str {
    if file == STANDARD_INPUT { "-" } else { file }
}

fn network(why: &Network) -> Phrase {
    let (why, words) = match why {
        Network::NotBuilt => return Phrase::plain("file-no-fetch"),
        Network::Answered(status) => {
            return Phrase::of("file-answered", [("status", name(status))]);
        }
        Network::TooMuch(mb) => return Phrase::of("file-too-much", [("mb", number(mb))]),
        Network::Late => ("late", ""),
        Network::NoConnection => ("no-connection", ""),
        Network::Other(words) => ("other", words.as_str()),
    };
    Phrase::of(
        "file-not-fetched",
        [("why", Arg::Word(why)), ("words", name(words))],
    )
}
