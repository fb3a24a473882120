//! Fewer changes of the set-up: keeping one over several roped legs, where walking wider costs less than changing.
//!
//! Between two roped legs of a stage the team unropes and ropes up again; only what is tied differently costs the
//! minutes of a change. A wider spacing costs time on the way: a rule says how much. Only set-ups that fit the rope
//! carried, or a length sold, are kept, and only those of which the judge of the plan finds nothing graver on any leg.

use std::{cell::RefCell, ops::Range};

use crate::{
    judge::tied::TiedOn,
    legs::{
        spacing::{self, Spacing},
        worst::Meeting,
    },
    plan::{
        keep::{ChangeCost, KeepSetup, KeptRun, KeptTeam},
        leg::Verdict,
    },
    practice::{Rule, SOLD_LENGTHS_M},
    rope::{
        answers::KnownFalls,
        carried::RopeLoad,
        draft::Draft,
        legs::RopedLeg,
        share::{self, Shared},
    },
    trip::{job::Brief, route::Stretch},
    whole::{
        growing::{GrowingTeam, KeptKind},
        kept::{self, Grown},
        runs,
    },
};

/// The trip with set-ups kept, if that saves minutes.
pub(crate) fn keep(
    job: &Brief<'_>,
    legs: &[RopedLeg<'_>],
    ropes: &Shared,
    asked: &RefCell<KnownFalls>,
) -> Option<KeepSetup> {
    let mut whole = KeepSetup {
        as_planned: ChangeCost::default(),
        kept: ChangeCost::default(),
        runs: Vec::new(),
    };
    let of_one_stage = |a: &RopedLeg<'_>, b: &RopedLeg<'_>| stage(a) == stage(b);
    for legs in legs.chunk_by(of_one_stage) {
        let keeping = Keeping::new(job, legs, ropes, asked);
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
    /// Falls asked for before.
    asked: &'a RefCell<KnownFalls>,
    legs: Vec<&'a RopedLeg<'a>>,
    /// What a rope with some spacing meets on each of them.
    meets: Vec<Box<dyn Fn(f64) -> Meeting + 'a>>,
    /// All ice that the stage touches, by where it begins.
    ice: Vec<Stretch>,
    /// For each leg the set-ups that were judged there, each with the place of its team.
    judged: Vec<RefCell<Vec<(usize, KeptKind, bool)>>>,
    /// For each leg the spacings that were tried there.
    wide: Vec<RefCell<Vec<TriedSpacing>>>,
}

/// So many people so far apart on a leg, and whether that is wide enough there.
#[derive(Clone, Copy)]
struct TriedSpacing {
    people: usize,
    spacing_bits: u64,
    wide: bool,
}

impl<'a> Keeping<'a> {
    fn new(
        job: &'a Brief<'a>,
        legs: &'a [RopedLeg<'a>],
        ropes: &'a Shared,
        asked: &'a RefCell<KnownFalls>,
    ) -> Self {
        let roped = || legs.iter().filter(|leg| leg.sketch.roped);
        let meets = roped().map(|leg| Box::new(leg.stage.meets(job, leg.sketch)) as Box<_>);
        Self {
            meets: meets.collect(),
            job,
            ropes,
            asked,
            ice: legs.first().map(kept::ice).unwrap_or_default(),
            legs: roped().collect(),
            judged: roped().map(|_| RefCell::default()).collect(),
            wide: roped().map(|_| RefCell::default()).collect(),
        }
    }

    fn add_to(&self, whole: &mut KeepSetup) {
        let change_min = self.job.rules[Rule::ChangeMin];
        let same = |i: usize| self.alike(i - 1, i);
        let changes = (1..self.legs.len()).filter(|&i| !same(i)).count();
        whole.as_planned.changes += changes;
        let planned_min = minutes(changes, change_min);
        whole.as_planned.minutes += planned_min;
        let growing = |end: usize| {
            let mut growing = Growing::before(self, end);
            move |most_min: f64| growing.grow(most_min)
        };
        let possible = |run: Range<usize>| run.len() == 1 || self.run(run).is_some();
        let Some((runs, kept_min)) = runs::cheapest(self.legs.len(), change_min, growing, possible)
        else {
            // A leg has no set-up that fits: it stays as planned.
            whole.kept.changes += changes;
            whole.kept.minutes += planned_min;
            return;
        };
        whole.kept.changes += runs.len().saturating_sub(1);
        whole.kept.minutes += kept_min;
        let run = |r: Range<usize>| {
            let legs = self.legs.get(r.clone()).unwrap_or_default();
            let (teams, stretches) = self.run(r).unwrap_or_default();
            KeptRun {
                stage: legs.first().map_or(0, |leg| stage(leg)),
                legs: legs.iter().map(|leg| leg.number).collect(),
                stretches: stretches.iter().map(Grown::told).collect(),
                teams,
            }
        };
        whole.runs.extend(runs.into_iter().map(run));
    }

    /// Whether two legs are set up alike as planned.
    fn alike(&self, a: usize, b: usize) -> bool {
        let teams = |i: usize| self.legs.get(i).into_iter().flat_map(|leg| &leg.teams);
        let mut pairs = teams(a).zip(teams(b));
        pairs.all(|(one, other)| one.is_tied_as(other))
    }

    /// The one set-up of each team for a run, and where it is walked on the rope; `None` where it does not fit a rope, meets
    /// more ice than its legs, or is judged worse on one of them than what is planned there.
    fn run(&self, run: Range<usize>) -> Option<(Vec<KeptTeam>, Vec<Grown<'a>>)> {
        let mut growing = Growing::before(self, run.end);
        while growing.start > run.start {
            growing.grow(f64::INFINITY)?;
        }
        let kept = |team: &GrowingTeam<'_>| team.kept(self.load(team), self.job.rules);
        let teams: Vec<KeptTeam> = growing.teams.iter().map(kept).collect();
        let next = self.legs.get(run.end).copied();
        let legs = self.legs.get(run)?;
        let stretches = kept::grown(self.job, &self.ice, legs, next, &teams)?;
        Some((teams, stretches))
    }

    /// Whether the judge of the plan finds nothing graver of a team with its kept set-up on a leg than as planned there.
    fn as_good(&self, at: usize, (place, kind): (usize, KeptKind), team: &GrowingTeam<'_>) -> bool {
        let (Some(leg), Some(judged)) = (self.legs.get(at), self.judged.get(at)) else {
            return false;
        };
        let Some(planned) = leg.teams.get(place) else {
            return true;
        };
        let asked = |&&(p, k, _): &&(usize, KeptKind, bool)| (p, k) == (place, kind);
        let known = judged.borrow().iter().find(asked).copied();
        if let Some((_, _, good)) = known {
            return good;
        }
        let rope = self.ropes.of_team(planned.team, self.job.ropes);
        let length_m = f64::from_bits(kind.length_bits);
        let verdict = |draft: &Draft| {
            let tied = TiedOn {
                job: self.job,
                leg,
                draft,
                rope,
                bought_m: rope.is_none().then_some(length_m),
            };
            let facts = tied.rope_facts(&tied.setup());
            tied.verdict(&facts, tied.falls(&mut self.asked.borrow_mut().slopes))
        };
        let planned_as = verdict(planned);
        // Nothing is graver than a stop.
        let good = planned_as == Verdict::Stop
            || verdict(&team.draft(self.job, leg, planned)) <= planned_as;
        judged.borrow_mut().push((place, kind, good));
        good
    }

    fn kind(&self, team: &GrowingTeam<'_>) -> KeptKind {
        KeptKind {
            spacing_bits: team.spacing_m.to_bits(),
            knots: team.most_knots.knots.count,
            length_bits: self.load(team).length_m.to_bits(),
        }
    }

    /// The rope that the team carries, or the length sold that it takes.
    fn load(&self, team: &GrowingTeam<'_>) -> RopeLoad {
        let (number, needed_m) = (team.first.team, team.needed_m(self.job.rules));
        let sold_m = || {
            let bought_m = self.ropes.bought_m(number).unwrap_or_default();
            bought_m.max(share::to_buy_m(needed_m))
        };
        match self.ropes.of_team(number, self.job.ropes) {
            Some((_, rope)) => RopeLoad::of(rope),
            None => RopeLoad {
                length_m: sold_m(),
                diameter_mm: None,
            },
        }
    }

    /// Whether so many people so far apart, metres, are wide enough apart on a leg; asked once.
    fn is_wide(&self, at: usize, people: usize, spacing_m: f64) -> bool {
        let (Some(meets), Some(known)) = (self.meets.get(at), self.wide.get(at)) else {
            return true;
        };
        let spacing_bits = spacing_m.to_bits();
        let same = |t: &&TriedSpacing| (t.people, t.spacing_bits) == (people, spacing_bits);
        let tried = known.borrow().iter().find(same).copied();
        if let Some(tried) = tried {
            return tried.wide;
        }
        let wide = Spacing::tried(people, spacing_m, self.job.rules, meets).enough;
        known.borrow_mut().push(TriedSpacing {
            people,
            spacing_bits,
            wide,
        });
        wide
    }

    /// Whether the rope carried, or the longest sold, holds it.
    fn fits(&self, team: &GrowingTeam<'_>) -> bool {
        let sold_m = SOLD_LENGTHS_M
            .into_iter()
            .reduce(f64::max)
            .unwrap_or_default();
        let rope = self.ropes.of_team(team.first.team, self.job.ropes);
        let length_m = match rope {
            Some((_, rope)) => rope.length_m,
            None if self.job.ropes.is_empty() => sold_m,
            None => return false,
        };
        share::holds(length_m, team.needed_m(self.job.rules))
    }
}

/// A run of legs that ends before a leg and grows by one leg at its front.
struct Growing<'k, 'a> {
    of: &'k Keeping<'a>,
    start: usize,
    end: usize,
    teams: Vec<GrowingTeam<'k>>,
    /// How each of them is tied, and their spacings, metres.
    kinds: Vec<KeptKind>,
    spacings_m: Vec<f64>,
    min: f64,
}

/// What one leg more changes of the set-ups of a run.
#[derive(Clone, Copy, Default)]
struct Changed {
    /// Somebody walks wider, or for the first time over two legs.
    wider: bool,
    /// Something is tied otherwise.
    otherwise: bool,
}

impl<'k, 'a> Growing<'k, 'a> {
    fn before(of: &'k Keeping<'a>, end: usize) -> Self {
        Self {
            of,
            start: end,
            end,
            teams: Vec::new(),
            kinds: Vec::new(),
            spacings_m: Vec::new(),
            min: 0.0,
        }
    }

    fn legs(&self) -> Option<&'k [&'a RopedLeg<'a>]> {
        self.of.legs.get(self.start..self.end)
    }

    /// Takes the leg at the start into the set-up of a team; whether that is another spacing now. `None` where none suits all
    /// legs.
    fn widen(&self, team: &mut GrowingTeam<'k>, draft: &'k Draft) -> Option<bool> {
        let (was_m, rules) = (team.spacing_m, self.of.job.rules);
        let planned_m = draft.spacing.spacing_m;
        team.first = draft;
        team.least_m = team.least_m.min(planned_m);
        if draft.knots.count > team.most_knots.knots.count {
            team.most_knots = draft;
        }
        let pair = self.end - self.start == 2;
        if pair || planned_m > was_m || !self.suits(self.start..self.start + 1, team, was_m) {
            let mut choices = spacing::choices_m(was_m.max(planned_m), rules);
            team.spacing_m = choices.find(|d| self.suits(self.start..self.end, team, *d))?;
        }
        Some(pair || team.spacing_m > was_m)
    }

    /// Takes the leg at the start into the set-ups: how they differ from before. `None` where one suits no longer or fits no rope.
    fn take(&mut self, leg: &'k RopedLeg<'a>) -> Option<Changed> {
        let mut teams = std::mem::take(&mut self.teams);
        let mut changed = Changed::default();
        for (team, draft) in teams.iter_mut().zip(&leg.teams) {
            let knots = team.most_knots.knots.count;
            changed.wider |= self.widen(team, draft)?;
            changed.otherwise |= team.most_knots.knots.count != knots;
        }
        changed.otherwise |= changed.wider;
        self.teams = teams;
        if changed.otherwise {
            self.kinds = self.teams.iter().map(|team| self.of.kind(team)).collect();
            self.spacings_m = self.teams.iter().map(|team| team.spacing_m).collect();
        }
        let fits = !changed.otherwise || self.teams.iter().all(|team| self.of.fits(team));
        fits.then_some(changed)
    }

    /// Whether a spacing is wide enough for what a rope of that spacing meets on some legs.
    fn suits(&self, legs: Range<usize>, team: &GrowingTeam<'_>, spacing_m: f64) -> bool {
        let people = team.first.persons.len();
        let mut legs = legs.into_iter();
        legs.all(|at| self.of.is_wide(at, people, spacing_m))
    }

    /// Minutes lost on one of the legs by teams with these spacings.
    fn lost_min(&self, leg: &RopedLeg<'_>, spacings_m: &[f64]) -> f64 {
        let rate = self.of.job.rules[Rule::WideMinPerKmM];
        let pairs = spacings_m.iter().zip(&leg.teams);
        let wider = pairs.map(|(m, draft)| m - draft.spacing.spacing_m);
        let km = (kept::end_m(leg, spacings_m) - leg.sketch.stretch.from_m) / 1000.0;
        rate * km * wider.fold(0.0, f64::max)
    }
}

impl Growing<'_, '_> {
    /// Whether the judge of the plan finds nothing graver with the one set-up on a leg.
    fn as_good(&self, at: usize) -> bool {
        let mut teams = self.teams.iter().zip(&self.kinds).enumerate();
        teams.all(|(place, (team, kind))| self.of.as_good(at, (place, *kind), team))
    }

    /// One leg more: gives the minutes lost by walking all legs in the one set-up, as long as they are not more than asked
    /// for, and it fits a rope and is judged no worse on any of them. A leg alone stays as planned.
    fn grow(&mut self, most_min: f64) -> Option<f64> {
        self.start = self.start.checked_sub(1)?;
        let leg = *self.of.legs.get(self.start)?;
        if self.teams.is_empty() {
            self.teams = leg.teams.iter().map(GrowingTeam::of).collect();
            return Some(0.0);
        }
        let changed = self.take(leg)?;
        let lost_min = |leg: &RopedLeg<'_>| self.lost_min(leg, &self.spacings_m);
        self.min = if changed.wider {
            self.legs()?.iter().map(|leg| lost_min(leg)).sum()
        } else {
            self.min + lost_min(leg)
        };
        if self.min > most_min {
            return None;
        }
        // What is tied otherwise is judged anew on all of them.
        let judged = if changed.otherwise {
            self.start..self.end
        } else {
            self.start..self.start + 1
        };
        let good = judged.into_iter().all(|at| self.as_good(at));
        good.then_some(self.min)
    }
}

#[expect(clippy::cast_precision_loss, reason = "few legs")]
fn minutes(changes: usize, change_min: f64) -> f64 {
    changes as f64 * change_min
}
