//! Ways to split the party and to use the ropes, one card for each, the best first.

use maud::{Markup, html};

use super::{
    head::badge,
    markup::{spans, word},
};
use crate::{
    plan::options::{Options, Way, WayTeam},
    say::{self, arg::Arg, cautions::cautions, name::person, span::Said, voice::Voice},
    write::parts::way,
};

/// How many were weighed, and what must be said of all of them.
pub(in crate::write) fn head(options: &Options, voice: Voice) -> Markup {
    html! {
        p { (spans(&way::counted(options, voice))) }
        ul {
            @for &remark in &options.remarks { li { (spans(&say::options::remark(remark, voice).capital())) } }
        }
    }
}

/// What all have in common, those that are not shown, and the cautions.
pub(in crate::write) fn foot(options: &Options, told: &[Said], voice: Voice) -> Markup {
    html! {
        @if let Some(alike) = way::alike(told, voice) { p { (spans(&alike)) } }
        @if let Some(more) = way::not_shown(options, voice) { p { (spans(&more)) } }
        p { strong { (word("options-cautions", voice)) } }
        ul { @for caution in cautions(voice) { li { (spans(&caution)) } } }
    }
}

/// In what the way differs first, then who is on which rope, and what it asks for that not every way does.
pub(in crate::write) fn card(way: &Way, of: &Options, told: &[Said], voice: Voice) -> Markup {
    let number = voice.say("way-number", &[("way", Arg::Count(way.way))]);
    let length = |number: String| format!("{number} {}", voice.units.short());
    let facts = [
        ("way-left", way.left_to_hold.to_string()),
        ("way-help", way::help(way, voice).to_string()),
        ("way-coil", length(way::coils(way, voice))),
        ("options-mass", way::mass(way, voice)),
    ];
    html! {
        p class="way" { strong { (number) } " " (badge(way.verdict, voice)) }
        ul class="way-says" {
            @for says in way::differs(way, of.ways.len(), voice) { li { (spans(&says.capital())) } }
        }
        ul {
            @for team in &way.teams { li { (spans(&on_rope(team, voice))) } }
            @for says in way::walked_besides(way, told, voice) { li { (spans(&says.capital())) } }
        }
        dl { @for (key, figure) in facts { div { dt { (word(key, voice)) } dd { (figure) } } } }
    }
}

/// Who, how far apart, on which rope.
fn on_rope(team: &WayTeam, voice: Voice) -> Said {
    let persons = team.persons.iter().map(|called| person(called, voice));
    let unit = voice.units.short();
    let who = ("who", Arg::Said(Said::join(persons, ", ")));
    let Some(leg) = team.leg else {
        return voice.say("way-unroped", &[who]);
    };
    let spacing = format!("{} {unit}", way::spacing(team, voice));
    let key = if team.rope_m > 0.0 {
        "way-team"
    } else {
        "way-without"
    };
    let [least_m, most_m] = team.spacing_m;
    let args = [
        who,
        ("leg", Arg::Count(leg)),
        ("varies", Arg::yes(least_m < most_m)),
        ("spacing", Arg::Said(Said::figure(spacing))),
        ("rope", Arg::There(team.rope_m)),
        ("needed", Arg::Needed(team.needed_m)),
    ];
    voice.say(key, &args)
}
