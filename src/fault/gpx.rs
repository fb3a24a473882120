//! What can be wrong or odd about a route file.

use serde::Serialize;

use super::{
    code::Code,
    instead::Instead,
    place::{Excerpt, Sort},
};

/// What is wrong with a route file, or odd about it.
///
/// ```
/// use schrund::{fault::{Wrong, gpx::InGpx}, read::gpx};
///
/// let line = r#"<gpx><trk><trkseg><trkpt lat="0" lon="0"/><trkpt lat="0" lon="0.01"/></trkseg>
///     <trkseg><trkpt lat="0" lon="0.02"/><trkpt lat="0" lon="0.03"/></trkseg></trk></gpx>"#;
/// let read = gpx::route("tour.gpx", line.as_bytes())?;
/// let Wrong::Gpx(InGpx::Jump { length_m, at_m }) = read.notes[0].what else { panic!("{read:?}") };
/// let hundredth_m = 1113.195; // of a degree along the equator: 6 378 137 m · π / 18 000
/// assert!((length_m - hundredth_m).abs() < 0.001 && (at_m - hundredth_m).abs() < 0.001);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
    /// Heights where nobody walks.
    HeightsOutside {
        /// How many.
        count: usize,
        /// What stands in the place of the first.
        first: Excerpt,
        /// The lowest that counts as one, metres.
        low_m: f64,
        /// The highest.
        high_m: f64,
    },
    /// So many longitudes just beyond ±180.
    LongitudesTakenBack(usize),
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
    /// The line is longer than anybody walks.
    Endless {
        /// As it is walked, metres.
        length_m: f64,
        /// The most that is planned, kilometres.
        most_km: u64,
        /// Its longest edge, metres.
        edge_m: f64,
        /// Where that begins, metres of chainage in its stage.
        at_m: f64,
    },
    /// What may be a device's error.
    Suspect(Suspicion),
}

/// Something in a line that may be a device's error, and where; nothing is mended.
///
/// ```
/// use schrund::{fault::{Wrong, gpx::InGpx}, read::gpx};
///
/// let point = |lat: f64, ele: f64| format!(r#"<trkpt lat="{lat}" lon="8"><ele>{ele}</ele></trkpt>"#);
/// let points = [point(46.500, 2000.0), point(46.501, 2900.0), point(46.502, 2010.0)].concat();
/// let line = format!("<gpx><trk><trkseg>{points}</trkseg></trk></gpx>");
/// let read = gpx::route("tour.gpx", line.as_bytes())?;
/// let Wrong::Gpx(InGpx::Suspect(suspicion)) = &read.notes[0].what else { panic!("{read:?}") };
/// assert_eq!(suspicion.lon_lat, [8.0, 46.501]);
/// assert!((suspicion.at_m - 111.1).abs() < 0.1, "{suspicion:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Suspicion {
    /// What.
    #[serde(flatten)]
    pub what: Suspect,
    /// Where, metres of chainage.
    pub at_m: f64,
    /// The same, longitude and latitude.
    pub lon_lat: [f64; 2],
}

/// What may be a device's error.
///
/// ```
/// use schrund::{fault::{Code, gpx::Suspect}};
///
/// let asleep = Suspect::LongEdge { length_m: 12_000.0 };
/// assert_eq!(asleep.kind(), Code::LongEdge);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Suspect {
    /// The next point lies far away.
    LongEdge {
        /// How far, metres.
        length_m: f64,
    },
    /// One point lies off the line.
    LonePoint {
        /// How far, metres.
        aside_m: f64,
    },
    /// One height lies off those of its neighbours.
    LoneHeight {
        /// The height, metres.
        height_m: f64,
        /// How far above its neighbours, metres; negative below.
        above_m: f64,
    },
    /// A point at 0, 0.
    ZeroPoint {
        /// How far it lies from its neighbour, metres.
        off_m: f64,
    },
}

/// How many of a sort a file holds, and with how many points.
///
/// ```
/// use schrund::{fault::gpx::{InGpx, PartCount}, read::gpx};
///
/// let line = r#"<gpx><wpt lat="46.5" lon="8"/><trk><trkseg><trkpt lat="46.5" lon="8"/></trkseg></trk></gpx>"#;
/// let faults = gpx::route("hut.gpx", line.as_bytes()).expect_err("one point is no line");
/// let held = InGpx::NoLine {
///     waypoints: 1, tracks: PartCount { parts: 1, points: 1 }, routes: PartCount::default(),
/// };
/// assert!(faults.iter().any(|fault| fault.what == held.clone().into()), "{faults:?}");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct PartCount {
    /// Tracks or routes.
    pub parts: usize,
    /// Points in all of them.
    pub points: usize,
}

/// One of the numbers of a position.
///
/// ```
/// use schrund::{fault::{Wrong, gpx::{Axis, InGpx}}, read::gpx};
///
/// let line = r#"<gpx><trk><trkseg><trkpt lat="46.5"/><trkpt lat="46.6" lon="8"/></trkseg></trk></gpx>"#;
/// let faults = gpx::route("tour.gpx", line.as_bytes()).expect_err("half a position");
/// let Wrong::Gpx(InGpx::Position { axis, .. }) = faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!((axis, axis.property()), (Axis::Longitude, "lon"));
/// ```
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
///
/// ```
/// use schrund::{fault::{Wrong, gpx::{InGpx, NoDegrees}, place::Excerpt}, read::gpx};
///
/// let line = r#"<gpx><trk><trkseg><trkpt lat="46,5" lon="8"/><trkpt lat="46.6" lon="8"/></trkseg></trk></gpx>"#;
/// let faults = gpx::route("tour.gpx", line.as_bytes()).expect_err("a comma is no point");
/// let Wrong::Gpx(InGpx::Position { why, .. }) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!(*why, NoDegrees::NoNumber { found: Excerpt::of("46,5", 10), comma: true });
/// ```
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
///
/// ```
/// use schrund::{fault::gpx::{InGpx, Xml}, read::gpx};
///
/// let cut_off = r#"<gpx><trk><trkseg><trkpt lat="46.5" lon="8"/><trkpt lat="46.6" lon="8"/></trkseg></trk>"#;
/// let faults = gpx::route("tour.gpx", cut_off.as_bytes()).expect_err("the end is missing");
/// assert_eq!(faults[0].what, InGpx::Xml(Xml::EndsBefore("gpx")).into());
/// assert_eq!(faults[0].code(), "broken-text");
/// ```
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
///
/// ```
/// use schrund::{fault::gpx::{InGpx, Unclosed, Xml}, read::gpx};
///
/// let faults = gpx::route("tour.gpx", "<gpx><!-- day two".as_bytes()).expect_err("a comment without its end");
/// assert_eq!(faults[0].what, InGpx::Xml(Xml::Unclosed(Unclosed::Comment)).into());
/// ```
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
///
/// ```
/// use schrund::{fault::gpx::{Attribute, InGpx, Xml}, read::gpx};
///
/// let line = r#"<gpx><trk><trkseg><trkpt lat="46.5" lat="46.6" lon="8"/></trkseg></trk></gpx>"#;
/// let faults = gpx::route("tour.gpx", line.as_bytes()).expect_err("which latitude?");
/// assert_eq!(faults[0].what, InGpx::Xml(Xml::Attribute(Attribute::Twice)).into());
/// ```
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
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Is(_) | Self::Empty | Self::NoElement => Code::WrongKind,
            Self::Xml(_) => Code::BrokenText,
            Self::Position { .. } | Self::SwappedAxes | Self::Endless { .. } => Code::BadPosition,
            Self::Height(_) | Self::HeightsOutside { .. } => Code::BadHeight,
            Self::LongitudesTakenBack(_) => Code::LongitudeTakenBack,
            Self::NoTwoPoints(_) | Self::LoneSegments(_) | Self::RoutesBesideTracks(_) => {
                Code::PartLeftOut
            }
            Self::DetailUsed(_) => Code::DetailUsed,
            Self::DetailIgnored(_) => Code::DetailIgnored,
            Self::NoLine { .. } => Code::NoLine,
            Self::Jump { .. } => Code::Jump,
            Self::Suspect(suspicion) => suspicion.what.kind(),
        }
    }
}

impl Suspect {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::LongEdge { .. } => Code::LongEdge,
            Self::LonePoint { .. } => Code::LonePoint,
            Self::LoneHeight { .. } => Code::LoneHeight,
            Self::ZeroPoint { .. } => Code::ZeroPoint,
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
