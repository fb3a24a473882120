//! Outline and properties become a zone, and the file a result.

use super::{
    gap::{self, GapTold},
    number::SNOW_DEPTH,
    properties::{self, NearMiss, Properties},
    reading::ZonesReading,
    rings::Mended,
    strike,
    text::Spot,
};
use serde_json::{Map, Value};

use crate::{
    fault::{
        Code, Fault, Item, Noted, Place,
        geojson::{InGeojson, NotPolygons},
    },
    trip::zone::{Gap, Outline, Zone},
};

impl ZonesReading<'_> {
    /// Judges the properties; a zone comes of it only where nothing is wrong with them.
    pub(super) fn zone(
        &mut self,
        outline: Outline,
        mut properties: Properties,
        feature: &Item,
        at: Spot,
    ) {
        self.numbers += 1;
        let mut faults = properties.doubled();
        faults.extend(properties.nul());
        let name = properties.name();
        drop(properties.text("name"));
        let gap = gap::told(&mut properties, &mut faults);
        let depth = properties::number(&mut properties, "snow_depth_m", SNOW_DEPTH, &mut faults);
        let strike = strike::strike(&mut properties, &mut faults);
        let mut zone = Zone {
            number: self.numbers,
            feature: self.features,
            name,
            outline,
            gap: Gap {
                min_m: None,
                max_m: 0.0,
                assumed: true,
            },
            snow_depth_m: depth.worse(SNOW_DEPTH),
            surface: filed(
                properties.word("surface", &properties::SURFACES),
                &mut faults,
            ),
            strike,
            rope: filed(
                properties.word("rope", &properties::ROPE_WORDS),
                &mut faults,
            ),
            observed_on: properties.text("observed_on"),
            source: properties.text("source"),
            note: properties.text("note"),
            other: serde_json::Map::new(),
        };
        let misses = properties.near_misses(&mut self.names);
        let (other, met) = properties.rest();
        let near = misses.iter().find(|miss| miss.right.starts_with("gap"));
        // The complaint about zones without a width names it too.
        let is_told = self.given.gap_m.is_none() && matches!(gap, GapTold::Nothing(_));
        let told = near.filter(|_| is_told).map(|miss| miss.given.clone());
        let gap = self.gap(gap, feature, near, &other);
        let untold = misses
            .into_iter()
            .filter(|miss| Some(&miss.given) != told.as_ref());
        faults.extend(untold.map(|miss| miss.fault));
        faults.extend(met);
        for fault in faults {
            self.add(fault, Some(feature), at);
        }
        if let Some(gap) = gap {
            (zone.gap, zone.other) = (gap, other);
            self.zones.push(zone);
        }
    }

    /// The gap as told, or as the leader says to assume.
    fn gap(
        &mut self,
        told: GapTold,
        feature: &Item,
        near: Option<&NearMiss>,
        others: &Map<String, Value>,
    ) -> Option<Gap> {
        match told {
            GapTold::Width(gap) => Some(gap),
            GapTold::Nonsense => None,
            GapTold::Nothing(not_given) => {
                self.missing.add(feature, near, not_given, others.keys());
                let assumed = self.given.gap_m?;
                let at_least = not_given.at_least_m;
                let max_m = at_least.map_or(assumed, |low| low.max(assumed));
                Some(Gap {
                    min_m: at_least,
                    max_m,
                    assumed: true,
                })
            }
        }
    }

    pub(super) fn finish(mut self) -> Result<Noted<Vec<Zone>>, Vec<Fault>> {
        std::mem::take(&mut self.shapes).keep(&self.file);
        if self.log.holds(Code::ForeignCrs) {
            self.log.forget(Code::ProjectedPosition);
        }
        let missing = std::mem::take(&mut self.missing);
        if let Some(fault) = missing.fault(&self.file, &self.given, self.numbers) {
            self.log.add(fault);
        }
        self.count_up();
        let (mut faults, mut notes) = self.log.finish();
        if faults.is_empty() && self.zones.is_empty() {
            let none = InGeojson::NoZones(self.features, self.counts.skipped);
            let place = Place::file(&self.file);
            let only = self.left_out.filter(|_| self.features == 1);
            let place = only.into_iter().fold(place, Place::with_item);
            faults.push(Fault::new(none, place));
            // The fault says itself what was left out.
            notes.retain(|note| note.kind() != Code::NotAPolygon);
        }
        if !faults.is_empty() {
            faults.extend(notes);
            return Err(faults);
        }
        self.zones.shrink_to_fit();
        Ok(Noted {
            value: self.zones,
            notes,
        })
    }

    /// Says once, with a count, what was left out or mended.
    fn count_up(&mut self) {
        let NotPolygons {
            points,
            lines,
            empty,
        } = self.counts.skipped;
        let tangled = self.counts.tangled();
        let Mended {
            closed,
            no_area,
            beyond,
            misnested,
        } = self.counts.mended;
        let notes = [
            (
                points + lines + empty,
                InGeojson::NotPolygons(self.counts.skipped),
            ),
            (no_area, InGeojson::NoArea(no_area)),
            (closed, InGeojson::RingsClosed(closed)),
            (tangled, InGeojson::RingsTangled(tangled)),
            (beyond, InGeojson::LongitudesTakenBack(beyond)),
            (misnested.order, InGeojson::OuterNotFirst(misnested.order)),
            (misnested.apart, InGeojson::RingsApart(misnested.apart)),
            (misnested.partly, InGeojson::HolesStickOut(misnested.partly)),
        ];
        for (count, what) in notes {
            if count > 0 {
                self.log.add(Fault::new(what, Place::file(&self.file)));
            }
        }
    }
}

/// The value, or its default with the complaint filed.
fn filed<T: Default>(result: Result<T, Fault>, faults: &mut Vec<Fault>) -> T {
    result.unwrap_or_else(|fault| {
        faults.push(fault);
        T::default()
    })
}
