//! Where a team is on ice whose gaps nobody sees.

use crate::{
    practice::Rule,
    rope::legs::RopedLeg,
    trip::{job::Brief, route::Stretch, zone::Zone},
};

/// Ice with hidden gaps, and where its crossings on a leg begin and end, or the stretches that only the margin reaches.
#[derive(Clone, Debug)]
pub(crate) struct HiddenGaps<'a> {
    /// The zone; `None` for ice that only an inventory knows.
    pub(crate) zone: Option<&'a Zone>,
    /// Where the first begins: chainage, metres.
    pub(crate) begins_m: f64,
    /// Where the last ends, likewise.
    pub(crate) ends_m: f64,
    /// All of them, in no order.
    on_leg: Vec<Stretch>,
}

impl HiddenGaps<'_> {
    /// All of them, in no order.
    pub(crate) fn on_leg(&self) -> &[Stretch] {
        &self.on_leg
    }

    /// What of it is not crossed yet where the team has come to a place, from its first piece to its last.
    pub(crate) fn beyond(&self, at_m: f64) -> Stretch {
        let ahead = self.on_leg.iter().filter(|s| s.to_m > at_m + 1e-9);
        let from_m = ahead.map(|s| s.from_m.max(at_m)).reduce(f64::min);
        Stretch {
            from_m: from_m.unwrap_or(self.ends_m),
            to_m: self.ends_m,
        }
    }
}

/// The ice with hidden gaps that is crossed on a leg, and that which only the margin reaches: the team is roped for it. Where
/// nobody drew a zone they are taken as hidden.
pub(crate) fn hidden<'a>(job: &Brief<'a>, leg: &RopedLeg<'_>) -> Vec<HiddenGaps<'a>> {
    let (stretch, margin_m) = (leg.sketch.stretch, job.rules[Rule::MarginM]);
    let met = leg.stage.met;
    let contacts = met.touching.overlapping(&stretch).into_iter();
    let contacts = contacts.filter_map(|i| met.contacts.get(i));
    let hidden = contacts.filter_map(|contact| {
        let zone = contact.of.zone().and_then(|zone| job.zones.get(zone));
        let touched = touched(&contact.touches, &contact.crossings, margin_m);
        let on_leg = [stretch.clip(&contact.crossings), stretch.clip(&touched)].concat();
        let begins_m = on_leg.iter().map(|s| s.from_m).reduce(f64::min)?;
        let ends_m = on_leg.iter().map(|s| s.to_m).reduce(f64::max)?;
        zone.is_none_or(Zone::hides_gaps).then_some(HiddenGaps {
            zone,
            begins_m,
            ends_m,
            on_leg,
        })
    });
    hidden.collect()
}

/// The stretches that the margin reaches, those about a crossing without the margin along the line: the crossing ends there,
/// unless the line goes on beside the ice.
fn touched(touches: &[Stretch], crossings: &[Stretch], margin_m: f64) -> Vec<Stretch> {
    let crossed = |touch: &Stretch| crossings.iter().any(|c| c.overlaps(touch));
    let without = |touch: &Stretch| match crossed(touch) {
        true => Stretch {
            from_m: touch.from_m + margin_m,
            to_m: touch.to_m - margin_m,
        },
        false => *touch,
    };
    touches.iter().map(without).collect()
}
