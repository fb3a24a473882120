//! The zones as a plan lists them, with where the route crosses each.

use crate::{
    ground::proposal::mean_strike_deg,
    legs::sketch::Sketch,
    plan::{CrossingSummary, ZoneSummary},
    trip::{job::Brief, zone::Zone},
};

/// Every zone with its bare crossings over all stages.
pub(crate) fn zones(job: &Brief<'_>, stages: &[Sketch<'_>]) -> Vec<ZoneSummary> {
    let mut summaries: Vec<ZoneSummary> = job.zones.iter().map(zone).collect();
    for stage in stages {
        for (i, contact) in stage.met.contacts.iter().enumerate() {
            let crossings = contact.crossings.iter().map(|c| CrossingSummary {
                stage: stage.stage.number,
                enter_m: c.from_m,
                exit_m: c.to_m,
            });
            let zone = contact.of.zone();
            if let Some(summary) = zone.and_then(|zone| summaries.get_mut(zone)) {
                summary.crossings.extend(crossings);
                let proposed = stage
                    .met
                    .under
                    .proposed
                    .get(i)
                    .and_then(|p| mean_strike_deg(p));
                summary.strike_proposed_deg = summary.strike_proposed_deg.or(proposed);
            }
        }
    }
    summaries
}

fn zone(zone: &Zone) -> ZoneSummary {
    ZoneSummary {
        zone: zone.number,
        name: zone.name.clone(),
        gap_m: zone.gap.max_m,
        gap_assumed: zone.gap.assumed,
        snow_depth_m: zone.snow_depth_m,
        surface: zone.surface,
        strike_deg: zone.strike.map(|s| s.deg),
        strike_uncertainty_deg: zone.strike.and_then(|s| s.uncertainty_deg),
        strike_proposed_deg: None,
        rope: zone.rope,
        observed_on: zone.observed_on.clone(),
        source: zone.source.clone(),
        note: zone.note.clone(),
        other: zone.other.clone(),
        crossings: Vec::new(),
    }
}
