//! Which ropes the teams of a split carry: for each verdict within reach, the lightest that give it.

use crate::{
    options::lines::WayDraft,
    plan::{leg::Verdict, options::Way},
    rope::{
        carried::RopeLoad,
        share::{self, Fit, Shared, Supply},
    },
    trip::job::Brief,
};

/// The ways to give the ropes out that can be worth it: the lightest that hold, that have enough to spare, and that leave
/// nobody beyond every loop.
pub(super) fn given(job: &Brief<'_>, draft: &WayDraft) -> Vec<Way> {
    let demands_m: Vec<f64> = draft.teams.iter().map(|t| t.team.needed_m).collect();
    let supply = share::supply(job.ropes, demands_m.len(), job.rules);
    let near_m = share::near_m(job.ropes, job.rules);
    let mut shared = share::ways(&demands_m, &supply, near_m);
    let reaching_m = draft
        .teams
        .iter()
        .map(|t| t.reaching_m(near_m, &draft.rules));
    let reaching = share::ways(&reaching_m.collect::<Vec<f64>>(), &supply, 0.0);
    let reaching = reaching.into_iter().filter(|way| way.fit != Fit::Short);
    shared.extend(reaching.map(|way| Shared {
        fit: Fit::Ample,
        ..way
    }));
    shared.dedup_by(|a, b| a.given == b.given);
    let ways = shared.into_iter().map(|shared| {
        let verdict = match shared.fit {
            Fit::Ample => Verdict::Inside,
            Fit::Near => Verdict::Look,
            Fit::Short => Verdict::Outside,
        };
        let verdict = verdict.max(by_reach(job, draft, &shared.given));
        let pairs = demands_m.iter().zip(&shared.given);
        let short_m = pairs.map(|(d, s)| (d - s.length_m).max(0.0)).sum();
        way(draft, &shared.given, draft.verdict.max(verdict), short_m)
    });
    ways.collect()
}

/// How it stands with the ropes as carried.
fn by_reach(job: &Brief<'_>, draft: &WayDraft, given: &[Supply]) -> Verdict {
    let load = |supply: &Supply| RopeLoad {
        length_m: supply.length_m,
        diameter_mm: supply.index.and_then(|i| job.ropes.get(i)?.diameter_mm),
    };
    let pairs = draft.teams.iter().zip(given);
    let carried = pairs.filter(|(_, supply)| supply.length_m > 0.0);
    let verdicts = carried.flat_map(|(line, supply)| {
        let tied = line.tied.iter();
        tied.map(move |t| t.by_reach(load(supply), &draft.rules))
    });
    verdicts.max().unwrap_or(Verdict::Inside)
}

fn way(draft: &WayDraft, given: &[Supply], verdict: Verdict, short_m: f64) -> Way {
    let lines = &draft.teams;
    let mut teams: Vec<_> = lines.iter().map(|l| l.team.clone()).collect();
    for (team, supply) in teams.iter_mut().zip(given) {
        team.rope = supply.index.map(|i| i + 1);
        team.rope_m = supply.length_m;
    }
    Way {
        way: 0,
        another_team: teams.len() > 1,
        teams,
        changes: draft.changes.clone(),
        verdict,
        short_m: lines.iter().map(|l| l.short_m).fold(short_m, f64::max),
        left_to_hold: lines.iter().map(|l| l.left).min().unwrap_or(0),
        rope_mass_kg: given.iter().map(|s| s.mass_kg).sum(),
        coil_m: lines.iter().map(|l| l.coil_m).fold(0.0, f64::max),
        setup_changes: draft.setup_changes,
        best_in: Vec::new(),
    }
}
