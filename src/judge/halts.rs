//! What is found of halts: people who stand or sit close together over hidden gaps load one bridge.

use crate::{
    judge::place::place_at,
    plan::{
        fact::Fact,
        finding::{At, Finding},
    },
    rope::legs::RopedLeg,
    times::hours::Hours,
    trip::{job::Brief, route::Stretch, zone::Zone},
};

/// Halts of a leg on ice with hidden gaps, or within the margin of it.
pub(super) fn findings(job: &Brief<'_>, leg: &RopedLeg<'_>, hours: &Hours) -> Vec<Finding> {
    let stops = hours.parts.iter().filter_map(|part| part.stop.as_ref());
    let halts = stops.filter(|stop| stop.halt_min > 0.0);
    let found = halts.filter_map(|stop| {
        let under = under(job, leg, stop.at_m)?;
        let fact = Fact::HaltOnHidden {
            zone: under.zone.map(Into::into),
            minutes: stop.halt_min,
            beside: under.beside,
            rest_m: rest_m(leg, stop.at_m),
        };
        Some(Finding::new(
            At::Leg(place_at(leg, stop.at_m, stop.at_m)),
            fact,
        ))
    });
    found.collect()
}

/// Ice with hidden gaps at a place.
struct Under<'z> {
    /// `None` for ice that only an inventory knows.
    zone: Option<&'z Zone>,
    /// Whether it is only within the margin.
    beside: bool,
}

/// The ice under a place, else that beside it. Where nobody drew a zone gaps are taken as hidden.
fn under<'z>(job: &Brief<'z>, leg: &RopedLeg<'_>, at_m: f64) -> Option<Under<'z>> {
    let contacts = leg.stage.met.contacts.iter();
    let ice = contacts.map(|contact| {
        let zone = contact.of.zone().and_then(|zone| job.zones.get(zone));
        (contact, zone)
    });
    let hidden: Vec<_> = ice
        .filter(|(_, zone)| zone.is_none_or(Zone::hides_gaps))
        .collect();
    let on = hidden.iter().find(|(c, _)| {
        c.crossings
            .iter()
            .any(|s| s.from_m <= at_m && at_m <= s.to_m)
    });
    let beside = || {
        hidden
            .iter()
            .find(|(c, _)| c.touches.iter().any(|s| inside(s, at_m)))
    };
    on.map(|(_, zone)| (*zone, false))
        .or_else(|| beside().map(|(_, zone)| (*zone, true)))
        .map(|(zone, beside)| Under { zone, beside })
}

/// The nearest place of the stage outside all ice that is drawn or known, the margin counted, with no jump on the way to it;
/// `None` where there is none.
fn rest_m(leg: &RopedLeg<'_>, at_m: f64) -> Option<f64> {
    let stage = leg.stage.stage;
    let (length_m, walked) = (stage.length_m(), stage.unbroken(at_m));
    let touches = leg.stage.met.contacts.iter().flat_map(|c| &c.touches);
    let ice = Stretch::merged(touches.copied().collect(), 0.0);
    let ends = ice.iter().flat_map(|s| [s.from_m, s.to_m]);
    let on_line = |m: f64| m > 0.0 && m < length_m && walked.from_m <= m && m <= walked.to_m;
    let off = |m: &f64| on_line(*m) && !ice.iter().any(|s| inside(s, *m));
    let away_m = |m: &f64| (m - at_m).abs();
    ends.filter(off)
        .min_by(|a, b| away_m(a).total_cmp(&away_m(b)))
}

fn inside(stretch: &Stretch, at_m: f64) -> bool {
    stretch.from_m < at_m && at_m < stretch.to_m
}
