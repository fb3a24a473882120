//! All that a plan asks about falls, put before the model at once: team by team, side by side.

use std::collections::BTreeMap;

use crate::{
    cores,
    physics::{
        assumed::Assumed,
        hold_dynamic::Followed,
        holding::{Team, limits::HoldLimits},
    },
    rope::{
        draft::Draft,
        held::{AskedSlopes, FallPlace},
        legs::RopedLeg,
        stance,
    },
    trip::job::Brief,
};

/// What is asked of one team, and what is known of it before.
struct OfTeam {
    limits: HoldLimits,
    questions: Vec<Question>,
}

struct Question {
    team: Team,
    gaps_m: Vec<f64>,
    down_deg: [i8; 2],
    range_deg: [i8; 2],
}

impl AskedSlopes {
    /// Asks for every team on every leg, so that [`AskedSlopes::along`] finds the answers. What the model refuses it tells.
    pub(crate) fn ask_ahead(&mut self, legs: &[RopedLeg<'_>], job: &Brief<'_>) {
        let mut teams: BTreeMap<Vec<u64>, OfTeam> = BTreeMap::new();
        for leg in legs {
            let questions = FallPlace::questions(&FallPlace::on_ice(leg, job));
            for draft in &leg.teams {
                for question in of_team(draft, &questions, job) {
                    let key = stance::key(&question.team);
                    let known = || OfTeam {
                        limits: self.limits.get(&key).cloned().unwrap_or_default(),
                        questions: Vec::new(),
                    };
                    let team = teams.entry(key.clone()).or_insert_with(known);
                    team.questions.push(question);
                }
            }
        }
        let (keys, teams): (Vec<_>, Vec<_>) = teams.into_iter().unzip();
        let assumed = &job.rules.nature.assumed;
        let before = self.followed.before();
        let answers = cores::map(&teams, |team| team.answered(assumed, before.clone()));
        for (key, (limits, followed)) in keys.into_iter().zip(answers) {
            self.limits.insert(key, limits);
            self.followed.take_in(followed);
        }
    }
}

fn of_team(draft: &Draft, questions: &[(FallPlace, [i8; 2])], job: &Brief<'_>) -> Vec<Question> {
    let mut asked = Vec::new();
    for &(at, range_deg) in questions {
        let Ok((team, loaded)) = at.teams(draft, job) else {
            continue;
        };
        asked.extend(std::iter::once(team).chain(loaded).map(|team| Question {
            team,
            gaps_m: stance::gaps_m(draft, at.gap_given).collect(),
            down_deg: at.down_deg,
            range_deg,
        }));
    }
    asked
}

impl OfTeam {
    /// What is known of the team afterwards, and the falls that were followed for it.
    fn answered(&self, assumed: &Assumed, mut followed: Followed) -> (HoldLimits, Followed) {
        let mut limits = self.limits.clone();
        for question in &self.questions {
            limits.expect(question.range_deg);
            let Question {
                team,
                gaps_m,
                down_deg,
                ..
            } = question;
            // A refusal is told where the leg is judged.
            if limits
                .over(team, gaps_m, *down_deg, assumed, &mut followed)
                .is_err()
            {
                break;
            }
        }
        (limits, followed)
    }
}
