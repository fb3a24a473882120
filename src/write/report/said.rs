//! What must be said: findings by level, cautions, and everything the plan rests on.

use maud::{Markup, html};

use super::{figures, markup::said, markup::spans, markup::word};
use crate::say::cautions::cautions as all_cautions;
use crate::{
    fault::Level,
    plan::{Assumption, Plan},
    practice::Origin,
    say::{
        arg::Arg,
        assumption::{says, standing},
        voice::Voice,
    },
    write::parts::{
        findings::{Group, groups, title},
        sentence,
    },
};

const LEVELS: [Level; 5] = [
    Level::Error,
    Level::Stop,
    Level::Outside,
    Level::Look,
    Level::Note,
];

/// Findings, the gravest first; what is said of several places is said once.
pub(super) fn findings(plan: &Plan, voice: Voice) -> Markup {
    let groups = groups(plan, voice);
    html! {
        @if groups.is_empty() { p { (word("findings-none", voice)) } }
        @for level in LEVELS {
            @let mut of_level = groups.iter().filter(|g| g.finding.level() == level).peekable();
            @if of_level.peek().is_some() {
                h3 class={ "level " (level.as_str()) } { (title(level, voice)) }
                ul class="findings" {
                    @for group in of_level { (one(group, voice)) }
                }
            }
        }
    }
}

fn one(group: &Group<'_>, voice: Voice) -> Markup {
    html! {
        li data-code=(group.finding.code()) {
            span class="where" { (spans(&group.places(voice))) } " "
            (spans(&group.says.clone().capital())) "."
            @if let Some(hint) = &group.hint { span class="hint" { " " (spans(&voice.say("findings-do", &[("hint", Arg::Said(hint.clone()))]))) } }
        }
    }
}

/// The cautions of every plan.
pub(super) fn cautions(voice: Voice) -> Markup {
    html! {
        ul class="cautions" {
            @for caution in all_cautions(voice) { li { (caution) } }
        }
    }
}

/// Assumptions: first what somebody set for this trip, then the rest.
pub(super) fn assumptions(plan: &Plan, voice: Voice) -> Markup {
    let is_set = |a: &&Assumption| a.origin != Origin::Default;
    let (set, rest): (Vec<&Assumption>, Vec<&Assumption>) =
        plan.assumptions.iter().partition(is_set);
    html! {
        table class="assumptions" {
            caption { (word("assumptions-caption", voice)) }
            thead { tr {
                th scope="col" { (word("assumptions-what", voice)) }
                th scope="col" class="n" { (word("assumptions-value", voice)) }
                th scope="col" { (word("assumptions-standing", voice)) }
                th scope="col" { (word("assumptions-origin", voice)) }
            } }
            @for (title, rows) in [("assumptions-set", set), ("assumptions-defaults", rest)] {
                @if !rows.is_empty() {
                    tbody {
                        tr class="group" { th scope="rowgroup" colspan="4" { (word(title, voice)) } }
                        @for row in rows { (assumption(row, voice)) }
                    }
                }
            }
        }
    }
}

fn assumption(a: &Assumption, voice: Voice) -> Markup {
    let unit = if a.unit == "1" { "" } else { a.unit.as_str() };
    html! {
        tr data-name=(a.name) data-value=(figures::plain(&a.value)) {
            th scope="row" { (said(&sentence::capital(&says(a, voice).to_string()))) }
            td class="n" { (said(&figures::shown(&a.value, voice))) @if !unit.is_empty() { " " (unit) } }
            td { (said(&standing(a, voice).to_string())) }
            td { (word(origin(a.origin), voice)) }
        }
    }
}

/// Who put it in force.
fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Default => "origin-default",
        Origin::Practice => "origin-practice-set",
        Origin::Trip => "origin-trip-file",
        Origin::Flag => "origin-flag",
    }
}
