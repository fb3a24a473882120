//! One input read alone.

use crate::{
    fault::{Fault, Noted},
    practice::{Rules, set},
    raster::{self, Terrain},
    read::{
        endless,
        geojson::Given,
        gpx, ice,
        input::{Input, Text},
    },
    trip::{route::Route, zone::Zone},
};

/// Reads a route.
///
/// # Errors
/// It could not be opened, or is longer than anybody walks; else see [`gpx::route`].
pub fn route(input: Input<Text<'_>>) -> Result<Noted<Route>, Vec<Fault>> {
    let Input {
        name,
        source,
        limits,
    } = input;
    let read = gpx::route_within(&name, source?, &limits)?;
    endless::refused(read, &name, &limits)
}

/// Reads zones, with a gap width in metres for those that give none.
///
/// # Errors
/// It could not be opened; else see [`crate::read::geojson::zones`].
pub fn zones(input: Input<Text<'_>>, gap_m: Option<f64>) -> Result<Noted<Vec<Zone>>, Vec<Fault>> {
    ice::read(input, &Given { gap_m }, None)
}

/// Reads a practice file.
///
/// # Errors
/// It could not be opened, or see [`Rules::with_practice`].
pub fn practice(input: Input<Text<'_>>) -> Result<Rules, Vec<Fault>> {
    let name = input.name.clone();
    let text = input.whole()?;
    Rules::with_practice(&set::Source::File {
        name: &name,
        text: &text,
    })
}

/// Opens terrain models as one.
///
/// # Errors
/// Every model that could not be opened, is broken or cannot be read exactly.
pub fn terrain(models: Vec<Input<raster::RasterSource>>) -> Result<Noted<Terrain>, Vec<Fault>> {
    let mut terrain = Terrain::new();
    let (mut notes, mut faults) = (Vec::new(), Vec::new());
    for model in models {
        terrain = terrain.within(model.limits);
        let added = model.source.and_then(|source| {
            let added = terrain.add(&model.name, source);
            added.map_err(|fault| vec![fault])
        });
        match added {
            Ok(told) => notes.extend(told),
            Err(told) => faults.extend(told),
        }
    }
    if faults.is_empty() {
        let value = terrain;
        Ok(Noted { value, notes })
    } else {
        Err(faults)
    }
}
