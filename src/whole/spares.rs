//! What ropes are good for that no team is tied to.

use std::iter::repeat;

use crate::{
    plan::{
        fact::Fact,
        fall::HaulAnswer,
        finding::At,
        leg::{Leg, TeamSetup},
        name::RopeName,
        reach::{Reach, Side},
        spare::SpareRope,
    },
    rope::{
        carried::{Carried, RopeLoad},
        reserve::free,
        share::{holds, is_cord, mass_kg},
    },
    trip::{job::Brief, party::Called, rope::Rope},
};

/// The ropes at hand that no team is tied to.
pub(super) fn spares(job: &Brief<'_>, legs: &[Leg]) -> Vec<SpareRope> {
    let setups = || legs.iter().flat_map(|leg| &leg.teams);
    let tied = |number: usize| {
        let mut tied = setups().filter_map(|setup| setup.rope.as_ref());
        tied.any(|rope| rope.number == number)
    };
    let left = (1..).zip(job.ropes).filter(|(number, _)| !tied(*number));
    let mut spares: Vec<Spare<'_>> = left
        .map(|(number, rope)| Spare::found(rope, RopeName::of(number, rope), legs))
        .collect();
    haul_with(&mut spares, legs);
    let handed_out = spares.into_iter().map(|spare| {
        let instead = spare.is_carried() && reaches_everybody(spare.rope, job, legs);
        SpareRope {
            instead,
            ..spare.handed_out()
        }
    });
    handed_out.collect()
}

/// A rope that nobody is tied to, and where it is needed.
struct Spare<'a> {
    rope: &'a Rope,
    name: RopeName,
    joined_on: Vec<usize>,
    /// In walking order.
    rescues: Vec<Rescue<'a>>,
    /// That has it: none other.
    team: Option<usize>,
}

/// For whom of a team a rope is carried beside its own.
struct Rescue<'a> {
    leg: usize,
    setup: &'a TeamSetup,
    /// Positions on the rope.
    of: Vec<usize>,
}

impl Rescue<'_> {
    /// Whether somebody is left, where one of those falls whom it is for, on the side with fewer people: the others haul.
    fn is_across(&self, position: usize) -> bool {
        let reach = self
            .setup
            .reach
            .iter()
            .filter(|reach| self.of.contains(&reach.person));
        let others = self.setup.people.saturating_sub(1);
        let mut sided = reach.filter(|reach| 2 * reach.people > others);
        sided.any(|reach| match reach.side {
            Side::Ahead => position > reach.person,
            Side::Behind => position < reach.person,
        })
    }
}

impl<'a> Spare<'a> {
    /// With what findings ask of it.
    fn found(rope: &'a Rope, name: RopeName, legs: &'a [Leg]) -> Self {
        let asks = |asked: Option<&RopeName>| asked == Some(&name);
        let joined = of_teams(legs).filter(|(.., fact)| asks(fact.joined_to()));
        let (mut joined_on, joined_to): (Vec<usize>, Vec<usize>) =
            joined.map(|(leg, setup, _)| (leg, setup.team)).unzip();
        joined_on.dedup();
        let mut rescues: Vec<Rescue<'_>> = Vec::new();
        for (leg, setup, fact) in of_teams(legs) {
            let Fact::NotReached { falls, .. } = fact else {
                continue;
            };
            if !asks(fact.taken_for_loop()) {
                continue;
            }
            match rescues.last_mut().filter(|known| known.leg == leg) {
                Some(known) => known.of.push(falls.position),
                None => rescues.push(Rescue {
                    leg,
                    setup,
                    of: vec![falls.position],
                }),
            }
        }
        let of_rescue = rescues.first().map(|rescue| rescue.setup.team);
        Self {
            rope,
            joined_on,
            team: joined_to.first().copied().or(of_rescue),
            rescues,
            name,
        }
    }

    fn is_carried(&self) -> bool {
        self.team.is_some()
    }

    /// Who of the team that it is for may carry it: nobody whom a loop of it is for, and nobody who is left alone across the gap.
    fn handed_out(self) -> SpareRope {
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
        let across = people(|rescue, position| rescue.is_across(position));
        let mut carried_by = people(|_, _| true);
        carried_by.retain(|called| !rescue_of.contains(called) && !across.contains(called));
        SpareRope {
            rope: self.name,
            joined_on: self.joined_on,
            rescue_on: self.rescues.iter().map(|rescue| rescue.leg).collect(),
            team: self.team,
            rescue_of,
            carried_by,
            instead: false,
        }
    }
}

/// Whether the one team of the trip could tie into this rope: no cord, longer than its own and no heavier by the metre, so that each end
/// carries no less, and on it a loop reaches everybody below the lip.
fn reaches_everybody(rope: &Rope, job: &Brief<'_>, legs: &[Leg]) -> bool {
    let kg = |diameter_mm: Option<f64>| mass_kg(1.0, diameter_mm, job.rules);
    let below = |setup: &TeamSetup| {
        let own = setup.rope.as_ref().and_then(|own| job.rope(own.number));
        let own = own.filter(|own| own.length_m < rope.length_m);
        let longer = own.is_some_and(|own| kg(rope.diameter_mm) <= kg(own.diameter_mm) + 1e-9);
        let carried = Carried::of(&setup.ledger, RopeLoad::of(rope), job.rules);
        let falls = free(setup.people, setup.spacing_m, carried.coil_m);
        let mut falls = falls.iter();
        let below = falls.all(|free| free.is_below_lip(setup.spacing_m, job.rules));
        longer && below && holds(rope.length_m, setup.ledger.total_m)
    };
    let one = legs.iter().all(|leg| leg.teams.len() <= 1);
    let mut setups = legs.iter().flat_map(|leg| &leg.teams);
    one && !is_cord(rope, job.rules) && setups.all(below)
}

/// What is found of the teams of legs, each with the leg and the set-up.
fn of_teams(legs: &[Leg]) -> impl Iterator<Item = (usize, &TeamSetup, &Fact)> {
    let found = legs.iter().flat_map(|leg| repeat(leg).zip(&leg.findings));
    found.filter_map(|(leg, found)| {
        let At::Leg(place) = &found.at else {
            return None;
        };
        let mut setups = leg.teams.iter();
        let setup = setups.find(|setup| place.team.is_none_or(|team| setup.team == team))?;
        Some((leg.leg, setup, found.fact()?))
    })
}

/// Where loops reach everybody, and those left have too little rope for any haul or a loop barely reaches: a rope that the team has
/// anyway, else the shortest that no other one has, long enough for a loop by itself.
fn haul_with<'a>(spares: &mut [Spare<'a>], legs: &'a [Leg]) {
    for (wanted, own_loop_m) in wanting(legs) {
        let team = wanted.setup.team;
        let there = |spare: &&mut Spare<'_>| {
            let free = spare.team.is_none_or(|has| has == team);
            free && spare.rope.length_m >= own_loop_m - 1e-9
        };
        let best = spares.iter_mut().filter(there).min_by(|a, b| {
            let has = b.is_carried().cmp(&a.is_carried());
            has.then_with(|| a.rope.length_m.total_cmp(&b.rope.length_m))
        });
        if let Some(spare) = best {
            let known = |known: &Rescue<'_>| known.leg < wanted.leg;
            let at = spare.rescues.partition_point(known);
            spare.team = Some(team);
            spare.rescues.insert(at, wanted);
        }
    }
}

/// The teams for which that is so, in walking order, each with the rope that a loop by itself takes, metres.
fn wanting(legs: &[Leg]) -> impl Iterator<Item = (Rescue<'_>, f64)> {
    let setups = legs.iter().flat_map(|leg| repeat(leg.leg).zip(&leg.teams));
    setups.filter_map(|(leg, setup)| {
        let reached = setup.reach.iter().all(|reach| reach.short_m().is_none());
        let held = reached && !setup.lacks_rope();
        let own_loop_m = setup.haul.as_ref()?.own_loop_m().filter(|_| held)?;
        let of = setup.reach.iter().filter(|reach| wants(reach));
        let of: Vec<usize> = of.map(|reach| reach.person).collect();
        (!of.is_empty()).then_some((Rescue { leg, setup, of }, own_loop_m))
    })
}

/// Whether a rope by itself is wanted for somebody whom a loop reaches.
fn wants(reach: &Reach) -> bool {
    let short = matches!(reach.haul, Some(HaulAnswer::TooShort { .. }));
    short || reach.barely
}
