//! The party, the ropes and the halts that a trip names.

use super::{
    folk::{Folk, wrong_masses},
    form::Trip,
    halts::HaltEntry,
    ropes::RopeEntry,
};
use crate::{
    fault::{Fault, Item, Place, plan::InPlan, trip::InTrip},
    limits::{InputLimit, InputLimits},
    practice::Rules,
    trip::{
        halt::Halt,
        party::{ON_ONE_ROPE, Party, Person},
        rope::Rope,
        route::Route,
    },
};

impl Trip {
    /// The party, if the file names one.
    ///
    /// # Errors
    /// A mass that cannot be, nobody, one person alone, or more than are planned for.
    pub fn party(
        &self,
        place: &Place,
        rules: &Rules,
        limits: &InputLimits,
    ) -> Result<Option<Party>, Vec<Fault>> {
        let most = limits.count(InputLimit::People);
        let place = place.clone().with_property("party");
        let party = match &self.party {
            None => return Ok(None),
            Some(folk) if folk.count() > most => {
                let too_many = InTrip::TooMany {
                    // A flag too large for a count stands here as the greatest there is.
                    people: Some(folk.count()).filter(|n| *n < usize::MAX),
                    most,
                };
                return Err(vec![Fault::new(too_many, place)]);
            }
            Some(Folk::Number(number)) => Party::of(*number, rules),
            Some(Folk::Masses(masses)) => Party::weighing(masses),
            Some(Folk::Named(people)) => Party {
                people: people
                    .iter()
                    .zip(1..)
                    .map(|(p, n)| p.person(n, rules))
                    .collect(),
                teams: Vec::new(),
            },
        };
        let mut faults = wrong_masses(&party, &place, rules);
        match party.people.len() {
            0 => faults.push(Fault::new(InTrip::Nobody, place)),
            1 => faults.push(Fault::new(InPlan::Alone(1), place)),
            _ => {}
        }
        if faults.is_empty() {
            Ok(Some(party))
        } else {
            Err(faults)
        }
    }

    /// The ropes at hand.
    ///
    /// # Errors
    /// There is none, although somebody said which there are, or there are more than are planned for; else every rope whose length
    /// or diameter cannot be.
    pub fn ropes(&self, place: &Place, limits: &InputLimits) -> Result<Vec<Rope>, Vec<Fault>> {
        let Some(ropes) = &self.rope else {
            return Ok(Vec::new());
        };
        let place = place.clone().with_property("rope");
        if ropes.is_empty() {
            return Err(vec![Fault::new(InTrip::NoRope, place)]);
        }
        let (given, most) = (ropes.len(), limits.count(InputLimit::Ropes));
        if given > most {
            let too_many = InTrip::TooManyRopes { ropes: given, most };
            return Err(vec![Fault::new(too_many, place)]);
        }
        let faults: Vec<Fault> = ropes.iter().flat_map(|rope| rope.faults(&place)).collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        Ok(ropes.iter().map(RopeEntry::rope).collect())
    }

    /// The halts on a route; waypoints count within `margin_m` metres of the line.
    ///
    /// # Errors
    /// Every halt that cannot be.
    pub fn halts(
        &self,
        route: &Route,
        margin_m: f64,
        place: &Place,
    ) -> Result<Vec<Halt>, Vec<Fault>> {
        let (mut halts, mut faults) = (Vec::new(), Vec::new());
        for (entry, number) in self.halt.iter().zip(1..) {
            let place = place.clone().with_item(Item::Halt(number));
            match entry.halt(route, margin_m, &place) {
                Ok(halt) => halts.push(halt),
                Err(told) => faults.extend(told),
            }
        }
        if faults.is_empty() {
            Ok(halts)
        } else {
            Err(faults)
        }
    }

    /// What is wrong with halts without looking at a route.
    pub(super) fn halt_faults(&self, place: &Place) -> Vec<Fault> {
        let of = |(entry, number): (&HaltEntry, usize)| {
            let minutes = entry.wrong_minutes().map(|what| (what, "minutes"));
            let wrong = [minutes, entry.wrong_place()].into_iter().flatten();
            let place = place.clone().with_item(Item::Halt(number));
            wrong.map(move |(what, property)| {
                Fault::new(what, place.clone().with_property(property))
            })
        };
        self.halt.iter().zip(1..).flat_map(of).collect()
    }
}

/// Nobody who gives every mass of a party above this one means kilograms, with pack; kilograms. Our judgement.
const POUNDS_ABOVE_KG: f64 = 140.0;
/// One pound in kilograms `[from memory: exact by definition since 1959]`.
const POUND_KG: f64 = 0.453_592_37;

/// Asks whether masses are pounds, where all are given and all so great.
pub(crate) fn perhaps_pounds(party: &Party, place: Place) -> Option<Fault> {
    let great = |person: &Person| person.mass_given && person.mass_kg > POUNDS_ABOVE_KG;
    let kg = party.people.iter().map(|person| person.mass_kg * POUND_KG);
    let what = InTrip::Pounds {
        kg: kg.collect(),
        most_kg: POUNDS_ABOVE_KG,
    };
    let all = !party.people.is_empty() && party.people.iter().all(great);
    all.then(|| Fault::new(what, place.with_property("party")))
}

/// The party in rope teams of these sizes; without any it is split as is taught.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "whole numbers of people on one rope"
)]
pub(crate) fn in_teams(party: Party, sizes: &[f64], place: Place) -> Result<Party, Vec<Fault>> {
    let (least, most) = (*ON_ONE_ROPE.start(), *ON_ONE_ROPE.end());
    let people = party.people.len();
    let teams: Vec<usize> = sizes.iter().map(|size| *size as usize).collect();
    let whole = sizes.iter().all(|size| size.fract() == 0.0);
    let suit = whole && teams.iter().all(|size| ON_ONE_ROPE.contains(size));
    if suit && (teams.is_empty() || teams.iter().sum::<usize>() == people) {
        return Ok(Party { teams, ..party });
    }
    let wrong = InTrip::Teams {
        sizes: sizes.to_vec(),
        people,
        within: [least, most],
    };
    Err(vec![Fault::new(wrong, place.with_property("teams"))])
}
