//! Steep bare ice that is walked without a rope.

use crate::{
    ground::{
        incline::{Incline, inclines},
        underway::Underway,
    },
    judge::steepest::{JudgedPlace, SteepRuns},
    plan::{fact::Fact, finding::Finding},
    practice::Rule,
    rope::legs::RopedLeg,
    trip::{job::Brief, zone::Surface},
};

/// Where an unroped leg crosses drawn bare ice so steep that a slip does not end by itself: said once, at its steepest.
pub(super) fn steep_unroped(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Option<Finding> {
    let (runs, fact) = steep(job, leg)?;
    Some(runs.finding(leg, fact))
}

/// Every such place.
pub(super) fn steep_places(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<JudgedPlace> {
    let all = steep(job, leg);
    all.map_or_else(Vec::new, |(runs, fact)| runs.judged(&fact))
}

fn steep(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Option<(SteepRuns, Fact)> {
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
        let deg = steepness_deg(&i).filter(|deg| on_bare && *deg > job.rules[Rule::BareSlipDeg])?;
        Some((i.piece, deg))
    });
    let runs = SteepRuns::of(steep)?;
    let fact = Fact::SteepBareUnroped {
        slope_deg: runs.slope_deg,
        length_m: runs.length_m(),
    };
    Some((runs, fact))
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
