//! What a call leaves for the next one of the same process: inside a page there are many. It changes no answer.

use std::{
    hash::{DefaultHasher, Hash, Hasher},
    io::Cursor,
    sync::{LazyLock, Mutex, PoisonError},
};

use schrund::{
    Memory,
    fault::{Fault, Noted},
    raster::Terrain,
    read::{geojson::KnownShapes, lay},
};

use crate::source;

/// What earlier plans found out.
pub(crate) static MEMORY: LazyLock<Memory> = LazyLock::new(Memory::default);
/// Geometries that were read for earlier plans.
pub(crate) static SHAPES: LazyLock<KnownShapes> = LazyLock::new(KnownShapes::default);
/// The terrain models of the last plan.
static GROUND: Mutex<Option<KeptGround>> = Mutex::new(None);

/// Terrain models that were opened, and the files they were.
struct KeptGround {
    files: Vec<ModelFile>,
    models: Noted<Terrain>,
}

/// A file by its name and all that it holds.
type ModelFile = (String, u64);

/// Terrain models as they were opened for the last plan, or opened now.
///
/// # Errors
/// As [`lay::terrain`].
pub(crate) fn ground(names: &[String]) -> Result<Noted<Terrain>, Vec<Fault>> {
    let whole = |name: &String| source::whole(name, source::seekable(name)?);
    let contents = names.iter().map(whole).collect::<Result<Vec<_>, _>>();
    let contents = contents.map_err(|fault| vec![fault])?;
    let files = names.iter().zip(&contents);
    let files: Vec<ModelFile> = files
        .map(|(name, bytes)| (name.clone(), hash(bytes)))
        .collect();
    let mut last = GROUND.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(last) = last.as_ref().filter(|last| last.files == files) {
        let Noted { value, notes } = last.models.clone();
        let value = value.afresh();
        return Ok(Noted { value, notes });
    }
    let models = names.iter().zip(contents);
    let models =
        models.map(|(name, bytes)| source::within(name, Ok(Box::new(Cursor::new(bytes)) as _)));
    let models = lay::terrain(models.collect())?;
    *last = Some(KeptGround {
        files,
        models: models.clone(),
    });
    Ok(models)
}

fn hash(bytes: &[u8]) -> u64 {
    let mut hasher = DefaultHasher::new();
    bytes.hash(&mut hasher);
    hasher.finish()
}
