//! Which ropes the teams of a split carry: for each verdict within reach, the lightest that give it.

use crate::options::lines::WayDraft;
use crate::{
    plan::{leg::Verdict, options::Way},
    practice::{Rule, Rules, SOLD_LENGTHS_M},
    rope::share,
    trip::job::Case,
    trip::rope::Rope,
};

/// A rope that can be given out.
#[derive(Clone, Copy, Debug)]
struct Supply {
    /// Index among the ropes at hand; `None` for a length sold, or where no rope is left.
    index: Option<usize>,
    length_m: f64,
    mass_kg: f64,
}

/// One team's rope, by index of the team.
type Given = Vec<Supply>;

/// The ways to give the ropes out that can be worth it.
pub(super) fn given(job: &Case<'_>, draft: WayDraft) -> Vec<Way> {
    let demands_m: Vec<f64> = draft.teams.iter().map(|t| t.team.needed_m).collect();
    let near_m = if job.ropes.is_empty() {
        0.0
    } else {
        job.rules[Rule::NearRopeM]
    };
    let supply = supply(job, demands_m.len());
    let with_spare = |spare_m: f64| lightest(&demands_m, spare_m, &supply);
    let mut ways = Vec::new();
    if draft.verdict <= Verdict::Inside {
        ways.extend(with_spare(near_m).map(|g| way(&draft, &g, Verdict::Inside, 0.0)));
    }
    let fitting = with_spare(0.0);
    if ways.is_empty() || near_m > 0.0 {
        let near = if near_m > 0.0 {
            Verdict::Look
        } else {
            Verdict::Inside
        };
        let verdict = draft.verdict.max(near);
        ways.extend(fitting.map(|g| way(&draft, &g, verdict, 0.0)));
    }
    if ways.is_empty() {
        let given = longest(&demands_m, &supply);
        let pairs = demands_m.iter().zip(&given);
        let short_m = pairs.map(|(d, s)| (d - s.length_m).max(0.0)).sum();
        ways.push(way(&draft, &given, Verdict::Outside, short_m));
    }
    ways
}

/// The ropes at hand, and nothing for as many teams; or every length sold for each.
fn supply(job: &Case<'_>, teams: usize) -> Vec<Supply> {
    if job.ropes.is_empty() {
        let sold = SOLD_LENGTHS_M.iter().map(|&m| Supply {
            index: None,
            length_m: m,
            mass_kg: share::mass_kg(m, None, job.rules),
        });
        return sold.flat_map(|s| std::iter::repeat_n(s, teams)).collect();
    }
    let at_hand = job
        .ropes
        .iter()
        .enumerate()
        .map(|(i, rope)| of_rope(i, rope, job.rules));
    let nothing = Supply {
        index: None,
        length_m: 0.0,
        mass_kg: 0.0,
    };
    at_hand.chain(std::iter::repeat_n(nothing, teams)).collect()
}

fn of_rope(index: usize, rope: &Rope, rules: &Rules) -> Supply {
    Supply {
        index: Some(index),
        length_m: rope.length_m,
        mass_kg: share::mass_kg(rope.length_m, rope.diameter_mm, rules),
    }
}

/// The lightest ropes that leave every team so much to spare; `None` where there are none such. A demanding team
/// can choose among fewer ropes, all of which suit the others too, so it chooses first: nothing is lost by that.
fn lightest(demands_m: &[f64], spare_m: f64, supply: &[Supply]) -> Option<Given> {
    let mut order: Vec<usize> = (0..demands_m.len()).collect();
    order.sort_by(|&a, &b| demands_m[b].total_cmp(&demands_m[a]));
    let mut left: Vec<Supply> = supply.to_vec();
    left.sort_by(|a, b| a.mass_kg.total_cmp(&b.mass_kg));
    let mut given: Vec<Option<Supply>> = vec![None; demands_m.len()];
    for team in order {
        let fits = |s: &Supply| s.length_m + 1e-9 >= demands_m[team] + spare_m;
        let chosen = left.iter().position(fits)?;
        given[team] = Some(left.remove(chosen));
    }
    given.into_iter().collect()
}

/// The longest ropes, the longest to the team that needs most: no other way leaves fewer metres missing in all.
fn longest(demands_m: &[f64], supply: &[Supply]) -> Given {
    let mut order: Vec<usize> = (0..demands_m.len()).collect();
    order.sort_by(|&a, &b| demands_m[b].total_cmp(&demands_m[a]));
    let mut longest: Vec<Supply> = supply.to_vec();
    longest.sort_by(|a, b| b.length_m.total_cmp(&a.length_m));
    let mut given: Vec<(usize, Supply)> = order.into_iter().zip(longest).collect();
    given.sort_by_key(|(team, _)| *team);
    given.into_iter().map(|(_, supply)| supply).collect()
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
        why: String::new(),
    }
}
