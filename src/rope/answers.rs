//! The fall of every team on every leg put before the model; what was asked before is not computed again.

use std::{cell::RefCell, collections::BTreeMap};

use crate::{
    cores,
    fault::refusal::Refusal,
    physics::{
        assumed::Assumed,
        hold_dynamic::Followed,
        holding::{Holding, Team},
    },
    plan::{
        depth::Depth,
        fall::{Held, OrderAdvice},
        name::PersonOnRope,
    },
    practice::Origin,
    rope::{
        arrest::{self, FallAnswer},
        draft::Draft,
        held::{AskedSlopes, HeldAlong},
        legs::RopedLeg,
        stance,
    },
    trip::job::Brief,
};

/// What was asked of the model under one set of rules, whoever walks.
#[derive(Clone, Debug, Default)]
pub(crate) struct KnownFalls {
    whole: BTreeMap<Vec<u64>, Result<Holding, Refusal>>,
    verdicts: BTreeMap<Vec<u64>, Result<Holding, Refusal>>,
    /// Slope by slope.
    pub(crate) slopes: AskedSlopes,
}

/// What is asked for one plan.
#[derive(Debug)]
struct AskedFalls<'a> {
    depth: Depth,
    job: &'a Brief<'a>,
    known: &'a mut KnownFalls,
}

/// By place of the team on a leg; `None` where the leg touches no ice.
type FallsOfLeg = Vec<Option<Result<FallAnswer, Refusal>>>;

/// How the falls of every team on a leg are held along it, by its place; `None` where the leg touches no ice.
type AlongLeg = Vec<Option<Result<HeldAlong, Refusal>>>;

/// Into so many parts whole answers are cut to be asked for side by side `[ours]`.
const WHOLE_PARTS: usize = 4;

/// The answers for all legs.
#[derive(Debug)]
pub(crate) struct Answers {
    /// By place of the leg and of the team on it.
    falls: Vec<FallsOfLeg>,
    /// By team number: on which leg it is held worst, hidden gaps before those in sight, and the advice on its order there.
    advice: BTreeMap<usize, (usize, Option<OrderAdvice>)>,
}

impl Answers {
    /// Asks for every team on every leg, and once for each team, where it is held worst, whether another order is
    /// better.
    pub(crate) fn of(
        job: &Brief<'_>,
        legs: &[RopedLeg<'_>],
        depth: Depth,
        known: &RefCell<KnownFalls>,
    ) -> Self {
        let mut asked = AskedFalls {
            depth,
            job,
            known: &mut known.borrow_mut(),
        };
        asked.known.slopes.ask_ahead(legs, job);
        let along: Vec<AlongLeg> = legs.iter().map(|leg| asked.along(leg)).collect();
        if depth == Depth::Whole {
            asked.ask_ahead(&along);
        }
        let pairs = legs.iter().zip(along);
        let falls = pairs.map(|(leg, along)| {
            let teams = leg.teams.iter().zip(along);
            teams
                .map(|(draft, along)| asked.fall(along, draft))
                .collect()
        });
        let falls: Vec<FallsOfLeg> = falls.collect();
        Self {
            advice: if depth >= Depth::Told {
                let assumed = &job.rules.nature.assumed;
                advice(legs, &falls, assumed, &mut asked.known.slopes.followed)
            } else {
                BTreeMap::new()
            },
            falls,
        }
    }

    /// The fall of the team at a place on the leg at a place, or why the model has no answer.
    pub(crate) fn fall(&self, leg: usize, team: usize) -> Option<Result<&FallAnswer, &Refusal>> {
        let fall = self.falls.get(leg)?.get(team)?.as_ref()?;
        Some(fall.as_ref())
    }

    /// The advice on the order of a team, on the leg where it is held worst and only there.
    pub(crate) fn order(&self, leg: usize, team_number: usize) -> Option<&OrderAdvice> {
        let (worst, advice) = self.advice.get(&team_number)?;
        advice.as_ref().filter(|_| *worst == leg)
    }
}

impl AskedFalls<'_> {
    /// How the falls of every team are held along a leg.
    fn along(&mut self, leg: &RopedLeg<'_>) -> AlongLeg {
        let teams = leg.teams.iter();
        let along = teams.map(|draft| self.known.slopes.along(leg, draft, self.job));
        along.map(Result::transpose).collect()
    }

    /// Asks for the whole answers where teams are held worst, side by side, so that they are known when they are asked for.
    fn ask_ahead(&mut self, along: &[AlongLeg]) {
        let held = along
            .iter()
            .flatten()
            .filter_map(|along| along.as_ref()?.as_ref().ok());
        let teams = held.map(|along| (stance::key(&along.worst), &along.worst));
        let teams: BTreeMap<Vec<u64>, &Team> = teams
            .filter(|(key, _)| !self.known.whole.contains_key(key))
            .collect();
        let teams: Vec<(Vec<u64>, &Team)> = teams.into_iter().collect();
        let parts: Vec<_> = teams
            .chunks(teams.len().div_ceil(WHOLE_PARTS).max(1))
            .collect();
        let (assumed, followed) = (&self.job.rules.nature.assumed, &self.known.slopes.followed);
        let answered = cores::map(&parts, |part| {
            let mut followed = followed.clone();
            let answers = part
                .iter()
                .map(|(_, team)| team.worst_holding(assumed, &mut followed));
            (answers.collect::<Vec<_>>(), followed)
        });
        for (part, (answers, followed)) in parts.iter().zip(answered) {
            let keys = part.iter().map(|(key, _)| key.clone());
            self.known.whole.extend(keys.zip(answers));
            self.known.slopes.followed.take_in(followed);
        }
    }

    /// A team at the place where it is held worst; `None` where the leg touches no ice.
    fn fall(
        &mut self,
        along: Option<Result<HeldAlong, Refusal>>,
        draft: &Draft,
    ) -> Option<Result<FallAnswer, Refusal>> {
        Some(along?.and_then(|along| self.at_worst(along, &draft.persons)))
    }

    fn at_worst(
        &mut self,
        along: HeldAlong,
        persons: &[PersonOnRope],
    ) -> Result<FallAnswer, Refusal> {
        let (mut team, mut holding) = (along.worst.clone(), self.holding(&along.worst)?);
        if let Some(loaded) = stance::loaded(&team, persons, self.job.burden) {
            let heavy = self.holding(&loaded)?;
            if arrest::severity(&heavy) > arrest::severity(&holding) {
                (team, holding) = (loaded, heavy);
            }
        }
        let everybody = match self.depth {
            Depth::Whole => self.everybody(&along, &holding, persons)?,
            Depth::Legs | Depth::Told | Depth::Frozen => Vec::new(),
        };
        Ok(FallAnswer {
            team,
            holding,
            everybody,
            snow_assumed: self.job.rules.choices.snow.origin == Origin::Default,
            along,
        })
    }

    /// How everybody's fall is held over whichever width the gap has and whichever way the ground falls on the leg. Whoever is
    /// not held worst over that one gap may be held worse over another, and who goes first is held worst on a descent, who
    /// goes last on a climb; nobody is held worse than the worst.
    fn everybody(
        &mut self,
        along: &HeldAlong,
        holding: &Holding,
        persons: &[PersonOnRope],
    ) -> Result<Vec<Held>, Refusal> {
        let mut everybody = arrest::everybody(holding);
        let worst = everybody.iter().copied().max().unwrap_or(Held::All);
        let loaded = stance::loaded(&along.worst, persons, self.job.burden);
        let teams: Vec<Team> = std::iter::once(along.worst.clone()).chain(loaded).collect();
        let asked = teams.iter().flat_map(|team| {
            along.gaps_m.iter().map(|&gap_m| Team {
                gap_m,
                down_deg: along.down_deg,
                ..team.clone()
            })
        });
        for team in asked {
            if everybody.iter().all(|held| *held == worst) {
                break;
            }
            let there = arrest::everybody(&self.verdicts(&team)?);
            for (held, there) in everybody.iter_mut().zip(there) {
                *held = (*held).max(there).min(worst);
            }
        }
        Ok(everybody)
    }

    fn verdicts(&mut self, team: &Team) -> Result<Holding, Refusal> {
        let assumed = &self.job.rules.nature.assumed;
        let known = &mut *self.known;
        let followed = &mut known.slopes.followed;
        let ask = || team.verdicts(assumed, followed);
        let verdicts = &mut known.verdicts;
        verdicts
            .entry(stance::key(team))
            .or_insert_with(ask)
            .clone()
    }

    /// A whole answer holds the verdicts too.
    fn holding(&mut self, team: &Team) -> Result<Holding, Refusal> {
        let (assumed, key) = (&self.job.rules.nature.assumed, stance::key(team));
        let known = &mut *self.known;
        let followed = &mut known.slopes.followed;
        match (self.depth, known.whole.get(&key)) {
            (_, Some(whole)) => whole.clone(),
            (Depth::Whole, None) => {
                let ask = || team.worst_holding(assumed, followed);
                known.whole.entry(key).or_insert_with(ask).clone()
            }
            (Depth::Legs | Depth::Told | Depth::Frozen, None) => self.verdicts(team),
        }
    }
}

/// How hard the hardest fall of a team is to hold, the leg it is on, the team there, and the fall. Nobody holds a fall on bare
/// ice in any order, so hidden gaps come before those in sight.
type HardestFall<'a> = ((bool, (u8, bool, f64)), usize, &'a Draft, &'a FallAnswer);

fn advice(
    legs: &[RopedLeg<'_>],
    falls: &[FallsOfLeg],
    assumed: &Assumed,
    followed: &mut Followed,
) -> BTreeMap<usize, (usize, Option<OrderAdvice>)> {
    let mut worst: BTreeMap<usize, HardestFall<'_>> = BTreeMap::new();
    for (i, (leg, falls)) in legs.iter().zip(falls).enumerate() {
        for (draft, fall) in leg.teams.iter().zip(falls) {
            let Some(Ok(fall)) = fall else { continue };
            let hidden = !fall.along.in_sight;
            let severity = (hidden, arrest::severity(&fall.holding));
            if worst.get(&draft.team).is_none_or(|(w, ..)| severity > *w) {
                worst.insert(draft.team, (severity, i, draft, fall));
            }
        }
    }
    let advise = |(team, (_, leg, draft, fall)): (usize, HardestFall<'_>)| {
        let advice = arrest::advice(fall, &draft.persons, assumed, followed);
        (team, (leg, advice))
    };
    worst.into_iter().map(advise).collect()
}
