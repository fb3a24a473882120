//! Terrain models: a line with a name, and any bytes as a GeoTIFF or an `.hgt` tile of that name. What is opened is asked for
//! heights and slopes round the places of the example; an answer is a number, and it is the same the second time.
#![no_main]

use std::io::Cursor;

use libfuzzer_sys::fuzz_target;
use schrund::{geometry::LonLat, raster::Terrain};
use schrund_fuzz::{parcel, told};

/// South-west and north-east of the places that are asked: those of the example, of a tile, and of anything else.
const WINDOWS: [[f64; 4]; 4] = [
    [2.0, 66.49, 2.26, 66.56],
    [1.999, 65.999, 3.001, 67.001],
    [7.4, 46.4, 7.6, 46.6],
    [-179.9, -89.9, 179.9, 89.9],
];
/// Places asked in a row.
const SIDE: u8 = 8;

fuzz_target!(|bytes: &[u8]| {
    let end = bytes.iter().position(|byte| *byte == b'\n').unwrap_or(0);
    let (name, rest) = bytes.split_at(end);
    let name = String::from_utf8_lossy(name);
    let model = parcel::ground(&name, rest.strip_prefix(b"\n").unwrap_or(rest));
    let mut terrain = Terrain::new();
    match terrain.add(&name, Box::new(Cursor::new(model))) {
        Ok(notes) => {
            told::all(&notes, bytes);
            WINDOWS
                .iter()
                .for_each(|window| asked(&terrain, *window, bytes));
            told::all(&terrain.notes(), bytes);
        }
        Err(fault) => told::all(&[fault], bytes),
    }
});

fn asked(terrain: &Terrain, [west, south, east, north]: [f64; 4], bytes: &[u8]) {
    let corners = (LonLat::new(west, south), LonLat::new(east, north));
    let share = |i: u8| f64::from(i) / f64::from(SIDE - 1);
    for i in 0..SIDE * SIDE {
        let (x, y) = (share(i % SIDE), share(i / SIDE));
        let at = LonLat::new(west + x * (east - west), south + y * (north - south));
        if let Err(fault) = place(terrain, at) {
            return told::all(&[fault], bytes);
        }
    }
    let side = usize::from(SIDE);
    match terrain.relief(corners.0, corners.1, side, side) {
        Ok(heights) => {
            assert_eq!(heights.len(), side * side, "a lattice");
            assert!(
                heights.iter().flatten().all(|h| h.is_finite()),
                "{heights:?}"
            );
        }
        Err(fault) => told::all(&[fault], bytes),
    }
}

fn place(terrain: &Terrain, at: LonLat) -> Result<(), schrund::fault::Fault> {
    let sample = terrain.sample(at)?;
    assert_eq!(
        sample,
        terrain.sample(at)?,
        "another height the second time"
    );
    if let Some(told) = sample {
        assert!(
            told.height_m.is_finite() && told.resolution_m > 0.0,
            "{told:?}"
        );
    }
    let cell_m = terrain.nearest_m(at)?;
    assert!(cell_m.is_none_or(f64::is_finite), "{cell_m:?}");
    if let Some(slope) = terrain.slope(at)? {
        assert!((0.0..=90.0).contains(&slope.slope_deg), "{slope:?}");
        let aspect = slope
            .aspect_deg
            .is_none_or(|deg| (0.0..=360.0).contains(&deg));
        assert!(aspect && slope.reach_m > 0.0, "{slope:?}");
    }
    Ok(())
}
