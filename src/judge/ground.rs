//! What is found of the ground under a leg.

use crate::{
    ground::proposal::mean_strike_deg,
    judge::place::{place, place_at},
    plan::{
        fact::{Fact, Slope},
        finding::{At, Finding, LegPlace},
    },
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
    trip::job::Brief,
};

/// Ice without a zone and roll-overs on any leg; slopes, proposed strikes and contouring on roped ones.
pub(super) fn findings(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Finding> {
    let footing = &leg.footing;
    let ice = footing.ice_without_zone.iter().map(|piece| {
        let length_m = piece.to_m - piece.from_m;
        let at = place_at(leg, piece.from_m, piece.to_m);
        found(at, Fact::GlacierWithoutZone { length_m })
    });
    let mut all: Vec<Finding> = ice.collect();
    if !footing.look_here.is_empty() {
        let places = footing.look_here.clone();
        all.push(found(place(leg), Fact::ConvexGround { places }));
    }
    if !leg.sketch.roped {
        return all;
    }
    all.extend(steep(leg, job.rules));
    all.extend(partly_unknown(leg));
    all.extend(strikes(job, leg));
    if let (Some(first), Some(last)) = (footing.may_run_along.first(), footing.may_run_along.last())
    {
        let at = place_at(leg, first.from_m, last.to_m);
        let pieces = footing.may_run_along.clone();
        all.push(found(at, Fact::MayRunAlong { pieces }));
    }
    all
}

fn found(at: LegPlace, fact: Fact) -> Finding {
    Finding::new(At::Leg(at), fact)
}

/// How steep the line is, and the ground under it where the line itself is not as steep.
fn steep(leg: &RopedLeg<'_>, rules: &Rules) -> Vec<Finding> {
    let line = leg.footing.steepest.map(|s| (s.deg.abs(), s.at_m));
    let ground = leg.footing.ground_steepest.map(|s| (s.slope_deg, s.at_m));
    let line_deg = line.map_or(0.0, |(deg, _)| deg);
    let (anchors_deg, avalanche_deg) = (rules[Rule::AnchorsDeg], rules[Rule::AvalancheDeg]);
    let mut all = Vec::new();
    for (steepest, known_deg, of) in [(line, 0.0, Slope::Line), (ground, line_deg, Slope::Ground)] {
        let Some((slope_deg, at_m)) = steepest else {
            continue;
        };
        let at = || place_at(leg, at_m, at_m);
        if slope_deg > anchors_deg && known_deg <= anchors_deg {
            all.push(found(at(), Fact::TooSteep { slope_deg, of }));
        }
        if slope_deg >= avalanche_deg && known_deg < avalanche_deg {
            all.push(found(at(), Fact::AvalancheTerrain { slope_deg, of }));
        }
    }
    all
}

/// Where no heights are known, if they are known elsewhere on the leg; without any the plan says so once.
fn partly_unknown(leg: &RopedLeg<'_>) -> Option<Finding> {
    leg.footing.toward_lip_deg()?;
    let pieces = leg.footing.unknown.clone();
    let (first, last) = (pieces.first()?, pieces.last()?);
    let at = place_at(leg, first.from_m, last.to_m);
    let unknown_m = pieces.iter().map(|p| p.to_m - p.from_m).sum();
    Some(found(at, Fact::SlopePartlyUnknown { unknown_m, pieces }))
}

/// The strikes proposed for the zones that give none.
fn strikes(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Finding> {
    let proposed = leg.footing.proposed.iter().filter_map(|(zone, proposed)| {
        let fact = Fact::StrikeProposed {
            strike_deg: mean_strike_deg(proposed)?,
            zone: job.zones.get(*zone)?.into(),
            doubt_deg: job.rules[Rule::ProposedStrikeDeg],
            counts: job.rules.choices.use_proposed_strike.value,
        };
        Some(found(place(leg), fact))
    });
    proposed.collect()
}
