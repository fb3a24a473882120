//! The sheet: what the leader holds in the hand, two sides of A5 in black and white. It stands alone and on top of the report.

mod field;
mod head;
mod legs;
mod rescue;
mod room;
mod rope;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::{
    colours, head as titles,
    markup::{spans, word},
    notes,
    same::grouped,
};
use crate::{
    say::{arg::Arg, plain, span::Said, voice::Voice},
    write::{
        parts::{
            packs, style,
            told::{self, ToldHere},
        },
        sheet::Sheet,
    },
};

/// What the sheet looks like, and the folds behind it.
pub(super) const STYLE: &str = include_str!("sheet/sheet.css");

/// The sheet as a page of its own: printed it is two sides of A5, more where a trip has more legs.
#[must_use]
pub fn page(sheet: &Sheet<'_>) -> String {
    let voice = sheet.look.voice;
    let name = plain::short(&titles::title(sheet), 80);
    let title = voice.say("sheet-title", &[("name", Arg::Name(&name))]);
    html! {
        (DOCTYPE)
        html lang=(voice.language.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy"
                    content="default-src 'none'; style-src 'unsafe-inline'; img-src data:";
                title { (title) }
                style {
                    (PreEscaped(include_str!("report.css"))) (PreEscaped(STYLE))
                    (PreEscaped(colours::colours())) (PreEscaped("@page{size:A5;margin:8mm 9mm}"))
                }
            }
            body class="alone" {
                (top(sheet))
                main { (sides(sheet)) }
                footer { p { (foot(voice)) } }
            }
        }
    }
    .into_string()
}

/// Which program, and what comes before all it says.
pub(super) fn foot(voice: Voice) -> Said {
    let program = concat!("schrund ", env!("CARGO_PKG_VERSION"));
    voice.say(
        "sheet-foot",
        &[("program", Arg::Figure(program.to_owned()))],
    )
}

/// The name, the figures of the day, what stops, what to carry.
pub(super) fn top(sheet: &Sheet<'_>) -> Markup {
    head::head(sheet)
}

/// What stops and the legs on the first side; the rope, whom to call, and other gaps on the second.
pub(super) fn sides(sheet: &Sheet<'_>) -> Markup {
    html! {
        div class={ "sheet " (room::room(sheet).class()) } {
            div class="side one" { (told(sheet)) (legs::legs(sheet)) }
            div class="side two" { (second(sheet)) }
        }
    }
}

fn told(sheet: &Sheet<'_>) -> Markup {
    html! {
        @for level in told::levels(sheet) {
            section class="told" {
                h2 class={ "level " (level.word.as_str()) } {
                    span aria-hidden="true" { (style::sign(level.word)) } " " (spans(&level.title))
                }
                ul {
                    @for alike in level.entries.chunk_by(|a, b| a.cure.is_some() && a.cure == b.cure) {
                        (entries(alike))
                    }
                }
            }
        }
    }
}

/// What is told of several places, and what is to be done about all of it.
fn entries(alike: &[ToldHere]) -> Markup {
    html! {
        li {
            @for (i, entry) in alike.iter().enumerate() {
                @if i > 0 { " " }
                span class="one" { b { (spans(&entry.place.clone().capital())) } " " (spans(&entry.says)) }
            }
            @if let Some(cure) = alike.first().and_then(|entry| entry.cure.as_ref()) {
                span class="cure" { " → " (spans(cure)) }
            }
        }
    }
}

fn second(sheet: &Sheet<'_>) -> Markup {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let setups = grouped(&plan.legs);
    html! {
        @if !setups.is_empty() {
            section id="laid" aria-labelledby="laid-title" {
                h2 id="laid-title" { (voice.say("sheet-ropes", &[])) }
                p class="fine" {
                    (voice.say("sheet-ropes-caption", &[("unit", Arg::Said(Said::words(voice.units.short())))]))
                }
                (rope::cards(&setups, voice))
            }
        }
        section id="emergency" aria-labelledby="emergency-title" {
            h2 id="emergency-title" { (word("report-emergency", voice)) }
            (notes::emergency(sheet.emergency, voice))
        }
        (field::field(&plan.field, voice))
        @if !setups.is_empty() { p class="not" { (spans(&packs::uncovered(&plan.legs, voice))) "." } }
        p class="not" { (voice.say("page-cautions", &[])) }
    }
}
