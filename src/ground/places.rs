//! Places along a stage that are neither too near to each other nor too far apart, segment by segment.

use std::ops::Range;

use crate::{geometry::LonLat, trip::route::Stage};

/// Chainage and position of places along each segment of the stage: both its ends; between them the points of
/// the route that lie at least `least_m` past the last place, and more on long edges, so that no two
/// neighbours are further apart than `most_m`.
pub(super) fn places(stage: &Stage, least_m: f64, most_m: f64) -> Vec<Vec<(f64, LonLat)>> {
    let segments = stage.segments();
    let places = segments.map(|segment| in_segment(stage, segment, least_m, most_m));
    places.collect()
}

fn in_segment(
    stage: &Stage,
    segment: Range<usize>,
    least_m: f64,
    most_m: f64,
) -> Vec<(f64, LonLat)> {
    let (points, chainage) = (
        stage.points().part(segment.clone()),
        &stage.chainage_m()[segment],
    );
    let (Some(first), Some(&start_m), Some(&end_m)) =
        (points.clone().next(), chainage.first(), chainage.last())
    else {
        return Vec::new();
    };
    let mut places = vec![(start_m, first)];
    let mut last_m = start_m;
    for (point, &to_m) in points.zip(chainage).skip(1) {
        while to_m - last_m > most_m {
            last_m += most_m;
            places.extend(stage.at(last_m).map(|at| (last_m, at)));
        }
        if to_m - last_m >= least_m || (to_m >= end_m && to_m > last_m) {
            last_m = to_m;
            places.push((to_m, point));
        }
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_edges_are_filled_and_dense_points_thinned() {
        let mut stage = Stage::new(None);
        for metres in [0.0, 1.0, 2.0, 3.0, 100.0, 101.0] {
            stage.push(LonLat::new(8.0, 46.0 + metres / 111_151.3), None);
        }
        let at: Vec<f64> = places(&stage, 2.0, 30.0)
            .concat()
            .iter()
            .map(|p| p.0.round())
            .collect();
        assert_eq!(at, [0.0, 2.0, 32.0, 62.0, 92.0, 100.0, 101.0]);
    }
}
