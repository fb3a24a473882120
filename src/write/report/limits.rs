//! Where each set-up stops holding good: the widest gap the rope covers, and the coils carried.

use maud::{Markup, html};

use crate::{
    plan::leg::{Leg, TeamSetup},
    say::{round::Round, voice::Voice},
    write::{json::number, sheet::Sheet},
};

/// Every set-up with its leg.
fn setups<'a>(sheet: &Sheet<'a>) -> impl Iterator<Item = (&'a Leg, &'a TeamSetup)> {
    let legs = sheet.plan.legs.iter();
    legs.flat_map(|leg| leg.teams.iter().map(move |team| (leg, team)))
}

/// `4`, or with several teams `4, team 2`.
pub(super) fn who(leg: &Leg, team: &TeamSetup) -> String {
    if leg.teams.len() > 1 {
        format!("{}, team {}", leg.leg, team.team)
    } else {
        leg.leg.to_string()
    }
}

/// One row a set-up: the gap it is planned for, the gaps it still covers, as tied and tied anew, and the coil carried.
pub(super) fn limits(sheet: &Sheet<'_>, voice: Voice) -> Markup {
    let short = voice.units.short();
    html! {
        table class="limits stack" {
            caption { "How wide a gap each set-up still covers, as it is tied and with its rope tied anew" }
            thead { tr {
                th scope="col" { "Leg" }
                th scope="col" class="n" { "Rope " small { (short) } }
                th scope="col" class="n" { "Planned gap " small { (short) } }
                th scope="col" class="n" { "Gap covered as tied " small { (short) } }
                th scope="col" class="n" { "Tied anew " small { (short) } }
                th scope="col" class="n" { "Coil at each end " small { (short) } }
            } }
            @for (leg, team) in setups(sheet) { tbody { (limit(leg, team, voice)) } }
        }
        p class="fine" { "Gaps across, met as on this leg, by the spacing rule, which says nothing about holding a fall." }
    }
}

fn limit(leg: &Leg, team: &TeamSetup, voice: Voice) -> Markup {
    let rope_m = team
        .rope
        .as_ref()
        .map(|r| r.length_m)
        .or(team.sold_length_m);
    let short = voice.units.short();
    html! {
        tr {
            th scope="row" data-label="Leg" { (who(leg, team)) }
            td class="n" data-label={ "Rope, " (short) } { (maybe(rope_m, Round::Down, voice)) }
            td class="n" data-label={ "Planned gap, " (short) } { (maybe(leg.gap_m, Round::Up, voice)) }
            td class="n" data-label={ "Covered as tied, " (short) } { (maybe(team.as_tied_gap_m, Round::Down, voice)) }
            td class="n" data-label={ "Tied anew, " (short) } data-leg=(leg.leg) data-team=(team.team)
                data-coil-kg=(number(team.coil_kg)) data-covers-gap-m=[team.covers_gap_m.map(number)] { (maybe(team.covers_gap_m, Round::Down, voice)) }
            td class="n" data-label={ "Coil each, " (short) } { (voice.units.number(team.coil_carried_m, Round::Down)) @if team.coil_carried_m > 0.0 { ", " (kilograms(team.coil_kg)) } }
        }
    }
}

fn kilograms(kg: f64) -> String {
    format!("{:.1} kg", (kg * 10.0).ceil() / 10.0)
}

fn maybe(metres: Option<f64>, side: Round, voice: Voice) -> String {
    metres.map_or_else(|| "–".to_owned(), |m| voice.units.number(m, side))
}
