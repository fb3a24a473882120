//! How far apart a team is tied to cross a gap one by one, where it can be.

use std::cell::RefCell;

use crate::{
    judge::tied::TiedOn,
    legs::spacing::{self, Spacing},
    plan::{
        cure::OneByOne,
        fact::Fact,
        leg::{TeamSetup, Verdict},
    },
    practice::Rule,
    rope::{answers::KnownFalls, draft::Draft, ledger, legs::RopedLeg},
    trip::job::Brief,
};

/// A team on a leg, with what it carries.
#[derive(Clone, Copy)]
pub(super) struct TiedTeam<'a> {
    pub(super) setup: &'a TeamSetup,
    /// Falls asked for before.
    pub(super) asked: &'a RefCell<KnownFalls>,
}

impl TiedTeam<'_> {
    /// The least spacing with which one at a time is over any gap of the leg: while one is over it the next must not have
    /// come to it yet. `None` where none within the limits is so long, the rope as carried is too short for it, leaves the
    /// reserve short or somebody beyond every loop, the team runs along the gaps, or the plan would call it outside or stop.
    pub(super) fn one_by_one(
        &self,
        job: &Brief<'_>,
        leg: &RopedLeg<'_>,
        draft: &Draft,
    ) -> Option<OneByOne> {
        let people = draft.persons.len();
        let meets = leg.stage.meets(job, leg.sketch);
        let longer = spacing::choices_m(draft.spacing.spacing_m, job.rules);
        let tried = |spacing_m: f64| Spacing::tried(people, spacing_m, job.rules, &meets);
        let alone = |s: &Spacing| {
            s.meeting.along.is_none() && s.meeting.effective_gap_m <= s.spacing_m + 1e-9
        };
        let spacing = longer.map(tried).find(alone)?;
        let teams = job.party.rope_teams();
        let team = teams.iter().find(|team| team.number == draft.team)?;
        let draft = Draft::new(team, spacing, leg.over(), leg.hardship, job.rules);
        let on = self.carried(job, leg, &draft)?;
        let lacks =
            |fact: &Fact| !matches!(fact, Fact::NearRope { .. } | Fact::BendBlocksHaul { .. });
        let facts = on.rope_facts(&on.setup());
        let verdict = || on.verdict(&facts, on.falls(&mut self.asked.borrow_mut().slopes));
        let holds = !facts.iter().any(lacks) && verdict() < Verdict::Outside;
        holds.then_some(OneByOne {
            spacing_m: spacing.spacing_m,
            needed_m: draft.ledger.total_m,
            figure: (!draft.bare_only).then(|| Rule::base_spacing(people).name()),
        })
    }

    /// The draft on the rope that the team carries; where no rope was named one of a length sold can be taken. `None` where
    /// all ropes of the leader are with others.
    fn carried<'d>(
        &'d self,
        job: &'d Brief<'d>,
        leg: &'d RopedLeg<'d>,
        draft: &'d Draft,
    ) -> Option<TiedOn<'d>> {
        let rope = self.setup.rope.as_ref();
        let rope = rope.and_then(|rope| Some((rope.number, job.rope(rope.number)?)));
        let named = !job.ropes.is_empty();
        (rope.is_some() || !named).then(|| TiedOn {
            job,
            leg,
            draft,
            rope,
            bought_m: ledger::sold_length_m(draft.ledger.total_m).filter(|_| !named),
        })
    }
}
