//! An inventory with an index beside many tracks: of it what lies near each is read, so that what is held does not grow with it.

use std::{
    collections::BTreeMap,
    sync::{Mutex, PoisonError},
};

use schrund::{
    fault::{Fault, Noted},
    read::{
        input::Input,
        lay::{self, Sources},
    },
    trip::{route::Route, zone::Zone},
};

use crate::{args::LaidArgs, inputs, show::Show};

/// The inventory, and what was noticed where it was read.
pub(super) struct IndexedInventory {
    name: String,
    /// By its code what is still to be told, with the track near which it was noticed; nothing where it was told.
    noticed: Mutex<BTreeMap<&'static str, Option<(String, Fault)>>>,
}

impl IndexedInventory {
    /// Takes it out of what is read for all tracks; nothing where there is none, or none with an index.
    pub(super) fn taken_from(sources: &mut Sources<'_>, laid: &LaidArgs) -> Option<Self> {
        let Some(Input {
            name,
            source: Ok(file),
        }) = &mut sources.glaciers_near
        else {
            return None;
        };
        // What is wrong with it is told with all other faults, by whoever reads it.
        if !lay::has_index(name, file).unwrap_or(false) {
            return None;
        }
        let name = inputs::files(laid, sources.trip.as_ref()).glaciers?;
        (sources.glaciers_near, sources.glaciers_later) = (None, true);
        Some(Self {
            name,
            noticed: Mutex::default(),
        })
    }

    /// What of it lies near a track.
    pub(super) fn beside(&self, track: &str, route: &Route) -> Result<Vec<Zone>, Vec<Fault>> {
        let Noted { value, notes } = lay::glaciers_near(inputs::sought(&self.name), route)?;
        let mut noticed = self.noticed.lock().unwrap_or_else(PoisonError::into_inner);
        for note in notes {
            let new = || Some((track.to_owned(), note.clone()));
            let known = noticed.entry(note.code()).or_insert_with(new);
            // On many cores the first one is another one each time: the first by name is told.
            if known
                .as_ref()
                .is_some_and(|(first, _)| track < first.as_str())
            {
                *known = new();
            }
        }
        Ok(value)
    }

    /// Tells once what was noticed of a kind.
    pub(super) fn notices(&self, show: &Show) {
        let mut noticed = self.noticed.lock().unwrap_or_else(PoisonError::into_inner);
        for note in noticed.values_mut() {
            if let Some((_, note)) = note.take() {
                show.notices(&[note]);
            }
        }
    }
}
