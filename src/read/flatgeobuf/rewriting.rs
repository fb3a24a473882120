//! A file as a text of GeoJSON, made while it is read: one feature in memory at a time.

use std::{
    collections::VecDeque,
    io::{self, Read},
};

use super::{
    bytes::at_feature,
    feature::{self, Lies, Taken},
    features::{FeatureBytes, Features},
    near::Near,
    opening::Preamble,
};
use crate::{
    cores,
    fault::{Fault, flatgeobuf::InFlatgeobuf},
    read::geojson::{READ, ZonesTaken},
};

/// A file as GeoJSON.
pub(super) struct Rewriting<'b> {
    opening: Preamble,
    features: Features<'b>,
    near: Option<Near>,
    text: Vec<u8>,
    /// How much of the text was handed on.
    handed: usize,
    stage: Stage,
    /// The number in the file of each feature that was taken over or written.
    numbers: Vec<usize>,
    /// Features that were read and not yet taken or written, and why there are no more.
    ahead: VecDeque<FeatureBytes>,
    stopped: Option<Fault>,
    /// Features that the file holds, as far as was seen: far ones may not have been.
    pub(super) passed: u64,
    /// What is wrong with the file; where it makes no sense the text ends soundly.
    pub(super) faults: Vec<Fault>,
}

#[derive(Clone, Copy, PartialEq)]
enum Stage {
    Begins,
    Features,
    Ended,
}

/// So many bytes of features are taken over together at least. Our judgement.
const TOGETHER: usize = 1 << 20;
/// Outlines that are no polygons and are told one by one. Our judgement.
const MOST_CURVED: usize = 5;

impl<'b> Rewriting<'b> {
    pub(super) fn of(opening: Preamble, features: Features<'b>, near: Option<Near>) -> Self {
        Self {
            passed: opening.some_features(),
            opening,
            features,
            near,
            text: Vec::new(),
            handed: 0,
            stage: Stage::Begins,
            numbers: Vec::new(),
            ahead: VecDeque::new(),
            stopped: None,
            faults: Vec::new(),
        }
    }

    /// Whether only what lies near is written.
    pub(super) fn is_near(&self) -> bool {
        self.near.is_some()
    }

    /// The number in the file of a feature by its number in the text, from 1.
    pub(super) fn number(&self, in_text: usize) -> usize {
        let at = in_text.checked_sub(1);
        let known = at.and_then(|at| self.numbers.get(at));
        known.copied().unwrap_or(in_text)
    }

    /// Writes on; the text that was handed on before is gone.
    fn more(&mut self) {
        (self.handed, self.stage) = (
            0,
            match self.stage {
                Stage::Begins => {
                    self.text
                        .extend(br#"{"type":"FeatureCollection","features":["#);
                    self.text.extend(self.in_place_of_taken());
                    Stage::Features
                }
                Stage::Features => {
                    self.text.clear();
                    match self.next() {
                        Ok(Some((number, bytes))) => {
                            self.passed = self.passed.max(number);
                            self.feature(number, &bytes)
                        }
                        Ok(None) => self.ends(),
                        Err(fault) => {
                            self.faults.push(fault);
                            self.ends()
                        }
                    }
                }
                Stage::Ended => {
                    self.text.clear();
                    Stage::Ended
                }
            },
        );
    }

    /// What stands in the list for the features that were taken over.
    fn in_place_of_taken(&self) -> &'static [u8] {
        if self.numbers.is_empty() { b"" } else { READ }
    }

    fn next(&mut self) -> Result<Option<FeatureBytes>, Fault> {
        match (self.ahead.pop_front(), self.stopped.take()) {
            (Some(feature), stopped) => {
                self.stopped = stopped;
                Ok(Some(feature))
            }
            (None, Some(fault)) => Err(fault),
            (None, None) => self.features.next(),
        }
    }

    /// Hands features with a plain outline over as numbers, for as long as they come; the first other one and what is
    /// behind it is left to be written.
    pub(super) fn take_over(&mut self, zones: &mut ZonesTaken<'_>) {
        loop {
            let some = self.some();
            if some.is_empty() {
                return;
            }
            let taken = cores::map(&some, |(_, bytes)| {
                feature::taken(bytes, &self.opening, self.near.as_ref())
            });
            let mut some = some.into_iter();
            for taken in taken {
                let Some((number, bytes)) = some.next() else {
                    break;
                };
                match taken {
                    Taken::Far => {}
                    Taken::Ice(feature) => {
                        zones.take(*feature);
                        self.count(number);
                    }
                    Taken::Other => {
                        self.ahead.push_back((number, bytes));
                        self.ahead.extend(some);
                        return;
                    }
                }
                self.passed = self.passed.max(number);
            }
        }
    }

    /// Features for all cores, none where no more come.
    fn some(&mut self) -> Vec<FeatureBytes> {
        let (mut some, mut held) = (Vec::new(), 0);
        while held < TOGETHER && self.stopped.is_none() {
            match self.features.next() {
                Ok(Some(feature)) => {
                    held += feature.1.len();
                    some.push(feature);
                }
                Ok(None) => break,
                Err(fault) => self.stopped = Some(fault),
            }
        }
        some
    }

    fn count(&mut self, number: u64) {
        let number = usize::try_from(number).unwrap_or(usize::MAX);
        self.numbers.push(number);
    }

    fn feature(&mut self, number: u64, bytes: &[u8]) -> Stage {
        if !self.numbers.is_empty() {
            self.text.extend(b",\n");
        }
        let begins = self.text.len();
        let written = feature::write(bytes, &self.opening, self.near.as_ref(), &mut self.text);
        match written {
            Ok(Lies::Near) => self.count(number),
            Ok(Lies::Far) => self.text.clear(),
            Err(curved @ InFlatgeobuf::Curved(_)) => {
                self.tell(curved, number);
                // What comes behind it keeps its number.
                self.text.truncate(begins);
                self.text
                    .extend(br#"{"type":"Feature","properties":null,"geometry":null}"#);
                self.count(number);
            }
            Err(broken) => {
                self.faults.push(Fault::new(broken, at_feature(number)));
                self.text.clear();
                return self.ends();
            }
        }
        Stage::Features
    }

    /// Files a complaint of which there may be many.
    fn tell(&mut self, what: InFlatgeobuf, number: u64) {
        let told = self.faults.len();
        match self.faults.last_mut() {
            Some(last) if told >= MOST_CURVED => last.more += 1,
            _ => self.faults.push(Fault::new(what, at_feature(number))),
        }
    }

    fn ends(&mut self) -> Stage {
        self.text.extend(b"]}");
        Stage::Ended
    }
}

impl Read for Rewriting<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        while self.handed >= self.text.len() {
            if self.stage == Stage::Ended && self.text.is_empty() {
                return Ok(0);
            }
            self.more();
        }
        let mut rest = self.text.get(self.handed..).unwrap_or_default();
        let count = rest.read(into)?;
        self.handed += count;
        Ok(count)
    }
}
