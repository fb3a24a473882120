//! What goes into the packs, and what changes with one person fewer or one more.

use maud::{Markup, PreEscaped, html};

use super::{Extras, Variant, head::badge, said};
use crate::{
    plan::Plan,
    say::{
        units::{Side, Units},
        words,
    },
    write::{
        Sheet,
        json::number,
        keep,
        row::{Row, TeamRow},
    },
};

/// What to carry.
pub(super) fn carry(plan: &Plan, units: Units) -> Markup {
    html! {
        @if plan.carry.is_empty() { p { "No leg is walked on the rope." } }
        ul class="carry" {
            @for rope in &plan.carry {
                li { strong { (units.length(rope.length_m, Side::AtHand)) } " rope for " (said(&units.sentence(&rope.why))) }
            }
        }
    }
}

/// A switch between parties. Without style sheets, and on paper, all of them are shown.
pub(super) fn variants(sheet: &Sheet<'_>, extras: &Extras<'_>) -> Markup {
    let planned = Variant {
        label: "As planned".to_owned(),
        plan: Ok(sheet.plan.clone()),
    };
    let all: Vec<&Variant> = std::iter::once(&planned).chain(extras.variants).collect();
    html! {
        style { (PreEscaped(rules(all.len()))) }
        fieldset class="switch" {
            legend { "Party shown" }
            @for (i, variant) in all.iter().enumerate() {
                input type="radio" name="party" id={ "party-" (i) } checked[i == 0];
                label for={ "party-" (i) } { (said(&variant.label)) }
            }
            div class="panels" {
                @for (i, variant) in all.iter().enumerate() {
                    div class="panel" id={ "panel-" (i) } { (panel(variant, extras.units)) }
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
pub(super) fn fewer_changes(plan: &Plan, units: Units) -> Markup {
    html! {
        @if let Some(kept) = &plan.keep_setup {
            h3 { "Fewer changes" }
            p data-planned-changes=(kept.as_planned.changes) data-planned-min=(number(kept.as_planned.minutes))
                data-kept-changes=(kept.kept.changes) data-kept-min=(number(kept.kept.minutes)) {
                (words::capital(&keep::costs(kept))) ":"
            }
            ul class="kept" {
                @for run in &kept.runs {
                    li {
                        span class="where" { (words::capital(&keep::legs(run))) } " "
                        @for (i, team) in run.teams.iter().enumerate() {
                            @if i > 0 { "; " }
                            span data-kept-team=(team.team) data-kept-spacing-m=(number(team.spacing_m))
                                data-kept-knots=(team.knots_each_end) data-kept-coil-m=(number(team.coil_m))
                                data-kept-rope-m=(number(team.needed_m)) { (keep::team(run, team, units)) }
                        }
                    }
                }
            }
        }
    }
}

fn panel(variant: &Variant, units: Units) -> Markup {
    html! {
        h3 { (said(&variant.label)) }
        @match &variant.plan {
            Err(problems) => {
                @for problem in problems {
                    p class="refused" { (said(&crate::say::fault::says(problem, Default::default()).to_string())) "." }
                }
            }
            Ok(plan) => { (roped(plan, units, &variant.label)) (carry(plan, units)) }
        }
    }
}

fn roped(plan: &Plan, units: Units, label: &str) -> Markup {
    html! {
        table class="variant" {
            caption { "Roped legs: " (said(label)) }
            thead { tr {
                th scope="col" class="n" { "Leg" }
                th scope="col" { "Set-up" }
                th scope="col" class="n" { "Rope " small { (units.short()) } }
                th scope="col" { "Verdict" }
            } }
            tbody {
                @for leg in plan.legs.iter().filter(|l| l.roped) {
                    @let row = Row::new(leg, units);
                    tr {
                        th scope="row" class="n" { (row.leg) }
                        td { @for (i, team) in row.teams.iter().enumerate() { @if i > 0 { br; } (team.setup()) } }
                        td class="n" { @for (i, team) in row.teams.iter().enumerate() { @if i > 0 { br; } (rope(team)) } }
                        td { (badge(leg.verdict)) }
                    }
                }
            }
        }
    }
}

fn rope(team: &TeamRow) -> String {
    team.rope()
}
