//! Why the heights of a whole terrain file cannot be taken exactly, and what makes the file usable.

use serde::Serialize;

/// Why the heights of a whole file cannot be taken exactly.
///
/// ```
/// use schrund::fault::terrain::{Cure, Unusable};
///
/// assert_eq!(Unusable::Bands(3).cure(), Cure::FirstBand, "the first may be the heights");
/// assert_eq!(Unusable::HgtName.cure(), Cure::Rename, "a tile says by its name where it lies");
/// assert_eq!(Unusable::Mask.cure(), Cure::Warp, "which writes void cells as numbers");
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unusable {
    /// It is another format.
    Is(UnreadFormat),
    /// It is another sort of file altogether.
    NoRaster(NoRaster),
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
///
/// ```
/// use schrund::{fault::terrain::{Cure, InTerrain, UnreadFormat, Unusable}, raster::Terrain};
///
/// let archive = std::io::Cursor::new(b"PK\x03\x04 and so on");
/// let fault = Terrain::new().add("dem.zip", Box::new(archive)).expect_err("heights are not read out of archives");
/// let zip = Unusable::Is(UnreadFormat::Zip);
/// assert_eq!(zip.cure(), Cure::Unpack);
/// assert_eq!(fault.what, InTerrain::Refused(zip).into());
/// ```
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

/// Texts that were given in the place of a raster.
///
/// ```
/// use schrund::{fault::terrain::{Cure, InTerrain, NoRaster, Unusable}, raster::Terrain};
///
/// let line = std::io::Cursor::new(schrund::example::ROUTE_GPX);
/// let fault = Terrain::new().add("route.gpx", Box::new(line)).expect_err("a line has no cells");
/// let gpx = Unusable::NoRaster(NoRaster::Gpx);
/// assert_eq!(gpx.cure(), Cure::Another, "no conversion makes heights of it");
/// assert_eq!(fault.what, InTerrain::Refused(gpx).into());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoRaster {
    /// A line.
    Gpx,
    /// XML of another kind.
    Xml,
    /// JSON, as zones are.
    Json,
}

/// Codings that are not read.
///
/// ```
/// use schrund::fault::{Fault, Place, terrain::{Coding, Cure, InTerrain, Unusable}};
///
/// let photograph = Unusable::Coding(Coding::Jpeg);
/// assert_eq!(photograph.cure(), Cure::Recode);
/// let fault = Fault::new(InTerrain::Refused(photograph), Place::file("dem.tif"));
/// assert!(fault.to_string().contains("coded as a JPEG photograph, which changes them"), "{fault}");
/// ```
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
///
/// ```
/// use schrund::{fault::terrain::{Cure, InTerrain, Picture, Unusable}, raster::Terrain};
/// use tiff::encoder::{TiffEncoder, colortype::RGB8};
///
/// let mut photo = std::io::Cursor::new(Vec::new());
/// TiffEncoder::new(&mut photo)?.write_image::<RGB8>(1, 1, &[200, 210, 255])?;
/// let fault = Terrain::new().add("photo.tif", Box::new(photo)).expect_err("blue is no height");
/// let colour = Unusable::Picture(Picture::Colour);
/// assert_eq!(colour.cure(), Cure::NotHeights, "a conversion would turn blue into metres");
/// assert_eq!(fault.what, InTerrain::Refused(colour).into());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
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
///
/// ```
/// use schrund::{fault::terrain::{Cure, InTerrain, NoSystem, Unusable}, raster::Terrain};
/// use tiff::encoder::{TiffEncoder, colortype::Gray16};
///
/// let mut bare = std::io::Cursor::new(Vec::new());
/// TiffEncoder::new(&mut bare)?.write_image::<Gray16>(2, 1, &[2310, 2315])?;
/// let fault = Terrain::new().add("bare.tif", Box::new(bare)).expect_err("heights of where?");
/// let unsaid = Unusable::System(NoSystem::NoKeys);
/// assert_eq!(unsaid.cure(), Cure::AssignSystem);
/// assert_eq!(fault.what, InTerrain::Refused(unsaid).into());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
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
///
/// ```
/// use schrund::{fault::terrain::{InTerrain, NoPlacing, Unusable}, raster::Terrain};
/// use tiff::{encoder::{TiffEncoder, colortype::Gray16}, tags::Tag};
///
/// let mut adrift = std::io::Cursor::new(Vec::new());
/// let mut encoder = TiffEncoder::new(&mut adrift)?;
/// let mut image = encoder.new_image::<Gray16>(2, 1)?;
/// let wgs84: [u16; 12] = [1, 1, 0, 2, 1024, 0, 1, 2, 2048, 0, 1, 4326];
/// image.encoder().write_tag(Tag::GeoKeyDirectoryTag, &wgs84[..])?;
/// image.write_data(&[2310, 2315])?;
/// let fault = Terrain::new().add("adrift.tif", Box::new(adrift)).expect_err("a system, and no place in it");
/// assert_eq!(fault.what, InTerrain::Refused(Unusable::Placing(NoPlacing::Unsaid)).into());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
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
///
/// ```
/// use schrund::fault::{Fault, Place, terrain::{Cure, InTerrain, NoHeights, Unusable}};
///
/// let fathoms = Unusable::Heights(NoHeights::UnitName("fathom".to_owned()));
/// assert_eq!(fathoms.cure(), Cure::ScaleHeights);
/// let fault = Fault::new(InTerrain::Refused(fathoms), Place::file("dem.tif"));
/// assert!(fault.to_string().contains("in a unit this program does not know (\"fathom\")"), "{fault}");
/// ```
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

/// A conversion that makes an unusable file usable.
///
/// ```
/// use schrund::{fault::{Fault, Place, terrain::{Cure, InTerrain, NoSystem, Unusable}}, say};
///
/// let unlisted = Unusable::System(NoSystem::Unlisted(5514));
/// assert_eq!(unlisted.cure(), Cure::Warp);
/// let fault = Fault::new(InTerrain::Refused(unlisted), Place::file("dem.tif"));
/// let hint = say::fault::hint(&fault, Default::default()).map(|hint| hint.to_string()).unwrap_or_default();
/// assert!(hint.starts_with("convert it: gdalwarp -t_srs EPSG:4326 "), "{hint}");
/// assert!(hint.ends_with(" dem.tif dem_plain.tif"), "a command to be pasted: {hint}");
/// ```
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
    /// Give another file.
    Another,
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
            Self::NoRaster(_) => Cure::Another,
            Self::Picture(_) => Cure::NotHeights,
            Self::Bands(_) => Cure::FirstBand,
            Self::Mask | Self::System(_) | Self::Placing(_) => Cure::Warp,
            Self::Heights(_) => Cure::ScaleHeights,
            _ => Cure::Recode,
        }
    }
}
