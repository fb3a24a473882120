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

use maud::{Markup, html};

use crate::{
    ground::profile::Profile,
    say::{arg::Arg, finding, plain, span::Said, voice::Voice},
    trip::route::Stage,
    write::sheet::Sheet,
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
    let title = plain::short(&head::title(sheet), 80);
    let window = voice.say("report-window", &[("title", Arg::Name(&title))]);
    let behind = annex::behind(sections(sheet), voice);
    document::of(&window, &sheet::body(sheet, &behind), None, voice)
}

/// A part of the annex, folded or not; its fold says what and how much is in it.
pub(super) struct ReportPart {
    pub(super) id: &'static str,
    pub(super) title: String,
    holds: Said,
    pub(super) body: Markup,
    open: bool,
}

impl ReportPart {
    fn new(id: &'static str, voice: Voice, holds: Said, body: Markup) -> Self {
        Self {
            id,
            title: word(&format!("report-{id}"), voice).to_string(),
            holds,
            body,
            open: false,
        }
    }

    /// Unfolded from the beginning.
    fn unfolded(self) -> Self {
        Self { open: true, ..self }
    }

    fn drawn(&self) -> Markup {
        let id = self.id;
        html! {
            section id=(id) aria-labelledby={ (id) "-title" } {
                details open[self.open] {
                    summary { h2 id={ (id) "-title" } { (self.title) } " " span class="holds" { (self.holds) } }
                    (self.body)
                }
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
    let drawn = [
        ReportPart::new("map", voice, holds.map(), map).unfolded(),
        ReportPart::new("profile", voice, holds.profile(), profiles(sheet)).unfolded(),
    ];
    let insets = ReportPart::new("insets", voice, holds.insets(), insets(&picture));
    html! {
        @for part in &drawn { (part.drawn()) }
        @for part in parts(sheet) {
            // Where the ropes are drawn, the places of their legs are too.
            @if part.id == "zones" && roped { (insets.drawn()) }
            (part.drawn())
        }
    }
}

/// All but the maps and the profile.
pub(super) fn parts(sheet: &Sheet<'_>) -> Vec<ReportPart> {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let roped = plan.legs.iter().any(|leg| leg.roped);
    let holds = Holds::of(sheet);
    let part = |id, holds, body| Some(ReportPart::new(id, voice, holds, body));
    let figures = ReportPart {
        title: holds.title_of_figures(),
        ..ReportPart::new("figures", voice, holds.figures(), head::summary(sheet))
    };
    let carry = html! { (party::carry(plan, voice)) (party::fewer_changes(plan, voice)) };
    let clock = legs::clock(plan, voice);
    let of_rope = |id, holds, body| roped.then(|| ReportPart::new(id, voice, holds, body));
    let all = [
        Some(figures),
        part("findings", holds.findings(), said::findings(plan, voice)),
        part("legs", holds.legs(), legs::legs(sheet, voice)),
        part("carry", holds.carry(), carry),
        part("changes", holds.changes(), legs::changes(sheet)),
        clock.and_then(|clock| part("clock", holds.clock(), clock)),
        of_rope("ropes", holds.ropes(), rope::ropes(&plan.legs, voice)),
        part("zones", holds.zones(), legs::zones(sheet, voice)),
        of_rope("limits", holds.limits(), limits::limits(sheet, voice)),
        of_rope(
            "holding",
            holds.holding(),
            holding::holding(&plan.legs, voice),
        ),
        part("field", holds.field(), hand::table(&plan.field, voice)),
        of_rope("gear", holds.gear(), hand::gear(&plan.gear, voice)),
        (!sheet.scene.others.is_empty())
            .then(|| ReportPart::new("party", voice, holds.party(), party::variants(sheet))),
        part("cautions", holds.cautions(), said::cautions(voice)),
        part("notes", holds.notes(), notes::notes()),
        part(
            "assumptions",
            holds.assumptions(),
            said::assumptions(plan, voice),
        ),
    ];
    all.into_iter().flatten().collect()
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
