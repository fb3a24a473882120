//! Outline and properties become a zone, and the file a result.

use super::{
    gap::{self, Told},
    number::SNOW_DEPTH,
    properties::{self, Properties},
    reading::Reading,
    rings::Mended,
    shape::Skipped,
    strike, tangle,
    text::Spot,
};
use crate::{
    fault::{Code, Noted, Place, Problem},
    trip::zone::{Gap, Outline, Zone},
};

impl Reading {
    /// Judges the properties; a zone comes of it only where nothing is wrong with them.
    pub(super) fn zone(
        &mut self,
        outline: Outline,
        mut properties: Properties,
        label: &str,
        at: Spot,
    ) {
        self.numbers += 1;
        let mut problems = properties.doubled();
        let name = properties.name();
        drop(properties.text("name"));
        let gap = gap::told(&mut properties, &mut problems);
        let depth = properties::number(&mut properties, "snow_depth_m", &SNOW_DEPTH, &mut problems);
        let strike = strike::strike(&mut properties, &mut problems);
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
            snow_depth_m: depth.worse(&SNOW_DEPTH),
            surface: filed(
                properties.word("surface", &properties::SURFACES),
                &mut problems,
            ),
            strike,
            rope: filed(
                properties.word("rope", &properties::ROPE_WORDS),
                &mut problems,
            ),
            observed_on: properties.text("observed_on"),
            source: properties.text("source"),
            note: properties.text("note"),
            other: serde_json::Map::new(),
        };
        let misses = properties.near_misses();
        let gap = self.gap(
            gap,
            label,
            misses
                .iter()
                .find(|m| m.1.starts_with("gap"))
                .map(|m| m.0.as_str()),
        );
        problems.extend(misses.into_iter().map(|(_, _, problem)| problem));
        let (other, met) = properties.rest();
        problems.extend(met);
        for problem in problems {
            self.add(problem, Some(label), at);
        }
        if let Some(gap) = gap {
            (zone.gap, zone.other) = (gap, other);
            self.zones.push(zone);
        }
    }

    /// The gap as told, or as the leader says to assume.
    fn gap(&mut self, told: Told, label: &str, near: Option<&str>) -> Option<Gap> {
        match told {
            Told::Width(gap) => Some(gap),
            Told::Nonsense => None,
            Told::Nothing(at_least) => {
                self.missing.add(label, near, at_least);
                let assumed = self.given.gap_m?;
                let max_m = at_least.map_or(assumed, |low| low.max(assumed));
                Some(Gap {
                    min_m: at_least,
                    max_m,
                    assumed: true,
                })
            }
        }
    }

    pub(super) fn finish(mut self) -> Result<Noted<Vec<Zone>>, Vec<Problem>> {
        if self.log.holds(Code::ForeignCrs) {
            self.log.forget(Code::ProjectedPosition);
        }
        let missing = std::mem::take(&mut self.missing);
        if let Some(problem) = missing.problem(&self.file, &self.given, self.numbers) {
            self.log.add(problem);
        }
        self.count_up();
        let (mut faults, notes) = self.log.finish();
        if faults.is_empty() && self.zones.is_empty() {
            faults.push(no_zones(&self.file, self.features));
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
        let Skipped {
            points,
            lines,
            empty,
        } = self.skipped;
        let left_out = [
            (points, "point"),
            (lines, "line"),
            (empty, "empty geometry"),
        ];
        let left_out: Vec<String> = left_out
            .into_iter()
            .filter(|(n, _)| *n > 0)
            .map(counted)
            .collect();
        let tangled = tangle::count(&self.zones).unwrap_or(0);
        let Mended { closed, no_area } = self.mended;
        let left_out = left_out.join(", ");
        let polygons = counted((no_area, "polygon"));
        let (open, crossed) = (counted((closed, "ring")), counted((tangled, "ring")));
        let notes = [
            (
                points + lines + empty,
                Code::NotAPolygon,
                format!("{left_out} left out: only polygons are zones"),
            ),
            (
                no_area,
                Code::NoArea,
                format!("{polygons} left out: fewer than three different points cover nothing"),
            ),
            (
                closed,
                Code::RingClosed,
                format!("{open} closed: the last point was not the first"),
            ),
            (
                tangled,
                Code::RingTangled,
                format!(
                    "{crossed} with a line that touches or crosses itself: what a ring winds round counts as ice"
                ),
            ),
        ];
        for (count, code, says) in notes {
            if count > 0 {
                self.log
                    .add(Problem::new(code, Place::file(&self.file), says));
            }
        }
    }
}

fn no_zones(file: &str, features: usize) -> Problem {
    let says = match features {
        0 => "the file holds no feature at all".to_owned(),
        1 => "the only feature is no polygon with an area".to_owned(),
        n => format!("none of the {n} features is a polygon with an area"),
    };
    Problem::new(Code::NoZones, Place::file(file), says)
        .hint("draw the broken ice as polygons and give each a `gap_m`")
}

/// `1 ring`, `2 rings`.
fn counted((count, noun): (usize, &str)) -> String {
    match (count, noun.strip_suffix('y')) {
        (1, _) => format!("1 {noun}"),
        (n, Some(stem)) => format!("{n} {stem}ies"),
        (n, None) => format!("{n} {noun}s"),
    }
}

/// The value, or its default with the complaint filed.
fn filed<T: Default>(result: Result<T, Problem>, problems: &mut Vec<Problem>) -> T {
    result.unwrap_or_else(|problem| {
        problems.push(problem);
        T::default()
    })
}
