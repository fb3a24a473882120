//! What stands before the features: magic bytes, header, and how long the index is.

use std::io::Read;

use flatbuffers::VerifierOptions;
use flatgeobuf::{ColumnType, Crs, GeometryType, Header, size_prefixed_root_as_header_with_opts};

use super::bytes::{LENGTH_BYTES, fault, read_exactly, stopped};
use crate::{
    fault::{
        Fault, Place,
        flatgeobuf::{FlatgeobufPart, InFlatgeobuf},
        geojson::InGeojson,
    },
    limits::{InputLimit, InputLimits},
    read::geojson::is_wgs84,
};

/// The first bytes of every file; the version stands behind them.
const MAGIC: &[u8; 3] = b"fgb";
/// The version that is read.
const VERSION: u8 = 3;
/// Bytes of the magic, the version and their repetition with the patch level.
const MAGIC_BYTES: usize = 8;
/// Bytes of a node of the index: a box of four numbers and an offset.
pub(super) const NODE_BYTES: u64 = 40;
/// Tables that point at the same bytes again and again count each time; sound ones share next to nothing. Our judgement.
const SHARED: usize = 8;
/// Bytes that short tables may take beside that. Our judgement.
const SHARED_AT_LEAST: usize = 1 << 16;
/// Tables within tables: a feature, its collection, its parts, no collection of collections without end. Our judgement.
const DEPTH: usize = 24;

/// One column of properties.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub(super) name: String,
    pub(super) kind: ColumnType,
}

/// What the header says, as far as it is needed.
#[derive(Debug)]
pub(super) struct Preamble {
    pub(super) columns: Vec<Column>,
    /// The type of all outlines; unknown where each has its own.
    pub(super) outlines: GeometryType,
    /// Features, none where the file does not say.
    features: u64,
    /// Children of a node of the index, none without index.
    node_size: u16,
    /// Bytes before the index.
    bytes: u64,
}

impl Preamble {
    /// Reads it from the beginning of a file.
    ///
    /// # Errors
    /// It is of another version, cut off, contradicts itself, or is in another system than longitude and latitude on WGS 84.
    pub(super) fn read(from: &mut impl Read, limits: &InputLimits) -> Result<Self, Fault> {
        let mut magic = [0; MAGIC_BYTES];
        from.read_exact(&mut magic).map_err(|why| stopped(&why))?;
        let [_, _, _, version, again @ .., _] = magic;
        if version != VERSION {
            return Err(fault(InFlatgeobuf::Version(version)));
        }
        if again != *MAGIC {
            return Err(broken());
        }
        let part = (FlatgeobufPart::Header, limits[InputLimit::HeaderMib]);
        let bytes = read_exactly(from, part)?.ok_or_else(|| fault(InFlatgeobuf::CutOff))?;
        let options = verified(bytes.len());
        let header = size_prefixed_root_as_header_with_opts(&options, &bytes);
        let header = header.map_err(|_| broken())?;
        if let Some(system) = header.crs() {
            known(&system)?;
        }
        Ok(Self::of(&header, bytes.len()))
    }

    /// Features, where the file says how many.
    pub(super) fn some_features(&self) -> u64 {
        self.features
    }

    fn of(header: &Header<'_>, bytes: usize) -> Self {
        Self {
            columns: columns(header.columns()),
            outlines: header.geometry_type(),
            features: header.features_count(),
            node_size: header.index_node_size(),
            bytes: (MAGIC_BYTES + bytes) as u64,
        }
    }
}

/// The columns of a list.
pub(super) fn columns<'b>(
    list: Option<flatbuffers::Vector<'b, flatbuffers::ForwardsUOffset<flatgeobuf::Column<'b>>>>,
) -> Vec<Column> {
    let column = |column: flatgeobuf::Column<'_>| Column {
        name: column.name().to_owned(),
        kind: column.type_(),
    };
    list.into_iter().flatten().map(column).collect()
}

/// How far tables are followed that stand in so many bytes.
pub(super) fn verified(bytes: usize) -> VerifierOptions {
    VerifierOptions {
        max_depth: DEPTH,
        max_apparent_size: bytes.saturating_mul(SHARED).saturating_add(SHARED_AT_LEAST),
        ..VerifierOptions::default()
    }
}

/// Passes longitude and latitude on WGS 84, and a system that says nothing of itself.
fn known(system: &Crs<'_>) -> Result<(), Fault> {
    let word = |text: Option<&str>| text.filter(|text| !text.is_empty()).map(str::to_owned);
    let org = word(system.org()).unwrap_or_else(|| "EPSG".to_owned());
    let code = match (system.code(), word(system.code_string())) {
        (0, code) => code,
        (code, _) => Some(code.to_string()),
    };
    let coded = code.map(|code| format!("{org}:{code}"));
    let name = coded.or_else(|| word(system.name()));
    let name = name.or_else(|| word(system.wkt()).map(|words| beginning(&words)));
    match name {
        Some(name) if !is_wgs84(&name) => {
            let place = Place::default().with_property("crs");
            Err(Fault::new(InGeojson::ForeignCrs(name), place))
        }
        _ => Ok(()),
    }
}

/// Signs of a system's own words that are told. Our judgement.
const TOLD: usize = 40;

fn beginning(words: &str) -> String {
    words.chars().take(TOLD).collect()
}

/// Where index and features stand.
#[derive(Clone, Debug)]
pub(super) struct Rest {
    /// Features, where the file says how many.
    pub(super) features: Option<u64>,
    /// Nodes of each level of the index, the root first; empty without index.
    pub(super) levels: Vec<u64>,
    /// Children of a node.
    pub(super) node_size: u64,
    /// Where the index begins, bytes.
    pub(super) index_at: u64,
    /// Its length, bytes.
    pub(super) index_bytes: u64,
}

impl Rest {
    /// By what the header says.
    ///
    /// # Errors
    /// There cannot be an index of so many features.
    pub(super) fn of(opening: &Preamble) -> Result<Self, Fault> {
        let count = opening.features;
        let (has_index, node_size) = (
            opening.node_size > 0 && count > 0,
            // As the format has it: a tree branches.
            u64::from(opening.node_size.max(2)),
        );
        let mut levels = if has_index { vec![count] } else { Vec::new() };
        while let Some(last) = levels.last().filter(|last| **last > 1 || levels.len() == 1) {
            levels.push(last.div_ceil(node_size));
        }
        levels.reverse();
        let nodes = levels
            .iter()
            .try_fold(0_u64, |sum, level| sum.checked_add(*level));
        let bytes = nodes.and_then(|nodes| nodes.checked_mul(NODE_BYTES));
        let end = bytes.and_then(|bytes| bytes.checked_add(opening.bytes));
        let (Some(index_bytes), Some(_)) = (bytes, end) else {
            return Err(fault(InFlatgeobuf::Broken(FlatgeobufPart::Index)));
        };
        Ok(Self {
            features: (count > 0).then_some(count),
            levels,
            node_size,
            index_at: opening.bytes,
            index_bytes,
        })
    }

    /// The same in a file of so many bytes.
    ///
    /// # Errors
    /// They have no room for index and features.
    pub(super) fn within(self, length: u64) -> Result<Self, Fault> {
        let least = self.features.unwrap_or(0).checked_mul(LENGTH_BYTES as u64);
        let ends = least.and_then(|least| self.features_at().checked_add(least));
        match ends {
            Some(ends) if ends <= length => Ok(self),
            _ => Err(fault(InFlatgeobuf::CutOff)),
        }
    }

    pub(super) fn has_index(&self) -> bool {
        !self.levels.is_empty()
    }

    /// Where the features begin, bytes.
    pub(super) fn features_at(&self) -> u64 {
        self.index_at.saturating_add(self.index_bytes)
    }
}

fn broken() -> Fault {
    fault(InFlatgeobuf::Broken(FlatgeobufPart::Header))
}
