//! The report: one file to read, print and hand out, that asks nothing of any network.
//!
//! It holds no script, no link to elsewhere and no font; a content policy in its head forbids any request
//! even if somebody edits it. Every picture is drawn here. What the leader wrote is escaped by `maud` and
//! isolated, so that it neither becomes markup nor turns the reading direction of what stands beside it.

mod figures;
mod frame;
mod head;
mod holding;
mod labels;
mod layers;
mod legs;
mod limits;
mod map;
mod notes;
mod paper;
mod party;
mod profile;
mod relief;
mod rope;
mod said;
mod same;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::{
    fault::Fault,
    ground::{profile::Profile, relief::Relief},
    plan::{Plan, leg::Verdict},
    trip::party::Contact,
};
use crate::{
    say::{plain, units::Units},
    write::{Sheet, style},
};

pub use relief::window;

/// What the report shows beside the plan.
#[derive(Clone, Copy, Debug, Default)]
pub struct Extras<'a> {
    /// Units shown; values for programs stay in metres.
    pub units: Units,
    /// What the leader calls the trip; without it the route's name stands on top.
    pub trip: Option<&'a str>,
    /// Heights of each stage, in order. Without them those of the route file.
    pub profiles: &'a [Profile],
    /// The shape of the ground round the route.
    pub relief: Option<&'a Relief>,
    /// The same trip with another party.
    pub variants: &'a [Variant],
    /// Whom to call; without anybody there are lines to fill in.
    pub emergency: &'a [Contact],
}

/// The same trip with another party.
#[derive(Clone, Debug, PartialEq)]
pub struct Variant {
    /// Who: `One fewer: 2 people`.
    pub label: String,
    /// The plan, or why there is none.
    pub plan: Result<Plan, Vec<Fault>>,
}

/// The whole page.
#[must_use]
pub fn page(sheet: &Sheet<'_>, extras: &Extras<'_>) -> String {
    let title = plain::short(&head::title(sheet, extras), 80);
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
                (head::head(sheet, extras))
                main { (sections(sheet, extras)) }
                footer {
                    p { "Computed by schrund " (env!("CARGO_PKG_VERSION")) " for the assumptions above. \
                        It answers inside the limits you gave; what is seen on the spot comes first." }
                }
            }
        }
    }
    .into_string()
}

fn sections(sheet: &Sheet<'_>, extras: &Extras<'_>) -> Markup {
    let units = extras.units;
    let ground = map::Ground::new(sheet, extras);
    let roped = ground.legs.iter().any(|l| l.leg.roped);
    html! {
        (section("map", "Map", html! { figure class="map" { (ground.overview()) (legend(sheet)) } }))
        (section("legs", "Legs", legs::legs(sheet, units)))
        (section("carry", "What to carry", html! {
            (party::carry(sheet.plan, units)) (party::fewer_changes(sheet.plan, units))
        }))
        (section("profile", "Height profile", profiles(sheet, extras)))
        (section("changes", "Where to stop for the rope", legs::changes(sheet, extras)))
        (section("findings", "What to look at", said::findings(sheet.plan, units)))
        @if roped {
            (section("ropes", "The rope laid out", rope::ropes(&sheet.plan.legs, units)))
            (section("insets", "Each roped leg", insets(&ground)))
        }
        (section("zones", "Zones on the way", legs::zones(sheet, units)))
        @if roped { (section("limits", "Where it stops holding good", limits::limits(sheet, units))) }
        @if roped { (section("holding", "If somebody falls", holding::holding(&sheet.plan.legs, units))) }
        @if !extras.variants.is_empty() {
            (section("party", "One fewer, one more", party::variants(sheet, extras)))
        }
        (section("cautions", "Read with this plan", said::cautions(sheet.plan)))
        div class="by-hand" {
            (section("emergency", "In an emergency", notes::emergency(extras.emergency)))
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

fn profiles(sheet: &Sheet<'_>, extras: &Extras<'_>) -> Markup {
    let stages = &sheet.route.stages;
    html! {
        @for (i, stage) in stages.iter().enumerate() {
            @let from_file = Profile::of_route(stage);
            figure class="profile" {
                @if stages.len() > 1 { figcaption { (said(&stage.label())) } }
                (profile::stage(sheet, extras, stage, extras.profiles.get(i).unwrap_or(&from_file)))
            }
        }
        (profile::key(sheet))
    }
}

fn insets(ground: &map::Ground<'_>) -> Markup {
    html! {
        div class="insets" {
            @for line in ground.legs.iter().filter(|l| l.leg.roped) {
                figure {
                    (ground.of_leg(line))
                    figcaption { "Leg " (line.leg.leg) ", " (head::badge(line.leg.verdict)) }
                }
            }
        }
    }
}

/// What colours, lines and signs mean.
fn legend(sheet: &Sheet<'_>) -> Markup {
    let shown = |verdict: Verdict| sheet.plan.legs.iter().any(|l| l.verdict == verdict);
    let verdicts = [
        (Verdict::Unroped, "unroped"),
        (Verdict::Inside, "roped, inside the limits you gave"),
        (Verdict::Look, "look: near a limit or resting on a guess"),
        (Verdict::Outside, "outside the limits you gave"),
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
                    "zones, darker with wider gaps; the number is the width"
                }
                li {
                    svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" {
                        circle class="change" cx="15" cy="6" r="5" {}
                    }
                    "rope up or unrope, numbered as below"
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

/// What the leader wrote, on one line and isolated from the direction of what stands beside it.
fn said(text: &str) -> Markup {
    html! { bdi { (plain::line(text)) } }
}

/// The colours of every map, so that the page and the other outputs cannot disagree.
fn colours() -> String {
    let verdicts = [
        Verdict::Unroped,
        Verdict::Inside,
        Verdict::Look,
        Verdict::Outside,
    ];
    let names = verdicts.map(|v| format!("--{}:{}", v.as_str(), style::leg_stroke(v)));
    format!(
        ":root{{{};--change:{};--zone-edge:{}}}",
        names.join(";"),
        style::CHANGE,
        style::ZONE_STROKE
    )
}
