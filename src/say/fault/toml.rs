//! The text and the form of trip files and practice files, in words.

use super::{
    phrase::{Phrase, PhraseArgs, list, name},
    quote::{as_it_stands, quoted},
};
use crate::{
    fault::toml::{InToml, Meant, NoToml, NotClosed, Takes, TomlTable},
    say::arg::Arg,
};

pub(super) fn phrase(what: &InToml) -> Phrase {
    match what {
        InToml::Line { why, line } => no_toml(why).and(vec![("line", as_it_stands(line))]),
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
        .and(self::takes(takes)),
        InToml::Huge {
            name: member,
            found,
        } => Phrase::of(
            "toml-huge",
            [("member", quoted(member)), ("found", as_it_stands(found))],
        ),
    }
}

fn no_toml(why: &NoToml) -> Phrase {
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
        NoToml::Unquoted => Phrase::plain("toml-unquoted"),
        NoToml::Deep => Phrase::plain("toml-deep"),
        NoToml::Other(words) => Phrase::of("toml-broken", [("words", name(words))]),
    }
}

fn no_member(given: &str, meant: Option<Meant>) -> Phrase {
    let given = ("member", quoted(given));
    match meant {
        Some(Meant::Member(near)) => {
            Phrase::of("toml-no-member-but", [given, ("near", name(near))])
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
