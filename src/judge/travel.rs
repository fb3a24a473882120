//! What is found of the way over a leg: its ends, how the party travels, and the hour at which bridges are crossed.

use crate::{
    judge::place::place_at,
    plan::{
        fact::{Fact, RouteEnd},
        finding::{At, Finding},
    },
    practice::{Rules, Travel},
    rope::legs::RopedLeg,
    times::hours::Hours,
    trip::{job::Brief, zone::Surface},
};

/// Where the route begins or ends on the ice.
pub(super) fn ends(leg: &RopedLeg<'_>) -> Vec<Fact> {
    let length_m = leg.stage.stage.length_m();
    let met = leg.stage.met;
    let (begins, ends) = (met.on_ice(0.0), met.on_ice(length_m));
    let stretch = leg.sketch.stretch;
    let (first, last) = (stretch.from_m <= 0.0, stretch.to_m >= length_m);
    let mut found = Vec::new();
    if first && begins {
        let at = RouteEnd::Begin;
        found.push(Fact::CutOff { at });
    }
    if last && ends {
        let at = RouteEnd::End;
        found.push(Fact::CutOff { at });
    } else if last {
        found.push(Fact::LastOnIce {});
    }
    found
}

/// What the way of travelling adds.
pub(super) fn travel(rules: &Rules) -> Option<Fact> {
    (rules.choices.travel.value == Travel::Ski).then_some(Fact::OnSkis {})
}

/// Ice with hidden gaps whose last crossing on the leg ends later than bridges are trusted; where nobody drew a zone
/// they are taken as hidden.
pub(super) fn bridges(job: &Brief<'_>, leg: &RopedLeg<'_>, hours: &Hours) -> Vec<Finding> {
    let Some(until) = job.timetable.bridges_until.value else {
        return Vec::new();
    };
    let stretch = leg.sketch.stretch;
    let late = leg.stage.met.contacts.iter().filter_map(|contact| {
        let zone = contact.of.zone().and_then(|zone| job.zones.get(zone));
        let on_leg = contact.crossings.iter();
        let ends_m = on_leg
            .filter(|c| c.from_m < stretch.to_m && c.to_m > stretch.from_m)
            .map(|c| c.to_m.min(stretch.to_m))
            .reduce(f64::max)?;
        let left_at = hours.at(leg, ends_m, job.rules)?;
        let hidden = zone.is_none_or(|z| z.surface_counted() == Surface::Snow);
        let late = hidden && left_at > until;
        late.then(|| {
            let fact = Fact::BridgesLate {
                zone: zone.map(Into::into),
                left_at,
                until,
            };
            Finding::new(At::Leg(place_at(leg, ends_m, ends_m)), fact)
        })
    });
    late.collect()
}
