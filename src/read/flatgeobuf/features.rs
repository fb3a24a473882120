//! The bytes of features, one after the other: all of a file, or those that its index told of.

use std::{
    io::{self, Read, Seek, SeekFrom},
    ops::Range,
    vec,
};

use super::{
    ahead::{ReadAhead, runs_to},
    bytes::{at_feature, fault, read_exactly, stopped},
    index::FoundFeature,
    opening::Rest,
};
use crate::{
    fault::{
        Fault,
        flatgeobuf::{FlatgeobufPart, InFlatgeobuf},
    },
    limits::{InputLimit, InputLimits},
    read::input::Seekable,
};

/// Features of a file, one in memory at a time.
pub(super) struct Features<'b> {
    way: FeatureWay<'b>,
    /// Longest feature, MiB.
    most_mib: u64,
}

/// Where they are read.
pub(super) enum FeatureWay<'b> {
    Row {
        bytes: Box<dyn Read + 'b>,
        /// The number of the one read last.
        number: u64,
        /// How many there are, where the file says so.
        all: Option<u64>,
    },
    Found {
        bytes: ReadAhead,
        list: vec::IntoIter<FoundFeature>,
        features_at: u64,
        length: u64,
        /// Bytes that features can still have: none stands in the file twice.
        left: u64,
    },
}

/// One feature: its number from 1, and its bytes with their length in front.
pub(super) type FeatureBytes = (u64, Vec<u8>);

impl<'b> FeatureWay<'b> {
    /// All features of a file that was read as far as its index.
    pub(super) fn in_a_row(mut bytes: impl Read + 'b, rest: &Rest) -> Result<Self, Fault> {
        let index = &mut (&mut bytes).take(rest.index_bytes);
        let skipped = io::copy(index, &mut io::sink()).map_err(|why| stopped(&why))?;
        if skipped < rest.index_bytes {
            return Err(fault(InFlatgeobuf::CutOff));
        }
        Ok(Self::Row {
            bytes: Box::new(bytes),
            number: 0,
            all: rest.features,
        })
    }

    /// Those that an index told of, in a file of so many bytes.
    pub(super) fn found(
        bytes: Seekable,
        rest: &Rest,
        found: Vec<FoundFeature>,
        length: u64,
    ) -> Self {
        let features_at = rest.features_at();
        Self::Found {
            bytes: ReadAhead::of(bytes),
            list: found.into_iter(),
            features_at,
            length,
            left: length.saturating_sub(features_at),
        }
    }
}

impl<'b> Features<'b> {
    pub(super) fn of(way: FeatureWay<'b>, limits: &InputLimits) -> Self {
        let most_mib = limits[InputLimit::FeatureMib];
        Self { way, most_mib }
    }

    /// The next one.
    ///
    /// # Errors
    /// The file ends or makes no sense there: nothing more can be read of it.
    pub(super) fn next(&mut self) -> Result<Option<FeatureBytes>, Fault> {
        let part = (FlatgeobufPart::Feature, self.most_mib);
        match &mut self.way {
            FeatureWay::Row { all, number, .. } if all.is_some_and(|all| *number >= all) => {
                Ok(None)
            }
            FeatureWay::Row { bytes, number, all } => {
                *number += 1;
                match read_exactly(bytes, part).map_err(|fault| numbered(fault, *number))? {
                    Some(held) => Ok(Some((*number, held))),
                    None if all.is_none() => Ok(None),
                    None => Err(fault(InFlatgeobuf::CutOff)),
                }
            }
            FeatureWay::Found {
                bytes,
                list,
                features_at,
                length,
                left,
            } => {
                let Some(found) = list.next() else {
                    return Ok(None);
                };
                let FoundFeature {
                    number,
                    offset,
                    next,
                } = found;
                let at_byte = features_at.saturating_add(offset);
                let ends = runs_to(offset, next, list.as_slice());
                // What the index says is a wish: where no features stand nothing is read.
                let ahead = features_at.saturating_add(ends).min(*length);
                let told = bytes.hold(at_byte..ahead).map_err(|why| stopped(&why));
                let held = told.and_then(|()| at(bytes, part, at_byte..*length, left));
                held.map(|held| Some((number, held)))
                    .map_err(|fault| numbered(fault, number))
            }
        }
    }
}

/// What stands at a byte, in a file that ends somewhere.
fn at(
    bytes: &mut ReadAhead,
    part: (FlatgeobufPart, u64),
    Range {
        start: at,
        end: length,
    }: Range<u64>,
    left: &mut u64,
) -> Result<Vec<u8>, Fault> {
    let broken = || fault(InFlatgeobuf::Broken(FlatgeobufPart::Index));
    if at >= length {
        return Err(broken());
    }
    bytes
        .seek(SeekFrom::Start(at))
        .map_err(|why| stopped(&why))?;
    let held = read_exactly(bytes, part)?.ok_or_else(broken)?;
    *left = left.checked_sub(held.len() as u64).ok_or_else(broken)?;
    Ok(held)
}

fn numbered(mut fault: Fault, number: u64) -> Fault {
    fault.at = at_feature(number);
    fault
}
