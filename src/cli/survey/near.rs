//! Ice with an index beside many tracks: of it what lies near each is read, so that what is held does not grow with it.

use std::{
    collections::BTreeMap,
    sync::{Mutex, PoisonError},
};

use schrund::{
    Survey,
    fault::{Fault, Noted},
    plan::track::TrackFacts,
    read::{
        input::{Input, Seekable},
        lay::{self, Sources},
    },
    survey::IceNear,
    trip::{route::Route, zone::Zone},
};

use crate::{args::SurveyArgs, inputs, show::Show};

/// The files of ice that are looked up for each track; what has no index is read for all of them.
pub(super) struct IndexedIce {
    zones: Option<IndexedFile>,
    glaciers: Option<IndexedFile>,
    /// The width for zones that give none, metres.
    gap_m: Option<f64>,
}

impl IndexedIce {
    /// Takes them out of what is read for all tracks.
    pub(super) fn taken_from(sources: &mut Sources<'_>, args: &SurveyArgs) -> Self {
        let trip = sources.trip.as_ref();
        let said = trip.and_then(|trip| trip.source.as_ref().ok());
        let gap_m = said.and_then(|said| said.gap_m);
        let gap_m = args.laid.gap.or(gap_m);
        let glaciers = inputs::files(&args.laid, trip).glaciers;
        let glaciers = glaciers.filter(|_| has_index(&mut sources.glaciers_near));
        if glaciers.is_some() {
            (sources.glaciers_near, sources.glaciers_later) = (None, true);
        }
        sources.zones_later = has_index(&mut inputs::zones_sought(&args.zones));
        let zones = sources.zones_later.then(|| args.zones.clone());
        Self {
            zones: zones.map(IndexedFile::new),
            glaciers: glaciers.map(IndexedFile::new),
            gap_m,
        }
    }

    /// A track against the ice, with what lies near it of what is looked up.
    pub(super) fn held(
        &self,
        survey: &Survey<'_>,
        track: &str,
        line: &Route,
    ) -> Result<TrackFacts, Vec<Fault>> {
        let zones = self
            .zones
            .as_ref()
            .map(|file| file.beside(track, |file| lay::zones_near(file, line, self.gap_m)));
        let glaciers = self
            .glaciers
            .as_ref()
            .map(|file| file.beside(track, |file| lay::glaciers_near(file, line)));
        let (zones, glaciers) = (zones.transpose()?, glaciers.transpose()?);
        let near = IceNear {
            zones: zones.as_deref(),
            glaciers: glaciers.as_deref(),
        };
        survey.of_line_near(line, near)
    }

    /// Tells once what was noticed of a kind.
    pub(super) fn notices(&self, show: &Show) {
        let files = self.zones.iter().chain(&self.glaciers);
        files.for_each(|file| file.notices(show));
    }
}

/// What is wrong with a file is told with all other faults, by whoever reads it.
fn has_index(file: &mut Option<Input<Seekable>>) -> bool {
    match file {
        Some(Input {
            name,
            source: Ok(file),
            limits,
        }) => lay::has_index(name, file, limits).unwrap_or(false),
        _ => false,
    }
}

/// A file of outlines, and what was noticed where it was read.
struct IndexedFile {
    name: String,
    /// By its code what is still to be told, with the track near which it was noticed; nothing where it was told.
    noticed: Mutex<BTreeMap<&'static str, Option<(String, Fault)>>>,
}

impl IndexedFile {
    fn new(name: String) -> Self {
        Self {
            name,
            noticed: Mutex::default(),
        }
    }

    /// What of it lies near a track, by the reader that is given.
    fn beside(
        &self,
        track: &str,
        near: impl FnOnce(Input<Seekable>) -> Result<Noted<Vec<Zone>>, Vec<Fault>>,
    ) -> Result<Vec<Zone>, Vec<Fault>> {
        let Noted { value, notes } = near(inputs::sought(&self.name))?;
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

    fn notices(&self, show: &Show) {
        let mut noticed = self.noticed.lock().unwrap_or_else(PoisonError::into_inner);
        for note in noticed.values_mut() {
            if let Some((_, note)) = note.take() {
                show.notices(&[note]);
            }
        }
    }
}
