//! One rope team on one leg, put together.

use crate::{
    fault::refusal::Refusal,
    plan::{
        fall::{HaulTable, HeldMetres, OrderAdvice},
        leg::{RopeAtHand, TeamSetup},
        reach::Reach,
    },
    practice::{Rule, Rules},
    rope::{
        arrest::{self, FallAnswer},
        carried::{Carried, RopeLoad},
        draft::{self, Draft},
        haul, ledger, marks,
        reserve::{self, Free},
    },
    trip::rope::Rope,
};

/// What a draft still needs to become a set-up.
#[derive(Clone, Copy)]
pub(crate) struct Supplied<'a> {
    /// The rope at hand that the team carries, with its number.
    pub(crate) rope: Option<(usize, &'a Rope)>,
    /// Where none was named: the length sold that it takes for the whole trip, metres.
    pub(crate) bought_m: Option<f64>,
    /// How many times longer than wide the way over a gap is when met with a spacing.
    pub(crate) factor: &'a dyn Fn(f64) -> f64,
    /// Its fall, where the model has an answer.
    pub(crate) fall: Option<&'a FallAnswer>,
    /// Advice on its order, on the leg where it is held worst.
    pub(crate) order: Option<&'a OrderAdvice>,
}

impl Draft {
    /// The whole set-up.
    ///
    /// Beside it stands a sentence naming the first figure that lies outside what the model of hauls can be asked, in
    /// which case it has no hauls.
    #[must_use]
    pub(crate) fn tied(self, given: &Supplied<'_>, rules: &Rules) -> (TeamSetup, Option<Refusal>) {
        let (people, spacing_m) = (self.persons.len(), self.spacing.spacing_m);
        let (factor, rope) = (given.factor, given.rope);
        let sold_length_m = ledger::sold_length_m(self.ledger.total_m);
        let load = rope.map(|(_, r)| (r.length_m, r.diameter_mm));
        let load = load.or(given.bought_m.map(|m| (m, None)));
        let load = load.map(|(length_m, diameter_mm)| RopeLoad {
            length_m,
            diameter_mm,
        });
        let carried = self.carried(load, rules);
        let length_m = load.map(|l| l.length_m);
        // Of a gap that nobody gave nothing is claimed.
        let given_m = length_m.filter(|_| self.spacing.gap_given());
        let at_hand = rope.map(|(number, r)| RopeAtHand::of(number, r, self.ledger.total_m));
        // Nor where no rope is long enough to be tied so.
        let is_short = at_hand
            .as_ref()
            .map_or(sold_length_m.is_none(), |r| r.short_m().is_some());
        let as_tied = |gap_m: f64| (self.spacing.gap_given() && !is_short).then_some(gap_m);
        let layout = marks::RopeLayout {
            people,
            spacing_m,
            knots: &self.knots,
            coil_m: carried.coil_m,
            rope_m: rope.map(|(_, r)| r.length_m),
        };
        let (marks, no_place) = marks::marks(&layout, rules);
        // On a rope that ends before somebody's place no loop and no haul is what it would be.
        let all_placed = no_place.iter().all(|none| none.person.is_none());
        let (reach, haul, unanswered) = if all_placed {
            self.rescue(carried.coil_m, given, rules)
        } else {
            (Vec::new(), None, None)
        };
        let setup = TeamSetup {
            team: self.team,
            people,
            spacing_m,
            spacing_why: self.spacing_why(rules),
            coil_m: self.ledger.coils_m / 2.0,
            coil_carried_m: carried.coil_m,
            bag_m: carried.bag_m,
            sold_length_m,
            marks,
            no_place,
            rope: at_hand,
            as_tied_gap_m: as_tied(draft::gap_at_m(people, spacing_m, factor, rules)),
            as_tied_along_m: as_tied(draft::gap_along_m(people, spacing_m, rules)),
            covers_at_spacing_m: given_m.and_then(|m| self.covers_at_spacing_m(m, factor, rules)),
            covers_gap_m: given_m.and_then(|m| self.covers_gap_m(m, factor, rules)),
            knots_count_from_snow_m: (self.knots.count > 0).then_some(rules[Rule::KnotsBiteM]),
            coil_kg: carried.coil_kg,
            reach,
            arrest: given
                .fall
                .and_then(|fall| arrest::answer(fall, given.order.cloned())),
            held: given.fall.map(|fall| HeldMetres::of(&fall.along.runs)),
            haul,
            ledger: self.ledger,
            knots: self.knots,
            persons: self.persons,
        };
        (setup, unanswered)
    }

    /// The rope as carried; without a rope what is needed.
    fn carried(&self, load: Option<RopeLoad>, rules: &Rules) -> Carried {
        let needed = RopeLoad {
            length_m: self.ledger.total_m,
            diameter_mm: None,
        };
        Carried::of(&self.ledger, load.unwrap_or(needed), rules)
    }

    /// How deep loops and hauls reach in everybody's fall, and how the person is hauled out who is hardest to haul.
    fn rescue(
        &self,
        coil_m: f64,
        given: &Supplied<'_>,
        rules: &Rules,
    ) -> (Vec<Reach>, Option<HaulTable>, Option<Refusal>) {
        let spacing_m = self.spacing.spacing_m;
        let joined = given.rope.is_some_and(|(_, rope)| rope.joined);
        let blocked = joined || self.knots.count > 0;
        let frees = reserve::free(self.persons.len(), spacing_m, coil_m);
        let reach = |free: &Free| free.clone().reach(spacing_m, blocked, rules);
        let mut reach: Vec<Reach> = frees.iter().map(reach).collect();
        let Some(fall) = given.fall else {
            return (reach, None, None);
        };
        let hauling = haul::Hauling {
            draft: self,
            team: &fall.team,
            joined,
            rules,
        };
        // Of equals whose fall is held worst.
        let others = frees.iter().filter(|f| f.person != fall.holding.worst + 1);
        let worst = frees.get(fall.holding.worst).into_iter();
        let tables: Result<Vec<HaulTable>, Refusal> = worst
            .chain(others)
            .map(|free| hauling.table(free))
            .collect();
        match tables {
            Ok(tables) => {
                for reach in &mut reach {
                    let mut tables = tables.iter();
                    let own = tables.find(|table| table.person == reach.person);
                    reach.haul = own.map(|table| table.answer);
                }
                let hardest = haul::hardest(tables, &reach);
                (reach, hardest, None)
            }
            Err(reason) => (reach, None, Some(reason)),
        }
    }
}

impl RopeAtHand {
    fn of(number: usize, rope: &Rope, needed_m: f64) -> Self {
        Self {
            number,
            name: rope.name.clone(),
            length_m: rope.length_m,
            spare_m: rope.length_m - needed_m,
        }
    }
}
