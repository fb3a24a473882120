//! Terrain models from files.

use schrund::{
    fault::{Fault, Noted},
    raster::Terrain,
    read::lay,
};

use crate::source;

/// Opens all models.
pub(crate) fn open(names: &[String]) -> Result<Noted<Terrain>, Vec<Fault>> {
    let model = |name: &String| source::within(name, source::seekable(name));
    lay::terrain(names.iter().map(model).collect())
}

/// Opens one model and says what it is.
pub(crate) fn check(name: &str) -> Result<Noted<String>, Vec<Fault>> {
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
