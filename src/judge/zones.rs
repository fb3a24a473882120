//! What is found of the zones met on a leg.

use crate::{
    legs::sketch::asks_for_rope,
    plan::{fact::Fact, name::ZoneName},
    practice::{Rule, Rules, Travel},
    rope::legs::RopedLeg,
    trip::{
        job::Brief,
        route::Stretch,
        zone::{RopeWord, Surface, Zone},
    },
};

/// Zone by zone, in file order.
pub(super) fn facts(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Fact> {
    let of_zone = |zone: &&Zone| of_zone(zone, leg.sketch.roped, job.rules);
    let mut found: Vec<Fact> = leg.zones.iter().flat_map(of_zone).collect();
    found.extend(unroped_by_word(job, leg));
    found
}

/// Ice that is walked without a rope because the leader says so.
fn unroped_by_word(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Option<Fact> {
    let undrawn = !leg.footing.ice_without_zone.is_empty();
    let contacts = leg.sketch.contacts.iter();
    let contacts = contacts.filter_map(|&i| leg.stage.met.contacts.get(i));
    let stretch = leg.sketch.stretch;
    let crossed = |s: &Stretch| s.overlaps(&stretch);
    let on_leg = contacts.filter(|c| c.crossings.iter().any(crossed));
    let zones = on_leg.filter_map(|c| job.zones.get(c.of.zone()?));
    let never = zones.filter(|z| z.rope == RopeWord::Never);
    let zones: Vec<ZoneName> = never.map(ZoneName::from).collect();
    let by_word = !leg.sketch.roped && (undrawn || !zones.is_empty());
    by_word.then_some(Fact::UnropedByWord { zones, undrawn })
}

fn of_zone(zone: &Zone, roped: bool, rules: &Rules) -> Vec<Fact> {
    let mut found = Vec::new();
    let name = || zone.into();
    if zone.rope == RopeWord::Never && zone.hides_gaps() {
        found.push(unroped_on_hidden(zone, rules));
    }
    if let Some(snow_depth_m) = zone.snow_on_bare_m() {
        found.push(Fact::SnowOnBare {
            zone: name(),
            snow_depth_m,
        });
    }
    if roped && zone.gap.assumed {
        found.push(Fact::GapAssumed {
            zone: name(),
            gap_m: zone.gap.max_m,
        });
    }
    match zone.strike {
        Some(strike) if roped && strike.uncertainty_deg.is_none() => {
            found.push(Fact::StrikeExact { zone: name() });
        }
        None if roped => found.push(Fact::StrikeUnknown { zone: name() }),
        _ => {}
    }
    // Both views on bare ice, whichever the plan takes.
    if zone.surface_counted() == Surface::Bare && zone.rope == RopeWord::Auto {
        let roped = asks_for_rope(zone, rules);
        found.push(Fact::BareIce {
            zone: name(),
            roped,
        });
    }
    found
}

/// Hidden gaps unroped by the leader's word: on skis in deep snow over narrow gaps many do it.
fn unroped_on_hidden(zone: &Zone, rules: &Rules) -> Fact {
    let on_skis = rules.choices.travel.value == Travel::Ski;
    let narrow = zone.gap.max_m <= rules[Rule::SkiedGapM];
    let deep = |snow_m: &f64| *snow_m > rules[Rule::SkiedSnowM];
    match zone.snow_depth_m.filter(deep) {
        Some(snow_depth_m) if on_skis && narrow => Fact::SkiedUnroped {
            zone: zone.into(),
            snow_depth_m,
            gap_m: zone.gap.max_m,
        },
        _ => Fact::NeverOnHidden { zone: zone.into() },
    }
}
