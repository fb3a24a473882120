//! Steep bare ice that is walked without a rope.

use crate::{
    ground::{
        incline::{Incline, inclines},
        underway::Underway,
    },
    judge::place::place_at,
    plan::{
        fact::Fact,
        finding::{At, Finding},
    },
    practice::Rule,
    rope::legs::RopedLeg,
    trip::{job::Brief, route::Stretch, zone::Surface},
};

/// Where an unroped leg crosses drawn bare ice so steep that a slip does not end by itself: said once, at its steepest.
pub(super) fn steep_unroped(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Option<Finding> {
    if leg.sketch.roped || !leg.sketch.contacts.iter().any(|&i| bare(job, leg, i)) {
        return None;
    }
    let underway = Underway {
        stage: leg.stage.stage,
        met: leg.stage.met,
        stretch: leg.sketch.stretch,
        contacts: &leg.sketch.contacts,
        rope_m: None,
    };
    let pieces = inclines(&underway, job.rules[Rule::SteepOverM] / 2.0, job.rules);
    let steep = pieces.iter().filter_map(|i| {
        let on_bare = i.contacts.iter().any(|&i| bare(job, leg, i));
        let deg = steepness_deg(i).filter(|deg| on_bare && *deg > job.rules[Rule::BareSlipDeg])?;
        Some((i.piece, deg))
    });
    let steep: Vec<(Stretch, f64)> = steep.collect();
    let &(worst, slope_deg) = steep.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
    let runs = Stretch::merged(steep.iter().map(|(piece, _)| *piece).collect(), 1e-6);
    let run = runs.iter().find(|run| run.meets(&worst)).unwrap_or(&worst);
    let fact = Fact::SteepBareUnroped {
        slope_deg,
        length_m: runs.iter().map(Stretch::length_m).sum(),
    };
    Some(Finding::new(
        At::Leg(place_at(leg, run.from_m, run.to_m)),
        fact,
    ))
}

/// Who slips without a rope goes down the ground, whichever way the line leads over it.
fn steepness_deg(incline: &Incline) -> Option<f64> {
    let both = [incline.steepest_deg(), incline.ground_deg];
    both.into_iter().flatten().reduce(f64::max)
}

fn bare(job: &Brief<'_>, leg: &RopedLeg<'_>, contact: usize) -> bool {
    let contact = leg.stage.met.contacts.get(contact);
    let zone = contact.and_then(|c| job.zones.get(c.of.zone()?));
    zone.is_some_and(|z| z.surface_counted() == Surface::Bare)
}
