//! What goes into the packs, and what changes with something missing.

use maud::{Markup, PreEscaped, html};

use super::{
    head::badge,
    markup::{column, spans, word},
};
use crate::{
    fault::Fault,
    plan::{Carry, Plan},
    say::{
        arg::Arg,
        carry::{carry_why, no_rope},
        fault::says,
        round::Round,
        span::Said,
        voice::Voice,
        without,
    },
    write::{
        json::number,
        parts::{
            keep, packs,
            row::{LegRow, TeamRow},
        },
        sheet::Sheet,
    },
};

/// What to carry, and what carrying one set-up all the way would change.
pub(super) fn packed(sheet: &Sheet<'_>) -> Markup {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let left = packs::left_over(plan, voice);
    html! {
        (carry(plan, voice))
        @for left in &left { p { (spans(left)) } }
        (fewer_changes(plan, voice))
    }
}

/// What to carry.
pub(super) fn carry(plan: &Plan, voice: Voice) -> Markup {
    html! {
        @if plan.carry.is_empty() { p { (word("message-no-rope", voice)) } }
        ul class="carry" {
            @for rope in &plan.carry {
                @if rope.length_m > 0.0 { li { strong { (voice.length(rope.length_m, Round::Down)) } " " (spans(&rope_for(rope, plan.carry.len(), voice))) } }
                @else { li { (spans(&no_rope(rope, plan.carry.len(), voice))) } }
            }
        }
    }
}

/// `rope for 3 people: …`.
fn rope_for(rope: &Carry, teams: usize, voice: Voice) -> Said {
    let why = Arg::Said(carry_why(rope, teams, voice));
    voice.say("carry-rope-for", &[("why", why)])
}

/// The trip with one party.
struct Panel<'a> {
    label: Said,
    says: Option<Said>,
    plan: Result<&'a Plan, &'a [Fault]>,
}

/// A switch between parties. Without style sheets, and on paper, all of them are shown.
pub(super) fn variants(sheet: &Sheet<'_>) -> Markup {
    let voice = sheet.look.voice;
    let planned = Panel {
        label: voice.say("as-planned", &[]),
        says: None,
        plan: Ok(sheet.plan),
    };
    let others = sheet.scene.others.iter();
    let others = others.map(|other| Panel {
        label: without::label(&other.differs, other.people, voice),
        says: other
            .plan
            .is_ok()
            .then(|| without::says(&other.beside(sheet.plan), &[], voice)),
        plan: other.plan.as_ref().map_err(Vec::as_slice),
    });
    let all: Vec<Panel<'_>> = std::iter::once(planned).chain(others).collect();
    html! {
        style { (PreEscaped(rules(all.len()))) }
        fieldset class="switch" {
            legend { (word("party-shown", voice)) }
            @for (i, variant) in all.iter().enumerate() {
                input type="radio" name="party" id={ "party-" (i) } checked[i == 0];
                label for={ "party-" (i) } { (spans(&variant.label)) }
            }
            div class="panels" {
                @for (i, variant) in all.iter().enumerate() {
                    div class="panel" id={ "panel-" (i) } { (panel(variant, voice)) }
                }
            }
        }
    }
}

/// Which panel is shown on a screen by which button.
fn rules(count: usize) -> String {
    let shows: Vec<String> = (0..count)
        .map(|i| format!("#party-{i}:checked~.panels #panel-{i}"))
        .collect();
    format!(
        "@media screen{{.panel{{display:none}}{}{{display:block}}}}",
        shows.join(",")
    )
}

/// What it costs to keep a set-up over several legs, against changing before each.
pub(super) fn fewer_changes(plan: &Plan, voice: Voice) -> Markup {
    html! {
        @if let Some(kept) = &plan.keep_setup {
            h3 { (word("title-fewer-changes", voice)) }
            p data-planned-changes=(kept.as_planned.changes) data-planned-min=(number(kept.as_planned.minutes))
                data-kept-changes=(kept.kept.changes) data-kept-min=(number(kept.kept.minutes)) {
                (keep::costs(kept, voice).capital()) ":"
            }
            ul class="kept" {
                @for run in &kept.runs {
                    li {
                        span class="where" { (keep::legs(run, voice).capital()) } " "
                        @for (i, team) in run.teams.iter().enumerate() {
                            @if i > 0 { "; " }
                            span data-kept-team=(team.team) data-kept-spacing-m=(number(team.spacing_m))
                                data-kept-knots=(team.knots_each_end) data-kept-coil-m=(number(team.coil_m))
                                data-kept-coil-carried-m=(number(team.coil_carried_m))
                                data-kept-rope-m=(number(team.needed_m)) { (keep::team(run, team, voice)) }
                        }
                        "; " (keep::stretches(run, voice))
                    }
                }
            }
        }
    }
}

fn panel(variant: &Panel<'_>, voice: Voice) -> Markup {
    html! {
        h3 { (spans(&variant.label)) }
        @if let Some(says) = &variant.says { p { (spans(says)) "." } }
        @match variant.plan {
            Err(problems) => {
                @for problem in problems {
                    p class="refused" { (spans(&says(problem, voice))) "." }
                }
            }
            Ok(plan) => { (roped(plan, voice, &variant.label)) (carry(plan, voice)) }
        }
    }
}

fn roped(plan: &Plan, voice: Voice, label: &Said) -> Markup {
    html! {
        table class="variant" {
            caption { (spans(&voice.say("party-roped", &[("label", Arg::Said(label.clone()))]))) }
            thead { tr {
                th scope="col" class="n" { (word("report-leg", voice)) }
                th scope="col" { (word("report-set-up", voice)) }
                th scope="col" class="n" { (column("report-rope", voice.units.short(), voice)) }
                th scope="col" { (word("report-verdict", voice)) }
            } }
            tbody {
                @for leg in plan.legs.iter().filter(|l| l.roped) {
                    @let row = LegRow::new(leg, voice);
                    tr {
                        th scope="row" class="n" { (row.leg) }
                        td { @for (i, team) in row.teams.iter().enumerate() { @if i > 0 { br; } (team.setup()) } }
                        td class="n" { @for (i, team) in row.teams.iter().enumerate() { @if i > 0 { br; } (rope(team)) } }
                        td { (badge(leg.verdict, voice)) }
                    }
                }
            }
        }
    }
}

fn rope(team: &TeamRow<'_>) -> String {
    team.rope()
}
