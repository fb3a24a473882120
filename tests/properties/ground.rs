//! Invented routes and zones, on a grid of metres round a spot in the mountains.

use proptest::prelude::*;
use schrund::{
    geometry::{LonLat, Outline, Polygon},
    practice::{Rules, set::Source},
    trip::{
        route::{Route, Stage},
        zone::{Gap, RopeWord, Strike, Surface, Zone},
    },
};

/// Metres per degree east and north at 46° N, to the metre: only the shape of the ground hangs on it.
const EAST_M: f64 = 77_463.0;
const NORTH_M: f64 = 111_151.0;

pub(crate) fn at(x_m: f64, y_m: f64) -> LonLat {
    LonLat::new(8.0 + x_m / EAST_M, 46.0 + y_m / NORTH_M)
}

pub(crate) fn stage(points: &[LonLat]) -> Stage {
    let mut stage = Stage::new(None);
    for &point in points {
        stage.push(point, None);
    }
    stage
}

pub(crate) fn route(points: &[LonLat]) -> Route {
    Route::new(None, vec![stage(points)])
}

pub(crate) fn zone(number: usize, rings: &[Vec<LonLat>], gap_m: f64) -> Zone {
    let closed = |ring: &Vec<LonLat>| ring.iter().chain(ring.first()).copied().collect::<Vec<_>>();
    let polygon = Polygon {
        outer: closed(&rings[0]),
        holes: rings[1..].iter().map(closed).collect(),
    };
    Zone {
        number,
        feature: number,
        name: None,
        outline: Outline {
            polygons: vec![polygon],
        },
        gap: Gap {
            min_m: None,
            max_m: gap_m,
            assumed: false,
        },
        snow_depth_m: Some(1.5),
        surface: Surface::Snow,
        strike: None,
        rope: RopeWord::Auto,
        observed_on: None,
        source: None,
        note: None,
        other: serde_json::Map::new(),
    }
}

pub(crate) fn rules() -> Rules {
    Rules::with_practice(&Source::Named("arm-span")).expect("the default set loads")
}

/// A line of 2 to 40 points within 4 km, some of them on whole hundreds so that they meet borders.
pub(crate) fn any_line() -> impl Strategy<Value = Vec<LonLat>> {
    let point = prop_oneof![
        3 => (0.0..4000.0, 0.0..4000.0).prop_map(|(x, y)| at(x, y)),
        1 => (0..40_i32, 0..40_i32).prop_map(|(x, y)| at(f64::from(x) * 100.0, f64::from(y) * 100.0)),
    ];
    proptest::collection::vec(point, 2..40).prop_filter("needs two places", |line| {
        line.windows(2).any(|pair| pair[0] != pair[1])
    })
}

/// A star-shaped ring round a place, its corners on whole tens of metres; never crosses itself.
fn any_ring(reach_m: std::ops::Range<f64>) -> impl Strategy<Value = Vec<(f64, f64)>> {
    proptest::collection::vec(reach_m, 3..14).prop_map(|radii| {
        let step = std::f64::consts::TAU / radii.len() as f64;
        let corner = |(i, r): (usize, &f64)| {
            let (sin, cos) = (i as f64 * step).sin_cos();
            (
                (r * cos / 10.0).round() * 10.0,
                (r * sin / 10.0).round() * 10.0,
            )
        };
        radii.iter().enumerate().map(corner).collect()
    })
}

/// A zone with perhaps a rock island in its middle, a gap and perhaps a strike.
pub(crate) fn any_zone(number: usize) -> impl Strategy<Value = Zone> {
    let place = (500.0..3500.0_f64, 500.0..3500.0_f64);
    let strike = proptest::option::of((0.0..180.0, 0.0..40.0));
    (
        place,
        any_ring(150.0..900.0),
        proptest::option::of(any_ring(20.0..60.0)),
        0.5..35.0,
        strike,
    )
        .prop_map(move |((x, y), outer, hole, gap_m, strike)| {
            let ring = |corners: Vec<(f64, f64)>| -> Vec<LonLat> {
                corners
                    .iter()
                    .map(|(dx, dy)| at(x.round() + dx, y.round() + dy))
                    .collect()
            };
            let rings: Vec<Vec<LonLat>> = std::iter::once(outer).chain(hole).map(ring).collect();
            let mut zone = zone(number, &rings, gap_m);
            zone.strike = strike.map(|(deg, uncertainty_deg)| Strike {
                deg,
                uncertainty_deg: Some(uncertainty_deg),
            });
            zone
        })
}

pub(crate) fn any_zones() -> impl Strategy<Value = Vec<Zone>> {
    (any_zone(1), any_zone(2), any_zone(3)).prop_map(|(a, b, c)| vec![a, b, c])
}
