//! Where a fault lies: file, line, thing and property.

use schemars::JsonSchema;
use serde::Serialize;

/// Where a complaint belongs. Its words are those of `say`.
///
/// ```
/// use schrund::fault::{Item, Place};
///
/// let zone = Item::Feature { number: 3, name: Some("Upper icefall".to_owned()) };
/// let at = Place::file("ice.geojson").at_line(41, 7).with_item(zone).with_property("gap_m");
/// assert_eq!(at.to_string(), "ice.geojson, line 41 column 7, feature 3 \"Upper icefall\", `gap_m`");
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Place {
    /// The file as the user named it, or [`STANDARD_INPUT`].
    #[serde(skip_serializing_if = "Option::is_none")]
    pub file: Option<String>,
    /// Line, from 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line: Option<u64>,
    /// Column in characters, from 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub column: Option<u64>,
    /// The thing inside it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub item: Option<Item>,
    /// The property or element: `gap_m`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub property: Option<String>,
}

/// What standard input is called in the place of a file.
pub const STANDARD_INPUT: &str = "standard input";

/// A thing inside a file, or something that stands in none.
///
/// ```
/// use schrund::{fault::Item, trip::party::Party};
///
/// let mut job = schrund::example::job()?;
/// job.party = Party::weighing(&[78.0]);
/// let faults = schrund::plan(&job).expect_err("nobody goes alone");
/// assert_eq!(faults[0].at.item, Some(Item::Party), "it stands in no file");
/// assert_eq!(faults[0].at.to_string(), "party");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Item {
    /// A feature of a zones file, from 1.
    Feature {
        /// Its number in the file.
        number: usize,
        /// What the leader calls it.
        name: Option<String>,
    },
    /// A track or route of a GPX file, or a thing in it.
    Line(GpxWay),
    /// What is said beside the trip file: flags, each by the member of a trip file that it sets.
    Flags,
    /// A flag of the command line that is no part of a trip: `--at`.
    Flag(&'static str),
    /// Who goes.
    Party,
    /// The practice set.
    Practice,
    /// The ice as a whole.
    Zones,
    /// A window of heights.
    Relief,
    /// A halt of a trip file, from 1.
    Halt(usize),
}

/// The way to a thing in a GPX file; counts are from 1.
///
/// ```
/// use schrund::{fault::{Item, place::Sort}, read::gpx};
///
/// let line = r#"<gpx><rte><rtept lat="46.5" lon="8"/><rtept lat="146.6" lon="8"/></rte></gpx>"#;
/// let fault = &gpx::route("tour.gpx", line.as_bytes()).expect_err("no such latitude")[0];
/// let Some(Item::Line(way)) = &fault.at.item else { panic!("{fault}") };
/// assert_eq!((way.sort, way.number, way.segment, way.point), (Sort::Route, 1, None, Some(2)));
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct GpxWay {
    /// Whether it is a track or a route.
    pub sort: Sort,
    /// Its number among its sort.
    pub number: usize,
    /// What the file calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<Excerpt>,
    /// The segment.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub segment: Option<usize>,
    /// The point in the segment, or in the route.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub point: Option<usize>,
    /// The position inside a route point.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub detail: Option<usize>,
}

/// Whether it is a `trk` or a `rte`.
///
/// ```
/// use schrund::fault::place::Sort;
///
/// assert_eq!([Sort::Track, Sort::Route].map(Sort::word), ["track", "route"]);
/// assert_eq!(serde_json::to_string(&Sort::Track)?, r#""track""#);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Sort {
    /// `trk`.
    Track,
    /// `rte`.
    Route,
}

/// The beginning of a text found in a file.
///
/// ```
/// use schrund::fault::place::Excerpt;
///
/// let found = Excerpt::of("Gletscherspalten überall", 18);
/// assert_eq!((found.text.as_str(), found.cut), ("Gletscherspalten ü", true), "characters, not bytes");
/// assert!(!Excerpt::of("6 m", 18).cut);
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Excerpt {
    /// The text, or as much of it as is quoted.
    pub text: String,
    /// Whether it went on.
    pub cut: bool,
}

impl Excerpt {
    /// At most so many characters of a text.
    #[must_use]
    pub fn of(text: &str, most: usize) -> Self {
        let end = text.char_indices().nth(most).map(|(at, _)| at);
        Self {
            text: text
                .get(..end.unwrap_or(text.len()))
                .unwrap_or(text)
                .to_owned(),
            cut: end.is_some(),
        }
    }
}

impl Place {
    /// A file as a whole.
    #[must_use]
    pub fn file(name: &str) -> Self {
        Self {
            file: Some(name.to_owned()),
            ..Self::default()
        }
    }

    /// Something without a file: a leg, an option, the party.
    #[must_use]
    pub fn item(what: impl Into<Item>) -> Self {
        Self {
            item: Some(what.into()),
            ..Self::default()
        }
    }

    /// The same place, narrowed to a thing inside it.
    #[must_use]
    pub fn with_item(mut self, what: impl Into<Item>) -> Self {
        self.item = Some(what.into());
        self
    }

    /// The same place, narrowed to a property.
    #[must_use]
    pub fn with_property(mut self, name: impl Into<String>) -> Self {
        self.property = Some(name.into());
        self
    }

    /// The same place with a line and column, both from 1.
    #[must_use]
    pub fn at_line(mut self, line: u64, column: u64) -> Self {
        self.line = Some(line);
        self.column = Some(column);
        self
    }
}
