//! Strikes proposed from the ground: across the fall line, give or take.
//!
//! *Model:* crevasses open normal to the most tensile strain rate `[harper1998]`; transverse ones lie at right
//! angles to the flow `[sipre11]`, and the flow follows the fall line of the surface (our judgement). *Valid:*
//! as a hint: marginal crevasses lie at 45° to it, and old ones anywhere. Always labelled assumed.

use crate::ground::along::{SlopeSpot, Slopes};
use crate::{
    practice::{Rule, Rules},
    trip::{
        route::Stretch,
        zone::{ProposedStrike, Strike},
    },
};

/// One proposal for every place of the ground on the touched stretches that has a fall line. Each reaches
/// half way to the neighbouring places, and never beyond its stretch.
#[must_use]
pub(crate) fn proposals(
    ground: &Slopes,
    touches: &[Stretch],
    rules: &Rules,
) -> Vec<ProposedStrike> {
    let parts = touches.iter().flat_map(|touch| ground.around(*touch));
    parts
        .flat_map(|(part, spots)| on_stretch(part, spots, rules))
        .collect()
}

fn on_stretch(touch: Stretch, spots: &[SlopeSpot], rules: &Rules) -> Vec<ProposedStrike> {
    let half_way = |i: usize, j: Option<usize>| match (spots.get(i), j.and_then(|j| spots.get(j))) {
        (Some(a), Some(b)) => Some((a.at_m + b.at_m) / 2.0),
        _ => None,
    };
    let proposal = |(i, spot): (usize, &SlopeSpot)| {
        let aspect_deg = spot
            .aspect_deg
            .filter(|_| spot.slope_deg >= rules[Rule::FallLineDeg])?;
        let from_m = half_way(i, i.checked_sub(1)).map_or(touch.from_m, |m| m.max(touch.from_m));
        let to_m = half_way(i, Some(i + 1)).map_or(touch.to_m, |m| m.min(touch.to_m));
        (from_m < to_m).then_some(ProposedStrike {
            stretch: Stretch { from_m, to_m },
            strike: Strike {
                deg: (aspect_deg + 90.0).rem_euclid(180.0),
                uncertainty_deg: Some(rules[Rule::ProposedStrikeDeg]),
            },
        })
    };
    spots.iter().enumerate().filter_map(proposal).collect()
}

/// The middle direction of the proposals, each counting by its length; directions are axes, so they are
/// averaged at twice their angle. `None` without any, or where they cancel out.
#[must_use]
pub(crate) fn mean_strike_deg(proposals: &[ProposedStrike]) -> Option<f64> {
    let (mut north, mut east) = (0.0, 0.0);
    for p in proposals {
        let (sin, cos) = (2.0 * p.strike.deg).to_radians().sin_cos();
        north += cos * p.stretch.length_m();
        east += sin * p.stretch.length_m();
    }
    (north.hypot(east) > 1e-9).then(|| (east.atan2(north).to_degrees() / 2.0).rem_euclid(180.0))
}
