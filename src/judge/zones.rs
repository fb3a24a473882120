//! What is found of the zones met on a leg.

use crate::{
    judge::place::{height_m, place_at},
    legs::sketch::asks_for_rope,
    plan::{
        fact::Fact,
        finding::{At, Finding},
        name::ZoneName,
    },
    practice::{Rule, Rules, Travel},
    rope::legs::RopedLeg,
    times::hours::Hours,
    trip::{
        job::Brief,
        route::Stretch,
        zone::{RopeWord, Surface, Zone},
    },
};

/// Zone by zone, in file order.
pub(super) fn facts(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Fact> {
    let of_zone = |zone: &&Zone| of_zone(zone, leg.sketch.roped, job.rules);
    leg.zones.iter().flat_map(of_zone).collect()
}

/// Ice that the leader's word keeps off the rope, told where it is and not of the whole leg; when, where the hours are known.
pub(super) fn unroped(job: &Brief<'_>, leg: &RopedLeg<'_>, hours: Option<&Hours>) -> Vec<Finding> {
    // Between roped zones a team stays on the rope, whatever is said of the ice there.
    if leg.sketch.roped {
        return Vec::new();
    }
    let found =
        |fact: Fact, on: Stretch| Finding::new(At::Leg(place_at(leg, on.from_m, on.to_m)), fact);
    let mut all = Vec::new();
    let mut by_word: Vec<Stretch> = Vec::new();
    let never = |zone: &Zone| zone.rope == RopeWord::Never;
    for (zone, crossings, touches) in zones_met(job, leg).filter(|met| never(met.0)) {
        let crossed = on_leg(job, leg, crossings.to_vec());
        let told = match crossed.is_empty() {
            true => on_leg(job, leg, touches.to_vec()),
            false => crossed.clone(),
        };
        by_word.extend(crossed);
        if zone.hides_gaps() {
            all.extend(
                told.into_iter()
                    .map(|on| found(unroped_on_hidden(zone, job.rules), on)),
            );
        }
    }
    let undrawn = leg.footing.ice_without_zone.iter();
    by_word.extend(undrawn.copied().map(Stretch::from));
    let pieces = on_leg(job, leg, by_word);
    all.extend(
        pieces
            .into_iter()
            .map(|on| found(unroped_by_word(job, leg, on, hours), on)),
    );
    all
}

/// The zones of a leg, where they are crossed, and the same with the margin.
fn zones_met<'z>(
    job: &Brief<'z>,
    leg: &RopedLeg<'z>,
) -> impl Iterator<Item = (&'z Zone, &'z [Stretch], &'z [Stretch])> {
    let (met, zones) = (leg.stage.met, job.zones);
    let contacts = leg.sketch.contacts.iter();
    contacts.filter_map(move |&i| {
        let contact = met.contacts.get(i)?;
        let zone = zones.get(contact.of.zone()?)?;
        Some((zone, &contact.crossings[..], &contact.touches[..]))
    })
}

/// What of these lies on the leg; pieces with too little between them to count as apart are one.
fn on_leg(job: &Brief<'_>, leg: &RopedLeg<'_>, stretches: Vec<Stretch>) -> Vec<Stretch> {
    let merged = Stretch::merged(
        leg.sketch.stretch.clip(&stretches),
        job.rules[Rule::MarginM],
    );
    merged.into_iter().filter(|s| s.length_m() > 1e-6).collect()
}

/// Ice that is walked without a rope because the leader says so.
fn unroped_by_word(
    job: &Brief<'_>,
    leg: &RopedLeg<'_>,
    on: Stretch,
    hours: Option<&Hours>,
) -> Fact {
    let never = zones_met(job, leg).filter(|(zone, ..)| zone.rope == RopeWord::Never);
    let zones = never.filter(|(_, crossings, _)| crossings.iter().any(|s| s.overlaps(&on)));
    let mut undrawn = leg.footing.ice_without_zone.iter();
    Fact::UnropedByWord {
        zones: zones.map(|(zone, ..)| ZoneName::from(zone)).collect(),
        undrawn: undrawn.any(|piece| Stretch::from(*piece).overlaps(&on)),
        onto_clock: hours.and_then(|hours| hours.left_at(on.from_m)),
        onto_height_m: height_m(leg, on.from_m),
    }
}

fn of_zone(zone: &Zone, roped: bool, rules: &Rules) -> Vec<Fact> {
    let mut found = Vec::new();
    let name = || zone.into();
    if let Some(snow_depth_m) = zone.snow_on_bare_m() {
        found.push(Fact::SnowOnBare {
            zone: name(),
            snow_depth_m,
        });
    }
    let thin =
        |snow_m: &f64| roped && zone.surface == Surface::Snow && *snow_m <= rules[Rule::ThinSnowM];
    if let Some(snow_depth_m) = zone.snow_depth_m.filter(thin) {
        found.push(Fact::ThinSnow {
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
