//! The index of a file: which features may lie near, and where they stand.
//!
//! It is a tree of boxes, each level in a row, the root first. How many nodes a level has and which of them are whose
//! children follows from the number of features; the offsets of inner nodes are not looked at, so there is no way into a
//! circle, and no more is read than the index is long.

use std::{
    io::{Seek, SeekFrom},
    ops::Range,
};

use super::{
    bytes::{fault, stopped},
    near::Near,
    opening::{NODE_BYTES, Rest},
};
use crate::{
    fault::{
        Fault,
        flatgeobuf::{FlatgeobufPart, InFlatgeobuf},
    },
    raster::ReadSeek,
};

/// Nodes that are read at once at most: 640 kB. Our judgement.
const MOST_NODES: u64 = 1 << 14;

/// A feature that may lie near.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct FoundFeature {
    /// Its number in the file, from 1.
    pub(super) number: u64,
    /// Bytes from where the features begin.
    pub(super) offset: u64,
}

/// The length of a file, bytes; it is read from its beginning afterwards.
pub(super) fn length(bytes: &mut impl Seek) -> Result<u64, Fault> {
    let length = bytes.seek(SeekFrom::End(0));
    let begun = length.and_then(|length| bytes.seek(SeekFrom::Start(0)).map(|_| length));
    begun.map_err(|why| stopped(&why))
}

/// The features that may lie near, as they stand in the file.
pub(super) fn found(
    bytes: &mut dyn ReadSeek,
    rest: &Rest,
    near: &Near,
) -> Result<Vec<FoundFeature>, Fault> {
    let mut found = Vec::new();
    let mut before = 0;
    let root = 0..rest.levels.first().copied().unwrap_or(0);
    let mut runs = Vec::from([root]);
    for (depth, level) in rest.levels.iter().enumerate() {
        let below = rest.levels.get(depth + 1);
        let mut next = Vec::new();
        for run in runs {
            let at = rest.index_at + (before + run.start) * NODE_BYTES;
            for (place, (corners, offset)) in run.clone().zip(nodes(bytes, at, &run)?) {
                if !near.may_hold(corners) {
                    continue;
                }
                match below {
                    Some(below) => add(&mut next, children(place, rest.node_size, *below)),
                    None => found.push(FoundFeature {
                        number: place + 1,
                        offset,
                    }),
                }
            }
        }
        runs = next;
        before += level;
    }
    Ok(found)
}

/// The children of a node by its place in its level, as places in the level below.
fn children(place: u64, node_size: u64, below: u64) -> Range<u64> {
    let from = place.saturating_mul(node_size).min(below);
    from..from.saturating_add(node_size).min(below)
}

/// Adds a run, to the last one where it goes on with it and that is not too long.
fn add(runs: &mut Vec<Range<u64>>, run: Range<u64>) {
    match runs.last_mut() {
        Some(last) if last.end == run.start && run.end - last.start <= MOST_NODES => {
            last.end = run.end;
        }
        _ => runs.push(run),
    }
}

/// Boxes and offsets of a run of nodes.
fn nodes(
    bytes: &mut dyn ReadSeek,
    at: u64,
    run: &Range<u64>,
) -> Result<Vec<([f64; 4], u64)>, Fault> {
    let broken = || fault(InFlatgeobuf::Broken(FlatgeobufPart::Index));
    bytes
        .seek(SeekFrom::Start(at))
        .map_err(|why| stopped(&why))?;
    // The index lies within the file, and a run within the index.
    let long = (run.end - run.start) * NODE_BYTES;
    let mut held = vec![0; usize::try_from(long).map_err(|_| broken())?];
    bytes.read_exact(&mut held).map_err(|why| stopped(&why))?;
    let (numbers, _) = held.as_chunks::<8>();
    let (nodes, _) = numbers.as_chunks::<5>();
    let node = |[west, south, east, north, offset]: &[[u8; 8]; 5]| {
        let corners = [west, south, east, north].map(|number| f64::from_le_bytes(*number));
        (corners, u64::from_le_bytes(*offset))
    };
    Ok(nodes.iter().map(node).collect())
}
