//! What must be said: findings by level, cautions, and everything the plan rests on.

use maud::{Markup, html};

use super::{decisive::Decisive, figures, markup::said, markup::spans, markup::word};
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

/// Assumptions: first what somebody set for this trip and what decides a fall, the rest folded.
pub(super) fn assumptions(plan: &Plan, voice: Voice) -> Markup {
    let decisive = Decisive::of(plan);
    let is_set = |a: &&Assumption| a.origin != Origin::Default;
    let (set, rest): (Vec<&Assumption>, Vec<&Assumption>) =
        plan.assumptions.iter().partition(is_set);
    let (decide, rest): (Vec<&Assumption>, Vec<&Assumption>) =
        rest.into_iter().partition(|a| decisive.decides(a));
    let caption = word("assumptions-caption", voice).to_string();
    let (set_title, defaults) = (
        word("assumptions-set", voice).to_string(),
        word("assumptions-defaults", voice).to_string(),
    );
    let decide_title = voice.say("annex-decisive", &[]).to_string();
    let count = [("count", Arg::Count(rest.len()))];
    html! {
        (table(&caption, &[(&set_title, set), (&decide_title, decide)], voice))
        details {
            summary { (voice.say("annex-defaults", &count)) }
            (table(&voice.say("annex-defaults-caption", &[]).to_string(), &[(&defaults, rest)], voice))
        }
    }
}

fn table(caption: &str, groups: &[(&str, Vec<&Assumption>)], voice: Voice) -> Markup {
    html! {
        table class="assumptions" {
            caption { (caption) }
            thead { tr {
                th scope="col" { (word("assumptions-what", voice)) }
                th scope="col" class="n" { (word("assumptions-value", voice)) }
                th scope="col" { (word("assumptions-standing", voice)) }
                th scope="col" { (word("assumptions-origin", voice)) }
            } }
            @for (title, rows) in groups {
                @if !rows.is_empty() {
                    tbody {
                        tr class="group" { th scope="rowgroup" colspan="4" { (title) } }
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
