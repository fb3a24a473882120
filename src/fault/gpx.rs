//! What can be wrong or odd about a route file.

use serde::Serialize;

use super::{
    code::Code,
    place::{Excerpt, Sort},
};

/// What is wrong with a route file, or odd about it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InGpx {
    /// It meets no zone, but with latitude and longitude swapped it would, where ice can lie.
    SwappedAxes,
    /// It is something else.
    Is(Instead),
    /// It is empty.
    Empty,
    /// It is XML without an element.
    NoElement,
    /// Its XML is broken.
    Xml(Xml),
    /// A position is none.
    Position {
        /// Which of its numbers.
        axis: Axis,
        /// Why that is none.
        why: NoDegrees,
    },
    /// A height is no finite number.
    Height(Excerpt),
    /// A track or route of so many points in which no two different ones follow one another.
    NoTwoPoints(usize),
    /// So many segments hold a single position.
    LoneSegments(usize),
    /// So many routes stand beside tracks.
    RoutesBesideTracks(usize),
    /// So many points of the line were taken from extensions.
    DetailUsed(usize),
    /// So many positions in extensions were not used.
    DetailIgnored(usize),
    /// There is nothing to walk.
    NoLine {
        /// Waypoints.
        waypoints: usize,
        /// Tracks.
        tracks: PartCount,
        /// Routes.
        routes: PartCount,
    },
    /// The line goes on elsewhere.
    Jump {
        /// How far away, metres.
        length_m: f64,
        /// Where, metres of chainage.
        at_m: f64,
    },
    /// Two neighbouring points lie far apart.
    LongEdge {
        /// How far, metres.
        length_m: f64,
        /// From where on, metres of chainage.
        from_m: f64,
    },
}

/// How many of a sort a file holds, and with how many points.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct PartCount {
    /// Tracks or routes.
    pub parts: usize,
    /// Points in all of them.
    pub points: usize,
}

/// What a file is that should be GPX.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Instead {
    /// A zip archive.
    Zip,
    /// Packed with gzip.
    Gzip,
    /// PDF.
    Pdf,
    /// SQLite.
    Database,
    /// JSON.
    Json,
    /// The format of sports watches.
    Fit,
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
    /// Something that begins so.
    Beginning(Excerpt),
    /// XML with this root element.
    Root(Excerpt),
}

/// One of the numbers of a position.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Axis {
    /// `lat`.
    Latitude,
    /// `lon`.
    Longitude,
}

impl Axis {
    /// The attribute.
    #[must_use]
    pub fn property(self) -> &'static str {
        match self {
            Self::Latitude => "lat",
            Self::Longitude => "lon",
        }
    }
}

/// Why something is no longitude or latitude.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoDegrees {
    /// It is not there.
    Missing,
    /// It is infinite or NaN.
    NotFinite(Excerpt),
    /// It is no number.
    NoNumber {
        /// What stands there.
        found: Excerpt,
        /// It would be one with a point for its comma.
        comma: bool,
    },
    /// It lies beyond the range.
    Beyond {
        /// The number, degrees.
        deg: f64,
        /// Longitude and latitude would do the other way round.
        swapped: bool,
    },
}

/// How XML is broken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Xml {
    /// A second document begins.
    Second,
    /// Text stands outside the root element.
    TextOutside,
    /// The file ends before this element does.
    EndsBefore(&'static str),
    /// One tag, text or comment is longer than so many MiB.
    Overlong(u64),
    /// `<!` begins nothing that XML knows.
    Bang,
    /// Something begins and never ends.
    Unclosed(Unclosed),
    /// An end tag stands where another is due.
    Mismatched {
        /// What stands there.
        found: Excerpt,
        /// What is due.
        expected: Excerpt,
    },
    /// An end tag closes nothing.
    Unmatched(Excerpt),
    /// A bare `&`.
    Ampersand,
    /// An attribute is malformed.
    Attribute(Attribute),
    /// The text is not UTF-8.
    NotUtf8,
    /// The text is not in the encoding that the file says.
    Encoding,
    /// Something else, in the words of the parser.
    Other(String),
}

/// What begins and never ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unclosed {
    /// `<?`.
    Instruction,
    /// `<?xml`.
    Declaration,
    /// `<!--`.
    Comment,
    /// `<!DOCTYPE`.
    Doctype,
    /// `<![CDATA[`.
    Cdata,
    /// `<`.
    Tag,
    /// A quotation mark in a tag.
    Value,
}

/// How an attribute is malformed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Attribute {
    /// Without `=`.
    NoValue,
    /// Nothing after the `=`.
    NothingAfter,
    /// No quotation marks.
    Unquoted,
    /// No closing quotation mark.
    Open,
    /// Given twice.
    Twice,
}

impl InGpx {
    /// Its code.
    #[must_use]
    pub fn code(&self) -> Code {
        match self {
            Self::Is(_) | Self::Empty | Self::NoElement => Code::WrongKind,
            Self::Xml(_) => Code::BrokenText,
            Self::Position { .. } | Self::SwappedAxes => Code::BadPosition,
            Self::Height(_) => Code::BadHeight,
            Self::NoTwoPoints(_) | Self::LoneSegments(_) | Self::RoutesBesideTracks(_) => {
                Code::PartLeftOut
            }
            Self::DetailUsed(_) => Code::DetailUsed,
            Self::DetailIgnored(_) => Code::DetailIgnored,
            Self::NoLine { .. } => Code::NoLine,
            Self::Jump { .. } => Code::Jump,
            Self::LongEdge { .. } => Code::LongEdge,
        }
    }
}

impl Sort {
    /// As people call it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Track => "track",
            Self::Route => "route",
        }
    }
}
