//! The text and the form of trip files and practice files, in words.

use super::{
    instead::{self, MeantLine},
    phrase::{Phrase, PhraseArgs, list, name},
    quote::{as_it_stands, quoted},
};
use crate::{
    fault::place::Excerpt,
    fault::toml::{InToml, Meant, NoToml, NotClosed, Takes, TomlTable},
    say::arg::Arg,
};

/// Quotation marks that are written straight in TOML.
const CURLY: [char; 7] = ['“', '”', '„', '‘', '’', '«', '»'];

pub(super) fn phrase(what: &InToml) -> Phrase {
    match what {
        InToml::Line { why, line } => no_toml(why, line).and(vec![("line", as_it_stands(line))]),
        InToml::NoMember {
            of,
            name: given,
            meant,
        } => no_member(given, *meant).and(vec![("table", table(*of))]),
        InToml::Lacks { of, name: member } => Phrase::of(
            "toml-lacks",
            [("table", table(*of)), ("member", Arg::Word(member))],
        ),
        InToml::Form {
            name: member,
            found,
            takes,
            ..
        } => Phrase::of(
            "toml-form",
            [("member", quoted(member)), ("found", as_it_stands(found))],
        )
        .and(self::takes(takes))
        .and(meant(in_place(member, found, takes))),
        InToml::PrintedSet { set, free } => Phrase::of(
            "toml-printed-set",
            [("set", quoted(set)), ("free", quoted(free))],
        ),
        InToml::Huge {
            name: member,
            found,
        } => Phrase::of(
            "toml-huge",
            [("member", quoted(member)), ("found", as_it_stands(found))],
        ),
    }
}

/// What may be meant by a value that a member does not take.
fn in_place(member: &str, found: &Excerpt, takes: &Takes) -> Option<MeantLine> {
    let found = Some(found.text.as_str()).filter(|_| !found.cut)?;
    match takes {
        Takes::Number if ["party", "teams"].contains(&member) => instead::number(member, found),
        Takes::Number | Takes::People | Takes::Ropes => instead::numbers(member, found),
        Takes::Time => instead::time(member, found),
        Takes::Date => instead::date(found),
        Takes::Truth => instead::words(member, found).filter(|meant| meant.word == "line"),
        _ => None,
    }
}

fn meant(meant: Option<MeantLine>) -> PhraseArgs {
    let (word, write, other) = match meant {
        Some(MeantLine { word, write, other }) => (word, write, other),
        None => ("unknown", String::new(), String::new()),
    };
    vec![
        ("meant", Arg::Word(word)),
        ("write", name(write)),
        ("other", name(other)),
    ]
}

fn no_toml(why: &NoToml, line: &Excerpt) -> Phrase {
    let halves = || instead::halves(&line.text).filter(|_| !line.cut);
    let numbers = || halves().and_then(|(member, value)| instead::numbers(member, value));
    match why {
        NoToml::Twice(member) => Phrase::of("toml-twice", [("member", as_it_stands(member))]),
        NoToml::NotClosed(what) => {
            let what = match what {
                NotClosed::List => "list",
                NotClosed::Braces => "braces",
                NotClosed::Name => "name",
                NotClosed::Text => "text",
            };
            Phrase::of("toml-not-closed", [("what", Arg::Word(what))])
        }
        NoToml::NoValue => Phrase::plain("toml-no-value"),
        NoToml::Unquoted => {
            let words = halves().and_then(|(member, value)| instead::words(member, value));
            Phrase::plain("toml-unquoted").and(meant(words))
        }
        NoToml::Commas => Phrase::plain("toml-commas").and(meant(numbers())),
        NoToml::AfterNumber => {
            let words = || halves().and_then(|(member, value)| instead::time(member, value));
            let meant_by = numbers().or_else(|| words().filter(|_| is_time(halves())));
            Phrase::plain("toml-after-number").and(meant(meant_by))
        }
        NoToml::Curly => {
            let straight = |c: char| if CURLY.contains(&c) { '"' } else { c };
            let write = line.text.chars().map(straight).collect::<String>();
            let args = [("cut", Arg::yes(line.cut)), ("write", name(write))];
            Phrase::of("toml-curly", args)
        }
        NoToml::Deep => Phrase::plain("toml-deep"),
        NoToml::Other(words) => Phrase::of("toml-broken", [("words", name(words))]),
    }
}

fn is_time(halves: Option<(&str, &str)>) -> bool {
    halves.is_some_and(|(member, _)| ["start", "bridges_until", "back_by"].contains(&member))
}

fn no_member(of_file: &str, meant: Option<Meant>) -> Phrase {
    let given = ("member", quoted(of_file));
    match meant {
        Some(Meant::Member(near)) => {
            Phrase::of("toml-no-member-but", [given, ("near", name(near))])
                .and(instead::unit_args(of_file, near))
        }
        Some(Meant::Figure) => Phrase::of("toml-no-member-figure", [given]),
        None => Phrase::of("toml-no-member", [given]),
    }
}

fn table(of: TomlTable) -> Arg<'static> {
    Arg::Word(match of {
        TomlTable::Trip => "trip",
        TomlTable::Person => "person",
        TomlTable::Rope => "rope",
        TomlTable::Contact => "contact",
        TomlTable::Halt => "halt",
        TomlTable::Practice => "practice",
        TomlTable::About => "about",
        TomlTable::Figure => "figure",
    })
}

fn takes(takes: &Takes) -> PhraseArgs {
    let word = match takes {
        Takes::Number => "number",
        Takes::Text => "text",
        Takes::Texts => "texts",
        Takes::Truth => "truth",
        Takes::Time => "time",
        Takes::Date => "date",
        Takes::Offset => "offset",
        Takes::Words(_) => "words",
        Takes::People => "people",
        Takes::Stage => "stage",
        Takes::Teams => "teams",
        Takes::Ropes => "ropes",
        Takes::Contacts => "contacts",
        Takes::Halts => "halts",
        Takes::Assumptions => "assumptions",
        Takes::Assumption => "assumption",
        Takes::About => "about",
        Takes::Figure => "figure",
    };
    let words = match takes {
        Takes::Words(words) => words.iter().map(|word| format!("\"{word}\"")).collect(),
        _ => Vec::new(),
    };
    vec![("takes", Arg::Word(word)), ("words", list(words))]
}
