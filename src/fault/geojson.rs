//! What can be wrong or odd about a zones file.

mod measure;

use serde::Serialize;

use super::{
    code::Code,
    coordinates::{Misplaced, NoPosition},
    instead::Instead,
    place::Excerpt,
};

pub use measure::{InUnit, Measure, NoNumber, Quantity, Silent, Widthless};

/// What is wrong with a zones file, or odd about it.
///
/// ```
/// use schrund::{fault::geojson::InGeojson, read::geojson::zones};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_m": 6, "snow_dept_m": 2}, "geometry": {"type": "Polygon",
///     "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}}"#;
/// let read = zones("ice.geojson", ice.as_bytes(), &Default::default())?;
/// let miss = InGeojson::NearMiss { given: "snow_dept_m".to_owned(), right: "snow_depth_m", unit: None };
/// assert_eq!(read.notes[0].what, miss.into());
/// assert_eq!(read.value[0].snow_depth_m, None, "it was not used");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InGeojson {
    /// It is empty.
    Empty,
    /// It is something else.
    Is(Instead),
    /// It is UTF-16.
    IsUtf16,
    /// The text stops before the JSON is complete.
    CutOff,
    /// The JSON is broken, in the words of the parser.
    Broken(String),
    /// Its coordinates are in this system.
    ForeignCrs(String),
    /// Its `crs` names no system that is known.
    UnknownCrs(Thing),
    /// The `type` of an object.
    Type {
        /// Of which object.
        of: Object,
        /// What is wrong with it.
        why: NoType,
        /// The words it can be.
        known: Vec<&'static str>,
    },
    /// Something else stands where an object should.
    Stands {
        /// What.
        found: Thing,
        /// Where which object should be.
        due: Object,
    },
    /// An object of this type holds `features`.
    HoldsFeatures(&'static str),
    /// `features` is no list.
    FeaturesNoList(Thing),
    /// A collection without `features`.
    NoFeatures,
    /// A member of an object stands there twice.
    MemberTwice(&'static str),
    /// A property stands there more than once.
    PropertyTwice {
        /// What stands there each time.
        found: Vec<Excerpt>,
    },
    /// `properties` is no object.
    PropertiesNoObject(Thing),
    /// The geometry is no object.
    GeometryNoObject(Thing),
    /// A geometry of this type has no `coordinates`.
    NoCoordinates(&'static str),
    /// A GeometryCollection without a list of geometries.
    NoGeometries,
    /// Coordinates are not as deep as they should be.
    Shallow {
        /// The way there: what each level is called, and the number in it, from 1.
        way: Vec<(&'static str, usize)>,
        /// What stands there.
        found: Excerpt,
        /// A list of positions is due, not one of lists.
        positions: bool,
        /// The type of the geometry.
        kind: &'static str,
    },
    /// A position is none.
    NoPosition {
        /// The way there: what each level is called, and the number in it, from 1.
        way: Vec<(&'static str, usize)>,
        /// Why it is none.
        why: NoPosition,
    },
    /// Two numbers that are no longitude and latitude.
    Misplaced(Misplaced),
    /// A coordinate is too large to be a number.
    Huge,
    /// The geometry is nested too deeply.
    Deep,
    /// A number of a property.
    Number {
        /// What is measured.
        quantity: Quantity,
        /// What stands there.
        found: Excerpt,
        /// What is wrong with it.
        why: NoNumber,
    },
    /// A value that cannot be held.
    Unreadable(Excerpt),
    /// A range runs downwards.
    Downwards {
        /// What is measured.
        quantity: Quantity,
        /// What stands there.
        found: Excerpt,
    },
    /// Of a range one end counts.
    OneEnd {
        /// What is measured.
        quantity: Quantity,
        /// What stands there.
        found: Excerpt,
        /// The end that counts.
        value: f64,
    },
    /// `gap_m` and `gap_max_m` differ; this one counts, metres.
    GapsDiffer(f64),
    /// The widest gap of a zone is so narrow that it may not be in metres, metres.
    GapNarrow(f64),
    /// The lower gap width is above the upper one, both metres.
    GapsCrossed {
        /// The lower one.
        low_m: f64,
        /// The upper one.
        high_m: f64,
    },
    /// A strike as a range, degrees.
    StrikeRange {
        /// From.
        low_deg: f64,
        /// To.
        high_deg: f64,
    },
    /// An uncertainty without a strike.
    StrikeMissing,
    /// A property holds a word that it does not take.
    Word {
        /// The property.
        property: &'static str,
        /// What stands there.
        found: Excerpt,
        /// What it takes.
        words: Vec<&'static str>,
    },
    /// A name that is nearly a known one.
    NearMiss {
        /// As given.
        given: String,
        /// The known one.
        right: &'static str,
        /// The unit that the name as given ends with, where the known one is in metres.
        unit: Option<InUnit>,
    },
    /// `NaN` or `Infinity` where it does not matter.
    NotANumber,
    /// Zones without a width, and nothing to assume.
    GapNotGiven(Widthless),
    /// Zones without a width, and this one assumed, metres.
    GapAssumed {
        /// The width, metres.
        gap_m: f64,
        /// Which zones.
        zones: Widthless,
        /// Of how many.
        of: usize,
    },
    /// No polygon among so many features, but these.
    NoZones(usize, NotPolygons),
    /// No polygon among so many features of a glacier inventory.
    NoIce(usize),
    /// So many outlines of an inventory give gap widths, which are not used.
    InventoryGaps(usize),
    /// A glacier inventory is empty.
    EmptyInventory,
    /// Geometries that are no polygons.
    NotPolygons(NotPolygons),
    /// A feature without a polygon has a property of this name, as ice has.
    IceUndrawn(&'static str),
    /// So many polygons cover nothing.
    NoArea(usize),
    /// So many rings were closed.
    RingsClosed(usize),
    /// So many longitudes just beyond ±180.
    LongitudesTakenBack(usize),
    /// So many rings touch or cross themselves.
    RingsTangled(usize),
    /// Of so many polygons the outer ring does not come first.
    OuterNotFirst(usize),
    /// So many rings lie apart from the outer one of their polygon: ice of their own.
    RingsApart(usize),
    /// So many holes stick out of their outer ring: they are cut out where they lie in it.
    HolesStickOut(usize),
    /// No zone lies near the route, but one would with longitude and latitude swapped.
    SwappedAxes,
}

/// What a JSON value is.
///
/// ```
/// use schrund::{fault::geojson::{InGeojson, Thing}, read::geojson::zones};
///
/// let ice = r#"{"type": "FeatureCollection", "features": null}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("no list");
/// assert_eq!(faults[0].what, InGeojson::FeaturesNoList(Thing::Null).into());
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Thing {
    /// `null`.
    Null,
    /// An array.
    List,
    /// An object.
    Object,
    /// `true` or `false`.
    Truth,
    /// A number.
    Number,
    /// A string.
    Text,
    /// This value, as it stands.
    Value(Excerpt),
}

/// Objects that have a `type`.
///
/// ```
/// use schrund::{fault::{Wrong, geojson::{InGeojson, Object}}, read::geojson::zones};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_m": 6}, "geometry": {"coordinates": [8.0, 46.0]}}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("the geometry has no type");
/// let Wrong::Geojson(InGeojson::Type { of, known, .. }) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!(*of, Object::Geometry);
/// assert!(known.contains(&"MultiPolygon") && !known.contains(&"Feature"), "{known:?}");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Object {
    /// The file as a whole.
    File,
    /// A Feature.
    Feature,
    /// A geometry.
    Geometry,
}

/// What is wrong with a `type`.
///
/// ```
/// use schrund::{fault::{Wrong, geojson::{InGeojson, NoType}}, read::geojson::zones};
///
/// let ice = r#"{"type": "polygon", "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("the words are case-sensitive");
/// let Wrong::Geojson(InGeojson::Type { why, .. }) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!(*why, NoType::Misspelt { given: "polygon".to_owned(), right: "Polygon" });
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoType {
    /// It is not there.
    Missing,
    /// It is no word.
    NoWord(Thing),
    /// Only upper and lower case differ from this word.
    Misspelt {
        /// As given.
        given: String,
        /// As GeoJSON has it.
        right: &'static str,
    },
    /// It is no type of such an object.
    Unknown(String),
}

/// Geometries that are no polygons, counted.
///
/// ```
/// use schrund::{fault::geojson::{InGeojson, NotPolygons}, read::geojson::zones};
///
/// let huts = r#"{"type": "GeometryCollection", "geometries": [
///     {"type": "Point", "coordinates": [8.0, 46.0]}, {"type": "Point", "coordinates": [8.1, 46.0]},
///     {"type": "LineString", "coordinates": [[8.0, 46.0], [8.1, 46.0]]}]}"#;
/// let faults = zones("huts.geojson", huts.as_bytes(), &Default::default()).expect_err("no ice in there");
/// let left_out = NotPolygons { points: 2, lines: 1, empty: 0 };
/// assert!(faults.iter().any(|fault| fault.what == InGeojson::NoZones(1, left_out).into()), "{faults:?}");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct NotPolygons {
    /// Points.
    pub points: usize,
    /// Lines.
    pub lines: usize,
    /// Geometries without a position.
    pub empty: usize,
}

impl InGeojson {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Empty | Self::EmptyInventory | Self::Is(_) | Self::IsUtf16 => Code::WrongKind,
            Self::CutOff | Self::Broken(_) => Code::BrokenText,
            Self::ForeignCrs(_) | Self::UnknownCrs(_) => Code::ForeignCrs,
            Self::Misplaced(misplaced) => misplaced.why.kind(),
            Self::Huge | Self::SwappedAxes => Code::BadPosition,
            Self::Number { .. } | Self::Unreadable(_) | Self::StrikeRange { .. } => Code::BadNumber,
            Self::Downwards { .. } | Self::GapsCrossed { .. } => Code::RangeOrder,
            Self::OneEnd { .. } | Self::GapsDiffer(_) => Code::WorseEnd,
            Self::GapNarrow(_) => Code::NarrowGap,
            Self::StrikeMissing => Code::StrikeMissing,
            Self::Word { .. } => Code::BadWord,
            Self::NearMiss { .. } => Code::NearMiss,
            Self::NotANumber => Code::NotANumber,
            Self::GapNotGiven(_) => Code::GapNotGiven,
            Self::GapAssumed { .. } => Code::GapAssumed,
            Self::NoZones(..) | Self::NoIce(_) => Code::NoZones,
            Self::InventoryGaps(_) => Code::InventoryGaps,
            Self::NotPolygons(_) => Code::NotAPolygon,
            Self::IceUndrawn(_) => Code::IceUndrawn,
            Self::NoArea(_) => Code::NoArea,
            Self::RingsClosed(_) => Code::RingClosed,
            Self::LongitudesTakenBack(_) => Code::LongitudeTakenBack,
            Self::RingsTangled(_) => Code::RingTangled,
            Self::OuterNotFirst(_) | Self::RingsApart(_) | Self::HolesStickOut(_) => {
                Code::RingsMisnested
            }
            _ => Code::BadGeojson,
        }
    }

    /// Whether one cure mends both, so that in a long row only a few need to be told.
    #[must_use]
    pub fn is_like(&self, other: &Self) -> bool {
        match (self, other) {
            (
                Self::Type { of, why, .. },
                Self::Type {
                    of: also,
                    why: reason,
                    ..
                },
            ) => {
                let right = |why: &NoType| match why {
                    NoType::Misspelt { right, .. } => Some(*right),
                    _ => None,
                };
                of == also && right(why) == right(reason)
            }
            (Self::Misplaced(one), Self::Misplaced(two)) => one.why == two.why,
            (Self::Shallow { kind, .. }, Self::Shallow { kind: also, .. }) => kind == also,
            (Self::Stands { due, .. }, Self::Stands { due: also, .. }) => due == also,
            _ => std::mem::discriminant(self) == std::mem::discriminant(other),
        }
    }
}
