//! What the plans come to with the ways that somebody compares.

use crate::{
    fault::Fault,
    plan::{
        Plan,
        leg::{Leg, Verdict},
        options::{Way, WayLeg, WayPlan, WayTrip},
    },
    practice::{Origin, Rule, Rules},
    trip::{job::Brief, party::Party, rope::Rope},
};

/// Plans the ways compared. Where no rope is at hand a plan takes what is sold by itself, perhaps another length.
///
/// # Errors
/// A terrain file is broken where it is read.
pub(super) fn plan(
    ways: &mut [Way],
    job: &Brief<'_>,
    plan: impl Fn(Brief<'_>) -> Result<Plan, Vec<Fault>>,
) -> Result<(), Vec<Fault>> {
    if job.ropes.is_empty() {
        return Ok(());
    }
    for way in ways.iter_mut().take(Way::COMPARED) {
        let Some((trip, rules)) = way.trip.as_ref().and_then(|t| Some((t, rules(t, job)?))) else {
            continue;
        };
        let (party, ropes) = (party(trip, job), ropes(trip, job));
        let planned = plan(Brief {
            party: &party,
            ropes: &ropes,
            rules: &rules,
            ..*job
        })?;
        way.plan = Some(comes_to(planned));
    }
    Ok(())
}

/// `None` where a figure or a set has no name that is known, which those of ways have.
fn rules(trip: &WayTrip, job: &Brief<'_>) -> Option<Rules> {
    let mut rules = match &trip.practice {
        Some(name) => job.rules.under_practice(name).ok()?,
        None => job.rules.clone(),
    };
    for (name, &value) in &trip.assume {
        rules.set(Rule::named(name)?, value, Origin::Trip).ok()?;
    }
    Some(rules)
}

fn party(trip: &WayTrip, job: &Brief<'_>) -> Party {
    let mut party = job.party.clone();
    if !trip.teams.is_empty() {
        party.teams.clone_from(&trip.teams);
    }
    party
}

fn ropes(trip: &WayTrip, job: &Brief<'_>) -> Vec<Rope> {
    if trip.ropes.is_empty() {
        return job.ropes.to_vec();
    }
    let carried = trip.ropes.iter().filter_map(|carried| {
        let own = job.rope(carried.rope)?.clone();
        Some(Rope {
            length_m: carried.length_m,
            diameter_mm: carried.diameter_mm,
            joined: carried.joined_to.is_some(),
            ..own
        })
    });
    carried.collect()
}

fn comes_to(plan: Plan) -> WayPlan {
    let belays = plan.legs.iter().flat_map(|leg| &leg.belays);
    WayPlan {
        belays: belays.map(|asked| asked.belays).sum(),
        belay_min: plan.route.time.belay_min,
        legs: plan.legs.into_iter().filter_map(asks).collect(),
        clock: plan.clock,
    }
}

/// A leg that asks for something; the gravest finding stands first.
fn asks(leg: Leg) -> Option<WayLeg> {
    let asked = leg.verdict >= Verdict::Look;
    let finding = leg.findings.into_iter().next().filter(|_| asked)?;
    Some(WayLeg {
        leg: leg.leg,
        verdict: leg.verdict,
        finding,
    })
}
