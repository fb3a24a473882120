//! The report: one file to read, print and hand out, that asks nothing of any network.
//!
//! It holds no script, no link to elsewhere and no font; a content policy in its head forbids any request
//! even if somebody edits it. Every picture is drawn here. What the leader wrote is escaped by `maud` and
//! isolated, so that it neither becomes markup nor turns the reading direction of what stands beside it.

mod drawn;
mod figures;
mod frame;
mod hand;
mod hatch;
mod head;
mod holding;
mod labels;
mod layers;
mod legend;
mod legs;
mod limits;
mod map;
mod markup;
mod notes;
mod paper;
mod party;
mod profile;
mod relief;
mod rope;
mod said;
mod same;
mod signs;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::{
    ground::profile::Profile,
    plan::leg::Verdict,
    say::{arg::Arg, finding, plain, voice::Voice},
    trip::route::Stage,
    write::{parts::style, sheet::Sheet},
};

use drawn::MapPicture;
pub use drawn::window;
use markup::{said, word};

/// The whole page.
#[must_use]
pub fn page(sheet: &Sheet<'_>) -> String {
    let voice = sheet.look.voice;
    let title = plain::short(&head::title(sheet), 80);
    html! {
        (DOCTYPE)
        html lang=(voice.language.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy"
                    content="default-src 'none'; style-src 'unsafe-inline'; img-src data:";
                title { (voice.say("report-window", &[("title", Arg::Name(&title))])) }
                style { (PreEscaped(include_str!("report/report.css"))) (PreEscaped(colours())) }
            }
            body {
                (head::head(sheet))
                main { (sections(sheet)) }
                footer {
                    p { (voice.say("report-foot", &[("version", Arg::Figure(env!("CARGO_PKG_VERSION").to_owned()))])) }
                }
            }
        }
    }
    .into_string()
}

fn sections(sheet: &Sheet<'_>) -> Markup {
    let voice = sheet.look.voice;
    let picture = MapPicture::new(sheet);
    let roped = picture.legs.iter().any(|l| l.leg.roped);
    html! {
        (section("map", voice, html! { figure class="map" { (picture.overview()) (legend::legend(&picture, voice)) } }))
        (section("legs", voice, legs::legs(sheet, voice)))
        (section("carry", voice, html! {
            (party::carry(sheet.plan, voice)) (party::fewer_changes(sheet.plan, voice))
        }))
        (section("profile", voice, profiles(sheet)))
        (section("changes", voice, legs::changes(sheet)))
        @let clock = legs::clock(sheet.plan, voice);
        @if let Some(clock) = clock { (section("clock", voice, clock)) }
        (section("findings", voice, said::findings(sheet.plan, voice)))
        @if roped {
            (section("ropes", voice, rope::ropes(&sheet.plan.legs, voice)))
            (section("insets", voice, insets(&picture)))
        }
        (section("zones", voice, legs::zones(sheet, voice)))
        @if roped { (section("limits", voice, limits::limits(sheet, voice))) }
        @if roped { (section("holding", voice, holding::holding(&sheet.plan.legs, voice))) }
        (section("field", voice, hand::table(&sheet.plan.field, voice)))
        @if roped { (section("gear", voice, hand::gear(&sheet.plan.gear, voice))) }
        @if !sheet.scene.others.is_empty() {
            (section("party", voice, party::variants(sheet)))
        }
        (section("cautions", voice, said::cautions(voice)))
        div class="by-hand" {
            (section("emergency", voice, notes::emergency(sheet.emergency, voice)))
            (section("notes", voice, notes::notes()))
        }
        (section("assumptions", voice, said::assumptions(sheet.plan, voice)))
    }
}

fn section(id: &str, voice: Voice, body: Markup) -> Markup {
    let title = word(&format!("report-{id}"), voice);
    html! {
        section id=(id) aria-labelledby={ (id) "-title" } {
            h2 id={ (id) "-title" } { (title) }
            (body)
        }
    }
}

fn profiles(sheet: &Sheet<'_>) -> Markup {
    let stages = &sheet.route.stages;
    html! {
        @for (i, stage) in stages.iter().enumerate() {
            @let from_file = Profile::of_route(stage).measured(sheet.plan.figures.lone_height_m);
            figure class="profile" {
                @if stages.len() > 1 { figcaption { (said(&stage_label(stage, sheet.look.voice))) } }
                (profile::stage(sheet, stage, sheet.scene.profiles.get(i).unwrap_or(&from_file)))
            }
        }
        (profile::key(sheet))
    }
}

fn insets(picture: &MapPicture<'_>) -> Markup {
    let voice = picture.sheet.look.voice;
    html! {
        div class="insets" {
            @for line in picture.legs.iter().filter(|l| l.leg.roped) {
                figure {
                    (picture.of_leg(line))
                    figcaption { (voice.say("report-inset", &[("leg", Arg::Count(line.leg.leg))])) " " (head::badge(line.leg.verdict, voice)) }
                }
            }
        }
    }
}

/// `stage 2 "Day two"`.
fn stage_label(stage: &Stage, voice: Voice) -> String {
    finding::stage(stage.number, stage.name.as_deref(), voice).to_string()
}

/// The colours of every map, so that the page and the other outputs cannot disagree.
fn colours() -> String {
    let names = Verdict::ALL.map(|v| format!("--{}:{}", v.as_str(), style::leg_stroke(v)));
    format!(
        ":root{{{};--change:{};--zone-edge:{}}}",
        names.join(";"),
        style::CHANGE,
        style::ZONE_STROKE
    )
}
