//! One rope team on one leg, put together.

use crate::{
    fault::refusal::Refusal,
    plan::{
        fall::{FallReserve, HaulTable, OrderAdvice},
        leg::{RopeAtHand, TeamSetup},
    },
    practice::{Rule, Rules},
    rope::{
        arrest::{self, FallAnswer},
        draft::{self, Draft},
        haul, ledger, marks, reserve, share,
    },
    trip::rope::Rope,
};

/// What a draft still needs to become a set-up.
#[derive(Clone, Copy)]
pub(crate) struct Supplied<'a> {
    /// The rope that the team carries, with its number; without one the next length sold is meant.
    pub(crate) rope: Option<(usize, &'a Rope)>,
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
        let length_m = rope.map(|(_, r)| r.length_m).or(sold_length_m);
        let coil_m = reserve::coil_m(people, spacing_m, rules);
        let layout = marks::RopeLayout {
            people,
            spacing_m,
            knots: &self.knots,
        };
        let (falls, haul, unanswered) = self.hauls(given, rules);
        let setup = TeamSetup {
            team: self.team,
            people,
            spacing_m,
            coil_m,
            middle: reserve::middle(people, spacing_m, rules),
            sold_length_m,
            marks: marks::marks(&layout, rules),
            rope: rope.map(|(number, r)| at_hand(number, r, self.ledger.total_m)),
            as_tied_gap_m: draft::gap_at_m(people, spacing_m, factor, rules),
            covers_at_spacing_m: length_m.and_then(|m| self.covers_at_spacing_m(m, factor, rules)),
            covers_gap_m: length_m.and_then(|length_m| self.covers_gap_m(length_m, factor, rules)),
            knots_count_from_snow_m: (self.knots.count > 0).then_some(rules[Rule::KnotsBiteM]),
            coil_kg: share::mass_kg(coil_m, rope.and_then(|(_, r)| r.diameter_mm), rules),
            falls,
            arrest: given
                .fall
                .and_then(|fall| arrest::answer(fall, given.order.cloned())),
            haul,
            ledger: self.ledger,
            knots: self.knots,
            persons: self.persons,
        };
        (setup, unanswered)
    }

    /// Free rope for everybody's fall, and how the person whose fall is held worst is hauled out.
    fn hauls(
        &self,
        given: &Supplied<'_>,
        rules: &Rules,
    ) -> (Vec<FallReserve>, Option<HaulTable>, Option<Refusal>) {
        let frees = reserve::free(self.persons.len(), self.spacing.spacing_m, rules);
        let without_hauls = || frees.iter().map(|free| free.with(Vec::new())).collect();
        let Some(fall) = given.fall else {
            return (without_hauls(), None, None);
        };
        let hauling = haul::Hauling {
            draft: self,
            snow: fall.team.snow,
            rules,
        };
        match hauling.tables(&frees, fall.holding.worst + 1) {
            Ok((falls, table)) => (falls, table, None),
            Err(reason) => (without_hauls(), None, Some(reason)),
        }
    }
}

fn at_hand(number: usize, rope: &Rope, total_m: f64) -> RopeAtHand {
    RopeAtHand {
        number,
        name: rope.name.clone(),
        length_m: rope.length_m,
        spare_m: rope.length_m - total_m,
    }
}
