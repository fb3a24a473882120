//! Roll-overs: the places on ice where the ground steepens most down the fall line.

use crate::{
    geometry::LonLat,
    ground::{along::Slopes, steepening::over_m},
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
pub(crate) fn convex(
    ground: &Slopes,
    terrain: &Terrain,
    stretches: &[Stretch],
    rules: &Rules,
) -> Vec<Convex> {
    let spots = stretches.iter().flat_map(|s| ground.within(*s));
    let found = spots.filter_map(|spot| {
        let steepens_deg = spot.steepens_deg.filter(|d| *d >= rules[Rule::ConvexDeg])?;
        Some(Convex {
            at_m: spot.at_m,
            at: spot.at,
            steepens_deg,
        })
    });
    strongest(found.collect(), over_m(terrain, rules))
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
