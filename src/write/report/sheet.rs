//! The sheet: what the leader holds in the hand, two sides of A5 in black and white. It stands alone and on top of the report.

mod field;
mod head;
mod legs;
mod rescue;
mod room;
mod rope;

use maud::{Markup, html};

use room::Room;

use super::{
    document::{self, OwnPaper},
    markup::{spans, word},
    notes,
    same::{Same, tied_alike},
};
use crate::{
    plan::leg::Leg,
    say::{arg::Arg, plain, span::Said, voice::Voice},
    write::{
        parts::{
            findings, packs, slopes, style, tied,
            told::{self, OfLevel, ToldHere},
        },
        sheet::Sheet,
    },
};

/// The sheet as a page of its own: printed it is two sides of A5, more where a trip has more legs.
#[must_use]
pub fn page(sheet: &Sheet<'_>) -> String {
    let voice = sheet.look.voice;
    let name = plain::short(&sheet.title().to_string(), 80);
    let title = voice.say("sheet-title", &[("name", Arg::Name(&name))]);
    let own = OwnPaper {
        class: "alone",
        page: "@page{size:A5;margin:8mm 9mm}",
    };
    document::of(&title, &body(sheet, &html! {}), Some(own), voice)
}

/// The sheet, and what stands behind it.
pub(in crate::write) fn body(sheet: &Sheet<'_>, behind: &Markup) -> Markup {
    let told = told::levels(sheet);
    let room = room::room(sheet, &told);
    html! {
        (head::head(sheet, &told, room.print))
        main { (sides(sheet, &told, room)) (behind) }
        footer { p { (foot(sheet.look.voice)) } }
    }
}

/// What is read first: how it stands, what to carry, the hours, what stops and what to look at.
pub(in crate::write) fn first(sheet: &Sheet<'_>) -> Markup {
    let told = told::levels(sheet);
    html! { (head::first(sheet, &told)) (levels(&told, sheet.look.voice)) (steep(sheet)) }
}

/// What is left to those who hold on a leg, after a fall there; nothing where nobody is roped.
pub(in crate::write) fn rescue(leg: &Leg, sheet: &Sheet<'_>) -> Markup {
    rescue::of_leg(leg, sheet)
}

/// Which program, and what comes before all it says.
fn foot(voice: Voice) -> Said {
    let program = concat!("schrund ", env!("CARGO_PKG_VERSION"));
    voice.say(
        "sheet-foot",
        &[("program", Arg::Figure(program.to_owned()))],
    )
}

/// What stops and the legs on the first side; the rope and other gaps on the second; whom to call where there is room.
fn sides(sheet: &Sheet<'_>, told: &[OfLevel], room: Room) -> Markup {
    html! {
        div class={ "sheet " (room.print.class()) } {
            div class="side one" {
                (levels(told, sheet.look.voice)) (steep(sheet)) (legs::legs(sheet))
                @if room.for_calls { (calls(sheet)) }
            }
            div class={ "side two" @if room.crowded { " crowded" } } { (second(sheet, room)) }
        }
    }
}

/// Whom to call.
fn calls(sheet: &Sheet<'_>) -> Markup {
    let voice = sheet.look.voice;
    html! {
        section id="emergency" aria-labelledby="emergency-title" {
            h2 id="emergency-title" { (word("report-emergency", voice)) }
            (notes::emergency(sheet.emergency, voice))
        }
    }
}

/// Where a level holds stands in the head.
fn levels(told: &[OfLevel], voice: Voice) -> Markup {
    html! {
        @for level in told {
            section class="told" {
                h2 class={ "level " (level.word.as_str()) } {
                    span aria-hidden="true" { (style::sign(level.word)) } " " (spans(&findings::title(level.level, voice)))
                }
                ul {
                    @for alike in told::alike(&level.entries) {
                        (entries(alike))
                    }
                }
            }
        }
    }
}

/// Where the bulletin decides, whatever the plan says of the rope.
fn steep(sheet: &Sheet<'_>) -> Markup {
    let line = slopes::avalanche_ground(sheet.plan, sheet.look.voice);
    html! { @if let Some(line) = line { p class="steep" { strong { "! " (spans(&line)) "." } } } }
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

fn second(sheet: &Sheet<'_>, room: Room) -> Markup {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let setups = tied_alike(&plan.legs);
    html! {
        @if !setups.is_empty() {
            section id="laid" aria-labelledby="laid-title" {
                h2 id="laid-title" { (voice.say("sheet-ropes", &[])) }
                p class="fine" {
                    (voice.say("sheet-ropes-caption", &[
                        ("unit", Arg::Said(Said::words(voice.units.short()))),
                        ("tie", Arg::Needed(tied::tie_in_m(setups.iter().filter_map(Same::setup)))),
                    ]))
                }
                (rope::cards(&setups, room.crowded, voice))
            }
        }
        @if !room.for_calls { (calls(sheet)) }
        (field::field(&plan.field, voice))
        p class="not" {
            @if !setups.is_empty() { span { (spans(&packs::uncovered(plan, true, voice))) "." } " " }
            strong { (voice.say("page-cautions", &[])) }
        }
    }
}
