//! The cheapest cure for a rope that is too short, judged like the plan: none is named that the plan would call outside
//! or stop.

use std::{cell::RefCell, collections::BTreeMap};

use crate::{
    judge::tied::TiedOn,
    legs::spacing::over_one_gap,
    plan::{
        cure::{CureCost, RopeCure},
        leg::{TeamSetup, Verdict},
        name::{PersonName, RopeName},
    },
    practice::{Rule, Rules},
    rope::{
        answers::KnownFalls,
        cure::{Fitting, TooShort},
        draft::Draft,
        legs::RopedLeg,
        reserve,
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

/// What a set-up tied otherwise costs beside the planned one.
fn costs(fitting: &Fitting, setup: &TeamSetup, planned: &Draft, rules: &Rules) -> Vec<CureCost> {
    let draft = &fitting.draft;
    let over = |draft: &Draft| {
        let (spacing, people) = (&draft.spacing, draft.persons.len());
        over_one_gap(people, spacing.spacing_m, spacing.meeting.effective_gap_m)
    };
    let more = (over(draft) > over(planned)).then(|| CureCost::MoreOverGap {
        over: over(draft),
        left: setup.people - over(draft),
    });
    let (coil_m, planned_m) = (setup.coil_carried_m, planned.ledger.coils_m / 2.0);
    // A sling in the loop gives back what it takes from a coil.
    let with_sling_m = coil_m + fitting.rules[Rule::SlingM];
    let less = with_sling_m < planned_m + rules[Rule::SlingM] - 1e-9;
    let shorter = less.then_some(CureCost::ShorterCoil { coil_m, planned_m });
    // Whom no loop reaches as planned either is no cost.
    let people = planned.persons.len();
    let as_planned = reserve::free(people, planned.spacing.spacing_m, planned_m);
    let reached = |person: usize| {
        let mut all = as_planned.iter().filter(|free| free.person == person);
        all.any(|free| free.depth_m(planned.spacing.spacing_m, rules) > -1e-9)
    };
    let short = setup
        .reach
        .iter()
        .filter(|r| r.depth_m < -1e-9 && reached(r.person));
    let short = short.map(|r| CureCost::NotReached {
        falls: PersonName::at(r.person, &setup.persons),
        short_m: -r.depth_m,
    });
    more.into_iter().chain(shorter).chain(short).collect()
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
            gaps_differ: false,
            costs: costs(fitting, &setup, planned, self.job.rules),
            verdict: tied.verdict(
                &tied.rope_facts(&setup),
                &mut self.asked.borrow_mut().slopes,
            ),
        })
    }
}
