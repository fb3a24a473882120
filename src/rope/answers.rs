//! The models' answers for every team and leg; what was asked before is not computed again.

use std::collections::BTreeMap;

use crate::trip::job::Case;
use crate::{
    fault::refusal::Refusal,
    physics::holding::{Holding, Team},
    plan::{
        fall::OrderAdvice,
        leg::{Leg, TeamSetup},
    },
    practice::Rules,
    rope::{
        arrest::{self, Ground},
        haul,
        setup::Draft,
    },
};

/// What has been asked, and on which leg each team is held worst.
#[derive(Debug, Default)]
pub(crate) struct Answers {
    asked: BTreeMap<Vec<u64>, Result<Holding, Refusal>>,
    /// By team number: how bad, the leg, and the team as it stood there.
    worst: BTreeMap<usize, Worst>,
}

#[derive(Debug)]
struct Worst {
    severity: (u8, bool, f64),
    leg: usize,
    team: Team,
}

impl Answers {
    /// Fills in what the models say of one team on one leg.
    ///
    /// # Errors
    /// Says so when a model cannot be asked.
    pub(crate) fn fill(
        &mut self,
        setup: &mut TeamSetup,
        draft: &Draft,
        ground: Ground,
        leg: usize,
        rules: &Rules,
    ) -> Result<(), Refusal> {
        let team = arrest::team(draft, ground, rules)?;
        let holding = self
            .asked
            .entry(key(&team))
            .or_insert_with(|| team.worst_holding(&rules.nature.assumed))
            .clone()?;
        setup.arrest = arrest::answer(&team, &holding);
        haul::fill(setup, holding.worst + 1, ground.snow, rules)?;
        let severity = arrest::severity(&holding);
        let worse = |w: &Worst| severity > w.severity;
        if self.worst.get(&setup.team).is_none_or(worse) {
            let worst = Worst {
                severity,
                leg,
                team,
            };
            self.worst.insert(setup.team, worst);
        }
        Ok(())
    }

    /// Asks once for each team, on the leg where it is held worst, whether another order is better. Equal people
    /// are not asked about.
    pub(crate) fn advise(&self, job: &Case<'_>, legs: &mut [Leg]) {
        for (number, worst) in &self.worst {
            let setups = legs.iter_mut().filter(|l| l.leg == worst.leg);
            let setup = setups
                .flat_map(|l| &mut l.teams)
                .find(|t| t.team == *number);
            if let Some(setup) = setup {
                let advice = advice(&worst.team, setup, job.rules);
                if let Some(arrest) = &mut setup.arrest {
                    arrest.order = advice;
                }
            }
        }
    }
}

fn advice(team: &Team, setup: &TeamSetup, rules: &Rules) -> Option<OrderAdvice> {
    let first = team.masses_kg.first()?;
    if team.masses_kg.iter().all(|m| (m - first).abs() < 1e-9) {
        return None;
    }
    let advice = team.best_order(&rules.nature.assumed).ok()?;
    Some(arrest::advice(&setup.persons, &advice))
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
    let mut key: Vec<u64> = [&ground[..], &knots[..], &team.masses_kg[..]]
        .concat()
        .into_iter()
        .map(f64::to_bits)
        .collect();
    key.extend([team.snow as u64, u64::from(team.on_skis)]);
    key
}
