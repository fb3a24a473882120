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
    say::plain,
    write::{parts::style, sheet::Sheet},
};

use drawn::MapPicture;
pub use drawn::window;
use markup::said;

/// The whole page.
#[must_use]
pub fn page(sheet: &Sheet<'_>) -> String {
    let title = plain::short(&head::title(sheet), 80);
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy"
                    content="default-src 'none'; style-src 'unsafe-inline'; img-src data:";
                title { (title) " – rope plan" }
                style { (PreEscaped(include_str!("report/report.css"))) (PreEscaped(colours())) }
            }
            body {
                (head::head(sheet))
                main { (sections(sheet)) }
                footer {
                    p { "Computed by schrund " (env!("CARGO_PKG_VERSION")) " for the assumptions above. \
                        What is seen on the spot comes first." }
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
        (section("map", "Map", html! { figure class="map" { (picture.overview()) (legend::legend(&picture)) } }))
        (section("legs", "Legs", legs::legs(sheet, voice)))
        (section("carry", "What to carry", html! {
            (party::carry(sheet.plan, voice)) (party::fewer_changes(sheet.plan, voice))
        }))
        (section("profile", "Height profile", profiles(sheet)))
        (section("changes", "Where to stop for the rope", legs::changes(sheet)))
        @let clock = legs::clock(sheet.plan, voice);
        @if let Some(clock) = clock { (section("clock", "The clock", clock)) }
        (section("findings", "What to look at", said::findings(sheet.plan, voice)))
        @if roped {
            (section("ropes", "The rope laid out", rope::ropes(&sheet.plan.legs, voice)))
            (section("insets", "Each roped leg", insets(&picture)))
        }
        (section("zones", "Zones on the way", legs::zones(sheet, voice)))
        @if roped { (section("limits", "How wide a gap it is spaced for", limits::limits(sheet, voice))) }
        @if roped { (section("holding", "If somebody falls", holding::holding(&sheet.plan.legs, voice))) }
        (section("field", "If the gap is another one", hand::table(&sheet.plan.field, voice)))
        @if roped { (section("gear", "Who has what on them", hand::gear(&sheet.plan.gear, voice))) }
        @if !sheet.scene.others.is_empty() {
            (section("party", "If something is missing", party::variants(sheet)))
        }
        (section("cautions", "Read with this plan", said::cautions(voice)))
        div class="by-hand" {
            (section("emergency", "In an emergency", notes::emergency(sheet.emergency)))
            (section("notes", "Notes", notes::notes()))
        }
        (section("assumptions", "What it rests on", said::assumptions(sheet.plan)))
    }
}

fn section(id: &str, title: &str, body: Markup) -> Markup {
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
                @if stages.len() > 1 { figcaption { (said(&stage.label())) } }
                (profile::stage(sheet, stage, sheet.scene.profiles.get(i).unwrap_or(&from_file)))
            }
        }
        (profile::key(sheet))
    }
}

fn insets(picture: &MapPicture<'_>) -> Markup {
    html! {
        div class="insets" {
            @for line in picture.legs.iter().filter(|l| l.leg.roped) {
                figure {
                    (picture.of_leg(line))
                    figcaption { "Leg " (line.leg.leg) ", " (head::badge(line.leg.verdict, picture.sheet.look.voice)) }
                }
            }
        }
    }
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
