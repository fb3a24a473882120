//! What goes into the packs.

use crate::{
    plan::{Carry, name::RopeName, why::CarryWhy},
    rope::{
        legs::RopedLeg,
        share::{self, Shared},
    },
    trip::{job::Brief, party::RopeTeam},
};

/// For each team the rope at hand, or the length to take; nothing where no leg is roped.
pub(crate) fn carry(
    job: &Brief<'_>,
    teams: &[RopeTeam],
    legs: &[RopedLeg<'_>],
    demands_m: &[f64],
    ropes: &Shared,
) -> Vec<Carry> {
    if legs.iter().all(|leg| !leg.sketch.roped) {
        return Vec::new();
    }
    let carry = |(team, &needed_m): (&RopeTeam, &f64)| {
        let rope = ropes.of_team(team.number, job.ropes);
        let length_m = rope.map_or_else(|| share::to_buy_m(needed_m), |(_, r)| r.length_m);
        Carry {
            length_m,
            team: team.number,
            people: team.size(),
            needed_m,
            leg: deciding(team, legs, needed_m),
            rope: rope.map(|(number, r)| RopeName {
                rope: number,
                name: r.name.clone(),
                length_m: r.length_m,
            }),
            why: if share::holds(length_m, needed_m) {
                CarryWhy::LongestSetUp
            } else {
                CarryWhy::TooShort
            },
        }
    };
    teams.iter().zip(demands_m).map(carry).collect()
}

/// The first leg that asks a team for the most rope.
fn deciding(team: &RopeTeam, legs: &[RopedLeg<'_>], needed_m: f64) -> Option<usize> {
    let asks = |leg: &&RopedLeg<'_>| {
        let mut drafts = leg.teams.iter();
        drafts.any(|d| d.team == team.number && share::holds(d.ledger.total_m, needed_m))
    };
    legs.iter().find(asks).map(|leg| leg.number)
}
