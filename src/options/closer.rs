//! Walking closer together than the practice set says, where the ropes at hand hold a split in no other way.

use std::cell::RefCell;

use crate::{
    ground::met::Met,
    legs::{memo::Memo, spacing},
    options::{
        lines::{SplitTrip, TripLegs},
        ropes,
        variants::Variant,
    },
    plan::options::Way,
    practice::{Rule, Rules},
    rope::{held::AskedSlopes, otherwise, share},
    trip::{job::Brief, party::RopeTeam},
};

/// A split under some rules.
#[derive(Clone, Copy)]
pub(super) struct Split<'a> {
    pub(super) job: &'a Brief<'a>,
    pub(super) teams: &'a [RopeTeam],
    pub(super) met: &'a Met,
    pub(super) memo: &'a Memo,
    pub(super) asked: &'a RefCell<AskedSlopes>,
}

impl Split<'_> {
    /// The ways with everybody as far apart as the ropes allow, nearer than the habit; none where gaps, knots or ice
    /// without a gap width ask for more.
    pub(super) fn ways(&self, (changes, rules): &Variant) -> Vec<Way> {
        let habit_m = |team: &RopeTeam| rules[Rule::base_spacing(team.size())];
        let habit_m = self.teams.iter().map(habit_m).fold(0.0, f64::max);
        let below: Vec<f64> = spacing::choices_m(rules[Rule::SpacingFloorM], rules)
            .take_while(|d| *d < habit_m - 1e-9)
            .collect();
        // Who walks closer needs no more rope, so the spacings that fit come first.
        let fitting = below.partition_point(|d| self.holds(*d, rules));
        let widest_m = fitting.checked_sub(1).and_then(|i| below.get(i));
        let closer = widest_m.and_then(|d| otherwise::closer(rules, *d));
        closer.map_or_else(Vec::new, |(change, rules)| {
            let changes = changes.iter().cloned().chain([change]).collect();
            self.given((changes, rules))
        })
    }

    /// Whether the ropes at hand hold every leg with nobody further apart than this, metres.
    fn holds(&self, spacing_m: f64, rules: &Rules) -> bool {
        let Some((_, rules)) = otherwise::closer(rules, spacing_m) else {
            return false;
        };
        self.legs(&rules, |job, legs| {
            let demands_m = legs.demands_m(job, self.teams);
            share::best(&demands_m, job.ropes, job.rules).fit != share::Fit::Short
        })
    }

    fn given(&self, variant: Variant) -> Vec<Way> {
        let mut ways = self.legs(&variant.1, |job, legs| {
            ropes::given(job, &legs.draft(job, self.teams, &variant, &[]))
        });
        ways.retain(|way| way.short_m <= 1e-9);
        ways
    }

    fn legs<T>(&self, rules: &Rules, ask: impl FnOnce(&Brief<'_>, &TripLegs<'_>) -> T) -> T {
        let job = Brief { rules, ..*self.job };
        let trip = SplitTrip::new(&job, self.teams, self.met, self.memo);
        ask(&job, &trip.legs(&job, self.asked))
    }
}
