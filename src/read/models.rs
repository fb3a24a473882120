//! Terrain models opened together.

use super::input::Input;
use crate::{
    fault::{Fault, Noted},
    raster::{self, Terrain},
};

/// Opens terrain models as one.
///
/// # Errors
/// Every model that could not be opened, is broken or cannot be read exactly.
pub fn terrain(models: Vec<Input<raster::RasterSource>>) -> Result<Noted<Terrain>, Vec<Fault>> {
    let mut terrain = Terrain::new();
    let (mut notes, mut faults) = (Vec::new(), Vec::new());
    for model in models {
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
