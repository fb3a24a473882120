//! Places of findings on a leg.

use crate::{plan::finding::LegPlace, rope::legs::RopedLeg};

/// The leg as a place.
pub(crate) fn place(leg: &RopedLeg<'_>) -> LegPlace {
    let stretch = leg.sketch.stretch;
    place_at(leg, stretch.from_m, stretch.to_m)
}

/// A place on the leg.
pub(crate) fn place_at(leg: &RopedLeg<'_>, from_m: f64, to_m: f64) -> LegPlace {
    let at = leg.stage.stage.at(from_m);
    LegPlace {
        leg: leg.number,
        team: None,
        stage: leg.stage.stage.number,
        from_m,
        to_m,
        lon_lat: at.map_or([0.0, 0.0], |p| [p.normal().lon_deg, p.lat_deg]),
    }
}
