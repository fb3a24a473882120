//! What a trip file says to plan each way.

use std::collections::BTreeMap;

use crate::{
    plan::{
        change::Change,
        name::RopeName,
        options::{Way, WayRope, WayTrip},
    },
    practice::Origin,
    rope::{otherwise, share},
    trip::{job::Brief, rope::Rope},
};

/// Gives each way what a trip file says to plan it.
pub(super) fn tell(ways: &mut [Way], job: &Brief<'_>) {
    for way in ways {
        way.trip = trip(way, job);
        way.cords = cords(way, job);
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

/// The ropes that the trip lists, in order; none where those are all at hand, as they are.
///
/// One that no team ties on stays listed, to be taken as a spare, where it is too short to be planned with in place of another.
fn ropes(way: &Way, job: &Brief<'_>) -> Vec<WayRope> {
    let carries = |number: usize| way.teams.iter().any(|team| team.rope == Some(number));
    let joined = joined(way);
    let is_joined = |number: usize| joined.is_some_and(|[_, second]| second == number);
    let roped = way.teams.iter().filter(|team| team.leg.is_some());
    let needed_m = roped
        .map(|team| team.needed_m)
        .fold(f64::INFINITY, f64::min);
    let spare = |rope: &Rope| !share::holds(rope.length_m, needed_m);
    let at_hand = (1..).zip(job.ropes);
    let listed =
        at_hand.filter(|(number, own)| carries(*number) || (!is_joined(*number) && spare(own)));
    let listed: Vec<WayRope> = listed
        .map(|(number, own)| rope(number, own, joined, job))
        .collect();
    if joined.is_none() && listed.len() == job.ropes.len() {
        Vec::new()
    } else {
        listed
    }
}

/// The numbers of the ropes that a way joins.
fn joined(way: &Way) -> Option<[usize; 2]> {
    way.changes.iter().find_map(|change| match change {
        Change::JoinedRopes { ropes, .. } => Some(ropes.each_ref().map(|rope| rope.rope)),
        _ => None,
    })
}

/// What a rope is called, and with the other one that is joined to it; nothing where one has no name.
fn joined_name(own: &Rope, other: Option<&Rope>) -> Option<String> {
    let own = own.name.as_deref()?;
    match other {
        None => Some(own.to_owned()),
        Some(other) => Some(format!("{own} + {}", other.name.as_deref()?)),
    }
}

/// Ropes of a way that are as thin as cord.
fn cords(way: &Way, job: &Brief<'_>) -> Vec<RopeName> {
    let tied = way.teams.iter().filter_map(|team| team.rope);
    let mut numbers: Vec<usize> = tied.chain(joined(way).into_iter().flatten()).collect();
    numbers.sort_unstable();
    numbers.dedup();
    let cords = numbers.into_iter().filter_map(|number| {
        let rope = job.rope(number)?;
        share::is_cord(rope, job.rules).then(|| RopeName::of(number, rope))
    });
    cords.collect()
}

/// A rope at hand with its number, and what is joined to it.
fn rope(number: usize, own: &Rope, joined: Option<[usize; 2]>, job: &Brief<'_>) -> WayRope {
    let joined_to = joined.and_then(|[first, second]| (first == number).then_some(second));
    let both = joined_to.and_then(|other| otherwise::joined(own, job.rope(other)?, job.rules));
    let listed = both.as_ref().unwrap_or(own);
    WayRope {
        rope: number,
        joined_to,
        joined: listed.joined,
        name: joined_name(own, joined_to.and_then(|other| job.rope(other))),
        length_m: listed.length_m,
        diameter_mm: listed.diameter_mm,
    }
}
