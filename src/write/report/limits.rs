//! Where each set-up stops suiting: the widest gap it is spaced for, and the coils carried.

use maud::{Markup, html};

use super::markup::{column, label, word};
use crate::{
    plan::leg::{Leg, TeamSetup},
    say::{arg::Arg, round::Round, voice::Voice},
    write::{json::number, sheet::Sheet},
};

/// Every set-up with its leg.
fn setups<'a>(sheet: &Sheet<'a>) -> impl Iterator<Item = (&'a Leg, &'a TeamSetup)> {
    let legs = sheet.plan.legs.iter();
    legs.flat_map(|leg| leg.teams.iter().map(move |team| (leg, team)))
}

/// `4`, or with several teams `4, team 2`.
pub(super) fn who(leg: &Leg, team: &TeamSetup, voice: Voice) -> String {
    if leg.teams.len() > 1 {
        let args = [
            ("leg", Arg::Count(leg.leg)),
            ("team", Arg::Count(team.team)),
        ];
        voice.say("limits-team", &args).to_string()
    } else {
        leg.leg.to_string()
    }
}

/// One row a set-up: the gap it is planned for, the widest it is spaced for, as tied and tied anew, and the coil carried.
pub(super) fn limits(sheet: &Sheet<'_>, voice: Voice) -> Markup {
    let short = voice.units.short();
    html! {
        table class="limits stack" {
            caption { (word("limits-caption", voice)) }
            thead { tr {
                th scope="col" { (word("report-leg", voice)) }
                th scope="col" class="n" { (column("report-rope", short, voice)) }
                th scope="col" class="n" { (column("limits-planned", short, voice)) }
                th scope="col" class="n" { (column("limits-as-tied", short, voice)) }
                th scope="col" class="n" { (column("limits-anew", short, voice)) }
                th scope="col" class="n" { (column("report-coils", short, voice)) }
            } }
            @for (leg, team) in setups(sheet) { tbody { (limit(leg, team, voice)) } }
        }
        p class="fine" { (word("limits-fine", voice)) }
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
            th scope="row" data-label=(word("report-leg", voice)) { (who(leg, team, voice)) }
            td class="n" data-label=(label("report-rope", short, voice)) { (maybe(rope_m, Round::Down, voice)) }
            td class="n" data-label=(label("limits-planned", short, voice)) { (maybe(leg.gap_m, Round::Up, voice)) }
            td class="n" data-label=(label("limits-as-tied", short, voice)) { (maybe(team.as_tied_gap_m, Round::Down, voice)) }
            td class="n" data-label=(label("limits-anew", short, voice)) data-leg=(leg.leg) data-team=(team.team)
                data-coil-kg=(number(team.coil_kg)) data-covers-gap-m=[team.covers_gap_m.map(number)] { (maybe(team.covers_gap_m, Round::Down, voice)) }
            td class="n" data-label=(label("report-coils", short, voice)) { (voice.number(team.coil_carried_m, Round::Down)) @if team.coil_carried_m > 0.0 { ", " (voice.shown(&Arg::Kilograms(team.coil_kg, Round::Up))) } }
        }
    }
}

fn maybe(metres: Option<f64>, side: Round, voice: Voice) -> String {
    metres.map_or_else(|| "–".to_owned(), |m| voice.number(m, side))
}
