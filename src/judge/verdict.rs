//! What is found → verdict.

use crate::{
    fault::Level,
    judge::{falls, place::place, team::OfTeam},
    plan::{finding::Finding, leg::Verdict},
    rope::{draft::Draft, held::AskedSlopes, legs::RopedLeg},
    trip::job::Brief,
};

/// The gravest level found; without any, inside, or not roped at all.
pub(crate) fn of_findings(roped: bool, findings: &[Finding]) -> Verdict {
    let found = of_levels(findings.iter().map(Finding::level));
    if roped || found > Verdict::Inside {
        found
    } else {
        Verdict::Unroped
    }
}

/// What levels come to on roped ground.
pub(super) fn of_levels(levels: impl Iterator<Item = Level>) -> Verdict {
    match levels.min() {
        Some(Level::Error | Level::Stop) => Verdict::Stop,
        Some(Level::Outside) => Verdict::Outside,
        Some(Level::Look) => Verdict::Look,
        Some(Level::Note) | None => Verdict::Inside,
    }
}

/// How a team's draft stands, whichever rope it carries and falls not asked about.
pub(crate) fn of_draft(job: &Brief<'_>, leg: &RopedLeg<'_>, draft: &Draft) -> Verdict {
    let of_team = OfTeam { job, leg, draft };
    of_findings(true, &of_team.findings(&place(leg), || None))
}

/// How the falls of a team stand on a leg; where the model has no answer that is something to look at.
pub(crate) fn of_falls(
    job: &Brief<'_>,
    leg: &RopedLeg<'_>,
    draft: &Draft,
    asked: &mut AskedSlopes,
) -> Verdict {
    let Ok(along) = asked.along(leg, draft, job) else {
        return Verdict::Look;
    };
    let runs = along.map(|along| along.runs);
    let level = runs.and_then(|runs| falls::level(&runs, draft.spacing.spacing_m, job.rules));
    of_levels(level.into_iter())
}
