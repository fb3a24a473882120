//! The cheapest cure for a rope that is too short, judged like the plan: none is named that the plan would call outside
//! or stop.

use std::{cell::RefCell, collections::BTreeMap};

use crate::{
    judge::tied::TiedOn,
    plan::{
        cure::RopeCure,
        leg::{TeamSetup, Verdict},
        name::RopeName,
    },
    rope::{
        answers::KnownFalls,
        cure::{Fitting, TooShort},
        draft::Draft,
        legs::RopedLeg,
    },
    trip::job::Brief,
};

/// Ropes that nobody carries as planned and that a cure joins to that of a team, by number, with the team: each is given once,
/// to the team whose leg comes first.
#[derive(Debug, Default)]
pub(crate) struct Promised(RefCell<BTreeMap<usize, usize>>);

impl Promised {
    /// Whether a rope is still there for a team.
    fn is_left(&self, number: usize, team: usize) -> bool {
        let promised = self.0.borrow();
        promised.get(&number).is_none_or(|to| *to == team)
    }

    fn promise(&self, number: usize, team: usize) {
        self.0.borrow_mut().insert(number, team);
    }
}

/// A leg whose ropes are given out.
#[derive(Clone, Copy)]
pub(super) struct Fitted<'a> {
    pub(super) job: &'a Brief<'a>,
    pub(super) leg: &'a RopedLeg<'a>,
    /// One set-up for each team.
    pub(super) setups: &'a [TeamSetup],
    /// Falls asked for before.
    pub(super) asked: &'a RefCell<KnownFalls>,
    /// What the cures of other legs take.
    pub(super) promised: &'a Promised,
}

impl Fitted<'_> {
    /// What makes the rope of a team hold the leg; `None` where it holds it or nothing does.
    pub(super) fn cure(&self, planned: &Draft, setup: &TeamSetup) -> Option<RopeCure> {
        let own = setup.rope.as_ref().filter(|rope| rope.spare_m < -1e-9)?;
        let rope = self.job.rope(own.number)?;
        let teams = self.job.party.rope_teams();
        let carried = |number: &usize| {
            let mut ropes = self.setups.iter().filter_map(|s| s.rope.as_ref());
            ropes.any(|r| r.number == *number)
        };
        let all = 1..=self.job.ropes.len();
        let left =
            |number: &usize| !carried(number) && self.promised.is_left(*number, planned.team);
        let left: Vec<usize> = all.filter(left).collect();
        let short = TooShort {
            job: self.job,
            leg: self.leg,
            team: teams.iter().find(|team| team.number == planned.team)?,
            planned,
            rope: (own.number, rope),
            left: &left,
        };
        let cures = short.fitting().into_iter();
        let mut judged = cures.filter_map(|fitting| self.judged(&fitting, planned));
        let cure = judged.find(|cure| cure.verdict < Verdict::Outside)?;
        if let Some(joined) = &cure.joined_to {
            self.promised.promise(joined.rope, planned.team);
        }
        Some(cure)
    }

    fn judged(&self, fitting: &Fitting, planned: &Draft) -> Option<RopeCure> {
        let job = &Brief {
            rules: &fitting.rules,
            ..*self.job
        };
        let tied = TiedOn {
            job,
            leg: self.leg,
            draft: &fitting.draft,
            rope: Some((fitting.number, &fitting.rope)),
            bought_m: None,
        };
        let setup = tied.setup();
        let name = |number: usize| Some(RopeName::of(number, job.rope(number)?));
        Some(RopeCure {
            changes: fitting.changes.clone(),
            spacing_m: setup.spacing_m,
            planned_spacing_m: planned.spacing.spacing_m,
            needed_m: setup.ledger.total_m,
            rope: name(fitting.number)?,
            joined_to: fitting.joined_to.and_then(name),
            as_tied_gap_m: setup.as_tied_gap_m,
            verdict: tied.verdict(&mut self.asked.borrow_mut().slopes),
        })
    }
}
