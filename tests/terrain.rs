//! Terrain models: synthetic rasters, files written by GDAL, real files where they are at hand, and broken ones.

#![allow(
    clippy::result_large_err,
    clippy::cast_possible_truncation,
    clippy::float_cmp,
    reason = "tests: complaints are met once, numbers are small, and exact values are meant exactly"
)]

#[path = "terrain/broken.rs"]
mod broken;
#[path = "terrain/foreign.rs"]
mod foreign;
#[path = "terrain/made.rs"]
mod made;
#[path = "terrain/mosaic.rs"]
mod mosaic;
#[path = "terrain/real.rs"]
mod real;
#[path = "terrain/slopes.rs"]
mod slopes;
#[path = "terrain/utm.rs"]
mod utm;

use std::io::Cursor;

use schrund::{
    fault::{Code, Fault},
    raster::Terrain,
};

/// A terrain of one model in memory.
fn terrain_of(name: &str, bytes: Vec<u8>) -> Result<Terrain, Fault> {
    let mut terrain = Terrain::new();
    terrain.add(name, Box::new(Cursor::new(bytes)))?;
    Ok(terrain)
}

#[track_caller]
fn close(what: &str, got: Option<f64>, want: Option<f64>, tolerance: f64) {
    match (got, want) {
        (Some(g), Some(w)) => assert!(
            (g - w).abs() <= tolerance,
            "{what}: got {g}, want {w} ± {tolerance}"
        ),
        _ => assert_eq!(got, want, "{what}"),
    }
}

/// The complaint about a file that must not open, its hint being a command or another way out.
#[track_caller]
fn refusal(what: &str, result: Result<Terrain, Fault>) -> Fault {
    let Err(problem) = result else {
        panic!("{what} must be refused")
    };
    assert!(
        matches!(problem.code(), Code::TerrainBroken | Code::TerrainRefused),
        "{what}: {problem}"
    );
    assert!(
        schrund::say::fault::hint(&problem, Default::default())
            .is_some_and(|h| h.to_string().len() > 20),
        "{what} has advice: {problem}"
    );
    problem
}
