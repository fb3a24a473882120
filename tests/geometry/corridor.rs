//! Strips along lines: rings are sound, the line is in them, nothing lies farther off than was asked.

use std::f64::consts::TAU;

use geo::{
    Contains, Coord, Distance, Euclidean, LineString, MultiPolygon, Point, Polygon, Validation,
    Winding,
};
use proptest::prelude::*;
use schrund::geometry::{
    LonLat, Outline,
    corridor::{area_m2, corridor, stretching},
};

use crate::fixture::close;

/// Metres of a degree of latitude at 46° N, to the metre: only the shape of the ground hangs on it.
const NORTH_M: f64 = 111_151.0;
/// What rounding to seven decimals may move, the cut at the antimeridian, and needles that are taken off.
const ROUNDED_DEG: f64 = 6e-7;

/// So many metres east and north of a place.
fn beside(spot: LonLat, (x_m, y_m): (f64, f64)) -> LonLat {
    let north = NORTH_M;
    let east = north * spot.lat_deg.to_radians().cos();
    LonLat::new(spot.lon_deg + x_m / east, spot.lat_deg + y_m / north)
}

/// Places with nothing special, far north, and about the antimeridian.
fn any_spot() -> impl Strategy<Value = LonLat> {
    prop_oneof![
        Just(LonLat::new(8.0, 46.0)),
        Just(LonLat::new(-60.0, 82.0)),
        Just(LonLat::new(179.99, 52.0)),
        Just(LonLat::new(-180.02, -77.0)),
    ]
}

/// A line that jumps about, one that wanders, and one that trembles.
fn any_line() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let about = prop::collection::vec((0.0..3000.0, 0.0..3000.0), 2..25);
    let turns = (prop::collection::vec(-0.9..0.9, 2..80), 5.0..120.0).prop_map(|(turns, step)| {
        let mut heading: f64 = 0.0;
        let mut at = (0.0, 0.0);
        let mut line = vec![at];
        for turn in turns {
            heading += turn;
            at = (at.0 + step * heading.cos(), at.1 + step * heading.sin());
            line.push(at);
        }
        line
    });
    let trembling = prop::collection::vec((-4.0..4.0, -4.0..4.0), 10..60).prop_map(|off| {
        let step = |(i, (x, y)): (usize, (f64, f64))| (12.0 * i as f64 + x, y);
        off.into_iter().enumerate().map(step).collect()
    });
    prop_oneof![1 => about, 2 => turns, 1 => trembling]
}

fn geo(outline: &Outline) -> MultiPolygon {
    let ring = |ring: &Vec<LonLat>| {
        LineString::from_iter(ring.iter().map(|p| Coord {
            x: p.lon_deg,
            y: p.lat_deg,
        }))
    };
    let parts = outline.polygons.iter();
    let parts = parts.map(|p| Polygon::new(ring(&p.outer), p.holes.iter().map(ring).collect()));
    MultiPolygon::new(parts.collect())
}

fn is_sound(outline: &Outline) -> Result<(), TestCaseError> {
    let area = geo(outline);
    prop_assert!(!area.0.is_empty());
    prop_assert!(area.is_valid(), "{:?}: {area:?}", area.validation_errors());
    for part in &area {
        prop_assert!(part.exterior().is_ccw());
        prop_assert!(part.interiors().iter().all(Winding::is_cw));
        for Coord { x, y } in part.exterior().coords() {
            prop_assert!((-180.0..=180.0).contains(x));
            for deg in [x, y] {
                let written: f64 = format!("{deg:.7}").parse().unwrap();
                prop_assert_eq!(written, *deg);
            }
        }
    }
    Ok(())
}

/// Spots along a line.
fn along(line: &[LonLat]) -> Vec<LonLat> {
    let pieces = line.windows(2);
    pieces
        .flat_map(|ends| [0.0, 0.21, 0.5, 0.77, 1.0].map(|t| ends[0].along_edge(ends[1], t)))
        .collect()
}

proptest! {
    #[test]
    fn rings_are_sound_and_hold_the_line(
        spot in any_spot(), line in any_line(), half_m in prop_oneof![Just(150.0), 10.0..1000.0],
    ) {
        let line: Vec<LonLat> = line.into_iter().map(|at| beside(spot, at)).collect();
        let strip = corridor(std::slice::from_ref(&line), half_m);
        is_sound(&strip)?;
        let area = geo(&strip);
        for at in along(&line) {
            // A spot on the antimeridian itself is on both sides of it.
            let at = Point::from(at.normal());
            let off = Euclidean.distance(&at, &area);
            prop_assert!(area.contains(&at) || off < ROUNDED_DEG, "{at:?} lies {off} degrees outside");
        }
        let reach_m = 1.5 * half_m;
        for spot in area.iter().flat_map(|part| part.exterior().coords()) {
            let spot = LonLat::new(spot.x, spot.y);
            let nearest = along(&line).into_iter().map(|at| at.distance_m(spot));
            let step_m = line.windows(2).map(|e| e[0].distance_m(e[1])).fold(0.0, f64::max) * 0.15;
            let nearest_m = nearest.fold(f64::INFINITY, f64::min);
            prop_assert!(nearest_m <= reach_m + step_m, "{spot:?} lies {nearest_m} m from the line");
        }
    }

    #[test]
    fn lines_apart_stay_apart(spot in any_spot(), gap_m in 350.0..5000.0, half_m in 10.0..150.0) {
        let line = |north| [0.0, 400.0, 800.0].map(|x| beside(spot, (x, north))).to_vec();
        let strip = corridor(&[line(0.0), line(gap_m)], half_m);
        is_sound(&strip)?;
        let between = Point::from(beside(spot, (400.0, gap_m / 2.0)).normal());
        prop_assert!(!geo(&strip).contains(&between));
    }
}

#[test]
fn a_straight_line_has_a_rectangle() {
    let spot = LonLat::new(8.0, 46.0);
    let line = [0.0, 500.0, 1200.0]
        .map(|y| beside(spot, (0.0, y)))
        .to_vec();
    let strip = corridor(&[line], 150.0);
    assert_eq!(strip.polygons.len(), 1);
    assert_eq!(
        strip.vertices(),
        5,
        "its corners, the first one again: {strip:?}"
    );
    close("area", area_m2(&strip), 1200.0 * 300.0, 1500.0);
}

#[test]
fn a_loop_has_a_hole_and_a_small_one_none() {
    let spot = LonLat::new(8.0, 46.0);
    let round = |radius: f64| {
        let at = |i: u32| (f64::from(i) / 40.0 * TAU).sin_cos();
        let line = (0..=42).map(|i| beside(spot, (radius * at(i).1, radius * at(i).0)));
        corridor(&[line.collect()], 150.0)
    };
    let holes = |strip: &Outline| strip.polygons.iter().map(|p| p.holes.len()).sum::<usize>();
    assert_eq!((holes(&round(600.0)), holes(&round(155.0))), (1, 0));
}

#[test]
fn near_a_pole_and_over_many_kilometres_widths_are_wrong() {
    let far = |lat: f64, km: f64| {
        let spot = LonLat::new(8.0, lat);
        stretching(&[spot, beside(spot, (0.0, km * 1000.0))], 150.0)
    };
    assert!(
        far(46.0, 10.0) < 0.001 && far(80.0, 5.0) < 0.01,
        "a day on a glacier"
    );
    assert!(far(46.0, 1000.0) > 0.05 && far(89.0, 20.0) > 0.05);
    assert_eq!(far(89.8, 20.0), f64::INFINITY);
}
