//! The one set-up of a team over the legs of a run, as the run grows.

use crate::{
    legs::{knots, spacing::Spacing},
    plan::{keep::KeptTeam, leg::Ledger},
    practice::Rules,
    rope::{
        carried::{Carried, RopeLoad},
        draft::Draft,
        ledger,
        legs::RopedLeg,
        reserve,
    },
    trip::job::Brief,
};

/// The one set-up of a team for the legs so far.
pub(super) struct GrowingTeam<'k> {
    /// As planned on the first of them.
    pub(super) first: &'k Draft,
    pub(super) spacing_m: f64,
    /// The least that one of the legs asks for.
    pub(super) least_m: f64,
    /// As planned where most knots are tied; of equals on the last leg.
    pub(super) most_knots: &'k Draft,
}

/// How a team is tied: what decides how its kept set-up is judged on a leg.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) struct KeptKind {
    pub(super) spacing_bits: u64,
    pub(super) knots: usize,
    pub(super) length_bits: u64,
}

impl<'k> GrowingTeam<'k> {
    pub(super) fn of(draft: &'k Draft) -> Self {
        Self {
            first: draft,
            spacing_m: draft.spacing.spacing_m,
            least_m: draft.spacing.spacing_m,
            most_knots: draft,
        }
    }

    /// The kept set-up as it is judged on a leg.
    pub(super) fn draft(&self, job: &Brief<'_>, leg: &RopedLeg<'_>, planned: &Draft) -> Draft {
        let meets = leg.stage.meets(job, leg.sketch);
        let people = self.first.persons.len();
        Draft {
            spacing: Spacing::tried(people, self.spacing_m, job.rules, &meets),
            knots: self.most_knots.knots.clone(),
            ledger: self.ledger(job.rules),
            ..planned.clone()
        }
    }

    pub(super) fn ledger(&self, rules: &Rules) -> Ledger {
        let people = self.first.persons.len();
        ledger::at(people, self.spacing_m, &self.most_knots.knots, rules)
    }

    pub(super) fn needed_m(&self, rules: &Rules) -> f64 {
        self.ledger(rules).total_m
    }

    pub(super) fn kept(&self, load: RopeLoad, rules: &Rules) -> KeptTeam {
        let people = self.first.persons.len();
        let tied = self.most_knots.knots.count > 0;
        let knots = || knots::fitting(people, self.spacing_m, rules);
        KeptTeam {
            team: self.first.team,
            spacing_m: self.spacing_m,
            knots_each_end: if tied { knots() } else { 0 },
            coil_m: reserve::coil_m(people, self.spacing_m, rules),
            coil_carried_m: Carried::of(&self.ledger(rules), load, rules).coil_m,
            needed_m: self.needed_m(rules),
            longer_m: reserve::spans_m(people.saturating_sub(1), self.spacing_m - self.least_m),
        }
    }
}
