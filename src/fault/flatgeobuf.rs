//! What can be wrong with a FlatGeobuf file as a file; what is wrong with the ice in it is told as of GeoJSON.

use serde::Serialize;

use super::code::Code;

/// What is wrong with a FlatGeobuf file.
///
/// ```
/// use schrund::{fault::{Fault, Place, flatgeobuf::{FlatgeobufPart, InFlatgeobuf}}};
///
/// let damaged = Fault::new(InFlatgeobuf::Broken(FlatgeobufPart::Index), Place::file("ice.fgb"));
/// assert_eq!(damaged.code(), "broken-flatgeobuf");
/// assert!(damaged.to_string().contains("its index"), "{damaged}");
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InFlatgeobuf {
    /// It is of this version of the format, which is not read.
    Version(u8),
    /// It ends in the middle.
    CutOff,
    /// This part of it contradicts itself or the length of the file.
    Broken(FlatgeobufPart),
    /// A part is said to be longer than any that is read.
    TooLong {
        /// Which.
        part: FlatgeobufPart,
        /// The most that is read, MiB.
        most_mib: u64,
    },
    /// The outline of a feature is of this type, which is no polygon with straight edges.
    Curved(&'static str),
    /// So many of its outlines lie near the line, and no others were read.
    NearOnly {
        /// Read.
        near: usize,
        /// Held by the file.
        held: usize,
    },
}

/// A part of a FlatGeobuf file.
///
/// ```
/// use schrund::fault::{Fault, Place, flatgeobuf::{FlatgeobufPart, InFlatgeobuf}};
///
/// let told = |part| Fault::new(InFlatgeobuf::Broken(part), Place::file("ice.fgb")).to_string();
/// assert_ne!(told(FlatgeobufPart::Header), told(FlatgeobufPart::Properties));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FlatgeobufPart {
    /// What stands at its beginning.
    Header,
    /// Where which outline stands.
    Index,
    /// A feature as a whole.
    Feature,
    /// The outline of a feature.
    Geometry,
    /// The properties of a feature.
    Properties,
}

impl FlatgeobufPart {
    /// Its stable name.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Header => "header",
            Self::Index => "index",
            Self::Feature => "feature",
            Self::Geometry => "geometry",
            Self::Properties => "properties",
        }
    }
}

impl InFlatgeobuf {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Version(_) => Code::WrongKind,
            Self::CutOff | Self::Broken(_) | Self::TooLong { .. } => Code::BrokenFlatgeobuf,
            Self::Curved(_) => Code::CurvedOutline,
            Self::NearOnly { .. } => Code::FarZones,
        }
    }
}
