//! Fewer changes of the set-up: keeping one over several roped legs, where walking wider costs less than changing.
//!
//! Between two roped legs of a stage the team unropes and ropes up again; only what is tied differently costs the
//! minutes of a change. A wider spacing costs time on the way: a rule says how much. Only set-ups that fit the rope
//! carried, or a length sold, are kept.

use std::ops::Range;

use crate::{
    legs::{knots, spacing, worst::Meeting},
    plan::keep::{ChangeCost, KeepSetup, KeptRun, KeptTeam},
    practice::{Rule, SOLD_LENGTHS_M},
    rope::{
        draft::Draft,
        ledger,
        legs::RopedLeg,
        reserve,
        share::{self, Shared},
    },
    trip::{job::Brief, route::Stretch},
    whole::{
        kept::{self, Grown},
        runs,
    },
};

/// The trip with set-ups kept, if that saves minutes.
pub(crate) fn keep(job: &Brief<'_>, legs: &[RopedLeg<'_>], ropes: &Shared) -> Option<KeepSetup> {
    let mut whole = KeepSetup {
        as_planned: ChangeCost::default(),
        kept: ChangeCost::default(),
        runs: Vec::new(),
    };
    let of_one_stage = |a: &RopedLeg<'_>, b: &RopedLeg<'_>| stage(a) == stage(b);
    for legs in legs.chunk_by(of_one_stage) {
        let keeping = Keeping::new(job, legs, ropes);
        keeping.add_to(&mut whole);
    }
    (whole.kept.minutes < whole.as_planned.minutes - 1e-9).then_some(whole)
}

fn stage(leg: &RopedLeg<'_>) -> usize {
    leg.stage.stage.number
}

/// The roped legs of one stage.
struct Keeping<'a> {
    job: &'a Brief<'a>,
    ropes: &'a Shared,
    legs: Vec<&'a RopedLeg<'a>>,
    /// What a rope with some spacing meets on each of them.
    meets: Vec<Box<dyn Fn(f64) -> Meeting + 'a>>,
    /// All ice that the stage touches, by where it begins.
    ice: Vec<Stretch>,
}

impl<'a> Keeping<'a> {
    fn new(job: &'a Brief<'a>, legs: &'a [RopedLeg<'a>], ropes: &'a Shared) -> Self {
        let roped = || legs.iter().filter(|leg| leg.sketch.roped);
        let meets = roped().map(|leg| Box::new(leg.stage.meets(job, leg.sketch)) as Box<_>);
        Self {
            meets: meets.collect(),
            job,
            ropes,
            ice: legs.first().map(kept::ice).unwrap_or_default(),
            legs: roped().collect(),
        }
    }

    fn add_to(&self, whole: &mut KeepSetup) {
        let change_min = self.job.rules[Rule::ChangeMin];
        let same = |i: usize| self.alike(i - 1, i);
        let changes = (1..self.legs.len()).filter(|&i| !same(i)).count();
        whole.as_planned.changes += changes;
        let planned_min = minutes(changes, change_min);
        whole.as_planned.minutes += planned_min;
        let cost = |run: Range<usize>| self.cost_min(run);
        let Some((runs, kept_min)) = runs::cheapest(self.legs.len(), change_min, &cost) else {
            // A leg has no set-up that fits: it stays as planned.
            whole.kept.changes += changes;
            whole.kept.minutes += planned_min;
            return;
        };
        whole.kept.changes += runs.len().saturating_sub(1);
        whole.kept.minutes += kept_min;
        let run = |r: Range<usize>| {
            let teams = self.teams(r.clone()).unwrap_or_default();
            let legs = self.legs.get(r.clone()).unwrap_or_default();
            KeptRun {
                stage: legs.first().map_or(0, |leg| stage(leg)),
                legs: legs.iter().map(|leg| leg.number).collect(),
                stretches: self
                    .grown(r, &teams)
                    .unwrap_or_default()
                    .iter()
                    .map(Grown::told)
                    .collect(),
                teams,
            }
        };
        whole.runs.extend(runs.into_iter().map(run));
    }

    /// Whether two legs are set up alike as planned.
    fn alike(&self, a: usize, b: usize) -> bool {
        let set = |i: usize| {
            let leg = self.legs.get(i);
            let teams = leg.into_iter().flat_map(|l| &l.teams);
            teams
                .map(|d| (d.spacing.spacing_m, d.knots.count))
                .collect::<Vec<_>>()
        };
        set(a) == set(b)
    }

    /// Minutes lost by walking all legs of a run in its one set-up; `None` where it does not fit a rope. A leg alone
    /// stays as planned.
    fn cost_min(&self, run: Range<usize>) -> Option<f64> {
        if run.len() == 1 {
            return Some(0.0);
        }
        let kept = self.teams(run.clone())?;
        self.grown(run.clone(), &kept)?;
        let rate = self.job.rules[Rule::WideMinPerKmM];
        let wider = |leg: &RopedLeg<'_>| {
            let pairs = kept.iter().zip(&leg.teams);
            pairs
                .map(|(k, d)| k.spacing_m - d.spacing.spacing_m)
                .fold(0.0, f64::max)
        };
        let legs = self.legs.get(run)?.iter();
        let km =
            |leg: &RopedLeg<'_>| (kept::end_m(leg, &kept) - leg.sketch.stretch.from_m) / 1000.0;
        Some(legs.map(|leg| rate * km(leg) * wider(leg)).sum())
    }

    /// Where the one set-up of a run is walked on the rope; `None` where it meets more ice than its legs.
    fn grown(&self, run: Range<usize>, kept: &[KeptTeam]) -> Option<Vec<Grown<'a>>> {
        let next = self.legs.get(run.end).copied();
        kept::grown(self.job, &self.ice, self.legs.get(run)?, next, kept)
    }

    /// The one set-up of each team for a run.
    fn teams(&self, run: Range<usize>) -> Option<Vec<KeptTeam>> {
        let teams = self.legs.get(run.start)?.teams.len();
        (0..teams).map(|t| self.team(run.clone(), t)).collect()
    }

    fn team(&self, run: Range<usize>, t: usize) -> Option<KeptTeam> {
        let rules = self.job.rules;
        let drafts: Vec<&Draft> = self
            .legs
            .get(run.clone())?
            .iter()
            .filter_map(|leg| leg.teams.get(t))
            .collect();
        let first = *drafts.first()?;
        let people = first.persons.len();
        let spacing_m = if let [only] = drafts.as_slice() {
            only.spacing.spacing_m
        } else {
            self.spacing_m(run, &drafts)?
        };
        let with_knots = drafts.iter().max_by_key(|d| d.knots.count)?;
        let tied = with_knots.knots.count > 0;
        let needed_m = ledger::total_at_m(people, spacing_m, &with_knots.knots, rules);
        let least_m = drafts
            .iter()
            .map(|d| d.spacing.spacing_m)
            .reduce(f64::min)?;
        let kept = KeptTeam {
            team: first.team,
            spacing_m,
            knots_each_end: if tied {
                knots::fitting(people, spacing_m, rules)
            } else {
                0
            },
            coil_m: reserve::coil_m(people, spacing_m, rules),
            needed_m,
            longer_m: reserve::spans_m(people.saturating_sub(1), spacing_m - least_m),
        };
        (drafts.len() == 1 || self.fits(&kept)).then_some(kept)
    }

    /// The least spacing that suits all the legs of a run.
    fn spacing_m(&self, run: Range<usize>, drafts: &[&Draft]) -> Option<f64> {
        let rules = self.job.rules;
        let people = drafts.first()?.persons.len();
        let least_m = drafts
            .iter()
            .map(|d| d.spacing.spacing_m)
            .reduce(f64::max)?;
        let meets = self.meets.get(run)?;
        let suits = |d: &f64| {
            let need_m = |gap_m| spacing::need_m(people, gap_m, rules);
            meets
                .iter()
                .all(|meets| need_m(meets(*d).effective_gap_m) <= d + 1e-9)
        };
        spacing::choices_m(least_m, rules).find(suits)
    }

    /// Whether the rope carried, or the longest sold, holds it.
    fn fits(&self, kept: &KeptTeam) -> bool {
        let sold_m = SOLD_LENGTHS_M
            .into_iter()
            .reduce(f64::max)
            .unwrap_or_default();
        let rope = self.ropes.of_team(kept.team, self.job.ropes);
        let length_m = match rope {
            Some((_, rope)) => rope.length_m,
            None if self.job.ropes.is_empty() => sold_m,
            None => return false,
        };
        share::holds(length_m, kept.needed_m)
    }
}

#[expect(clippy::cast_precision_loss, reason = "few legs")]
fn minutes(changes: usize, change_min: f64) -> f64 {
    changes as f64 * change_min
}
