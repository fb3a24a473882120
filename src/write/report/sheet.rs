//! The sheet: what the leader holds in the hand, two sides of A5 in black and white. It stands alone and on top of the report.

mod field;
mod head;
mod legs;
mod rescue;
mod room;
mod rope;

use maud::{Markup, html};

use super::{
    document::{self, OwnPaper},
    head as titles,
    markup::{spans, word},
    notes,
    same::grouped,
};
use crate::{
    say::{arg::Arg, plain, span::Said, voice::Voice},
    write::{
        parts::{
            packs, style,
            told::{self, OfLevel, ToldHere},
        },
        sheet::Sheet,
    },
};

/// The sheet as a page of its own: printed it is two sides of A5, more where a trip has more legs.
#[must_use]
pub fn page(sheet: &Sheet<'_>) -> String {
    let voice = sheet.look.voice;
    let name = plain::short(&titles::title(sheet), 80);
    let title = voice.say("sheet-title", &[("name", Arg::Name(&name))]);
    let own = OwnPaper {
        class: "alone",
        page: "@page{size:A5;margin:8mm 9mm}",
    };
    document::of(&title, &body(sheet, &html! {}), Some(own), voice)
}

/// The sheet, and what stands behind it.
pub(super) fn body(sheet: &Sheet<'_>, behind: &Markup) -> Markup {
    let told = told::levels(sheet);
    html! {
        (head::head(sheet, &told))
        main { (sides(sheet, &told)) (behind) }
        footer { p { (foot(sheet.look.voice)) } }
    }
}

/// Which program, and what comes before all it says.
fn foot(voice: Voice) -> Said {
    let program = concat!("schrund ", env!("CARGO_PKG_VERSION"));
    voice.say(
        "sheet-foot",
        &[("program", Arg::Figure(program.to_owned()))],
    )
}

/// What stops and the legs on the first side; the rope, whom to call, and other gaps on the second.
fn sides(sheet: &Sheet<'_>, told: &[OfLevel]) -> Markup {
    html! {
        div class={ "sheet " (room::room(sheet, told).class()) } {
            div class="side one" { (levels(told)) (legs::legs(sheet)) }
            div class="side two" { (second(sheet)) }
        }
    }
}

fn levels(told: &[OfLevel]) -> Markup {
    html! {
        @for level in told {
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
