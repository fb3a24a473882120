//! The fault of a route that meets no ice, with where the zones lie instead.

use crate::{
    fault::{
        Fault, Place,
        plan::{FarZone, InPlan},
    },
    ground::met::Met,
    meet::missed,
    trip::{job::Brief, zone::Zone},
};

/// A plan in which no ice is met would look like an all-clear.
pub(crate) fn met_by(case: &Brief<'_>, met: &Met) -> Result<(), Vec<Fault>> {
    if met.stages.iter().any(|s| !s.contacts.is_empty()) {
        return Ok(());
    }
    let why = InPlan::NoZoneMet {
        zones: case.zones.len(),
        far: far(case),
    };
    Err(vec![unplanned(why)])
}

/// The zones that are told where none is met. Our judgement.
const FAR_TOLD: usize = 5;
/// Points of the line from which all zones are looked at. Our judgement.
const LOOKED_FROM: usize = 100;

/// Where the zones nearest to the line lie, the nearest first: found by a few points of the line, told by all.
fn far(case: &Brief<'_>) -> Vec<FarZone> {
    let stages = case.route.stages.iter();
    let points = stages
        .clone()
        .map(|stage| stage.points().len())
        .sum::<usize>();
    let step = points / LOOKED_FROM + 1;
    let line = || stages.clone().flat_map(|stage| stage.points().iter());
    let seen = |zone: &Zone, step: usize| {
        let (from, at) = missed::nearest(|| line().step_by(step), &zone.outline)?;
        Some(FarZone {
            zone: zone.number,
            name: zone.name.clone(),
            away_m: from.distance_m(at),
            bearing_deg: from.bearing_deg(at),
            at: [at.lon_deg, at.lat_deg],
        })
    };
    let by_distance = |far: &mut Vec<FarZone>| far.sort_by(|a, b| a.away_m.total_cmp(&b.away_m));
    let mut found: Vec<FarZone> = case.zones.iter().filter_map(|z| seen(z, step)).collect();
    by_distance(&mut found);
    let near = found.iter().take(FAR_TOLD);
    let zone = |far: &FarZone| case.zones.iter().find(|zone| zone.number == far.zone);
    let mut told: Vec<FarZone> = near.filter_map(|far| seen(zone(far)?, 1)).collect();
    by_distance(&mut told);
    told
}

/// Why there is no plan of sound inputs.
pub(crate) fn unplanned(why: InPlan) -> Fault {
    let at = Place::item(why.item());
    Fault::new(why, at)
}
