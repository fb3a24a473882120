//! How much the ground steepens down the fall line at a place.
//!
//! *Model:* slope of the stretch below a place minus slope of the one above it, both along the fall line.
//! *Valid:* as a hint to look; crevasses prefer convex ground `[dobler2023]`, and ground without a mark can be
//! broken all the same: a model does not show what is shorter than its cells.

use crate::{
    fault::Fault,
    geometry::LonLat,
    practice::{Rule, Rules},
    raster::Terrain,
};

/// The stretches above and below a place are so long, metres.
pub(super) fn over_m(terrain: &Terrain, rules: &Rules) -> f64 {
    let finest_m = terrain.models().next().map_or(f64::INFINITY, |(_, m)| m);
    rules[Rule::ConvexOverM].max(2.0 * finest_m)
}

/// By how many degrees the ground below is steeper than the ground above; `None` where a height is not known.
///
/// # Errors
/// If a terrain file turns out to be broken where it is read.
pub(super) fn steepens_deg(
    terrain: &Terrain,
    at: LonLat,
    aspect_deg: f64,
    over_m: f64,
) -> Result<Option<f64>, Fault> {
    let above = terrain.height_m(at.toward(aspect_deg + 180.0, over_m))?;
    let below = terrain.height_m(at.toward(aspect_deg, over_m))?;
    let (Some(above), Some(here), Some(below)) = (above, terrain.height_m(at)?, below) else {
        return Ok(None);
    };
    let slope_deg = |drop_m: f64| (drop_m / over_m).atan().to_degrees();
    Ok(Some(slope_deg(here - below) - slope_deg(above - here)))
}
