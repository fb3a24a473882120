//! What ropes are good for that no team is tied to.

use std::iter::repeat;

use crate::{
    plan::{
        fact::Fact,
        fall::HaulAnswer,
        finding::At,
        leg::{Leg, TeamSetup},
        name::RopeName,
        reach::Reach,
        spare::SpareRope,
    },
    trip::{party::Called, rope::Rope},
};

/// The ropes at hand that no team is tied to.
pub(super) fn spares(ropes: &[Rope], legs: &[Leg]) -> Vec<SpareRope> {
    let setups = || legs.iter().flat_map(|leg| &leg.teams);
    let tied = |number: usize| {
        let mut tied = setups().filter_map(|setup| setup.rope.as_ref());
        tied.any(|rope| rope.number == number)
    };
    let left = (1..).zip(ropes).filter(|(number, _)| !tied(*number));
    let left = left.map(|(number, rope)| RopeName::of(number, rope));
    let mut spares: Vec<Spare<'_>> = left.map(|rope| Spare::found(rope, legs)).collect();
    haul_with(&mut spares, legs);
    let handed_out = spares.into_iter().map(|spare| {
        let instead = is_longer(&spare.rope, legs);
        SpareRope {
            instead,
            ..spare.handed_out()
        }
    });
    handed_out.collect()
}

/// Whether there is one team, and a loop on this rope reaches everybody whom none reaches on its own.
fn is_longer(rope: &RopeName, legs: &[Leg]) -> bool {
    let one = legs
        .iter()
        .all(|leg| leg.teams.len() <= 1 && !leg.lacks_rope());
    let mut short = facts(legs).filter_map(|(.., fact)| match fact {
        Fact::NotReached { longer, .. } => Some(longer.as_ref()),
        _ => None,
    });
    let first = short.next().is_some_and(|longer| longer == Some(rope));
    one && first && short.all(|longer| longer == Some(rope))
}

/// A rope that nobody is tied to, and where it is needed.
struct Spare<'a> {
    rope: RopeName,
    joined_on: Vec<usize>,
    /// In walking order.
    rescues: Vec<Rescue<'a>>,
}

/// For whom of a team a rope is carried beside its own.
struct Rescue<'a> {
    leg: usize,
    setup: &'a TeamSetup,
    /// Positions on the rope.
    of: Vec<usize>,
}

impl<'a> Spare<'a> {
    /// With what findings ask of it.
    fn found(rope: RopeName, legs: &'a [Leg]) -> Self {
        let joined = facts(legs).filter(|(_, _, fact)| fact.joined_to() == Some(&rope));
        let mut joined_on: Vec<usize> = joined.map(|(leg, ..)| leg.leg).collect();
        joined_on.dedup();
        let mut rescues: Vec<Rescue<'_>> = Vec::new();
        for (leg, team, fact) in facts(legs) {
            let Fact::NotReached { falls, .. } = fact else {
                continue;
            };
            if fact.taken_for_loop() != Some(&rope) {
                continue;
            }
            let mut setups = leg.teams.iter();
            let setup = setups.find(|setup| team.is_none_or(|team| setup.team == team));
            let Some(setup) = setup else { continue };
            let known =
                |rescue: &&mut Rescue<'_>| rescue.leg == leg.leg && rescue.setup.team == setup.team;
            match rescues.iter_mut().find(known) {
                Some(rescue) => rescue.of.push(falls.position),
                None => rescues.push(Rescue {
                    leg: leg.leg,
                    setup,
                    of: vec![falls.position],
                }),
            }
        }
        Self {
            rope,
            joined_on,
            rescues,
        }
    }

    fn is_carried(&self) -> bool {
        !self.joined_on.is_empty() || !self.rescues.is_empty()
    }

    /// Who of the teams that it is for may carry it: nobody whom it is for.
    fn handed_out(self) -> SpareRope {
        let mut rescue_on: Vec<usize> = self.rescues.iter().map(|rescue| rescue.leg).collect();
        rescue_on.dedup();
        let mut teams: Vec<usize> = self
            .rescues
            .iter()
            .map(|rescue| rescue.setup.team)
            .collect();
        teams.sort_unstable();
        teams.dedup();
        let people = |of: fn(&Rescue<'_>, usize) -> bool| {
            let people = self.rescues.iter().flat_map(|rescue| {
                let placed = (1..).zip(&rescue.setup.persons);
                placed.filter(move |(position, _)| of(rescue, *position))
            });
            let mut people: Vec<Called> = people.map(|(_, p)| p.called.clone()).collect();
            people.sort();
            people.dedup();
            people
        };
        let rescue_of = people(|rescue, position| rescue.of.contains(&position));
        let mut carried_by = people(|_, _| true);
        carried_by.retain(|called| !rescue_of.contains(called));
        SpareRope {
            rope: self.rope,
            joined_on: self.joined_on,
            rescue_on,
            rescue_teams: teams,
            rescue_of,
            carried_by,
            instead: false,
        }
    }
}

/// What is found of the legs, each with its leg and the team where there are several.
fn facts(legs: &[Leg]) -> impl Iterator<Item = (&Leg, Option<usize>, &Fact)> {
    let found = legs.iter().flat_map(|leg| repeat(leg).zip(&leg.findings));
    found.filter_map(|(leg, found)| {
        let team = match &found.at {
            At::Leg(place) => place.team,
            _ => None,
        };
        Some((leg, team, found.fact()?))
    })
}

/// Where loops reach everybody, and those left have too little rope for any haul or a loop barely reaches: a rope that is carried
/// anyway, else the shortest that is long enough for a loop by itself, one for each team.
fn haul_with<'a>(spares: &mut [Spare<'a>], legs: &'a [Leg]) {
    for (wanted, own_loop_m) in wanting(legs) {
        let there = |spare: &&mut Spare<'_>| {
            let free = !spare.rescues.iter().any(|known| known.leg == wanted.leg);
            free && spare.rope.length_m >= own_loop_m - 1e-9
        };
        let best = spares.iter_mut().filter(there).min_by(|a, b| {
            let carried = b.is_carried().cmp(&a.is_carried());
            carried.then_with(|| a.rope.length_m.total_cmp(&b.rope.length_m))
        });
        if let Some(spare) = best {
            let at = spare
                .rescues
                .partition_point(|known| known.leg < wanted.leg);
            spare.rescues.insert(at, wanted);
        }
    }
}

/// The teams for which that is so, in walking order, each with the rope that a loop by itself takes, metres.
fn wanting(legs: &[Leg]) -> impl Iterator<Item = (Rescue<'_>, f64)> {
    let held = legs.iter().filter(|leg| !leg.lacks_rope());
    held.flat_map(|leg| {
        leg.teams.iter().filter_map(|setup| {
            let reached = setup.reach.iter().all(|reach| reach.short_m().is_none());
            let own_loop_m = setup.haul.as_ref()?.own_loop_m().filter(|_| reached)?;
            let of = setup.reach.iter().filter(|reach| wants(reach));
            let of: Vec<usize> = of.map(|reach| reach.person).collect();
            let leg = leg.leg;
            (!of.is_empty()).then_some((Rescue { leg, setup, of }, own_loop_m))
        })
    })
}

/// Whether a rope by itself is wanted for somebody whom a loop reaches.
fn wants(reach: &Reach) -> bool {
    let short = matches!(reach.haul, Some(HaulAnswer::TooShort { .. }));
    short || reach.is_barely()
}
