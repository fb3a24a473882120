//! How far the rope that a team is given reaches, whichever rope that is.

use crate::{
    plan::leg::{Ledger, Verdict},
    practice::Rules,
    rope::{
        carried::{Carried, RopeLoad},
        draft::Draft,
        reserve, share,
    },
};

/// What a team ties on a leg, as far as the rope that it is given decides how deep a loop reaches.
#[derive(Clone, Debug)]
pub(crate) struct Tied {
    people: usize,
    spacing_m: f64,
    knots: bool,
    ledger: Ledger,
}

impl Tied {
    pub(crate) fn of(draft: &Draft) -> Self {
        Self {
            people: draft.persons.len(),
            spacing_m: draft.spacing.spacing_m,
            knots: draft.knots.count > 0,
            ledger: draft.ledger,
        }
    }

    /// The shortest rope with which nobody is, carried in two equal coils, metres.
    pub(crate) fn reaching_m(&self, rules: &Rules) -> f64 {
        let coil_m = self.ledger.coils_m / 2.0;
        let all = reserve::free(self.people, self.spacing_m, coil_m);
        let short_m = all.iter().map(|free| -free.depth_m(self.spacing_m, rules));
        let obliged_m = reserve::obliged_coil_m(self.people, self.spacing_m, rules);
        let obliged_m = if self.knots { obliged_m - coil_m } else { 0.0 };
        self.ledger.total_m + 2.0 * short_m.fold(obliged_m.max(0.0), f64::max)
    }

    /// Coil of each end person with this rope as carried, metres.
    pub(crate) fn coil_carried_m(&self, load: RopeLoad, rules: &Rules) -> f64 {
        Carried::of(&self.ledger, load, rules).coil_m
    }

    /// Whether a loop reaches a person, by place from 1, with this rope as carried.
    pub(crate) fn reaches(&self, person: usize, load: RopeLoad, rules: &Rules) -> bool {
        let coil_m = self.coil_carried_m(load, rules);
        let all = reserve::free(self.people, self.spacing_m, coil_m);
        let mut falls = all.iter().filter(|free| free.person == person);
        falls.any(|free| free.depth_m(self.spacing_m, rules) > -1e-9)
    }

    /// How it stands with this rope as carried: whether somebody is beyond every loop, or a rescue strand is short.
    pub(crate) fn by_reach(&self, load: RopeLoad, rules: &Rules) -> Verdict {
        let coil_m = self.coil_carried_m(load, rules);
        let all = reserve::free(self.people, self.spacing_m, coil_m);
        let beyond = all
            .iter()
            .any(|free| free.depth_m(self.spacing_m, rules) < -1e-9);
        let short = || reserve::short(self.people, self.spacing_m, &self.ledger, coil_m, rules);
        match self.knots.then(short).flatten() {
            Some(short) if !share::holds(load.length_m, short.whole_m) => Verdict::Outside,
            Some(_) => Verdict::Look,
            None if beyond => Verdict::Look,
            None => Verdict::Inside,
        }
    }
}
