//! What a call leaves for the next one of the same process: inside a page there are many. It changes no answer.

use std::{
    hash::{DefaultHasher, Hash, Hasher},
    io::Cursor,
    mem,
    sync::{LazyLock, Mutex, PoisonError},
};

use schrund::{
    fault::{Fault, Noted},
    physics::hold_dynamic::Followed,
    raster::Terrain,
    read::{input::Input, lay},
};

use crate::source;

/// The falls that earlier plans followed.
static FOLLOWED: LazyLock<Mutex<Followed>> = LazyLock::new(Mutex::default);
/// The terrain models of the last plan.
static GROUND: Mutex<Option<KeptGround>> = Mutex::new(None);

/// Terrain models that were opened, and the files they were.
pub(crate) struct KeptGround {
    files: Vec<ModelFile>,
    pub(crate) models: Noted<Terrain>,
}

/// A file by its name and all that it holds.
type ModelFile = (String, u64);

/// Those falls, for the next plan.
pub(crate) fn followed() -> Followed {
    mem::take(&mut *FOLLOWED.lock().unwrap_or_else(PoisonError::into_inner))
}

/// Keeps them for the plan after it.
pub(crate) fn keep(followed: Followed) {
    *FOLLOWED.lock().unwrap_or_else(PoisonError::into_inner) = followed;
}

/// Terrain models as they were opened for the last plan, or opened now; they remember the heights they were asked for.
///
/// # Errors
/// As [`lay::terrain`].
pub(crate) fn ground(names: &[String]) -> Result<KeptGround, Vec<Fault>> {
    let whole = |name: &String| source::whole(name, source::seekable(name)?);
    let contents = names.iter().map(whole).collect::<Result<Vec<_>, _>>();
    let contents = contents.map_err(|fault| vec![fault])?;
    let files = names.iter().zip(&contents);
    let files: Vec<ModelFile> = files
        .map(|(name, bytes)| (name.clone(), hash(bytes)))
        .collect();
    let last = GROUND.lock().unwrap_or_else(PoisonError::into_inner).take();
    if let Some(last) = last.filter(|last| last.files == files) {
        let Noted { value, notes } = last.models;
        let value = value.afresh();
        return Ok(KeptGround {
            files,
            models: Noted { value, notes },
        });
    }
    let models = names.iter().zip(contents);
    let models = models.map(|(name, bytes)| Input::new(name, Box::new(Cursor::new(bytes)) as _));
    let Noted { value, notes } = lay::terrain(models.collect())?;
    let value = value.remembering();
    Ok(KeptGround {
        files,
        models: Noted { value, notes },
    })
}

impl KeptGround {
    /// Without the models, which go into a plan; their notes stay.
    pub(crate) fn lent(self) -> (Noted<Terrain>, impl FnOnce(Terrain)) {
        let (files, notes) = (self.files, self.models.notes.clone());
        let back = |value| {
            let models = Noted { value, notes };
            Self { files, models }.keep();
        };
        (self.models, back)
    }

    /// Keeps them for the next plan.
    pub(crate) fn keep(self) {
        *GROUND.lock().unwrap_or_else(PoisonError::into_inner) = Some(self);
    }
}

fn hash(bytes: &[u8]) -> u64 {
    let mut hasher = DefaultHasher::new();
    bytes.hash(&mut hasher);
    hasher.finish()
}
