//! What can be wrong or odd about a terrain file.

use serde::Serialize;

use super::code::Code;

/// What is wrong with a terrain file, or odd about it.
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

/// Why the heights of a whole file cannot be taken exactly.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unusable {
    /// It is another format.
    Is(UnreadFormat),
    /// It is neither a GeoTIFF nor a `.hgt` tile.
    Neither,
    /// Its name does not say where it lies.
    HgtName,
    /// A kind of TIFF that is not read, in the words of the decoder.
    Tiff(String),
    /// Its inner tables are too big.
    BigTables,
    /// How its heights are coded.
    Coding(Coding),
    /// It holds no heights.
    Picture(Picture),
    /// So many bands, and none says that it is the height.
    Bands(u64),
    /// Numbers of a kind that is not read.
    Numbers {
        /// Bits of each.
        bits: u16,
        /// TIFF sample format.
        format: u16,
    },
    /// Void cells in a mask of their own.
    Mask,
    /// Parts of so many MB.
    BigParts(u64),
    /// How it lies on the map.
    System(NoSystem),
    /// Where it lies on the map.
    Placing(NoPlacing),
    /// What its heights are.
    Heights(NoHeights),
}

/// Formats that hold heights and are not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum UnreadFormat {
    /// A ZIP archive.
    Zip,
    /// A gzip archive.
    Gzip,
    /// A GeoPackage or other SQLite database.
    Sqlite,
    /// HDF5 or NetCDF.
    Hdf,
    /// NetCDF.
    NetCdf,
    /// Erdas Imagine.
    Imagine,
    /// JPEG 2000.
    Jpeg2000,
    /// PNG.
    Png,
    /// JPEG.
    Jpeg,
    /// An ASCII grid.
    AsciiGrid,
}

/// Codings that are not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Coding {
    /// A JPEG photograph.
    Jpeg,
    /// LERC.
    Lerc,
    /// Zstandard.
    Zstandard,
    /// WebP.
    WebP,
    /// LZMA.
    Lzma,
    /// This TIFF compression.
    Other(u64),
}

/// Pictures that are no heights.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Picture {
    /// With a palette.
    Palette,
    /// Inverted grey.
    InvertedGrey,
    /// In colour.
    Colour,
    /// With so few bits a cell.
    Bits(u16),
}

/// Why a coordinate system is not known.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoSystem {
    /// There are no keys at all.
    NoKeys,
    /// The keys do not say it.
    Unsaid,
    /// Longitudes that do not count from Greenwich.
    NotGreenwich,
    /// Geocentric coordinates.
    Geocentric,
    /// Drawn in this system with cells in this EPSG unit.
    CellUnit {
        /// The system.
        epsg: u32,
        /// The unit.
        unit: u32,
    },
    /// Angles in this EPSG unit.
    AngleUnit(u32),
    /// This EPSG number is not listed.
    Unlisted(u32),
    /// No datum is given.
    NoDatum,
    /// This GeoTIFF projection method is not known.
    Method(u32),
    /// A polar projection with both a true latitude and a scale.
    PolarTwice,
    /// Cells in an unknown EPSG unit.
    UnknownUnit(u32),
    /// A projection without the figure of this GeoKey.
    Lacks(u16),
    /// A system of this name cannot be projected to.
    NotProjectable(String),
}

/// Why it is open where a raster lies.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoPlacing {
    /// Cells without a size.
    NoCellSize,
    /// Control points only.
    ControlPoints,
    /// Nothing says it.
    Unsaid,
    /// The tie point shifts or stretches heights.
    Stretched {
        /// Height of a cell.
        tall: f64,
        /// From this level.
        from: f64,
        /// To this one.
        to: f64,
    },
    /// Tie points that contradict each other.
    Contradicting,
}

/// Why numbers are no heights in metres.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoHeights {
    /// In this EPSG unit.
    UnitCode(u32),
    /// In a unit of this name.
    UnitName(String),
    /// In two units at once, metres in each; the second by this EPSG system.
    TwoUnits(f64, f64, Option<u32>),
    /// Depths, in the system of this name.
    Depths(&'static str),
}

/// What a reader of the heights ought to know.
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

/// A conversion that makes an unusable file usable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cure {
    /// Write band 1 again in a plain coding.
    Recode,
    /// It holds a picture: a conversion would turn grey into metres.
    NotHeights,
    /// Several bands: the first may be the heights.
    FirstBand,
    /// Project onto longitude/latitude.
    Warp,
    /// Say which coordinate system the file is in.
    AssignSystem,
    /// Say that heights are metres, after scaling from feet or the like.
    ScaleHeights,
    /// Unpack first.
    Unpack,
    /// Give it its original name.
    Rename,
}

impl Unusable {
    /// What makes the file usable.
    #[must_use]
    pub fn cure(&self) -> Cure {
        match self {
            Self::Is(UnreadFormat::Zip | UnreadFormat::Gzip) => Cure::Unpack,
            Self::Is(UnreadFormat::AsciiGrid) | Self::System(NoSystem::NoKeys) => {
                Cure::AssignSystem
            }
            Self::HgtName => Cure::Rename,
            Self::Picture(_) => Cure::NotHeights,
            Self::Bands(_) => Cure::FirstBand,
            Self::Mask | Self::System(_) | Self::Placing(_) => Cure::Warp,
            Self::Heights(_) => Cure::ScaleHeights,
            _ => Cure::Recode,
        }
    }
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
