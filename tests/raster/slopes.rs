//! Steepness and facing on surfaces whose answer is known.

use schrund::{
    geometry::{LonLat, projection::Projection},
    raster::{GroundSlope, Terrain},
};

use super::terrain_of;
use crate::fixture::raster::Raster;

/// Cell size of all surfaces, metres.
const CELL_M: f64 = 10.0;

/// A raster around a place, heights being a function of metres east and north of it in a plane that
/// touches the earth there (so true north is the middle's north, and no map scale enters).
fn surface(middle: LonLat, epsg: u16, map: &str, height_m: impl Fn(f64, f64) -> f64) -> Terrain {
    let map = Projection::parse(map).expect("map");
    let touching = touching(middle);
    let cell = if map.is_geographic() {
        (
            CELL_M / 111_320.0 / middle.lat_deg.to_radians().cos(),
            CELL_M / 111_320.0,
        )
    } else {
        (CELL_M, CELL_M)
    };
    let centre = map.forward(middle).expect("inside");
    let corner = (centre.0 - 130.0 * cell.0, centre.1 + 130.0 * cell.1);
    let raster = Raster {
        columns: 260,
        rows: 260,
        corner,
        cell,
        epsg,
    };
    let bytes = raster.write(32, |x, y| {
        let at = map.inverse(x, y).expect("inside");
        let (east, north) = touching.forward(at).expect("near");
        height_m(east, north)
    });
    terrain_of("surface", bytes).unwrap_or_else(|e| panic!("{e}"))
}

/// Frames whose grid north is far from true north, or none.
fn frames() -> [(LonLat, u16, &'static str); 4] {
    let utm = "+proj=utm +zone=32 +datum=WGS84";
    [
        (LonLat::new(11.9, 46.5), 32632, utm),
        (LonLat::new(5.1, 60.5), 32632, utm),
        (
            LonLat::new(-68.0, -71.0),
            3031,
            "+proj=stere +lat_0=-90 +lat_ts=-71 +lon_0=0 +datum=WGS84",
        ),
        (LonLat::new(10.0, 46.5), 4326, "+proj=longlat +datum=WGS84"),
    ]
}

/// The plane that touches the earth at a place.
fn touching(middle: LonLat) -> Projection {
    let (lat, lon) = (middle.lat_deg, middle.lon_deg);
    let text = format!("+proj=tmerc +lat_0={lat} +lon_0={lon} +k=1 +datum=WGS84");
    Projection::parse(&text).expect("touching")
}

fn at(middle: LonLat, east_m: f64, north_m: f64) -> LonLat {
    touching(middle).inverse(east_m, north_m).expect("near")
}

fn ask(terrain: &Terrain, at: LonLat) -> GroundSlope {
    terrain.slope(at).expect("readable").expect("inside")
}

/// Checks slope and facing; the error is that of the upright on the ground, so a turn counts less where it is flat.
#[track_caller]
fn faces(what: &str, got: GroundSlope, slope_deg: f64, aspect_deg: f64, tolerance_deg: f64) -> f64 {
    let turn = (got.aspect_deg.expect("not level") - aspect_deg + 180.0).rem_euclid(360.0) - 180.0;
    let worst = (got.slope_deg - slope_deg)
        .abs()
        .max(turn.abs() * slope_deg.to_radians().sin());
    assert!(
        worst <= tolerance_deg,
        "{what}: {got:?}, want {slope_deg}° facing {aspect_deg}°"
    );
    worst
}

#[test]
fn planes_have_their_slope_and_face_downhill() {
    let mut worst: f64 = 0.0;
    for (middle, epsg, map) in frames() {
        for aspect_deg in [0.0, 45.0, 100.0, 200.0, 315.0_f64] {
            let (sin, cos) = aspect_deg.to_radians().sin_cos();
            let fall = 35.0_f64.to_radians().tan();
            let plane = surface(middle, epsg, map, |e, n| {
                3000.0 - fall * (e * sin + n * cos)
            });
            for (e, n) in [(0.0, 0.0), (317.0, -441.0), (-603.0, 88.0)] {
                let got = ask(&plane, at(middle, e, n));
                worst = worst.max(faces(&format!("EPSG:{epsg}"), got, 35.0, aspect_deg, 0.01));
            }
        }
    }
    eprintln!("plane: worst {worst:.4}°");
}

#[test]
fn a_cone_is_equally_steep_all_around() {
    let mut worst: f64 = 0.0;
    for (middle, epsg, map) in frames() {
        let cone = surface(middle, epsg, map, |e, n| {
            3000.0 - 35.0_f64.to_radians().tan() * e.hypot(n)
        });
        for bearing in (0..360).step_by(15).map(f64::from) {
            for cells in [10.0, 25.0, 60.0] {
                let (sin, cos) = bearing.to_radians().sin_cos();
                let got = ask(
                    &cone,
                    at(middle, cells * CELL_M * sin, cells * CELL_M * cos),
                );
                worst = worst.max(faces(
                    &format!("EPSG:{epsg}, {cells} cells off"),
                    got,
                    35.0,
                    bearing,
                    0.2,
                ));
            }
        }
    }
    eprintln!("cone: worst {worst:.4}°");
}

#[test]
fn a_dome_steepens_outwards() {
    let radius = 100.0 * CELL_M;
    let mut worst: f64 = 0.0;
    for (middle, epsg, map) in frames() {
        let dome = surface(middle, epsg, map, |e, n| {
            1000.0 + (radius * radius - e * e - n * n).max(0.0).sqrt()
        });
        for bearing in (7..360).step_by(30).map(f64::from) {
            for slope_deg in [5.0, 20.0, 40.0_f64] {
                let off = radius * slope_deg.to_radians().sin();
                let (sin, cos) = bearing.to_radians().sin_cos();
                let got = ask(&dome, at(middle, off * sin, off * cos));
                worst = worst.max(faces(
                    &format!("EPSG:{epsg}, dome"),
                    got,
                    slope_deg,
                    bearing,
                    0.06,
                ));
            }
        }
    }
    eprintln!("dome: worst {worst:.4}°");
}

#[test]
fn level_ground_faces_nowhere_and_edges_have_no_slope() {
    let (middle, epsg, map) = frames()[0];
    let level = surface(middle, epsg, map, |_, _| 1234.5);
    let got = ask(&level, middle);
    assert!(got.slope_deg < 1e-6 && got.aspect_deg.is_none(), "{got:?}");
    let edge = at(middle, -1292.0, 0.0);
    assert_eq!(
        level.slope(edge).expect("readable"),
        None,
        "half a cell from the edge"
    );
}
