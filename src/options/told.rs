//! What a trip file says to plan each way.

use std::collections::BTreeMap;

use crate::{
    plan::options::{Change, Way, WayTrip},
    practice::Origin,
    rope::otherwise,
    trip::job::Brief,
};

/// Gives each way what a trip file says to plan it.
pub(super) fn tell(ways: &mut [Way], job: &Brief<'_>) {
    for way in ways {
        way.trip = trip(way, job);
    }
}

/// `None` where two ropes are joined: a trip file names ropes as they are.
fn trip(way: &Way, job: &Brief<'_>) -> Option<WayTrip> {
    let mut rules = job.rules.clone();
    let (mut practice, mut assume) = (None, BTreeMap::new());
    for change in &way.changes {
        match change {
            Change::JoinedRopes { .. } => return None,
            Change::Practice { name } => {
                rules = rules.under_practice(name).ok()?;
                practice = Some(name.clone());
            }
            _ => {}
        }
        for (rule, value) in otherwise::figures(change, &rules) {
            rules.set(rule, value, Origin::Flag).ok()?;
            assume.insert(rule.name().to_owned(), value);
        }
    }
    Some(WayTrip {
        teams: unless(&sizes_now(job), way.teams.iter().map(|team| team.people)),
        practice,
        assume,
        ropes: unless(&numbers(job), carried(way)),
    })
}

/// How many go on each rope as the trip is.
fn sizes_now(job: &Brief<'_>) -> Vec<usize> {
    let teams = job.party.rope_teams();
    teams.iter().map(|team| team.size()).collect()
}

/// The numbers of all ropes at hand.
fn numbers(job: &Brief<'_>) -> Vec<usize> {
    (1..=job.ropes.len()).collect()
}

/// The numbers of the ropes of a way, in order.
fn carried(way: &Way) -> impl Iterator<Item = usize> {
    let mut numbers: Vec<usize> = way.teams.iter().filter_map(|team| team.rope).collect();
    numbers.sort_unstable();
    numbers.into_iter()
}

/// Some numbers; none where they are those already.
fn unless(now: &[usize], wanted: impl Iterator<Item = usize>) -> Vec<usize> {
    let wanted: Vec<usize> = wanted.collect();
    if wanted == now { Vec::new() } else { wanted }
}
