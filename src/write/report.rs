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
pub(super) mod drawn;
mod extent;
mod figures;
mod frame;
mod hand;
mod hatch;
pub(super) mod head;
mod holding;
mod labels;
mod layers;
mod legend;
mod legs;
mod lettering;
mod limits;
mod map;
pub(super) mod markup;
mod notes;
pub(super) mod paper;
mod party;
mod profile;
mod relief;
pub(super) mod rope;
mod ruler;
mod said;
mod same;
pub mod sheet;
mod signs;
mod strips;
pub(super) mod ways;

use maud::{Markup, html};

use crate::{
    ground::profile::Profile,
    say::{arg::Arg, finding, plain, span::Said, voice::Voice},
    trip::route::Stage,
    write::{parts::clock, sheet::Sheet},
};

use annex::Holds;
#[cfg(feature = "page")]
pub(super) use document::styles;
use drawn::MapPicture;
pub use drawn::window;
use markup::{said, word};

/// The whole page.
#[must_use]
pub fn page(sheet: &Sheet<'_>) -> String {
    let voice = sheet.look.voice;
    let title = plain::short(&sheet.title().to_string(), 80);
    let window = voice.say("report-window", &[("title", Arg::Name(&title))]);
    let behind = annex::behind(sections(sheet), voice);
    document::of(&window, &sheet::body(sheet, &behind), None, voice)
}

/// A part of the annex, folded or not; its fold says what and how much is in it. It is made where it is asked for.
pub(super) struct ReportPart<'a> {
    pub(super) id: &'static str,
    pub(super) title: String,
    sheet: &'a Sheet<'a>,
    holds: fn(&Holds<'_>) -> Said,
    body: fn(&Sheet<'_>) -> Markup,
}

impl ReportPart<'_> {
    /// What is in it.
    pub(super) fn body(&self) -> Markup {
        (self.body)(self.sheet)
    }

    fn drawn(&self) -> Markup {
        let holds = (self.holds)(&Holds::of(self.sheet));
        section(self.id, &self.title, &holds, &self.body(), false)
    }
}

fn title_of(id: &str, voice: Voice) -> String {
    word(&format!("report-{id}"), voice).to_string()
}

fn section(id: &str, title: &str, holds: &Said, body: &Markup, open: bool) -> Markup {
    html! {
        section id=(id) aria-labelledby={ (id) "-title" } {
            details open[open] {
                summary { h2 id={ (id) "-title" } { (title) } " " span class="holds" { (holds) } }
                (body)
            }
        }
    }
}

fn sections(sheet: &Sheet<'_>) -> Markup {
    let voice = sheet.look.voice;
    let picture = MapPicture::new(sheet);
    let roped = sheet.plan.legs.iter().any(|leg| leg.roped);
    let holds = Holds::of(sheet);
    let map =
        html! { figure class="map" { (picture.overview()) (legend::legend(&picture, voice)) } };
    let drawn = |id, holds: Said, body: Markup, open| {
        section(id, &title_of(id, voice), &holds, &body, open)
    };
    html! {
        (drawn("map", holds.map(), map, true))
        (drawn("profile", holds.profile(), profiles(&picture), true))
        @for part in parts(sheet) {
            // Where the ropes are drawn, the places of their legs are too.
            @if part.id == "zones" && roped { (drawn("insets", holds.insets(), insets(&picture), false)) }
            (part.drawn())
        }
    }
}

/// All but the maps and the profile.
pub(super) fn parts<'a>(sheet: &'a Sheet<'a>) -> Vec<ReportPart<'a>> {
    let voice = sheet.look.voice;
    let roped = sheet.plan.legs.iter().any(|leg| leg.roped);
    let others = !sheet.scene.others.is_empty();
    let due = |id: &str| match id {
        "clock" => !clock::lines(sheet.plan, voice).is_empty(),
        "ropes" | "limits" | "holding" | "gear" => roped,
        "party" => others,
        _ => true,
    };
    let part = |&(id, holds, body): &PartOf| ReportPart {
        id,
        title: match id {
            "figures" => Holds::of(sheet).title_of_figures(),
            _ => title_of(id, voice),
        },
        sheet,
        holds,
        body,
    };
    PARTS.iter().filter(|(id, ..)| due(id)).map(part).collect()
}

type PartOf = (
    &'static str,
    fn(&Holds<'_>) -> Said,
    fn(&Sheet<'_>) -> Markup,
);

/// The parts in their order, and what is in each.
const PARTS: [PartOf; 16] = [
    ("figures", |h| h.figures(), head::summary),
    (
        "findings",
        |h| h.findings(),
        |s| said::findings(s.plan, s.look.voice),
    ),
    ("legs", |h| h.legs(), |s| legs::legs(s, s.look.voice)),
    ("carry", |h| h.carry(), party::packed),
    ("changes", |h| h.changes(), legs::changes),
    (
        "clock",
        |h| h.clock(),
        |s| legs::clock(s.plan, s.look.voice),
    ),
    (
        "ropes",
        |h| h.ropes(),
        |s| rope::ropes(&s.plan.legs, s.look.voice),
    ),
    ("zones", |h| h.zones(), |s| legs::zones(s, s.look.voice)),
    (
        "limits",
        |h| h.limits(),
        |s| limits::limits(s, s.look.voice),
    ),
    (
        "holding",
        |h| h.holding(),
        |s| holding::holding(&s.plan.legs, s.look.voice),
    ),
    (
        "field",
        |h| h.field(),
        |s| hand::table(&s.plan.field, s.look.voice),
    ),
    (
        "gear",
        |h| h.gear(),
        |s| hand::gear(&s.plan.gear, s.look.voice),
    ),
    ("party", |h| h.party(), party::variants),
    (
        "cautions",
        |h| h.cautions(),
        |s| said::cautions(s.look.voice),
    ),
    ("notes", |h| h.notes(), |_| notes::notes()),
    (
        "assumptions",
        |h| h.assumptions(),
        |s| said::assumptions(s.plan, s.look.voice),
    ),
];

fn profiles(picture: &MapPicture<'_>) -> Markup {
    let sheet = picture.sheet;
    let stages = &sheet.route.stages;
    html! {
        @for (i, stage) in stages.iter().enumerate() {
            @let from_file = Profile::of_route(stage).measured(sheet.plan.figures.lone_height_m);
            figure class="profile" {
                @if stages.len() > 1 { figcaption { (said(&stage_label(stage, sheet.look.voice))) } }
                (profile::stage(picture, stage, sheet.scene.profiles.get(i).unwrap_or(&from_file)))
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
