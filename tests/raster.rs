//! Terrain models: synthetic rasters, files written by GDAL, real files where they are at hand, and broken ones.

mod broken;
mod foreign;
mod mosaic;
mod real;
mod slopes;
mod written;

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

/// The complaint about a file that must not open, its hint being a command or another way out.
#[track_caller]
fn refusal(what: &str, result: Result<Terrain, Fault>) -> Fault {
    let Err(problem) = result else {
        panic!("{what} must be refused")
    };
    assert!(
        matches!(problem.kind(), Code::TerrainBroken | Code::TerrainRefused),
        "{what}: {problem}"
    );
    assert!(
        schrund::say::fault::hint(&problem, Default::default())
            .is_some_and(|h| h.to_string().len() > 20),
        "{what} has advice: {problem}"
    );
    problem
}
