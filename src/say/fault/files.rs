//! Files, addresses and flags in words.

use super::{
    phrase::{Phrase, PhraseArgs, list, name, number},
    quote::printable,
};
use crate::{
    fault::{
        files::{InFiles, PlaceOf, Refused, WrittenAs},
        place::STANDARD_INPUT,
    },
    say::{arg::Arg, span::Said},
};

pub(super) fn phrase(what: &InFiles) -> Phrase {
    match what {
        InFiles::Unreadable {
            name: file,
            why,
            near,
            holds,
        } => about("file-unreadable", file, why).and(in_folder(near.as_deref(), holds)),
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
        InFiles::Swapped { route, zones, call } => swapped(route, zones, call.as_deref()),
        InFiles::TripInPlace { of, call } => Phrase::of(
            "file-trip-in-place",
            [("of", Arg::Word(place_of(*of))), ("call", name(call))],
        ),
        InFiles::SwappedAxes { route, zones } => Phrase::of(
            "file-swapped-axes",
            [("route", name(route)), ("zones", name(zones))],
        ),
        InFiles::NoFolder { .. }
        | InFiles::Unwritable { .. }
        | InFiles::IsInput { .. }
        | InFiles::IsFolder { .. }
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
        InFiles::OneNumber(found) => Phrase::of("file-one-number", [("found", name(found))]),
        InFiles::NoBand { letter, meant } => Phrase::of(
            "file-no-band",
            [
                ("letter", name(letter.to_string())),
                ("count", Arg::Count(meant.len())),
                ("meant", typed_places(meant)),
            ],
        ),
    }
}

fn place_of(of: PlaceOf) -> &'static str {
    match of {
        PlaceOf::Route => "route",
        PlaceOf::Zones => "zones",
        PlaceOf::Inventory => "inventory",
    }
}

/// Files that may be meant, up to so many; our judgement.
const MOST_NAMED: usize = 10;
/// The same beside the one that is probably meant.
const FEW_NAMED: usize = 3;

/// What a folder holds in place of a file.
fn in_folder(near: Option<&str>, holds: &[String]) -> PhraseArgs {
    let most = if near.is_some() {
        FEW_NAMED
    } else {
        MOST_NAMED
    };
    let shown = holds.len().min(most);
    vec![
        ("has-near", Arg::yes(near.is_some())),
        ("near", name(near.unwrap_or_default())),
        ("count", Arg::Count(shown)),
        ("holds", list(holds.iter().take(shown))),
        ("more", Arg::Count(holds.len() - shown)),
    ]
}

/// Places as they are typed.
fn typed_places(places: &[String]) -> Arg<'static> {
    let typed = places.iter().map(|place| format!("--at \"{place}\""));
    Arg::Said(Said::join(typed.map(Said::code), ", "))
}

/// What stands in the way of files to be written.
fn unwritten(what: &InFiles) -> Phrase {
    match what {
        InFiles::NoFolder {
            path,
            why,
            kind,
            free,
        } => about("file-no-folder", path, why).and(vec![
            ("kind", Arg::Word(written(*kind))),
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
        InFiles::IsFolder { name: path, free } => Phrase::of(
            "file-is-folder",
            [("name", name(path)), ("free", name(free))],
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
        WrittenAs::Zones => "zones",
    }
}

fn refused(why: &Refused) -> PhraseArgs {
    let (why, words) = match why {
        Refused::Folder => ("folder", ""),
        Refused::File => ("file", ""),
        Refused::NotFound => ("not-found", ""),
        Refused::Permission => ("permission", ""),
        Refused::Full => ("full", ""),
        Refused::Other(words) => ("other", words.as_str()),
    };
    vec![("why", Arg::Word(why)), ("words", name(words))]
}

fn swapped(route: &str, zones: &str, call: Option<&str>) -> Phrase {
    Phrase::of(
        "file-swapped",
        [
            ("route", name(route)),
            ("zones", name(zones)),
            ("route-typed", name(typed(route))),
            ("zones-typed", name(typed(zones))),
            ("known", Arg::yes(call.is_some())),
            ("call", name(call.unwrap_or_default())),
        ],
    )
}

/// An input as it is typed.
fn typed(file: &str) -> &str {
    if file == STANDARD_INPUT { "-" } else { file }
}
