//! What stands in files, as messages quote it: cut, and harmless to a terminal.

use crate::{
    fault::place::Excerpt,
    say::{arg::Arg, plain, span::Said},
};

/// Characters of a text that are quoted; our judgement.
const QUOTED_CHARS: usize = 60;

/// Something from a file, fit to be printed: without control characters.
pub(super) fn printable(excerpt: &Excerpt) -> String {
    let mut shown = String::new();
    for character in excerpt.text.chars() {
        match character {
            '\'' => shown.push(character),
            _ => shown.extend(character.escape_debug()),
        }
    }
    if excerpt.cut {
        shown.push('…');
    }
    shown
}

/// Something from a file as it stands there, but for characters that would do something to a terminal.
pub(super) fn as_it_stands(excerpt: &Excerpt) -> Arg<'static> {
    Arg::Said(said(excerpt))
}

/// The same where it is not yet an argument.
pub(super) fn said(excerpt: &Excerpt) -> Said {
    Said::name(whole(excerpt))
}

/// Somebody else's text where it may be as long as he likes.
pub(super) fn cut(text: &str) -> String {
    whole(&Excerpt::of(text, QUOTED_CHARS))
}

/// The same as an argument.
pub(super) fn quoted(text: &str) -> Arg<'static> {
    as_it_stands(&Excerpt::of(text, QUOTED_CHARS))
}

fn whole(excerpt: &Excerpt) -> String {
    let more = if excerpt.cut { "…" } else { "" };
    format!("{}{more}", plain::visible(&excerpt.text))
}
