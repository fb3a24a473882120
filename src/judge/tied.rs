//! A team tied otherwise than planned, judged as the plan judges: spacing, knots, falls, rope, reach and reserve.

use crate::{
    judge::{
        team::{self, RopesLeft},
        verdict,
    },
    plan::{
        fact::Fact,
        leg::{TeamSetup, Verdict},
    },
    rope::{draft::Draft, held::AskedSlopes, legs::RopedLeg, setup::Supplied},
    trip::{job::Brief, rope::Rope},
};

/// A draft on the rope that the team would carry it with.
#[derive(Clone, Copy)]
pub(crate) struct TiedOn<'a> {
    pub(crate) job: &'a Brief<'a>,
    pub(crate) leg: &'a RopedLeg<'a>,
    pub(crate) draft: &'a Draft,
    /// The rope at hand, with its number.
    pub(crate) rope: Option<(usize, &'a Rope)>,
    /// Where none was named: the length sold, metres.
    pub(crate) bought_m: Option<f64>,
}

impl TiedOn<'_> {
    /// The set-up, its fall not asked for.
    pub(crate) fn setup(&self) -> TeamSetup {
        let meets = self.leg.stage.meets(self.job, self.leg.sketch);
        let factor = |spacing_m: f64| meets(spacing_m).greatest_factor;
        let given = Supplied {
            rope: self.rope,
            bought_m: self.bought_m,
            factor: &factor,
            fall: None,
            order: None,
        };
        let (setup, _) = self.draft.clone().tied(&given, self.job.rules);
        setup
    }

    /// What is found of the rope of this set-up: whether it is long enough, whom no loop reaches, whether the reserve is there.
    pub(crate) fn rope_facts(&self, setup: &TeamSetup) -> Vec<Fact> {
        team::rope_findings(self.job, setup, None, &RopesLeft::default)
    }

    /// What the plan would call it with what is found of its rope and of its falls; what the ground says for itself is left out.
    pub(crate) fn verdict(&self, facts: &[Fact], falls: Verdict) -> Verdict {
        let carried = verdict::of_levels(facts.iter().map(|fact| fact.level()));
        let tied = verdict::of_draft(self.job, self.leg, self.draft);
        tied.max(falls).max(carried)
    }

    /// How its falls stand.
    pub(crate) fn falls(&self, asked: &mut AskedSlopes) -> Verdict {
        verdict::of_falls(self.job, self.leg, self.draft, asked)
    }
}
