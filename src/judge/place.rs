//! Places of findings on a leg.

use crate::{plan::finding::LegPlace, rope::legs::RopedLeg};

/// The leg as a place.
pub(crate) fn place(leg: &RopedLeg<'_>) -> LegPlace {
    let stretch = leg.sketch.stretch;
    place_at(leg, stretch.from_m, stretch.to_m)
}

/// A place on the leg.
pub(crate) fn place_at(leg: &RopedLeg<'_>, from_m: f64, to_m: f64) -> LegPlace {
    LegPlace {
        leg: leg.number,
        team: None,
        stage: leg.stage.stage.number,
        from_m,
        to_m,
        lon_lat: position(leg, from_m),
        height_m: height_m(leg, from_m),
    }
}

/// Longitude and latitude of a place on the stage of a leg, degrees.
pub(crate) fn position(leg: &RopedLeg<'_>, at_m: f64) -> [f64; 2] {
    let at = leg.stage.stage.at(at_m);
    at.map_or([0.0, 0.0], |p| [p.normal().lon_deg, p.lat_deg])
}

/// The height of the line at a chainage, metres, by the heights that are used.
pub(crate) fn height_m(leg: &RopedLeg<'_>, at_m: f64) -> Option<f64> {
    leg.stage.met.under.line.profile.height_m(at_m)
}
