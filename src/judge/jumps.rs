//! What is found where the line jumps over ice.

use std::collections::BTreeSet;

use crate::{
    ground::met::JumpOverIce,
    judge::place::place_at,
    plan::{
        fact::Fact,
        finding::{At, Finding},
        name::{IceNames, ZoneName},
        place::JumpSummary,
    },
    rope::legs::RopedLeg,
    trip::{job::Brief, zone::Zone},
};

/// The jumps of a leg over ice, as one finding.
pub(super) fn findings(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Option<Finding> {
    let stretch = leg.sketch.stretch;
    let on_leg = |over: &&JumpOverIce| (stretch.from_m..stretch.to_m).contains(&over.jump.at_m);
    let over: Vec<&JumpOverIce> = leg.stage.met.jumps.iter().filter(on_leg).collect();
    let (first_m, last_m) = (over.first()?.jump.at_m, over.last()?.jump.at_m);
    let fact = Fact::JumpOverIce {
        jumps: over.iter().map(|o| JumpSummary::from(o.jump)).collect(),
        ice: ice_under(job, over.iter().copied()),
    };
    Some(Finding::new(At::Leg(place_at(leg, first_m, last_m)), fact))
}

/// The ice under jumps, each once.
pub(crate) fn ice_under<'o>(
    job: &Brief<'_>,
    over: impl Iterator<Item = &'o JumpOverIce> + Clone,
) -> IceNames {
    IceNames {
        zones: named(job.zones, over.clone().flat_map(|o| &o.zones)),
        glaciers: named(job.glaciers, over.flat_map(|o| &o.glaciers)),
    }
}

fn named<'i>(zones: &[Zone], indices: impl Iterator<Item = &'i usize>) -> Vec<ZoneName> {
    let indices: BTreeSet<usize> = indices.copied().collect();
    let zones = indices.into_iter().filter_map(|i| zones.get(i));
    zones.map(ZoneName::from).collect()
}
