//! Terrain models from files.

use schrund::{
    fault::{Noted, Problem},
    raster::Terrain,
};

use crate::source;

/// First bytes of TIFF and BigTIFF files, little and big end first.
const MAGIC: [&[u8]; 4] = [b"II*\0", b"MM\0*", b"II+\0", b"MM\0+"];

/// Opens all models.
pub(crate) fn open(names: &[String]) -> Result<Noted<Terrain>, Vec<Problem>> {
    let mut terrain = Terrain::new();
    let (mut notes, mut faults) = (Vec::new(), Vec::new());
    for name in names {
        let file = source::seekable(name);
        match file.and_then(|file| terrain.add(name, Box::new(file))) {
            Ok(told) => notes.extend(told),
            Err(fault) => faults.push(fault),
        }
    }
    if faults.is_empty() {
        Ok(Noted {
            value: terrain,
            notes,
        })
    } else {
        Err(faults)
    }
}

/// Whether a file is a terrain model, by its first bytes or by its name where it has none of its own.
pub(crate) fn is_terrain(name: &str, start: &[u8]) -> bool {
    let ends = |end: &str| name.to_ascii_lowercase().ends_with(end);
    MAGIC.iter().any(|magic| start.starts_with(magic))
        || [".hgt", ".tif", ".tiff"].into_iter().any(ends)
}

/// Opens one model and says what it is.
pub(crate) fn check(name: &str) -> Result<Noted<String>, Vec<Problem>> {
    let opened = open(&[name.to_owned()])?;
    let cell_m = opened.value.models().next().map_or(0.0, |(_, m)| m);
    Ok(Noted {
        value: format!(
            "{}: a terrain model with cells of {cell_m:.1} m",
            source::shown(name)
        ),
        notes: opened.notes,
    })
}
