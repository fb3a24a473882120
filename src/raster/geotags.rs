//! The tags of a GeoTIFF that say where it lies and what its numbers are, kept for an excerpt of it.

use tiff::tags::Tag;

/// The tag GDAL keeps scale, offset and unit in.
pub(super) const GDAL_METADATA: Tag = Tag::Unknown(42112);

/// As they stand in the file.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct GeoTags {
    /// The directory of the keys.
    pub(crate) directory: Vec<u16>,
    /// Numbers that keys point to.
    pub(crate) doubles: Vec<f64>,
    /// Texts that keys point to.
    pub(crate) text: Option<String>,
    /// Scale, offset and unit of the numbers.
    pub(crate) metadata: Option<String>,
    /// Tie points name cell centres.
    pub(crate) names_centres: bool,
}
