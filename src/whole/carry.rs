//! What goes into the packs.

use crate::{
    plan::{Carry, name::RopeName, why::CarryWhy},
    rope::{
        legs::RopedLeg,
        share::{self, Shared, Supply},
        trade::Trade,
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
    trade: &Trade,
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
            legs: deciding(team, legs, needed_m),
            rope: rope.map(|(number, r)| RopeName::of(number, r)),
            why: if share::holds(length_m, needed_m) {
                CarryWhy::LongestSetUp
            } else {
                left_to_another(team, ropes, trade).unwrap_or(CarryWhy::TooShort)
            },
        }
    };
    teams.iter().zip(demands_m).map(carry).collect()
}

/// The team that carries a longer rope, and what would become of the legs were the two exchanged.
fn left_to_another(team: &RopeTeam, ropes: &Shared, trade: &Trade) -> Option<CarryWhy> {
    let place = team.number.checked_sub(1)?;
    let own_m = ropes.given.get(place)?.length_m;
    let longer = |(i, supply): (usize, &Supply)| (supply.length_m > own_m + 1e-9).then_some(i);
    let other = ropes.given.iter().enumerate().find_map(longer)?;
    let mut exchanged = ropes.given.clone();
    exchanged.swap(place, other);
    let [as_given, exchanged] = [&ropes.given, &exchanged].map(|given| trade.undone(given));
    Some(CarryWhy::LeftToAnother {
        other_team: other + 1,
        graver_falls: exchanged.grave > as_given.grave,
        legs_outside: as_given.legs,
        legs_exchanged: exchanged.legs,
    })
}

/// The legs that ask a team for the most rope.
fn deciding(team: &RopeTeam, legs: &[RopedLeg<'_>], needed_m: f64) -> Vec<usize> {
    let asks = |leg: &&RopedLeg<'_>| {
        let mut drafts = leg.teams.iter();
        drafts.any(|d| d.team == team.number && share::holds(d.ledger.total_m, needed_m))
    };
    legs.iter().filter(asks).map(|leg| leg.number).collect()
}
