//! The fall of every team on every leg put before the model; what was asked before is not computed again.

use std::collections::BTreeMap;

use crate::{
    fault::refusal::Refusal,
    physics::holding::{Holding, Team},
    plan::fall::OrderAdvice,
    practice::{Origin, Rules},
    rope::{
        arrest::{self, FallAnswer, Stance},
        draft::Draft,
        legs::RopedLeg,
    },
};

/// How much the model is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Depth {
    /// Everything: what an answer depends on, and whether another order is better.
    Whole,
    /// Whether falls are held, and no more; a good deal faster.
    Verdicts,
}

/// What has been asked so far.
#[derive(Debug)]
struct AskedFalls {
    depth: Depth,
    known: BTreeMap<Vec<u64>, Result<Holding, Refusal>>,
}

/// The answers for all legs.
#[derive(Debug)]
pub(crate) struct Answers {
    /// By place of the leg and of the team on it.
    falls: Vec<Vec<Result<FallAnswer, Refusal>>>,
    /// By team number: on which leg it is held worst, and the advice on its order there.
    advice: BTreeMap<usize, (usize, Option<OrderAdvice>)>,
}

impl Answers {
    /// Asks for every team on every leg, and once for each team, where it is held worst, whether another order is
    /// better.
    pub(crate) fn of(legs: &[RopedLeg<'_>], depth: Depth, rules: &Rules) -> Self {
        let mut asked = AskedFalls {
            depth,
            known: BTreeMap::new(),
        };
        let falls = legs.iter().map(|leg| {
            let teams = leg.teams.iter();
            teams
                .map(|draft| asked.fall(draft, leg.stance(draft, rules), rules))
                .collect()
        });
        let falls: Vec<Vec<Result<FallAnswer, Refusal>>> = falls.collect();
        Self {
            advice: match depth {
                Depth::Whole => advice(legs, &falls, rules),
                Depth::Verdicts => BTreeMap::new(),
            },
            falls,
        }
    }

    /// The fall of the team at a place on the leg at a place, or why the model has no answer.
    pub(crate) fn fall(&self, leg: usize, team: usize) -> Option<Result<&FallAnswer, &Refusal>> {
        let fall = self.falls.get(leg)?.get(team)?;
        Some(fall.as_ref())
    }

    /// The advice on the order of a team, on the leg where it is held worst and only there.
    pub(crate) fn order(&self, leg: usize, team_number: usize) -> Option<&OrderAdvice> {
        let (worst, advice) = self.advice.get(&team_number)?;
        advice.as_ref().filter(|_| *worst == leg)
    }
}

impl AskedFalls {
    fn fall(
        &mut self,
        draft: &Draft,
        stance: Stance,
        rules: &Rules,
    ) -> Result<FallAnswer, Refusal> {
        let team = arrest::team(draft, stance, rules)?;
        let holding = self
            .known
            .entry(key(&team))
            .or_insert_with(|| match self.depth {
                Depth::Whole => team.worst_holding(&rules.nature.assumed),
                Depth::Verdicts => team.verdicts(&rules.nature.assumed),
            })
            .clone()?;
        Ok(FallAnswer {
            team,
            holding,
            snow_assumed: rules.choices.snow.origin == Origin::Default,
            slope_known: stance.slope_deg.is_some(),
        })
    }
}

/// How hard the hardest fall of a team is to hold, the leg it is on, the team there, and the fall.
type HardestFall<'a> = ((u8, bool, f64), usize, &'a Draft, &'a FallAnswer);

fn advice(
    legs: &[RopedLeg<'_>],
    falls: &[Vec<Result<FallAnswer, Refusal>>],
    rules: &Rules,
) -> BTreeMap<usize, (usize, Option<OrderAdvice>)> {
    let mut worst: BTreeMap<usize, HardestFall<'_>> = BTreeMap::new();
    for (i, (leg, falls)) in legs.iter().zip(falls).enumerate() {
        for (draft, fall) in leg.teams.iter().zip(falls) {
            let Ok(fall) = fall else { continue };
            let severity = arrest::severity(&fall.holding);
            if worst.get(&draft.team).is_none_or(|(w, ..)| severity > *w) {
                worst.insert(draft.team, (severity, i, draft, fall));
            }
        }
    }
    let advise = |(team, (_, leg, draft, fall)): (usize, HardestFall<'_>)| {
        (team, (leg, arrest::advice(fall, &draft.persons, rules)))
    };
    worst.into_iter().map(advise).collect()
}

/// Everything the answer rests on besides the assumptions.
fn key(team: &Team) -> Vec<u64> {
    let knots = team.knots.map_or([0.0; 3], |k| {
        [f64::from(k.count_per_side), k.first_m, k.step_m]
    });
    let ground = [
        team.spacing_m,
        team.gap_m,
        team.slope_toward_lip_deg,
        team.rope_ea_n,
    ];
    let figures = ground.iter().chain(&knots).chain(&team.masses_kg);
    let mut key: Vec<u64> = figures.map(|x| x.to_bits()).collect();
    key.extend([team.snow as u64, u64::from(team.on_skis)]);
    key
}
