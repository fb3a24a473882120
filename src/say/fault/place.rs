//! Places and things in files, as people call them.

use std::fmt;

use super::{
    phrase::{Phrase, name},
    quote::{cut, printable},
};
use crate::{
    fault::place::{GpxWay, Item, Place, Sort},
    say::{arg::Arg, interface::Interface, plain, span::Said, voice::Voice},
};

/// File, line, thing and property in a row; nothing where none is known.
#[must_use]
pub fn place(at: &Place, voice: Voice) -> Said {
    let line = |n: u64| Arg::Figure(n.to_string());
    let spot = match (at.line, at.column) {
        (Some(l), Some(c)) => Some(voice.say(
            "place-line-column",
            &[("line", line(l)), ("column", line(c))],
        )),
        (Some(l), None) => Some(voice.say("place-line", &[("line", line(l))])),
        _ => None,
    };
    let file = at.file.clone().map(Said::name);
    if let (Some(Item::Flags), Some(property), Interface::Flags) =
        (&at.item, &at.property, voice.interface)
    {
        return match property.strip_prefix("assume.") {
            Some(name) => voice.say("place-assumed", &[("name", Arg::Word(&cut(name)))]),
            None => voice.say("place-flag", &[("property", Arg::Word(&cut(property)))]),
        };
    }
    let item = at.item.as_ref().map(|it| item(it, voice));
    let property = at.property.as_deref().map(|p| Said::code(cut(p)));
    let parts = [file, spot, item, property];
    let place = Said::join(parts.into_iter().flatten(), ", ");
    place.map_names(plain::visible).map_code(plain::visible)
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        place(self, Voice::default()).fmt(f)
    }
}

/// A thing by its number and name.
pub(super) fn item(item: &Item, voice: Voice) -> Said {
    let key = match item {
        Item::Feature { number, name } => {
            let (keys, number) = (["item-feature", "item-feature-named"], *number);
            let name = name.as_deref().map(plain::line);
            return numbered(keys, number, name, Vec::new()).says(voice);
        }
        Item::Line(way) => return way_to(way, voice),
        Item::Halt(number) => {
            return voice.say("item-halt", &[("number", Arg::Count(*number))]);
        }
        Item::Flag(flag) => return Said::code(*flag),
        Item::Flags => "item-flags",
        Item::Party => "item-party",
        Item::Practice => "item-practice",
        Item::Zones => "item-zones",
        Item::Relief => "item-relief",
    };
    voice.say(key, &[])
}

/// With its name where it has one.
pub(super) fn numbered(
    [bare, named]: [&'static str; 2],
    number: usize,
    called: Option<String>,
    args: super::phrase::PhraseArgs,
) -> Phrase {
    let number = ("number", Arg::Count(number));
    match called {
        Some(called) => Phrase::of(named, [number, ("name", name(called))]),
        None => Phrase::of(bare, [number]),
    }
    .and(args)
}

fn way_to(way: &GpxWay, voice: Voice) -> Said {
    let keys = ["item-line", "item-line-named"];
    let sort = Arg::Word(match way.sort {
        Sort::Track => "track",
        Sort::Route => "route",
    });
    let called = way.name.as_ref().map(printable);
    let line = numbered(keys, way.number, called, vec![("sort", sort)]);
    let inside = [
        ("item-segment", way.segment),
        ("item-point", way.point),
        ("item-detail", way.detail),
    ];
    let inside = inside
        .into_iter()
        .filter_map(|(key, n)| Some(voice.say(key, &[("number", Arg::Count(n?))])));
    Said::join(std::iter::once(line.says(voice)).chain(inside), ", ")
}
