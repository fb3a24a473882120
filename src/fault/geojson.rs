//! What can be wrong or odd about a zones file.

use serde::Serialize;

use super::{
    code::Code,
    coordinates::{Misplaced, NoPosition},
    place::{Excerpt, Item},
};

/// What is wrong with a zones file, or odd about it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InGeojson {
    /// It is empty.
    Empty,
    /// It is XML.
    IsXml,
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
    /// A member of an object, or a property, stands there twice.
    Twice(Option<&'static str>),
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
    /// No polygon among so many features.
    NoZones(usize),
    /// Geometries that are no polygons.
    NotPolygons(NotPolygons),
    /// So many polygons cover nothing.
    NoArea(usize),
    /// So many rings were closed.
    RingsClosed(usize),
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

/// What a property measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Measure {
    /// Width of gaps, metres.
    GapWidth,
    /// Snow on the ice, metres.
    SnowDepth,
    /// Direction of the gaps, degrees.
    Strike,
    /// Half-width of the range it may lie in, degrees.
    StrikeUncertainty,
}

/// What a property measures, and what it may be.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Quantity {
    /// What.
    pub what: Measure,
    /// Least value accepted.
    pub min: f64,
    /// Greatest value accepted.
    pub max: f64,
    /// Of a range the upper end counts.
    pub upper_counts: bool,
}

impl Quantity {
    /// Metres; else degrees.
    #[must_use]
    pub fn is_length(&self) -> bool {
        matches!(self.what, Measure::GapWidth | Measure::SnowDepth)
    }
}

/// What is wrong with a number of a property.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoNumber {
    /// It is not a plain one.
    NotPlain,
    /// It is infinite or NaN.
    NotFinite,
    /// It has this unit.
    Unit(String),
    /// It has a comma that can mean two things.
    Comma(String),
    /// It lies outside its range.
    Outside,
}

/// Zones that give no width.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Widthless {
    /// How many.
    pub count: usize,
    /// The first of them.
    pub named: Vec<Silent>,
    /// Whether any gives a lower end.
    pub lower_end: bool,
}

/// A zone that gives no width.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Silent {
    /// Its feature.
    pub feature: Item,
    /// The property in which its width may stand.
    pub near: Option<String>,
    /// The lower end that it gives, metres.
    pub at_least_m: Option<f64>,
}

/// Geometries that are no polygons, counted.
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
    /// Its code.
    #[must_use]
    pub fn code(&self) -> Code {
        match self {
            Self::Empty | Self::IsXml | Self::IsUtf16 => Code::WrongKind,
            Self::CutOff | Self::Broken(_) => Code::BrokenText,
            Self::ForeignCrs(_) | Self::UnknownCrs(_) => Code::ForeignCrs,
            Self::Misplaced(misplaced) => misplaced.why.code(),
            Self::Huge | Self::SwappedAxes => Code::BadPosition,
            Self::Number { .. } | Self::Unreadable(_) | Self::StrikeRange { .. } => Code::BadNumber,
            Self::Downwards { .. } | Self::GapsCrossed { .. } => Code::RangeOrder,
            Self::OneEnd { .. } | Self::GapsDiffer(_) => Code::WorseEnd,
            Self::StrikeMissing => Code::StrikeMissing,
            Self::Word { .. } => Code::BadWord,
            Self::NearMiss { .. } => Code::NearMiss,
            Self::NotANumber => Code::NotANumber,
            Self::GapNotGiven(_) => Code::GapNotGiven,
            Self::GapAssumed { .. } => Code::GapAssumed,
            Self::NoZones(_) => Code::NoZones,
            Self::NotPolygons(_) => Code::NotAPolygon,
            Self::NoArea(_) => Code::NoArea,
            Self::RingsClosed(_) => Code::RingClosed,
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
            _ if self.is_uncured() => other.is_uncured(),
            _ => std::mem::discriminant(self) == std::mem::discriminant(other),
        }
    }
}

impl InGeojson {
    /// Geometries of which there is nothing to say but what they lack.
    fn is_uncured(&self) -> bool {
        matches!(
            self,
            Self::GeometryNoObject(_) | Self::NoCoordinates(_) | Self::NoGeometries | Self::Deep
        )
    }
}
