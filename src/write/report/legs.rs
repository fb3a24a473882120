//! The leg table, the zones on the way, and the places where the set-up changes.

use maud::{Markup, html};

use super::{
    head::badge,
    markup::{column, label, said, spans, word},
};
use crate::{
    plan::{
        Plan,
        leg::{Leg, Verdict},
    },
    say::{arg::Arg, span::Said, voice::Voice},
    write::{
        json::number,
        parts::{
            change::{self, ChangePoint},
            clock, itinerary,
            row::{LegRow, TeamRow},
            sentence,
        },
        sheet::Sheet,
    },
};

/// One row a leg, and under it one for each rope team.
pub(super) fn legs(sheet: &Sheet<'_>, voice: Voice) -> Markup {
    let stages = sheet.plan.route.stages.len() > 1;
    let heights = sheet.plan.legs.iter().any(|l| l.ascent_m.is_some());
    let clocks = sheet.plan.legs.iter().any(|l| l.end_clock.is_some());
    let has = LegColumns {
        stages,
        heights,
        clocks,
    };
    html! {
        table class="legs stack" {
            caption { (word("legs-caption", voice)) }
            thead {
                tr {
                    th scope="col" class="n" { (word("report-leg", voice)) }
                    @if stages { th scope="col" class="n" { (word("report-stage", voice)) } }
                    th scope="col" class="n" { (column("report-from-to", voice.units.long(), voice)) }
                    th scope="col" class="n" { (column("report-length", voice.units.short(), voice)) }
                    @if heights { th scope="col" class="n" { (column("report-height", voice.units.short(), voice)) } }
                    th scope="col" class="n" { (word("report-time", voice)) }
                    @if clocks { th scope="col" class="n" { (word("report-there", voice)) } }
                    th scope="col" { (word("report-zone-column", voice)) }
                    th scope="col" class="n" { (column("report-gap", voice.units.short(), voice)) }
                    th scope="col" { (word("report-verdict", voice)) }
                }
            }
            @for leg in &sheet.plan.legs {
                (leg_rows(leg, voice, has))
            }
        }
        p class="fine" { (word("legs-fine", voice)) }
    }
}

/// Columns that not every plan fills.
#[derive(Clone, Copy)]
struct LegColumns {
    stages: bool,
    heights: bool,
    clocks: bool,
}

impl LegColumns {
    /// How many there are in all.
    fn count(self) -> usize {
        7 + usize::from(self.stages) + usize::from(self.heights) + usize::from(self.clocks)
    }
}

fn leg_rows(leg: &Leg, voice: Voice, has: LegColumns) -> Markup {
    let there = leg.end_clock.map(|end| end.to_string());
    let row = LegRow::new(leg, voice);
    html! {
        tbody class=(leg.verdict.as_str()) id={ "leg-" (leg.leg) } {
            tr data-leg=(leg.leg) data-start-m=(number(leg.start_m)) data-end-m=(number(leg.end_m))
                data-length-m=(number(leg.length_m)) data-verdict=(leg.verdict.as_str()) {
                th scope="row" class="n" data-label=(word("report-leg", voice)) { (row.leg) }
                @if has.stages { td class="n" data-label=(word("report-stage", voice)) { (row.stage) } }
                td class="n" data-label=(label("report-from-to", voice.units.long(), voice)) { (row.from_to) }
                td class="n" data-label=(label("report-length", voice.units.short(), voice)) { (row.length) }
                @if has.heights { td class="n" data-label=(label("report-height", voice.units.short(), voice)) { (row.heights) } }
                td class="n" data-label=(word("report-time", voice)) { (row.time) }
                @if has.clocks { td class="n" data-label=(word("report-there", voice)) { (there.as_deref().unwrap_or_default()) } }
                td data-label=(word("report-zone-column", voice)) { (or_none(&row.zone_numbers())) }
                td class="n" data-label=(label("report-gap", voice.units.short(), voice)) { (or_none(&row.gap)) }
                td data-label=(word("report-verdict", voice)) {
                    (badge(leg.verdict, voice))
                    @if let Some(word) = sentence::word_in_part(leg, voice) { " " small { (spans(&word)) } }
                }
            }
            @if !leg.roped && leg.verdict != Verdict::Unroped {
                tr class="setup" { td colspan=(has.count()) { (word("legs-without-rope", voice)) } }
            }
            @for (team, setup) in row.teams.iter().zip(&leg.teams) {
                tr class="setup" data-leg=(leg.leg)
                    data-team=(setup.team) data-spacing-m=(number(setup.spacing_m))
                    data-knots=(setup.knots.count) data-coil-m=(number(setup.coil_m)) data-coil-carried-m=(number(setup.coil_carried_m))
                    data-rope-m=(number(setup.ledger.total_m)) {
                    td colspan=(has.count()) { (setup_line(team, row.teams.len(), voice)) }
                }
            }
        }
    }
}

fn or_none(text: &str) -> &str {
    if text.is_empty() { "–" } else { text }
}

fn setup_line(team: &TeamRow<'_>, teams: usize, voice: Voice) -> Markup {
    let with_unit = |m: &str| {
        (
            "length",
            Arg::Figure(format!("{m} {}", voice.units.short())),
        )
    };
    html! {
        @if teams > 1 { span class="who" { (voice.say("legs-team", &[("team", Arg::Count(team.setup.team))])) } " " }
        strong { (team.spacing) } " · " (team.knots) " · " (team.coils)
        " · " (word("legs-rope", voice)) " " strong { (team.needed) " " (voice.units.short()) }
        @if !team.at_hand.is_empty() { " " (voice.say("legs-of", &[with_unit(&team.at_hand)])) }
        @else if !team.sold.is_empty() { (voice.say("legs-take", &[with_unit(&team.sold)])) }
        @else { (word("legs-none-sold", voice)) }
    }
}

/// How late to start and to turn round, where the team is when, when the sun is up; nothing where nobody said when to start.
pub(super) fn clock(plan: &Plan, voice: Voice) -> Markup {
    html! {
        ul class="clock" { @for line in clock::lines(plan, voice) { li { (spans(&line.capital())) "." } } }
    }
}

/// The zones that the route meets, in words.
pub(super) fn zones(sheet: &Sheet<'_>, voice: Voice) -> Markup {
    let met = sheet.plan.zones_met();
    html! {
        dl class="zones" {
            @for zone in sheet.zones.iter().filter(|z| met.binary_search(&z.number).is_ok()) {
                div {
                    dt { (voice.say("legs-zone", &[("zone", Arg::Count(zone.number))])) @if let Some(name) = &zone.name { " " (said(name)) } }
                    dd {
                        (spans(&sentence::zone_description(zone, voice)))
                        @if let Some(note) = &zone.note { " " (said(note)) }
                        @if let Some(on) = &zone.observed_on { " " (spans(&voice.say("zone-observed", &[("text", Arg::Name(on))]))) }
                        @if let Some(source) = &zone.source { " " (spans(&voice.say("zone-source", &[("text", Arg::Name(source))]))) }
                    }
                }
            }
        }
    }
}

/// Where to stop for the rope, lettered as on the maps.
pub(super) fn changes(sheet: &Sheet<'_>) -> Markup {
    let (changes, voice) = (change::changes(sheet), sheet.look.voice);
    let stages = sheet.plan.route.stages.len() > 1;
    let clocks = changes.iter().any(|c| c.clock.is_some());
    let heights = changes.iter().any(|c| c.height_m.is_some());
    let has = ChangeColumns { stages, clocks };
    html! {
        @if changes.is_empty() { p { (word("changes-none", voice)) } }
        @else {
            table class="changes" {
                caption { (word("changes-caption", voice)) }
                thead {
                    tr {
                        th scope="col" class="n" { (word("changes-number", voice)) }
                        @if clocks { th scope="col" class="n" { (word("changes-clock", voice)) } }
                        th scope="col" { (word("changes-do", voice)) }
                        @if stages { th scope="col" class="n" { (word("report-stage", voice)) } }
                        th scope="col" class="n" { (word("changes-at", voice)) " " small { (voice.units.long()) @if heights { (word("changes-height", voice)) } } }
                        th scope="col" { (word("changes-degrees", voice)) }
                        th scope="col" class="utm" { (word("changes-utm", voice)) }
                    }
                }
                tbody {
                    @for change in &changes { (change_row(change, voice, has)) }
                }
            }
        }
    }
}

/// Columns that not every plan fills.
#[derive(Clone, Copy)]
struct ChangeColumns {
    stages: bool,
    clocks: bool,
}

/// `Rope up, leg 2`.
fn done(change: &ChangePoint<'_>, voice: Voice) -> Said {
    let args = [
        ("what", Arg::Said(change.kind.says(voice).capital())),
        ("leg", Arg::Count(change.leg.leg)),
    ];
    voice.say("changes-leg", &args)
}

fn change_row(change: &ChangePoint<'_>, voice: Voice, has: ChangeColumns) -> Markup {
    let height = change.height(voice);
    html! {
        tr data-change=(change.number) data-at-m=(number(change.at_m)) {
            th scope="row" class="n" { (change.letter()) }
            @if has.clocks { td class="n" { (change.clock.map(|c| c.to_string()).unwrap_or_default()) } }
            td {
                (done(change, voice))
                @if let Some(then) = itinerary::then(change, voice) {
                    " " span class="then" { (then) }
                }
            }
            @if has.stages { td class="n" { (change.stage) } }
            td class="n" {
                (voice.chainage(change.at_m, change.kind.round()))
                span class="unit" { " " (voice.units.long()) }
                @if let Some(height) = height { small class="under" { (height) } }
            }
            td class="at" { (change.degrees) }
            td class="utm at" { (change.utm.as_deref().unwrap_or_default()) }
        }
    }
}
