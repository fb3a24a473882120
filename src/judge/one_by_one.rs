//! How far apart a team is tied to cross a gap one by one, where it can be.

use std::cell::RefCell;

use crate::{
    judge::verdict,
    legs::spacing::{self, Spacing},
    plan::{
        cure::OneByOne,
        leg::{TeamSetup, Verdict},
    },
    rope::{answers::KnownFalls, draft::Draft, ledger, legs::RopedLeg, share},
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
    /// come to it yet. `None` where none within the limits is so long, the rope is too short for it, the team runs along the
    /// gaps, or the plan would call it outside or stop.
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
        let needed_m = draft.ledger.total_m;
        if !self.long_enough(needed_m) || self.verdict(job, leg, &draft) >= Verdict::Outside {
            return None;
        }
        Some(OneByOne {
            spacing_m: spacing.spacing_m,
            needed_m,
        })
    }

    /// Where no rope was named one of a length sold can be taken.
    fn long_enough(&self, needed_m: f64) -> bool {
        match &self.setup.rope {
            Some(rope) => share::holds(rope.length_m, needed_m),
            None => ledger::sold_length_m(needed_m).is_some(),
        }
    }

    fn verdict(&self, job: &Brief<'_>, leg: &RopedLeg<'_>, draft: &Draft) -> Verdict {
        let tied = verdict::of_draft(job, leg, draft);
        let mut asked = self.asked.borrow_mut();
        tied.max(verdict::of_falls(job, leg, draft, &mut asked.slopes))
    }
}
