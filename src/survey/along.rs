//! How far a team runs along crevasses, as far as zones give their strike.

use crate::{
    Planner,
    meet::{Contact, angle::worst_angle},
    plan::leg::Leg,
    practice::Rule,
    trip::{
        route::{Stage, Stretch},
        zone::Strike,
    },
};

/// Crossings are asked for the rope's angle piece by piece, each so long, metres. Our judgement.
const PIECE_M: f64 = 10.0;

/// Metres on ice of zones with a strike where the rope, as it is set up there, meets crevasses at less than the angle from which on
/// a team counts as running along them.
pub(super) fn along_m(planner: &Planner<'_>, legs: &[Leg]) -> f64 {
    let stages = planner.case.route.stages.iter().zip(&planner.met.stages);
    let along_deg = planner.case.rules[Rule::AlongDeg];
    let of_stage = |stage: &Stage, contacts: &[Contact]| -> f64 {
        let zones = contacts.iter().filter_map(|contact| {
            let strike = planner.case.zones[contact.of.zone()?].strike?;
            Some((contact, strike))
        });
        let runs = zones.flat_map(|(contact, strike)| {
            let pieces = contact.crossings.iter().flat_map(pieces);
            pieces.filter(move |piece| runs_along(stage, *piece, legs, strike, along_deg))
        });
        let runs = Stretch::merged(runs.collect(), 0.0);
        runs.iter().map(Stretch::length_m).sum()
    };
    stages
        .map(|(stage, met)| of_stage(stage, &met.contacts))
        .sum()
}

fn pieces(crossing: &Stretch) -> impl Iterator<Item = Stretch> + use<> {
    let Stretch { from_m, to_m } = *crossing;
    let starts = std::iter::successors(Some(from_m), |at| Some(at + PIECE_M));
    starts
        .take_while(move |at| *at < to_m)
        .map(move |at| Stretch {
            from_m: at,
            to_m: (at + PIECE_M).min(to_m),
        })
}

fn runs_along(stage: &Stage, piece: Stretch, legs: &[Leg], strike: Strike, along_deg: f64) -> bool {
    let middle_m = f64::midpoint(piece.from_m, piece.to_m);
    let there =
        |leg: &&Leg| leg.stage == stage.number && leg.start_m <= middle_m && middle_m <= leg.end_m;
    let spacing_m = legs
        .iter()
        .find(there)
        .and_then(|leg| leg.teams.first())
        .map(|team| team.spacing_m);
    let angle = spacing_m.and_then(|spacing_m| worst_angle(stage, &[piece], spacing_m, strike));
    angle.is_some_and(|angle| angle.deg < along_deg)
}
