//! If somebody falls: the model's answer for each set-up, the rope that is then free, and the ways to haul.

use maud::{Markup, html};

use super::{
    limits,
    markup::{column, label, spans, word},
    same::{Same, grouped},
};
use crate::{
    plan::{
        fall::{Arrest, HaulSystem, HaulTable, Held},
        leg::{Leg, TeamSetup},
        reach::Reach,
    },
    say::{
        self,
        arg::Arg,
        mark::no_place,
        plain,
        round::Round,
        setup::{can, haul_answer, held, lip_slope, side, snow, usual_fall_brief},
        span::Said,
        voice::Voice,
    },
    write::{json::number, parts::row::TeamRow},
};

/// Signs of a name beside its number. Our judgement.
const NAME_SIGNS: usize = 16;

/// Each set-up once, as the ropes are drawn, with the legs it is for.
pub(super) fn holding(legs: &[Leg], voice: Voice) -> Markup {
    html! {
        p { (word("holding-what", voice)) }
        @for same in grouped(legs) {
            @if let Some(setup) = same.setup() {
                article class="fall" {
                    h3 { (same.shown(voice)) " – " (TeamRow::new(setup, voice).spacing) }
                    (arrests(&same, voice))
                    div class="halves" {
                        div { @for (part, _) in same.parts(free) { (reserve(&same, &part, voice)) } }
                        div { @for (part, table) in same.parts(|s| s.haul.as_ref()) {
                            @if let Some(table) = table { (haul(&same, &part, table, voice)) }
                        } }
                    }
                }
            }
        }
        p class="fine" { (word("holding-fine", voice)) }
    }
}

/// Position on the rope with the name, where all who share it are the same there.
fn person(same: &Same<'_>, position: usize) -> Said {
    let of = |setup: &TeamSetup| {
        let person = position.checked_sub(1).and_then(|i| setup.persons.get(i));
        person.and_then(|p| p.called.name.clone())
    };
    let mut names = same.uses.iter().map(|(_, setup)| of(setup));
    let first = names.next().flatten();
    let name = first.filter(|f| names.all(|n| n.as_ref() == Some(f)));
    let name = name.map(|name| Said::name(plain::short(&name, NAME_SIGNS)));
    Said::join(
        [Said::figure(position.to_string())].into_iter().chain(name),
        " ",
    )
}

/// `4/1 8/1`: legs and teams, for programs.
fn uses(part: &Same<'_>) -> String {
    let uses = part
        .uses
        .iter()
        .map(|(l, s)| format!("{}/{}", l.leg, s.team));
    uses.collect::<Vec<_>>().join(" ")
}

/// Which legs a table is for, where the set-up has more than one such table.
fn only(same: &Same<'_>, part: &Same<'_>, voice: Voice) -> String {
    if part.uses.len() == same.uses.len() {
        String::new()
    } else {
        format!("{}: ", part.shown(voice))
    }
}

// --- the worst fall ---

fn arrests(same: &Same<'_>, voice: Voice) -> Markup {
    let short = voice.units.short();
    html! {
        table class="arrest stack" {
            caption { (word("fall-caption", voice)) }
            thead { tr {
                th scope="col" { (word("report-leg", voice)) }
                th scope="col" { (word("fall-falls", voice)) }
                th scope="col" { (word("fall-holds", voice)) }
                th scope="col" { (word("fall-in-the-model", voice)) }
                th scope="col" class="n" { (column("fall-slide", short, voice)) }
                th scope="col" class="n" { (column("fall-peak", "kN", voice)) }
                th scope="col" { (word("fall-taken", voice)) }
            } }
            @for (leg, setup) in &same.uses { tbody { (arrest(same, leg, setup, voice)) } }
        }
    }
}

fn arrest(same: &Same<'_>, leg: &Leg, setup: &TeamSetup, voice: Voice) -> Markup {
    let who = limits::who(leg, setup, voice);
    html! {
        @if let Some(arrest) = &setup.arrest {
            @let ([slide_from, slide_to], [kn_from, kn_to]) = (arrest.slide_m, arrest.holder_force_kn);
            tr data-arrest=(leg.leg) data-team=(setup.team) data-falls=(arrest.falls) data-holds=(numbers(&arrest.holds))
                data-held=(arrest.verdict.as_str()) data-slope-deg=(number(arrest.slope_deg))
                data-slide-from-m=(number(slide_from)) data-slide-to-m=(number(slide_to))
                data-from-kn=(number(kn_from)) data-to-kn=(number(kn_to)) {
                th scope="row" data-label=(word("report-leg", voice)) { (who) }
                td class="who" data-label=(word("fall-falls", voice)) { (spans(&person(same, arrest.falls))) }
                td data-label=(word("fall-holds", voice)) { (numbers(&arrest.holds).replace(' ', ", ")) }
                td class="whole" data-label=(word("fall-in-the-model", voice)) {
                    @let says = held(arrest, voice);
                    @if arrest.verdict == Held::None { strong { (says) } } @else { (says) }
                    @if let Some(usual) = usual_fall_brief(arrest, &setup.persons, voice) { "; " (spans(&usual)) }
                }
                td class="n" data-label=(label("fall-slide", voice.units.short(), voice)) {
                    (voice.number(slide_from, Round::Down)) "–" (voice.number(slide_to, Round::Up))
                }
                td class="n" data-label=(label("fall-peak", "kN", voice)) { (voice.fixed(kn_from, 1, Round::Down)) "–" (voice.fixed(kn_to, 1, Round::Up)) }
                td data-label=(word("fall-taken", voice)) { (taken(arrest, setup, voice)) }
            }
        } @else {
            tr {
                th scope="row" data-label=(word("report-leg", voice)) { (who) }
                td class="whole" colspan="6" { (word("fall-no-answer", voice)) }
            }
        }
    }
}

fn numbers(positions: &[usize]) -> String {
    let all: Vec<String> = positions.iter().map(usize::to_string).collect();
    all.join(" ")
}

/// `settled snow, 7° downhill to the lip, knots not counted`.
fn taken(arrest: &Arrest, setup: &TeamSetup, voice: Voice) -> Said {
    let knots = match setup.knots_count_from_snow_m {
        _ if arrest.knots_counted => voice.say("taken-knots-counted", &[]),
        Some(from_m) => voice.say("taken-knots-from", &[("snow", Arg::Needed(from_m))]),
        None => Said::default(),
    };
    let args = [
        ("snow", Arg::Said(snow(arrest.snow, voice))),
        ("slope", Arg::Said(lip_slope(arrest, voice))),
        ("knots", Arg::Said(knots)),
    ];
    voice.say("taken", &args)
}

// --- free rope ---

/// What the table of loops shows of a set-up.
fn free(setup: &TeamSetup) -> &[Reach] {
    &setup.reach
}

fn reserve(same: &Same<'_>, part: &Same<'_>, voice: Voice) -> Markup {
    let short = voice.units.short();
    let setup = part.setup();
    html! {
        table class="reserve" data-uses=(uses(part)) {
            caption { (only(same, part, voice)) (word("loop-caption", voice)) }
            thead { tr {
                th scope="col" { (word("fall-falls", voice)) }
                th scope="col" class="n" { (column("loop-free", short, voice)) }
                th scope="col" { (word("loop-loop", voice)) }
            } }
            tbody { @if let Some(setup) = setup { @for reach in &setup.reach { (reserve_row(part, setup, reach, voice)) } } }
            @if let Some(none) = setup.filter(|s| s.reach.is_empty()).and_then(|s| no_place(s, voice)) {
                tfoot { tr { td colspan="3" { (spans(&voice.say("loop-none", &[("none", Arg::Said(none.capital()))]))) } } }
            }
        }
    }
}

fn reserve_row(part: &Same<'_>, setup: &TeamSetup, reach: &Reach, voice: Voice) -> Markup {
    let told = say::setup::reach(reach, &setup.persons, voice);
    html! {
        tr data-person=(reach.person) data-free-m=(number(reach.free_m)) data-depth-m=(number(reach.depth_m)) {
            th scope="row" { (spans(&person(part, reach.person))) }
            td class="n" { (voice.number(reach.free_m, Round::Down)) " " small { (side(reach.side, voice)) } }
            td { @if reach.short_m().is_some() { strong { (spans(&told)) } } @else { (spans(&told)) } }
        }
    }
}

// --- hauling ---

fn haul(same: &Same<'_>, part: &Same<'_>, table: &HaulTable, voice: Voice) -> Markup {
    let short = voice.units.short();
    html! {
        table class="haul" data-uses=(uses(part)) data-person=(table.person) data-haulers=(table.haulers) {
            caption {
                (only(same, part, voice)) (spans(&hauling(part, table, voice)))
            }
            thead { tr {
                th scope="col" { (word("haul-system", voice)) }
                th scope="col" { (word("haul-strand", voice)) }
                th scope="col" class="n" { (column("report-rope", short, voice)) }
                th scope="col" class="n" { (word("haul-strokes", voice)) }
                th scope="col" class="n" { (column("haul-pull", "kN", voice)) }
                th scope="col" { (voice.say("haul-can", &[("haulers", Arg::Count(table.haulers))])) }
            } }
            tbody { @for system in &table.systems { (haul_row(table, system, voice)) } }
        }
    }
}

/// `Hauling out 2 Ben, 3 m below the lip: …`.
fn hauling(part: &Same<'_>, table: &HaulTable, voice: Voice) -> Said {
    let args = [
        ("who", Arg::Said(person(part, table.person))),
        ("depth", Arg::Needed(table.lip_to_person_m)),
        ("answer", Arg::Said(haul_answer(&table.answer, voice))),
    ];
    voice.say("haul-caption", &args)
}

fn haul_row(table: &HaulTable, system: &HaulSystem, voice: Voice) -> Markup {
    let loaded = system.system.needs_free_strand();
    let why_not = match system.rope_m {
        _ if system.possible => None,
        _ if loaded && table.needs_own_strand => Some("haul-knots"),
        Some(_) => Some("haul-short"),
        None => Some("haul-no-room"),
    };
    html! {
        tr data-system=(system.system.as_str()) data-haul-rope-m=[system.rope_m.map(number)] data-possible=(system.possible)
            data-pull-kn=(number(system.pull_kn)) data-strokes=[system.strokes] data-can=(system.can.as_str()) {
            th scope="row" { (say::setup::system(system.system, voice)) }
            td { (word(if loaded { "haul-loaded" } else { "haul-own" }, voice)) }
            td class="n" {
                @if let Some(rope_m) = system.rope_m { (voice.number(rope_m, Round::Up)) }
                @if let Some(why_not) = why_not { " " small { (word(why_not, voice)) } }
            }
            td class="n" { @if let Some(strokes) = system.strokes { (strokes) } @else { "–" } }
            td class="n" { (voice.fixed(system.pull_kn, 2, Round::Up)) }
            td { (can(system.can, voice).capital()) }
        }
    }
}
