//! One page: what the day is, what stops and what to look at, the legs, what to carry, how to read it.

use crate::{
    fault::Level,
    say::{arg::Arg, voice::Voice},
    write::{
        parts::{findings, paragraph::bullet},
        sheet::Sheet,
        table::{head::head, legs::legs, painted::Table, ropes::ropes, told::told},
    },
};

/// The page.
pub(super) fn page(sheet: &Sheet<'_>) -> Table {
    let mut out = Table::default();
    head(&mut out.text, sheet);
    told(&mut out.text, sheet);
    legs(&mut out, sheet);
    ropes(&mut out.text, sheet);
    out.text.push('\n');
    let voice = sheet.look.voice;
    let cautions = voice.say("page-cautions", &[]).to_string();
    bullet(&mut out.text, "", &cautions, sheet.look.width);
    rest(&mut out.text, sheet, voice);
    out
}

/// How much more there is, and where.
fn rest(out: &mut String, sheet: &Sheet<'_>, voice: Voice) {
    let groups = findings::groups(sheet.plan, voice);
    let notes = groups.iter().filter(|g| g.finding.level() == Level::Note);
    let args = [
        ("notes", Arg::Count(notes.count())),
        ("assumptions", Arg::Count(sheet.plan.assumptions.len())),
    ];
    let rest = voice.say("page-rest", &args).to_string();
    bullet(out, "", &rest, sheet.look.width);
}
