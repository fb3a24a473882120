//! The head of the page: which day it is, how far, how high, when, and how late to start and to turn round.

use crate::{
    say::span::Said,
    write::{
        parts::{clock, day, paragraph::bullet},
        sheet::Sheet,
    },
};

/// The name, the figures of the day, and its hours.
pub(super) fn head(out: &mut String, sheet: &Sheet<'_>) {
    let (plan, voice, width) = (sheet.plan, sheet.look.voice, sheet.look.width);
    let name = plan.route.name.as_deref();
    let name = name.map_or_else(|| voice.say("route", &[]), Said::name);
    bullet(out, "", &name.to_string(), width);
    bullet(out, "", &day::figures(plan, voice).to_string(), width);
    let hours = plan.clock.iter().flat_map(|all| clock::head(all, voice));
    for line in hours {
        bullet(out, "", &line.to_string(), width);
    }
}
