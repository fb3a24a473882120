//! Roll-overs: where the ground steepens down the fall line.
//!
//! *Model:* slope of the stretch below a place minus slope of the one above it, both along the fall line.
//! *Valid:* as a hint to look; crevasses prefer convex ground `[dobler2023]`, and ground without a mark can be
//! broken all the same: a model does not show what is shorter than its cells.

use crate::ground::along::Slopes;
use crate::{
    fault::Fault,
    geometry::LonLat,
    practice::{Rule, Rules},
    raster::Terrain,
    trip::route::Stretch,
};

/// A place where the ground steepens.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Convex {
    /// Metres of chainage.
    pub(crate) at_m: f64,
    /// Where that is.
    pub(crate) at: LonLat,
    /// By how many degrees the ground below is steeper than the ground above.
    pub(crate) steepens_deg: f64,
}

/// The roll-overs on these stretches, the strongest of every neighbourhood, in walking order.
///
/// # Errors
/// If a terrain file turns out to be broken where it is read.
pub(crate) fn convex(
    ground: &Slopes,
    terrain: &Terrain,
    stretches: &[Stretch],
    rules: &Rules,
) -> Result<Vec<Convex>, Fault> {
    let finest_m = terrain.models().next().map_or(f64::INFINITY, |(_, m)| m);
    let over_m = rules[Rule::ConvexOverM].max(2.0 * finest_m);
    let mut found = Vec::new();
    for spot in stretches.iter().flat_map(|s| ground.within(*s)) {
        let Some(aspect_deg) = spot.aspect_deg else {
            continue;
        };
        let steepens_deg = steepens_deg(terrain, spot.at, aspect_deg, over_m)?;
        found.extend(
            steepens_deg
                .filter(|d| *d >= rules[Rule::ConvexDeg])
                .map(|steepens_deg| Convex {
                    at_m: spot.at_m,
                    at: spot.at,
                    steepens_deg,
                }),
        );
    }
    Ok(strongest(found, over_m))
}

fn steepens_deg(
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

/// What lies so near to a distance is that distance, metres `[ours]`: places half a cell apart are asked whether they are two
/// cells apart, and the last bit of a cosine, which no two platforms promise alike, must not decide which are marked.
const ALIKE_M: f64 = 1e-6;

/// Of places nearer than `apart_m` to a stronger one, only that one: what lies just so far off is told too.
fn strongest(mut found: Vec<Convex>, apart_m: f64) -> Vec<Convex> {
    found.sort_by(|a, b| b.steepens_deg.total_cmp(&a.steepens_deg));
    let mut kept: Vec<Convex> = Vec::new();
    for next in found {
        if kept
            .iter()
            .all(|k| (k.at_m - next.at_m).abs() > apart_m - ALIKE_M)
        {
            kept.push(next);
        }
    }
    kept.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_bit_of_a_distance_decides_no_place() {
        let place = |at_m: f64, steepens_deg: f64| Convex {
            at_m,
            at: LonLat::new(0.0, 0.0),
            steepens_deg,
        };
        let kept = |apart_m: f64| {
            let found = vec![place(100.0, 9.0), place(100.0 + apart_m, 8.0)];
            strongest(found, 60.0).len()
        };
        assert_eq!([60.0 - 1e-11, 60.0, 60.0 + 1e-11].map(kept), [2; 3]);
        assert_eq!(kept(59.9), 1);
    }
}
