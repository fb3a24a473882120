//! The cheapest cure for a rope that is too short, judged like the plan: none is named that the plan would call outside
//! or stop.

use std::cell::RefCell;

use crate::{
    judge::{team, verdict},
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
        setup::Supplied,
    },
    trip::job::Brief,
};

/// A leg whose ropes are given out.
#[derive(Clone, Copy)]
pub(super) struct Fitted<'a> {
    pub(super) job: &'a Brief<'a>,
    pub(super) leg: &'a RopedLeg<'a>,
    /// One set-up for each team.
    pub(super) setups: &'a [TeamSetup],
    /// Falls asked for before.
    pub(super) asked: &'a RefCell<KnownFalls>,
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
        let left: Vec<usize> = all.filter(|number| !carried(number)).collect();
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
        judged.find(|cure| cure.verdict < Verdict::Outside)
    }

    fn judged(&self, fitting: &Fitting, planned: &Draft) -> Option<RopeCure> {
        let job = &Brief {
            rules: &fitting.rules,
            ..*self.job
        };
        let setup = self.tied(fitting);
        let facts = team::rope_findings(job, &setup, None);
        let carried = verdict::of_levels(facts.iter().map(|fact| fact.level()));
        let tied = verdict::of_draft(job, self.leg, &fitting.draft);
        let falls = verdict::of_falls(
            job,
            self.leg,
            &fitting.draft,
            &mut self.asked.borrow_mut().slopes,
        );
        let name = |number: usize| Some(RopeName::of(number, job.rope(number)?));
        Some(RopeCure {
            changes: fitting.changes.clone(),
            spacing_m: setup.spacing_m,
            planned_spacing_m: planned.spacing.spacing_m,
            needed_m: setup.ledger.total_m,
            rope: name(fitting.number)?,
            joined_to: fitting.joined_to.and_then(name),
            as_tied_gap_m: setup.as_tied_gap_m,
            costs: costs(fitting, &setup, planned, self.job.rules),
            verdict: tied.max(falls).max(carried),
        })
    }

    /// The set-up, its fall not asked for.
    fn tied(&self, fitting: &Fitting) -> TeamSetup {
        let meets = self.leg.stage.meets(self.job, self.leg.sketch);
        let factor = |spacing_m: f64| meets(spacing_m).greatest_factor;
        let given = Supplied {
            rope: Some((fitting.number, &fitting.rope)),
            bought_m: None,
            factor: &factor,
            fall: None,
            order: None,
        };
        let (setup, _) = fitting.draft.clone().tied(&given, &fitting.rules);
        setup
    }
}
