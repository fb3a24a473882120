//! What counts as near: boxes in longitude and latitude, whole turns of the earth apart.

use crate::{
    geometry::{Bounds, LonLat},
    trip::{route::Route, zone::Zone},
};

/// From this longer side of a box on it may be that of a ring that jumps over the antimeridian, degrees: then nobody knows at
/// which longitudes it lies. An edge that jumps is longer than this in the numbers.
const JUMPS_DEG: f64 = 180.0;

/// Boxes within which outlines are read.
#[derive(Clone, Debug, Default)]
pub(in crate::read) struct Near(Vec<Bounds>);

/// The corners of a box as a file has them: west, south, east, north; they may be no numbers.
pub(super) type Corners = [f64; 4];

impl Near {
    /// What a plan and its maps can ask of an inventory: all ice within a share of the longer side of the route's box from
    /// it. Beside it all ice within the boxes of these zones.
    pub(in crate::read) fn of(route: Option<&Route>, zones: &[Zone]) -> Self {
        // A route without a stage stands for many lines, wherever they go.
        if route.is_some_and(|route| route.stages.is_empty()) {
            let corners = [LonLat::new(-180.0, -90.0), LonLat::new(180.0, 90.0)];
            return Self(Bounds::of(&corners).into_iter().collect());
        }
        let Some(line) = route.and_then(Route::bounds) else {
            return Self::default();
        };
        let corner = LonLat::new(line.high.lon_deg, line.low.lat_deg);
        let across_m = line.low.distance_m(corner);
        let up_m = corner.distance_m(line.high);
        let shown = line.widened((MAPS * across_m.max(up_m)).max(LEAST_M));
        let boxes = zones.iter().filter_map(|zone| zone.outline.bounds());
        Self(std::iter::once(shown).chain(boxes).collect())
    }

    /// What lies within boxes.
    pub(in crate::read) fn within(boxes: &[Bounds]) -> Self {
        Self(boxes.to_vec())
    }

    /// Whether something in a box may lie near; what is no number may lie anywhere.
    pub(super) fn may_hold(&self, corners: Corners) -> bool {
        self.0.iter().any(|near| may_meet(near, corners))
    }
}

/// The map of a leg that runs along the edge of the box is a square with an eighth of room on either side, so half of it,
/// (1 + 2 × 0.12) / 2 of the longer side, lies outside. Our judgement, as that room is.
const MAPS: f64 = 0.65;
/// At least so much is looked at round a route, metres: more than any map shows round a short one, and than the widest
/// margin there may be. Our judgement.
const LEAST_M: f64 = 1500.0;

fn may_meet(near: &Bounds, [west, south, east, north]: Corners) -> bool {
    if north < near.low.lat_deg || south > near.high.lat_deg {
        return false;
    }
    let turned =
        |by_deg: f64| !(east + by_deg < near.low.lon_deg || west + by_deg > near.high.lon_deg);
    east - west > JUMPS_DEG || [-360.0, 0.0, 360.0].into_iter().any(turned)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(west: f64, south: f64, east: f64, north: f64) -> Near {
        Near(vec![Bounds {
            low: LonLat::new(west, south),
            high: LonLat::new(east, north),
        }])
    }

    #[test]
    fn a_whole_turn_apart_is_near() {
        let over = near(179.9, 66.0, 180.1, 66.1);
        assert!(
            over.may_hold([-180.0, 66.0, -179.95, 66.1]),
            "behind the antimeridian"
        );
        assert!(over.may_hold([179.0, 66.0, 179.95, 66.1]), "before it");
        assert!(
            !over.may_hold([-179.8, 66.0, -179.0, 66.1]),
            "too far behind it"
        );
        assert!(!over.may_hold([179.95, 66.2, 180.0, 66.3]), "north of it");
    }

    #[test]
    fn a_ring_that_jumps_over_the_antimeridian_may_lie_at_any_longitude() {
        let beyond = near(179.6, 66.0, 179.7, 66.1);
        assert!(
            beyond.may_hold([-179.5, 66.0, 179.5, 66.1]),
            "its ice is from 179.5 on"
        );
        assert!(
            !beyond.may_hold([-179.5, 67.0, 179.5, 67.1]),
            "at another latitude"
        );
    }

    #[test]
    fn what_is_no_number_may_lie_anywhere() {
        let here = near(7.0, 46.0, 7.1, 46.1);
        for at in 0..4 {
            let mut corners = [7.0, 46.0, 7.1, 46.1];
            corners[at] = f64::NAN;
            assert!(here.may_hold(corners), "corner {at}");
        }
    }
}
