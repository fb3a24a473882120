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
                joined_on: legs_of(legs, |fact| joins(fact) == Some(&rope)),
                rescue_on: legs_of(legs, |fact| reaches(fact) == Some(&rope)),
                rope,
            }
        })
        .collect();
    haul_with(&mut spares, legs);
    spares
}

/// What is found of the legs, each with the number of its leg.
fn facts(legs: &[Leg]) -> impl Iterator<Item = (usize, &Fact)> {
    let found = legs
        .iter()
        .flat_map(|leg| repeat(leg.leg).zip(&leg.findings));
    found.filter_map(|(leg, found)| Some((leg, found.fact()?)))
}

/// The legs on which something is found, in walking order.
fn legs_of(legs: &[Leg], is_found: impl Fn(&Fact) -> bool) -> Vec<usize> {
    let found = facts(legs).filter(|(_, fact)| is_found(fact));
    let mut on: Vec<usize> = found.map(|(leg, _)| leg).collect();
    on.dedup();
    on
}

/// The rope that a cure joins to that of a team.
fn joins(fact: &Fact) -> Option<&RopeName> {
    match fact {
        Fact::NoRope { cure, .. } => cure.as_ref()?.joined_to.as_ref(),
        _ => None,
    }
}

/// The rope that the leader is told to take for whom no loop reaches.
fn reaches(fact: &Fact) -> Option<&RopeName> {
    match fact {
        Fact::NotReached { longer, spare, .. } => longer.as_ref().or(spare.as_ref()),
        _ => None,
    }
}

/// Where those left have too little rope for any haul, and loops reach everybody: one that is carried anyway, else the shortest that
/// is long enough for a loop by itself.
fn haul_with(spares: &mut [SpareRope], legs: &[Leg]) {
    for (leg, own_loop_m) in too_short_for_hauls(legs) {
        let does = spares
            .iter_mut()
            .filter(|spare| spare.rope.length_m >= own_loop_m - 1e-9);
        let best = does.min_by(|a, b| {
            let carried = b.is_carried().cmp(&a.is_carried());
            carried.then_with(|| a.rope.length_m.total_cmp(&b.rope.length_m))
        });
        if let Some(spare) = best
            && let Err(at) = spare.rescue_on.binary_search(&leg)
        {
            spare.rescue_on.insert(at, leg);
        }
    }
}

/// The legs on which that is so, in walking order, each with the rope that a loop by itself takes, metres.
fn too_short_for_hauls(legs: &[Leg]) -> Vec<(usize, f64)> {
    let of_setup = |setup: &TeamSetup| {
        let reached = setup.reach.iter().all(|reach| reach.short_m().is_none());
        let table = setup.haul.as_ref().filter(|_| reached)?;
        let short = matches!(table.answer, HaulAnswer::TooShort { .. });
        short.then_some(table.anchor_to_lip_m + 2.0 * table.lip_to_person_m + table.hands_m)
    };
    let held = legs.iter().filter(|leg| !leg.lacks_rope());
    let of_leg = |leg: &Leg| {
        let loops_m = leg.teams.iter().filter_map(of_setup);
        Some((leg.leg, loops_m.reduce(f64::max)?))
    };
    held.filter_map(of_leg).collect()
}
