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

/// The cards, what must be said of all of them, and the cautions.
pub(in crate::write) fn cards(options: &Options, voice: Voice) -> Markup {
    html! {
        p { (spans(&way::counted(options, voice))) }
        ul {
            @for &remark in &options.remarks { li { (spans(&say::options::remark(remark, voice).capital())) } }
        }
        ol class="ways" {
            @for way in way::shown(&options.ways) { li { (card(way, options.ways.len(), voice)) } }
        }
        @if let Some(more) = way::not_shown(options, voice) { p { (spans(&more)) } }
        p { strong { (word("options-cautions", voice)) } }
        ul { @for caution in cautions(voice) { li { (spans(&caution)) } } }
    }
}

/// Who is on which rope, what speaks for the way, and what it asks for.
fn card(way: &Way, all: usize, voice: Voice) -> Markup {
    let number = voice.say("way-number", &[("way", Arg::Count(way.way))]);
    let length = |number: String| format!("{number} {}", voice.units.short());
    let facts = [
        ("way-left", way.left_to_hold.to_string()),
        ("way-help", way::help(way, voice).to_string()),
        ("way-coil", length(way::coil(way, voice))),
        ("options-mass", way::mass(way, voice)),
    ];
    html! {
        p class="way" { strong { (number) } " " (badge(way.verdict, voice)) }
        ul { @for team in &way.teams { li { (spans(&on_rope(team, voice))) } } }
        ul class="way-says" {
            @for says in way::said(way, all, voice) { li { (spans(&says.capital())) } }
        }
        dl { @for (key, figure) in facts { div { dt { (word(key, voice)) } dd { (figure) } } } }
    }
}

/// Who, how far apart, on which rope.
fn on_rope(team: &WayTeam, voice: Voice) -> Said {
    let persons = team.persons.iter().map(|called| person(called, voice));
    let unit = voice.units.short();
    let who = ("who", Arg::Said(Said::join(persons, ", ")));
    if team.leg.is_none() {
        return voice.say("way-unroped", &[who]);
    }
    let spacing = format!("{} {unit}", way::spacing(team, voice));
    let key = if team.rope_m > 0.0 {
        "way-team"
    } else {
        "way-without"
    };
    let args = [
        who,
        ("spacing", Arg::Said(Said::figure(spacing))),
        ("rope", Arg::There(team.rope_m)),
        ("needed", Arg::Needed(team.needed_m)),
    ];
    voice.say(key, &args)
}
