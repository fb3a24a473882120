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
    near::{Corners, Near},
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

/// Nodes between two runs that are read with them, to be asked for once: 16 kB, which take no longer to come than a server
/// takes to answer. Our judgement.
const NODES_BETWEEN: u64 = 400;

/// A feature that may lie near.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct FoundFeature {
    /// Its number in the file, from 1.
    pub(super) number: u64,
    /// Bytes from where the features begin.
    pub(super) offset: u64,
    /// Where the next one begins, as far as the nodes that were read tell; nobody relies on it.
    pub(super) next: Option<u64>,
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
        for stretch in joined(runs) {
            let at = rest.index_at + (before + stretch.read.start) * NODE_BYTES;
            let nodes = nodes(bytes, at, &stretch.read)?;
            for (place, node) in stretch.asked(&nodes) {
                if !near.may_hold(node.corners) {
                    continue;
                }
                match below {
                    Some(below) => add(&mut next, children(place, rest.node_size, *below)),
                    None => found.push(FoundFeature {
                        number: place + 1,
                        offset: node.offset,
                        next: stretch.node(&nodes, place + 1).map(|next| next.offset),
                    }),
                }
            }
        }
        runs = next;
        before += level;
    }
    Ok(found)
}

/// Runs that are read at once.
struct ReadAtOnce {
    read: Range<u64>,
    runs: Vec<Range<u64>>,
}

impl ReadAtOnce {
    /// The nodes of its runs, by their place in the level.
    fn asked<'n>(&'n self, nodes: &'n [Node]) -> impl Iterator<Item = (u64, &'n Node)> {
        let places = self.runs.iter().cloned().flatten();
        places.filter_map(|place| Some((place, self.node(nodes, place)?)))
    }

    fn node<'n>(&self, nodes: &'n [Node], place: u64) -> Option<&'n Node> {
        let at = place.checked_sub(self.read.start)?;
        nodes.get(usize::try_from(at).ok()?)
    }
}

/// Runs with those that are so close behind them that they are read at once.
fn joined(runs: Vec<Range<u64>>) -> Vec<ReadAtOnce> {
    let mut all: Vec<ReadAtOnce> = Vec::new();
    for run in runs {
        match all.last_mut() {
            Some(last)
                if run.start.saturating_sub(last.read.end) <= NODES_BETWEEN
                    && run.end.saturating_sub(last.read.start) <= MOST_NODES =>
            {
                last.read.end = run.end;
                last.runs.push(run);
            }
            _ => all.push(ReadAtOnce {
                read: run.clone(),
                runs: vec![run],
            }),
        }
    }
    all
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

/// A node as it stands in the file.
struct Node {
    corners: Corners,
    offset: u64,
}

/// The nodes of a run.
fn nodes(bytes: &mut dyn ReadSeek, at: u64, run: &Range<u64>) -> Result<Vec<Node>, Fault> {
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
        let offset = u64::from_le_bytes(*offset);
        Node { corners, offset }
    };
    Ok(nodes.iter().map(node).collect())
}
