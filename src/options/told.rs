//! What a trip file says to plan each way.

use std::collections::BTreeMap;

use crate::{
    plan::options::{Change, Way, WayRope, WayTrip},
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

/// `None` where a practice set has no name that the rules know.
fn trip(way: &Way, job: &Brief<'_>) -> Option<WayTrip> {
    let mut rules = job.rules.clone();
    let (mut practice, mut assume) = (None, BTreeMap::new());
    for change in &way.changes {
        if let Change::Practice { name } = change {
            rules = rules.under_practice(name).ok()?;
            practice = Some(name.clone());
        }
        for (rule, value) in otherwise::figures(change, &rules) {
            rules.set(rule, value, Origin::Flag).ok()?;
            assume.insert(rule.name().to_owned(), value);
        }
    }
    Some(WayTrip {
        teams: teams(way, job),
        practice,
        assume,
        ropes: ropes(way, job),
    })
}

/// How many go on each rope; none where that is so already.
fn teams(way: &Way, job: &Brief<'_>) -> Vec<usize> {
    let now = job.party.rope_teams();
    let now = now.iter().map(|team| team.size());
    let wanted = way.teams.iter().map(|team| team.people);
    if wanted.clone().eq(now) {
        Vec::new()
    } else {
        wanted.collect()
    }
}

/// The ropes that are carried, in order; none where those are all at hand, as they are.
fn ropes(way: &Way, job: &Brief<'_>) -> Vec<WayRope> {
    let mut numbers: Vec<usize> = way.teams.iter().filter_map(|team| team.rope).collect();
    numbers.sort_unstable();
    let carried = numbers.iter().filter_map(|&number| rope(number, way, job));
    let carried: Vec<WayRope> = carried.collect();
    let as_they_are = carried.iter().all(|rope| rope.joined_to.is_none());
    if as_they_are && numbers.into_iter().eq(1..=job.ropes.len()) {
        Vec::new()
    } else {
        carried
    }
}

/// A rope at hand by its number, and what a way joins to it.
fn rope(number: usize, way: &Way, job: &Brief<'_>) -> Option<WayRope> {
    let own = job.rope(number)?;
    let other = way.changes.iter().find_map(|change| match change {
        Change::JoinedRopes { ropes: [a, b], .. } if a.rope == number => Some(b.rope),
        _ => None,
    });
    let both = other.and_then(|other| otherwise::joined(own, job.rope(other)?, job.rules));
    let carried = both.as_ref().unwrap_or(own);
    Some(WayRope {
        rope: number,
        joined_to: other,
        length_m: carried.length_m,
        diameter_mm: carried.diameter_mm,
    })
}
