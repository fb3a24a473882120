//! The leg table, the zones on the way, and the places where the set-up changes.

use maud::{Markup, html};

use super::{head::badge, markup::said, markup::spans};
use crate::{
    plan::{
        Plan,
        leg::{Leg, Verdict},
    },
    say::voice::Voice,
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
            caption { "Legs, with the set-up of each rope team" }
            thead {
                tr {
                    th scope="col" class="n" { "Leg" }
                    @if stages { th scope="col" class="n" { "Stage" } }
                    th scope="col" class="n" { "From–to " small { (voice.units.long()) } }
                    th scope="col" class="n" { "Length " small { (voice.units.short()) } }
                    @if heights { th scope="col" class="n" { "Height " small { (voice.units.short()) } } }
                    th scope="col" class="n" { "Time" }
                    @if clocks { th scope="col" class="n" { "There" } }
                    th scope="col" { "Zones" }
                    th scope="col" class="n" { "Gap " small { (voice.units.short()) } }
                    th scope="col" { "Verdict" }
                }
            }
            @for leg in &sheet.plan.legs {
                (leg_rows(leg, voice, has))
            }
        }
        p class="fine" { "Gap: the widest across; in brackets the way over it along the route, where that is longer."
            " Places are those of the first person." }
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
                th scope="row" class="n" data-label="Leg" { (row.leg) }
                @if has.stages { td class="n" data-label="Stage" { (row.stage) } }
                td class="n" data-label={ "From–to, " (voice.units.long()) } { (row.from_to) }
                td class="n" data-label={ "Length, " (voice.units.short()) } { (row.length) }
                @if has.heights { td class="n" data-label={ "Height, " (voice.units.short()) } { (row.heights) } }
                td class="n" data-label="Time" { (row.time) }
                @if has.clocks { td class="n" data-label="There" { (there.as_deref().unwrap_or_default()) } }
                td data-label="Zones" { (or_none(&row.zone_numbers())) }
                td class="n" data-label={ "Gap, " (voice.units.short()) } { (or_none(&row.gap)) }
                td data-label="Verdict" {
                    (badge(leg.verdict, voice))
                    @if let Some(word) = sentence::word_in_part(leg, voice) { " " small { (spans(&word)) } }
                }
            }
            @if !leg.roped && leg.verdict != Verdict::Unroped {
                tr class="setup" { td colspan=(has.count()) { "Walked without a rope; see what to look at." } }
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
    html! {
        @if teams > 1 { span class="who" { "Team " (team.setup.team) } " " }
        strong { (team.spacing) } " · " (team.knots) " · " (team.coils)
        " · rope " strong { (team.needed) " " (voice.units.short()) }
        @if !team.at_hand.is_empty() { " of " (team.at_hand) " " (voice.units.short()) }
        @else if !team.sold.is_empty() { ", take " (team.sold) " " (voice.units.short()) }
        @else { ", more than any rope sold" }
    }
}

/// How late to start and to turn round, where the team is when, when the sun is up; nothing where nobody said when to start.
pub(super) fn clock(plan: &Plan, voice: Voice) -> Option<Markup> {
    let lines = clock::lines(plan, voice);
    let list = html! {
        ul class="clock" { @for line in &lines { li { (spans(&line.clone().capital())) "." } } }
    };
    (!lines.is_empty()).then_some(list)
}

/// The zones that the route meets, in words.
pub(super) fn zones(sheet: &Sheet<'_>, voice: Voice) -> Markup {
    let met = sheet.plan.zones_met();
    html! {
        dl class="zones" {
            @for zone in sheet.zones.iter().filter(|z| met.binary_search(&z.number).is_ok()) {
                div {
                    dt { "Zone " (zone.number) @if let Some(name) = &zone.name { " " (said(name)) } }
                    dd {
                        (spans(&sentence::zone_description(zone, voice)))
                        @if let Some(note) = &zone.note { " " (said(note)) }
                        @if let Some(on) = &zone.observed_on { " Observed " (said(on)) "." }
                        @if let Some(source) = &zone.source { " Source: " (said(source)) "." }
                    }
                }
            }
        }
    }
}

/// Where to stop for the rope, lettered as on the maps.
pub(super) fn changes(sheet: &Sheet<'_>) -> Markup {
    let changes = change::changes(sheet);
    let stages = sheet.plan.route.stages.len() > 1;
    let clocks = changes.iter().any(|c| c.clock.is_some());
    let heights = changes.iter().any(|c| c.height_m.is_some());
    let has = ChangeColumns { stages, clocks };
    html! {
        @if changes.is_empty() { p { "The rope stays in the pack." } }
        @else {
            table class="changes" {
                caption { "Places where the set-up changes, lettered as on the maps" }
                thead {
                    tr {
                        th scope="col" class="n" { "Point" }
                        @if clocks { th scope="col" class="n" { "Clock" } }
                        th scope="col" { "Do" }
                        @if stages { th scope="col" class="n" { "Stage" } }
                        th scope="col" class="n" { "At " small { (sheet.look.voice.units.long()) @if heights { ", height" } } }
                        th scope="col" { "Latitude, longitude" }
                        th scope="col" class="utm" { "UTM" }
                    }
                }
                tbody {
                    @for change in &changes { (change_row(change, sheet.look.voice, has)) }
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

fn change_row(change: &ChangePoint<'_>, voice: Voice, has: ChangeColumns) -> Markup {
    let height = change.height(voice);
    html! {
        tr data-change=(change.number) data-at-m=(number(change.at_m)) {
            th scope="row" class="n" { (change.letter()) }
            @if has.clocks { td class="n" { (change.clock.map(|c| c.to_string()).unwrap_or_default()) } }
            td {
                (change.kind.says(voice).capital()) ", leg " (change.leg.leg)
                @if let Some(then) = itinerary::then(change, voice) {
                    " " span class="then" { (then) }
                }
            }
            @if has.stages { td class="n" { (change.stage) } }
            td class="n" {
                (voice.units.chainage(change.at_m, change.kind.round()))
                @if let Some(height) = height { small class="under" { (height) } }
            }
            td class="at" { (change.degrees) }
            td class="utm at" { (change.utm.as_deref().unwrap_or_default()) }
        }
    }
}
