//! What is found of the ground under a leg.

use crate::{
    ground::{incline::Incline, proposal::mean_strike_deg},
    judge::{
        place::{place, place_at},
        steepest::{JudgedPlace, SteepRuns},
    },
    legs::over::ropes_undrawn,
    plan::{
        fact::{Fact, Slope},
        finding::{At, Finding, LegPlace},
        place::Piece,
    },
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
    trip::job::Brief,
};

/// Ice without a zone, roll-overs and avalanche ground on any leg; what is too steep for a rope, proposed strikes and
/// contouring on roped ones.
pub(super) fn findings(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Finding> {
    let footing = &leg.footing;
    let mut all: Vec<Finding> = without_gap(job, leg).into_iter().collect();
    if !footing.look_here.is_empty() {
        let places = footing.look_here.clone();
        all.push(found(place(leg), Fact::ConvexGround { places }));
    }
    all.extend(avalanche_terrain(leg, job.rules));
    if !leg.sketch.roped {
        return all;
    }
    all.extend(
        too_steep(leg, job.rules)
            .into_iter()
            .map(|(runs, fact)| runs.finding(leg, fact)),
    );
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

/// Every leg with such ice tells all of the stage, so that readers are told once.
fn without_gap(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Option<Finding> {
    let own = &leg.footing.ice_without_zone;
    let at = place_at(leg, own.first()?.from_m, own.last()?.to_m);
    let undrawn = leg.stage.met.undrawn().iter().copied();
    let pieces = undrawn.map(Piece::from).collect();
    let roped = ropes_undrawn(job.rules);
    Some(found(at, Fact::IceWithoutGap { pieces, roped }))
}

fn found(at: LegPlace, fact: Fact) -> Finding {
    Finding::new(At::Leg(at), fact)
}

/// Every place of a roped leg that is too steep to be roped together without anchors.
pub(super) fn too_steep_places(leg: &RopedLeg<'_>, rules: &Rules) -> Vec<JudgedPlace> {
    let all = too_steep(leg, rules).into_iter();
    let all = all.filter(|_| leg.sketch.roped);
    all.flat_map(|(runs, fact)| runs.judged(&fact)).collect()
}

/// Where a leg is steeper than roping together without anchors can answer for, said once of all of it: the line, and the
/// ground where the line itself is not as steep.
fn too_steep(leg: &RopedLeg<'_>, rules: &Rules) -> Vec<(SteepRuns, Fact)> {
    let anchors_deg = rules[Rule::AnchorsDeg];
    let line = |i: &Incline| i.steepest_deg();
    let ground = |i: &Incline| {
        i.ground_deg
            .filter(|_| line(i).is_none_or(|deg| deg <= anchors_deg))
    };
    let runs = |deg: &dyn Fn(&Incline) -> Option<f64>| {
        let steep = leg.footing.inclines.iter();
        let steep =
            steep.filter_map(|i| Some((i.piece, deg(&i).filter(|deg| *deg > anchors_deg)?)));
        SteepRuns::of(steep)
    };
    let told = |runs: SteepRuns, of: Slope| {
        let fact = Fact::TooSteep {
            slope_deg: runs.slope_deg,
            of,
            length_m: runs.length_m(),
        };
        (runs, fact)
    };
    let line = runs(&line).map(|runs| told(runs, Slope::Line));
    let ground = runs(&ground).map(|runs| told(runs, Slope::Ground));
    line.into_iter().chain(ground).collect()
}

/// Where it is steep enough for the bulletin to decide: the line, and the ground under it where the line itself is not.
fn avalanche_terrain(leg: &RopedLeg<'_>, rules: &Rules) -> Vec<Finding> {
    let line = leg
        .footing
        .steepness
        .steepest
        .map(|s| (s.deg.abs(), s.at_m));
    let ground = leg.footing.ground_steepest.map(|s| (s.slope_deg, s.at_m));
    let line_deg = line.map_or(0.0, |(deg, _)| deg);
    let least_deg = rules[Rule::AvalancheDeg];
    let both = [(line, 0.0, Slope::Line), (ground, line_deg, Slope::Ground)];
    let told = both.into_iter().filter_map(|(steepest, known_deg, of)| {
        let (slope_deg, at_m) = steepest?;
        let news = slope_deg >= least_deg && known_deg < least_deg;
        news.then(|| {
            found(
                place_at(leg, at_m, at_m),
                Fact::AvalancheTerrain { slope_deg, of },
            )
        })
    });
    told.collect()
}

/// Where no heights are known, if they are known elsewhere on the leg; without any the plan says so once.
fn partly_unknown(leg: &RopedLeg<'_>) -> Option<Finding> {
    let known = leg.footing.inclines.iter().any(|i| i.down_deg.is_some());
    if !known || leg.footing.slope_unknown() {
        return None;
    }
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
