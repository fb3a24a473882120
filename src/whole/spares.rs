//! What ropes are good for that no team is tied to.

use std::iter::repeat;

use crate::{
    plan::{
        fact::Fact,
        fall::HaulAnswer,
        leg::{Leg, TeamSetup},
        name::RopeName,
        spare::SpareRope,
    },
    trip::rope::Rope,
};

/// The ropes at hand that no team is tied to.
pub(super) fn spares(ropes: &[Rope], legs: &[Leg]) -> Vec<SpareRope> {
    let setups = || legs.iter().flat_map(|leg| &leg.teams);
    let tied = |number: usize| {
        let mut tied = setups().filter_map(|setup| setup.rope.as_ref());
        tied.any(|rope| rope.number == number)
    };
    let left = (1..).zip(ropes).filter(|(number, _)| !tied(*number));
    let mut spares: Vec<SpareRope> = left
        .map(|(number, one)| {
            let rope = RopeName::of(number, one);
            SpareRope {
                joined_on: joined_on(&rope, legs),
                rescue_on: Vec::new(),
                rope,
            }
        })
        .collect();
    if let Some((place, rescue_on)) = rescue(&spares, legs)
        && let Some(spare) = spares.get_mut(place)
    {
        spare.rescue_on = rescue_on;
    }
    spares
}

/// What is found of the legs, each with the number of its leg.
fn facts(legs: &[Leg]) -> impl Iterator<Item = (usize, &Fact)> {
    let found = legs
        .iter()
        .flat_map(|leg| repeat(leg.leg).zip(&leg.findings));
    found.filter_map(|(leg, found)| Some((leg, found.fact()?)))
}

/// The legs on which a cure joins a rope to that of a team.
fn joined_on(rope: &RopeName, legs: &[Leg]) -> Vec<usize> {
    let joins = |fact: &Fact| match fact {
        Fact::NoRope { cure, .. } => {
            let joined = cure.as_ref().and_then(|cure| cure.joined_to.as_ref());
            joined == Some(rope)
        }
        _ => false,
    };
    let mut on: Vec<usize> = facts(legs)
        .filter(|(_, fact)| joins(fact))
        .map(|(leg, _)| leg)
        .collect();
    on.dedup();
    on
}

/// The place of the rope that does for most of what is short, and on which legs: of equals one that is joined already, or that a
/// finding names, else the shortest.
fn rescue(spares: &[SpareRope], legs: &[Leg]) -> Option<(usize, Vec<usize>)> {
    let short = short_of_rope(legs);
    let is_named = |rope: &RopeName| {
        let mut facts = facts(legs);
        facts.any(|(_, fact)| matches!(fact, Fact::NotReached { spare: Some(spare), .. } if spare == rope))
    };
    let does = |rope: &RopeName| -> Vec<usize> {
        let met = short
            .iter()
            .filter(|(_, short_m)| *short_m <= rope.length_m);
        met.map(|(leg, _)| *leg).collect()
    };
    let all = spares.iter().enumerate();
    let all = all.map(|(place, spare)| (place, spare, does(&spare.rope)));
    let does = all.filter(|(.., legs)| !legs.is_empty());
    let best = does.max_by(|(_, a, on_a), (_, b, on_b)| {
        let more = on_a.len().cmp(&on_b.len());
        let joined = || {
            let [a, b] = [a, b].map(|spare| !spare.joined_on.is_empty());
            a.cmp(&b)
        };
        let named = || is_named(&a.rope).cmp(&is_named(&b.rope));
        let shorter = || b.rope.length_m.total_cmp(&a.rope.length_m);
        more.then_with(joined).then_with(named).then_with(shorter)
    });
    let (place, _, mut legs) = best?;
    legs.dedup();
    Some((place, legs))
}

/// By how much loops end short of the lip, metres, and where all reach it, how much rope those left lack for any haul; each with
/// its leg, in walking order.
fn short_of_rope(legs: &[Leg]) -> Vec<(usize, f64)> {
    let of_setup = |setup: &TeamSetup| -> Vec<f64> {
        let loops = setup.reach.iter().map(|reach| -reach.depth_m);
        let loops: Vec<f64> = loops.filter(|short_m| *short_m > 1e-9).collect();
        let haul = setup.haul.as_ref().filter(|_| loops.is_empty());
        let haul = haul.and_then(|table| match table.answer {
            HaulAnswer::TooShort { missing_m, .. } => Some(missing_m),
            _ => None,
        });
        loops.into_iter().chain(haul).collect()
    };
    let held = legs.iter().filter(|leg| !leg.lacks_rope());
    let of_leg = |leg: &Leg| {
        let short = leg.teams.iter().flat_map(of_setup);
        short.map(|short_m| (leg.leg, short_m)).collect::<Vec<_>>()
    };
    held.flat_map(of_leg).collect()
}
