//! Everything found on a leg, and the verdict that it comes to.

use crate::{
    fault::{Level, refusal::Refusal},
    judge::{
        falls, ground, jumps,
        place::place,
        team::{self, OfTeam},
        travel, zones,
    },
    plan::{
        fact::Fact,
        fall::HeldRun,
        finding::{At, Finding, LegPlace},
        leg::{JudgedStretch, TeamSetup, Verdict},
    },
    practice::Rules,
    rope::{draft::Draft, legs::RopedLeg},
    times::hours::Hours,
    trip::job::Brief,
};

/// A leg with everything that is known of it.
#[derive(Clone, Copy)]
pub(crate) struct Known<'a> {
    pub(crate) job: &'a Brief<'a>,
    pub(crate) leg: &'a RopedLeg<'a>,
    pub(crate) hours: &'a Hours,
    /// One set-up for each team; empty where it is unroped.
    pub(crate) setups: &'a [TeamSetup],
    /// Why a model has no answer, in its own words.
    pub(crate) unanswered: &'a [Refusal],
}

impl Known<'_> {
    /// All findings, the gravest first.
    pub(crate) fn findings(&self) -> Vec<Finding> {
        let mut found = ground_findings(self.job, self.leg);
        for (draft, setup) in self.leg.teams.iter().zip(self.setups) {
            let at = team_place(self.leg, draft);
            found.extend(falls::findings(self.leg, setup, self.job.rules, &at));
            let of_team = OfTeam {
                job: self.job,
                leg: self.leg,
                draft,
            };
            found.extend(of_team.findings(&at));
            found.extend(all_at(&at, team::rope_findings(self.job, setup)));
        }
        let at = place(self.leg);
        let reasons = self.unanswered.iter().cloned();
        let no_answer = reasons.map(|reason| Fact::NoAnswer { reason });
        found.extend(all_at(&at, no_answer));
        found.extend(travel::bridges(self.job, self.leg, self.hours));
        found.sort_by_key(Finding::alarm);
        found
    }
}

/// What is found whoever walks the leg.
fn ground_findings(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Finding> {
    let at = place(leg);
    let mut found = all_at(&at, zones::facts(job, leg));
    if leg.sketch.roped {
        found.extend(all_at(&at, travel::ends(leg)));
        found.extend(all_at(&at, travel::travel(job.rules)));
    }
    found.extend(ground::findings(job, leg));
    found.extend(jumps::findings(job, leg));
    found.extend(travel::turns(leg));
    found
}

fn all_at(at: &LegPlace, facts: impl IntoIterator<Item = Fact>) -> Vec<Finding> {
    let finding = |fact| Finding::new(At::Leg(at.clone()), fact);
    facts.into_iter().map(finding).collect()
}

/// Names the team only where there are several.
fn team_place(leg: &RopedLeg<'_>, draft: &Draft) -> LegPlace {
    LegPlace {
        team: (leg.teams.len() > 1).then_some(draft.team),
        ..place(leg)
    }
}

/// The gravest level found; without any, inside, or not roped at all.
pub(crate) fn verdict(roped: bool, findings: &[Finding]) -> Verdict {
    match findings.iter().map(Finding::level).min() {
        Some(Level::Error | Level::Stop) => Verdict::Stop,
        Some(Level::Outside) => Verdict::Outside,
        Some(Level::Look) => Verdict::Look,
        Some(Level::Note) | None if roped => Verdict::Inside,
        Some(Level::Note) | None => Verdict::Unroped,
    }
}

/// Where each word graver than `inside` holds, in walking order.
pub(crate) fn stretches(findings: &[Finding]) -> Vec<JudgedStretch> {
    let judged = |finding: &Finding| {
        let At::Leg(place) = &finding.at else {
            return None;
        };
        let verdict = verdict(true, std::slice::from_ref(finding));
        (verdict > Verdict::Inside).then(|| JudgedStretch {
            from_m: place.from_m,
            to_m: place.to_m,
            verdict,
            code: finding.code(),
        })
    };
    let mut all: Vec<JudgedStretch> = findings.iter().filter_map(judged).collect();
    all.sort_by(|a, b| {
        a.from_m
            .total_cmp(&b.from_m)
            .then(b.verdict.cmp(&a.verdict))
    });
    all.dedup();
    all
}

/// How a team's draft stands, whichever rope it carries and falls not asked about.
pub(crate) fn draft_verdict(job: &Brief<'_>, leg: &RopedLeg<'_>, draft: &Draft) -> Verdict {
    let of_team = OfTeam { job, leg, draft };
    verdict(true, &of_team.findings(&place(leg)))
}

/// How the falls of a team stand on a leg.
pub(crate) fn falls_verdict(runs: &[HeldRun], spacing_m: f64, rules: &Rules) -> Verdict {
    match falls::level(runs, spacing_m, rules) {
        Some(Level::Error | Level::Stop) => Verdict::Stop,
        Some(Level::Outside) => Verdict::Outside,
        Some(Level::Look) => Verdict::Look,
        Some(Level::Note) | None => Verdict::Inside,
    }
}

/// The worst that is found on any leg, whoever walks it.
pub(crate) fn ground_verdict(job: &Brief<'_>, legs: &[RopedLeg<'_>]) -> Verdict {
    let of_leg = |leg: &RopedLeg<'_>| verdict(leg.sketch.roped, &ground_findings(job, leg));
    legs.iter().map(of_leg).max().unwrap_or(Verdict::Unroped)
}
