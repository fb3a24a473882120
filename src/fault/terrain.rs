//! What can be wrong or odd about a terrain file.

mod unusable;

use serde::Serialize;

use super::code::Code;

pub use unusable::{
    Coding, Cure, NoHeights, NoPlacing, NoRaster, NoSystem, Picture, UnreadFormat, Unusable,
};

/// What is wrong with a terrain file, or odd about it.
///
/// ```
/// use schrund::{fault::{Wrong, terrain::InTerrain}, raster::Terrain};
///
/// let text = std::io::Cursor::new("heights: 2310, 2315, 2322");
/// let fault = Terrain::new().add("heights.txt", Box::new(text)).expect_err("a text is no raster");
/// assert!(matches!(fault.what, Wrong::Terrain(InTerrain::Refused(_))), "whole, and not to be used");
/// assert_eq!(fault.code(), "terrain-refused");
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InTerrain {
    /// It is damaged.
    Broken(Damage),
    /// It is whole, and its heights cannot be taken exactly.
    Refused(Unusable),
    /// Something a reader of the heights ought to know.
    Note(Told),
}

/// How a terrain file is damaged.
///
/// ```
/// use schrund::{fault::terrain::{Damage, InTerrain}, raster::Terrain};
///
/// let half = std::io::Cursor::new(vec![0; 1_442_401]);
/// let fault = Terrain::new().add("N46E007.hgt", Box::new(half)).expect_err("half of 1201 × 1201 heights");
/// assert_eq!(fault.what, InTerrain::Broken(Damage::HgtLength(1_442_401)).into());
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Damage {
    /// It cannot be read, in the words of the system.
    Unread(String),
    /// It is empty.
    Empty,
    /// A `.hgt` tile of so many bytes cannot be.
    HgtLength(u64),
    /// The table of systems that comes with the program lacks WGS 84; a test proves that it does not.
    NoWgs84,
    /// It ends after so many bytes, inside its tables.
    Ends(u64),
    /// It is not a whole TIFF, in the words of the decoder.
    NotWhole(String),
    /// Its GDAL metadata do not parse, in the words of the parser.
    Metadata(String),
    /// Its scale is no number.
    Scale(String),
    /// Its offset is no number.
    Offset(String),
    /// Its parts have no size.
    NoPartSize,
    /// It lists fewer parts than are needed.
    FewParts {
        /// So many are listed.
        listed: usize,
        /// So many are needed.
        needed: u64,
    },
    /// Its parts reach beyond its end.
    CutOff {
        /// Bytes it has.
        bytes: u64,
        /// Byte that its parts reach to.
        reach: u64,
    },
    /// The table of its parts cannot be read.
    NoTable,
    /// A strip is too short for its rows.
    ShortStrip {
        /// Bytes it has.
        bytes: u64,
        /// Rows it should have.
        rows: u64,
    },
    /// A cell cannot be unpacked.
    Unpack {
        /// Column from 0.
        column: u32,
        /// Row from 0.
        row: u32,
        /// Why.
        why: Unpacking,
    },
}

/// Why a part of a raster cannot be unpacked.
///
/// ```
/// use schrund::fault::{Fault, Place, terrain::{Damage, InTerrain, Unpacking}};
///
/// let unpack = Damage::Unpack { column: 12, row: 700, why: Unpacking::Short(3) };
/// let fault = Fault::new(InTerrain::Broken(unpack), Place::file("dem.tif"));
/// let says = schrund::say::fault::says(&fault, Default::default()).to_string();
/// assert_eq!(says, "its heights cannot be unpacked at column 12, row 700: part 3 is shorter than it should be");
/// assert_eq!(fault.values()["unpack"]["why"]["short"], 3, "as a program reads it");
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unpacking {
    /// This part is shorter than it should be.
    Short(u32),
    /// This part does not exist.
    Absent(u32),
    /// In the words of the decoder.
    Decoder(String),
    /// Reading at this byte, in the words of the system.
    Reading(u64, String),
}

/// What a reader of the heights ought to know.
///
/// ```
/// use schrund::{fault::terrain::{InTerrain, Told}, raster::Terrain};
///
/// let sea = std::io::Cursor::new(vec![0; 2 * 1201 * 1201]);
/// let notes = Terrain::new().add("N46E007.hgt", Box::new(sea))?;
/// assert_eq!(notes[0].what, InTerrain::Note(Told::Egm96).into());
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Told {
    /// Drawn in another datum and shifted.
    Shifted {
        /// Name of the system.
        system: String,
        /// Where the shift comes from and how good it is.
        shift: String,
    },
    /// No height at any of so many places.
    NothingHere(u64),
    /// So many readings gave numbers that cannot be heights.
    Unbelievable(u64),
    /// EGM96 heights, as all `.hgt` tiles are said to be.
    Egm96,
    /// Heights in this system.
    Heights {
        /// Its name.
        name: &'static str,
        /// Its EPSG number.
        epsg: u32,
    },
    /// Heights above the ellipsoid.
    Ellipsoid,
    /// Heights in a system of this EPSG number, taken as metres upwards.
    Taken(u32),
    /// Heights in a system that is not said.
    Unsaid,
    /// Turned into metres, so many in one unit.
    Turned(f64),
    /// No value for void cells; heights outside these metres are taken as void.
    NoVoid(f64, f64),
}

impl InTerrain {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Broken(_) => Code::TerrainBroken,
            Self::Refused(_) => Code::TerrainRefused,
            Self::Note(_) => Code::TerrainNote,
        }
    }
}
