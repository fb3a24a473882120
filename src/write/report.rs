//! The report: one file to read, print and hand out, that asks nothing of any network.
//!
//! It holds no script, no link to elsewhere and no font; a content policy in its head forbids any request
//! even if somebody edits it. Every picture is drawn here. What the leader wrote is escaped by `maud` and
//! isolated, so that it neither becomes markup nor turns the reading direction of what stands beside it.

mod annex;
mod beside;
mod colours;
mod decisive;
mod document;
mod drawn;
mod extent;
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
mod lettering;
mod limits;
mod map;
mod markup;
mod notes;
mod paper;
mod party;
mod profile;
mod relief;
mod rope;
mod ruler;
mod said;
mod same;
pub mod sheet;
mod signs;
mod strips;

use maud::{Markup, html};

use crate::{
    ground::profile::Profile,
    say::{arg::Arg, finding, plain, span::Said, voice::Voice},
    trip::route::Stage,
    write::sheet::Sheet,
};

use annex::Holds;
use drawn::MapPicture;
pub use drawn::window;
use markup::{said, word};

/// The whole page.
#[must_use]
pub fn page(sheet: &Sheet<'_>) -> String {
    let voice = sheet.look.voice;
    let title = plain::short(&head::title(sheet), 80);
    let window = voice.say("report-window", &[("title", Arg::Name(&title))]);
    let behind = annex::behind(sections(sheet), voice);
    document::of(&window, &sheet::body(sheet, &behind), None, voice)
}

fn sections(sheet: &Sheet<'_>) -> Markup {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let picture = MapPicture::new(sheet);
    let roped = picture.legs.iter().any(|l| l.leg.roped);
    let holds = Holds::of(sheet);
    let map =
        html! { figure class="map" { (picture.overview()) (legend::legend(&picture, voice)) } };
    html! {
        (open("map", voice, &holds.map(), map))
        (open("profile", voice, &holds.profile(), profiles(sheet)))
        (part("figures", &holds.title_of_figures(), &holds.figures(), head::summary(sheet), false))
        (section("findings", voice, &holds.findings(), said::findings(plan, voice)))
        (section("legs", voice, &holds.legs(), legs::legs(sheet, voice)))
        (section("carry", voice, &holds.carry(), html! {
            (party::carry(plan, voice)) (party::fewer_changes(plan, voice))
        }))
        (section("changes", voice, &holds.changes(), legs::changes(sheet)))
        @let clock = legs::clock(plan, voice);
        @if let Some(clock) = clock { (section("clock", voice, &holds.clock(), clock)) }
        @if roped {
            (section("ropes", voice, &holds.ropes(), rope::ropes(&plan.legs, voice)))
            (section("insets", voice, &holds.insets(), insets(&picture)))
        }
        (section("zones", voice, &holds.zones(), legs::zones(sheet, voice)))
        @if roped {
            (section("limits", voice, &holds.limits(), limits::limits(sheet, voice)))
            (section("holding", voice, &holds.holding(), holding::holding(&plan.legs, voice)))
        }
        (section("field", voice, &holds.field(), hand::table(&plan.field, voice)))
        @if roped { (section("gear", voice, &holds.gear(), hand::gear(&plan.gear, voice))) }
        @if !sheet.scene.others.is_empty() {
            (section("party", voice, &holds.party(), party::variants(sheet)))
        }
        (section("cautions", voice, &holds.cautions(), said::cautions(voice)))
        (section("notes", voice, &holds.notes(), notes::notes()))
        (section("assumptions", voice, &holds.assumptions(), said::assumptions(plan, voice)))
    }
}

/// A part of the annex, folded; its fold says what and how much is in it.
fn section(id: &str, voice: Voice, holds: &Said, body: Markup) -> Markup {
    part(id, &title(id, voice), holds, body, false)
}

/// One that is unfolded from the beginning.
fn open(id: &str, voice: Voice, holds: &Said, body: Markup) -> Markup {
    part(id, &title(id, voice), holds, body, true)
}

fn title(id: &str, voice: Voice) -> String {
    word(&format!("report-{id}"), voice).to_string()
}

fn part(id: &str, title: &str, holds: &Said, body: Markup, open: bool) -> Markup {
    html! {
        section id=(id) aria-labelledby={ (id) "-title" } {
            details open[open] {
                summary { h2 id={ (id) "-title" } { (title) } " " span class="holds" { (holds) } }
                (body)
            }
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
        (strips::key(sheet))
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
