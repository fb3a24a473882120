//! Where a team is on ice whose gaps nobody sees.

use crate::{
    practice::Rule,
    rope::legs::RopedLeg,
    trip::{
        job::Brief,
        route::Stretch,
        zone::{Surface, Zone},
    },
};

/// Ice with hidden gaps, and where its crossings on a leg begin and end, or the stretches that only the margin reaches.
#[derive(Clone, Copy, Debug)]
pub(crate) struct HiddenGaps<'a> {
    /// The zone; `None` for ice that only an inventory knows.
    pub(crate) zone: Option<&'a Zone>,
    /// Where the first begins: chainage, metres.
    pub(crate) begins_m: f64,
    /// Where the last ends, likewise.
    pub(crate) ends_m: f64,
}

/// The ice with hidden gaps that is crossed on a leg, and that which only the margin reaches: the team is roped for it. Where
/// nobody drew a zone they are taken as hidden.
pub(crate) fn hidden<'a>(job: &Brief<'a>, leg: &RopedLeg<'_>) -> Vec<HiddenGaps<'a>> {
    let (stretch, margin_m) = (leg.sketch.stretch, job.rules[Rule::MarginM]);
    let hidden = leg.stage.met.contacts.iter().filter_map(|contact| {
        let zone = contact.of.zone().and_then(|zone| job.zones.get(zone));
        let on_leg = |all: &[Stretch]| {
            let on_leg = all.iter();
            let on_leg = on_leg.filter(|c| c.from_m < stretch.to_m && c.to_m > stretch.from_m);
            let ends = on_leg.map(|c| [c.from_m.max(stretch.from_m), c.to_m.min(stretch.to_m)]);
            ends.reduce(|a, b| [a[0].min(b[0]), a[1].max(b[1])])
        };
        let crossed = on_leg(&contact.crossings);
        let touched = touched(&contact.touches, &contact.crossings, margin_m);
        let both = crossed.into_iter().chain(on_leg(&touched));
        let [begins_m, ends_m] = both.reduce(|a, b| [a[0].min(b[0]), a[1].max(b[1])])?;
        let hidden = zone.is_none_or(|z| z.surface_counted() == Surface::Snow);
        hidden.then_some(HiddenGaps {
            zone,
            begins_m,
            ends_m,
        })
    });
    hidden.collect()
}

/// The stretches that the margin reaches, those about a crossing without the margin along the line: the crossing ends there,
/// unless the line goes on beside the ice.
fn touched(touches: &[Stretch], crossings: &[Stretch], margin_m: f64) -> Vec<Stretch> {
    let crossed = |touch: &Stretch| {
        let overlaps = |c: &Stretch| c.from_m < touch.to_m && touch.from_m < c.to_m;
        crossings.iter().any(overlaps)
    };
    let without = |touch: &Stretch| match crossed(touch) {
        true => Stretch {
            from_m: touch.from_m + margin_m,
            to_m: touch.to_m - margin_m,
        },
        false => *touch,
    };
    touches.iter().map(without).collect()
}
