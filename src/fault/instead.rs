//! What files are that should be of another kind.

use serde::Serialize;

use super::place::Excerpt;

/// What a file is that should be something else.
///
/// ```
/// use schrund::{fault::{gpx::InGpx, instead::Instead}, read::gpx};
///
/// let globe = r#"<kml xmlns="http://www.opengis.net/kml/2.2"><Document/></kml>"#;
/// let faults = gpx::route("tour.kml", globe.as_bytes()).expect_err("KML");
/// assert_eq!(faults[0].what, InGpx::Is(Instead::Kml).into());
/// assert_eq!(faults[0].code(), "wrong-kind");
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Instead {
    /// A zip archive.
    Zip,
    /// Packed with gzip.
    Gzip,
    /// PDF.
    Pdf,
    /// SQLite, as a GeoPackage is.
    Database,
    /// A shapefile.
    Shapefile,
    /// FlatGeobuf.
    FlatGeobuf,
    /// A TIFF, as terrain models are.
    Tiff,
    /// A photo or a drawing in pixels.
    Picture,
    /// XML of whatever kind.
    Xml,
    /// JSON.
    Json,
    /// The format of sports watches.
    Fit,
    /// GPX.
    Gpx,
    /// KML.
    Kml,
    /// TCX.
    Tcx,
    /// HTML.
    WebPage,
    /// OpenStreetMap data.
    Osm,
    /// SVG.
    Drawing,
    /// TOML, as trip files and practice files are.
    Toml,
    /// Rows of values between commas, semicolons or tabs.
    Table,
    /// Something that begins so.
    Beginning(Excerpt),
    /// XML with this root element.
    Root(Excerpt),
}
