//! What must be said: findings by level, cautions, and everything the plan rests on.

use maud::{Markup, html};

use super::{figures, said};
use crate::{
    fault::Level,
    plan::{Assumption, Finding, Plan},
    say::{units::Units, words},
    write::findings::{grouped, listed},
};

const LEVELS: [(Level, &str); 4] = [
    (Level::Error, "Wrong"),
    (Level::Grave, "Grave"),
    (Level::Warning, "Look at this"),
    (Level::Note, "Good to know"),
];

/// Findings, the gravest first; what is said of several places is said once.
pub(super) fn findings(plan: &Plan, units: Units) -> Markup {
    let of_legs = plan.legs.iter().flat_map(|l| &l.findings);
    let all: Vec<&Finding> = of_legs.chain(&plan.findings).collect();
    html! {
        @if all.is_empty() { p { "Nothing was found that must be said." } }
        @for (level, title) in LEVELS {
            @let groups = grouped(all.iter().filter(|f| f.level == level));
            @if !groups.is_empty() {
                h3 class={ "level " (level.as_str()) } { (title) }
                ul class="findings" {
                    @for (places, finding) in &groups { (one(places, finding, units)) }
                }
            }
        }
    }
}

fn one(places: &[&str], finding: &Finding, units: Units) -> Markup {
    html! {
        li data-code=(finding.code) {
            span class="where" { (said(&listed(places))) } " "
            (coded(&words::capital(&units.sentence(&finding.says)))) "."
            @if let Some(hint) = &finding.hint { span class="hint" { " Do: " (coded(hint)) "." } }
        }
    }
}

/// A sentence with what stands between backticks as code.
fn coded(text: &str) -> Markup {
    html! {
        @for (i, part) in text.split('`').enumerate() {
            @if i % 2 == 1 { code { (said(part)) } } @else { (said(part)) }
        }
    }
}

/// The cautions of every plan.
pub(super) fn cautions(plan: &Plan) -> Markup {
    html! {
        ul class="cautions" {
            @for caution in &plan.cautions { li { (caution) } }
        }
    }
}

/// Assumptions: first what somebody set for this trip, then the rest.
pub(super) fn assumptions(plan: &Plan) -> Markup {
    let is_set = |a: &&Assumption| a.origin != "default";
    let (set, rest): (Vec<&Assumption>, Vec<&Assumption>) =
        plan.assumptions.iter().partition(is_set);
    html! {
        table class="assumptions" {
            caption { "Everything the plan rests on, with what stands behind it and who put it in force" }
            thead { tr {
                th scope="col" { "Assumption" }
                th scope="col" class="n" { "Value" }
                th scope="col" { "Standing" }
                th scope="col" { "Origin" }
            } }
            @for (title, rows) in [("Set for this trip", set), ("Defaults", rest)] {
                @if !rows.is_empty() {
                    tbody {
                        tr class="group" { th scope="rowgroup" colspan="4" { (title) } }
                        @for row in rows { (assumption(row)) }
                    }
                }
            }
        }
    }
}

fn assumption(a: &Assumption) -> Markup {
    let unit = if a.unit == "1" { "" } else { a.unit.as_str() };
    html! {
        tr data-name=(a.name) data-value=(figures::shown(&a.value)) {
            th scope="row" { (said(&words::capital(&a.says))) }
            td class="n" { (said(&figures::shown(&a.value))) @if !unit.is_empty() { " " (unit) } }
            td { (said(&a.standing)) }
            td { (a.origin) }
        }
    }
}
