//! The cheapest cure for a rope that is too short, judged like the plan: none is named that the plan would call outside
//! or stop.

use std::{cell::RefCell, collections::BTreeMap};

use crate::{
    judge::{tied::TiedOn, verdict},
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
    },
    trip::job::Brief,
};

/// Ropes that nobody ties into as planned and that a cure joins to that of a team or a finding names for whom no loop reaches, by number,
/// with the team: each is given once, to the team whose leg comes first.
#[derive(Debug, Default)]
pub(crate) struct Promised(RefCell<BTreeMap<usize, usize>>);

impl Promised {
    /// Whether a rope is still there for a team.
    pub(super) fn is_left(&self, number: usize, team: usize) -> bool {
        let promised = self.0.borrow();
        promised.get(&number).is_none_or(|to| *to == team)
    }

    /// Whether a team has it.
    pub(super) fn has(&self, number: usize, team: usize) -> bool {
        self.0.borrow().get(&number) == Some(&team)
    }

    pub(super) fn promise(&self, number: usize, team: usize) {
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

/// What a set-up tied otherwise costs beside the planned one, and whom no loop reaches, be it as planned or not.
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
    // What is told beside of loops is how they end as planned, as far as everybody has a place on the rope.
    let short = setup.reach.iter().filter_map(|r| {
        Some(CureCost::NotReached {
            falls: PersonName::at(r.person, &setup.persons),
            short_m: r.short_m()?,
        })
    });
    more.into_iter().chain(shorter).chain(short).collect()
}

impl Fitted<'_> {
    /// What makes the rope of a team hold the leg; `None` where it holds it or nothing does.
    pub(super) fn cure(&self, planned: &Draft, setup: &TeamSetup) -> Option<RopeCure> {
        let own = setup
            .rope
            .as_ref()
            .filter(|rope| rope.short_m().is_some())?;
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
        let mut cures = short.fitting().into_iter().peekable();
        cures.peek()?;
        let falls = verdict::of_falls(
            self.job,
            self.leg,
            planned,
            &mut self.asked.borrow_mut().slopes,
        );
        let mut judged = cures.filter_map(|fitting| self.judged(&fitting, planned, falls));
        let cure = judged.find(|cure| cure.verdict < Verdict::Outside)?;
        if let Some(joined) = &cure.joined_to {
            self.promised.promise(joined.rope, planned.team);
        }
        Some(cure)
    }

    /// What a team would be called that is tied so, beside falls that stand as they do where it is tied as planned.
    fn judged(
        &self,
        fitting: &Fitting,
        planned: &Draft,
        falls_planned: Verdict,
    ) -> Option<RopeCure> {
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
        let falls = tied.falls(&mut self.asked.borrow_mut().slopes);
        let less_held = (falls > falls_planned).then_some(CureCost::FallLessHeld);
        let costs = costs(fitting, &setup, planned, self.job.rules);
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
            costs: less_held.into_iter().chain(costs).collect(),
            verdict: tied.verdict(&tied.rope_facts(&setup), falls),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        legs::{knots::Hardship, over::Over, spacing::Spacing, worst::Meeting},
        practice::{Origin, set::Source},
        rope::setup::Supplied,
        trip::{party::Party, rope::Rope},
    };

    /// The default rules with a drop loop of so many times the spacing and a sling in it, metres.
    fn rules(reach_factor: f64, sling_m: f64) -> Rules {
        let mut rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        for (rule, value) in [(Rule::ReachFactor, reach_factor), (Rule::SlingM, sling_m)] {
            rules.set(rule, value, Origin::Trip).unwrap();
        }
        rules
    }

    /// So many people so far apart over gaps of so many metres.
    #[derive(Clone, Copy)]
    struct Walk<'a>(usize, f64, f64, &'a Rules);

    impl Walk<'_> {
        fn draft(self) -> Draft {
            let Self(people, spacing_m, effective_gap_m, rules) = self;
            let team = Party::weighing(&vec![80.0; people]).split_into(1).remove(0);
            let meet = |_| Meeting {
                effective_gap_m,
                ..Meeting::default()
            };
            let spacing = Spacing::tried(people, spacing_m, rules, &meet);
            let over = Over::drawn(&[]);
            Draft::new(&team, spacing, over, Hardship::default(), rules)
        }
    }

    /// The same beside whom no loop reaches.
    fn paid_beside_loops(planned: Walk<'_>, otherwise: Walk<'_>) -> Vec<CureCost> {
        let mut costs = paid(planned, otherwise);
        costs.retain(|cost| !matches!(cost, CureCost::NotReached { .. }));
        costs
    }

    /// What is paid for walking otherwise than planned, on a rope that holds that and no more.
    fn paid(planned: Walk<'_>, otherwise: Walk<'_>) -> Vec<CureCost> {
        let (draft, rules) = (otherwise.draft(), otherwise.3);
        let rope = Rope {
            length_m: draft.ledger.total_m,
            diameter_mm: None,
            name: None,
            joined: false,
        };
        let given = Supplied {
            rope: Some((1, &rope)),
            bought_m: None,
            factor: &|_| 1.0,
            fall: None,
            order: None,
        };
        let (setup, _) = draft.clone().tied(&given, rules);
        let fitting = Fitting {
            changes: Vec::new(),
            rules: rules.clone(),
            draft,
            rope,
            number: 1,
            joined_to: None,
        };
        costs(&fitting, &setup, &planned.draft(), planned.3)
    }

    #[test]
    fn whoever_is_not_over_the_gap_is_left_to_hold() {
        // Walking 8.5 m apart two of five are over 8.9 m, walking 9 m apart one. Five carry no coils.
        let rules = &rules(1.5, 0.0);
        let gap_m = 8.9;
        let costs = paid_beside_loops(Walk(5, 9.0, gap_m, rules), Walk(5, 8.5, gap_m, rules));
        assert_eq!(costs, [CureCost::MoreOverGap { over: 2, left: 3 }]);
        assert_eq!(
            paid_beside_loops(Walk(5, 8.5, gap_m, rules), Walk(5, 8.0, gap_m, rules)),
            []
        );
    }

    #[test]
    fn a_sling_gives_back_what_it_takes_from_a_coil() {
        // Of three each end carries half the spacing, less the sling in the loop.
        let (bare, slung, long) = (&rules(1.5, 0.0), &rules(1.5, 2.0), &rules(1.5, 2.5));
        for alike in [bare, slung] {
            assert_eq!(
                paid_beside_loops(Walk(3, 12.0, 4.0, alike), Walk(3, 12.0, 4.0, alike)),
                []
            );
        }
        assert_eq!(
            paid_beside_loops(Walk(3, 12.0, 4.0, bare), Walk(3, 12.0, 4.0, long)),
            []
        );
        let shorter = |coil_m, planned_m| [CureCost::ShorterCoil { coil_m, planned_m }];
        assert_eq!(
            paid_beside_loops(Walk(3, 12.0, 4.0, slung), Walk(3, 10.0, 4.0, slung)),
            shorter(3.0, 4.0)
        );
        assert_eq!(
            paid_beside_loops(Walk(3, 12.0, 4.0, bare), Walk(3, 10.0, 4.0, bare)),
            shorter(5.0, 6.0)
        );
    }

    #[test]
    fn whom_no_loop_reaches_then_is_told() {
        // By a factor of 1.25 each end of three carries a quarter of the spacing, and 2.5 m of it go to hands and hitches:
        // at 10 m the loop ends at the lip, at 9 m it ends 0.25 m short of it. To the one in the middle it is a spacing more.
        let rules = &rules(1.25, 0.0);
        let walk = |spacing_m| Walk(3, spacing_m, 4.0, rules);
        let shorter = |coil_m, planned_m| CureCost::ShorterCoil { coil_m, planned_m };
        let beyond = |place, short_m| CureCost::NotReached {
            falls: PersonName::at(place, &walk(9.0).draft().persons),
            short_m,
        };
        let [ends, middle] = [0.25, 9.0 + 0.25];
        assert_eq!(
            paid(walk(10.0), walk(9.0)),
            [
                shorter(2.25, 2.5),
                beyond(1, ends),
                beyond(2, middle),
                beyond(3, ends)
            ]
        );
        assert_eq!(
            paid(walk(12.0), walk(10.0)),
            [shorter(2.5, 3.0), beyond(2, 10.0)],
            "at the lip is reached"
        );
        assert_eq!(
            paid(walk(9.0), walk(8.0)),
            [
                shorter(2.0, 2.25),
                beyond(1, 0.5),
                beyond(2, 8.5),
                beyond(3, 0.5)
            ],
            "nor as planned"
        );
    }
}
