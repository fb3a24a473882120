//! The head of the page: which day it is, how far, how high, when, and how late to start and to turn round.

use crate::{
    say::arg::Arg,
    write::{
        parts::{
            clock, day,
            falls_on::falls_on,
            findings::first_words,
            paragraph::{bullet, hanging},
        },
        sheet::Sheet,
    },
};

/// The name with what stops, the figures of the day, and its hours.
pub(super) fn head(out: &mut String, sheet: &Sheet<'_>) {
    let (plan, voice, width) = (sheet.plan, sheet.look.voice, sheet.look.width);
    let args = [
        ("name", Arg::Said(sheet.title())),
        ("words", Arg::Said(first_words(plan, voice))),
    ];
    hanging(out, &voice.say("page-first", &args).to_string(), width);
    bullet(out, "", &day::figures(plan, voice).to_string(), width);
    let hours = plan.clock.iter().flat_map(|all| clock::head(all, voice));
    for line in hours {
        bullet(out, "", &line.says.to_string(), width);
    }
    if let Some(snow) = falls_on(plan, voice) {
        bullet(out, "", &snow.to_string(), width);
    }
}
