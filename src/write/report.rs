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
use signs::Sign;

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
        (section("map", "Map", html! { figure class="map" { (picture.overview()) (legend(&picture)) } }))
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

/// What colours, lines and signs mean.
fn legend(picture: &MapPicture<'_>) -> Markup {
    let sheet = picture.sheet;
    let shown = |verdict: Verdict| sheet.plan.legs.iter().any(|l| l.verdict == verdict);
    let verdicts = [
        (Verdict::Unroped, "unroped"),
        (Verdict::Inside, "roped, inside the planning limits"),
        (Verdict::Look, "look: something to decide or to watch"),
        (Verdict::Outside, "outside the limits"),
        (Verdict::Stop, "stop: not as planned"),
    ];
    html! {
        figcaption {
            ul class="legend" {
                @for (verdict, says) in verdicts.into_iter().filter(|(v, _)| shown(*v)) {
                    li {
                        svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" { (layers::stroke(verdict, "M2 6H28")) }
                        (says) " " (style::sign(verdict))
                    }
                }
                li {
                    svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" {
                        @for (i, fill) in style::ZONE_FILLS.iter().enumerate() {
                            rect x=(i * 6) width="6" height="12" fill=(fill) {}
                        }
                    }
                    "zones, darker with wider gaps; the number is the width, \"?\" where it is assumed; faint where the route does not go"
                }
                @if sheet.zones.iter().any(|zone| zone.strike.is_some()) {
                    li {
                        svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" {
                            rect width="30" height="12" fill=(style::ZONE_FILLS[1]) {}
                            path class="strike-key" d="M4 12L10 0M12 12L18 0M20 12L26 0" {}
                        }
                        "the direction in which its crevasses run, where it was drawn"
                    }
                }
                @if !sheet.glaciers.is_empty() {
                    li {
                        svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" {
                            rect class="ice" x="1" y="1" width="28" height="10" {}
                        }
                        "known ice"
                    }
                }
                @for sign in Sign::ALL.into_iter().filter(|sign| picture.signs.iter().any(|(s, _)| s == sign)) {
                    li {
                        svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" { (sign.drawn((15.0, 6.0))) }
                        (sign_says(sign))
                    }
                }
                li {
                    svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" {
                        circle class="change" cx="15" cy="6" r="5" {}
                    }
                    "rope up or rope off, lettered as below"
                }
                li {
                    svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" {
                        rect class="pill" x="6" y="0" width="18" height="12" rx="6" {}
                    }
                    "number of the leg, in its colour"
                }
            }
        }
    }
}

fn sign_says(sign: Sign) -> &'static str {
    match sign {
        Sign::Along => "along the crevasses",
        Sign::Fall => "where a fall is held worst",
        Sign::RollOver => "the ground steepens: gaps are to be expected",
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
