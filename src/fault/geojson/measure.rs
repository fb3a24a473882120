//! What the properties of a zone measure, and what is wrong where their numbers are none or are not there.

use serde::Serialize;

use crate::fault::place::Item;

/// What a property measures.
///
/// ```
/// use schrund::{fault::{Wrong, geojson::{InGeojson, Measure}}, read::geojson::zones};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_m": 6, "strike_deg": 400}, "geometry": {"type": "Polygon",
///     "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("beyond a full turn");
/// let Wrong::Geojson(InGeojson::Number { quantity, .. }) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!((quantity.what, quantity.max), (Measure::Strike, 360.0));
/// ```
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
///
/// ```
/// use schrund::{fault::{Wrong, geojson::InGeojson}, read::geojson::zones};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_m": 6, "snow_depth_m": "0.4-1.5"}, "geometry": {
///     "type": "Polygon", "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}}"#;
/// let read = zones("ice.geojson", ice.as_bytes(), &Default::default())?;
/// let Wrong::Geojson(InGeojson::OneEnd { quantity, value, .. }) = &read.notes[0].what else { panic!("{read:?}") };
/// assert!(quantity.is_length() && !quantity.upper_counts, "less snow is the worse case for knots");
/// assert_eq!(*value, 0.4);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
///
/// ```
/// use schrund::{fault::{Wrong, geojson::{InGeojson, NoNumber}}, read::geojson::zones};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_m": "20 ft"}, "geometry": {"type": "Polygon",
///     "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("feet are not metres");
/// let Wrong::Geojson(InGeojson::Number { why, .. }) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!(*why, NoNumber::Unit("ft".to_owned()), "a number is never converted behind the leader's back");
/// ```
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

/// A length under a name that ends with another unit than metres.
///
/// ```
/// use schrund::{fault::{Wrong, geojson::InGeojson}, read::geojson::zones};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_cm": 80}, "geometry": {"type": "Polygon",
///     "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("no width in metres");
/// let Wrong::Geojson(InGeojson::GapNotGiven(widthless)) = &faults[0].what else { panic!("{}", faults[0]) };
/// let unit = widthless.named[0].unit.expect("the name ends with it");
/// assert_eq!((unit.unit, unit.metres), ("cm", Some(0.8)), "told, and never taken");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct InUnit {
    /// The unit.
    pub unit: &'static str,
    /// What stands there in metres, where it is a number.
    pub metres: Option<f64>,
}

/// Zones that give no width.
///
/// ```
/// use schrund::{fault::{Wrong, geojson::InGeojson}, read::geojson::{Given, zones}};
///
/// let ice = r#"{"type": "Polygon", "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Given::default()).expect_err("no width is assumed silently");
/// let Wrong::Geojson(InGeojson::GapNotGiven(widthless)) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!((widthless.count, widthless.named.len(), widthless.lower_end), (1, 1, false));
/// ```
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Widthless {
    /// How many.
    pub count: usize,
    /// The first of them.
    pub named: Vec<Silent>,
    /// Of how many a width stands there that was assumed, by `gap_assumed`.
    pub guessed: usize,
    /// Whether any gives a lower end.
    pub lower_end: bool,
    /// Properties that they have and that mean nothing here, the first of them.
    pub found: Vec<String>,
}

/// A zone that gives no width.
///
/// ```
/// use schrund::{fault::{Item, Wrong, geojson::{InGeojson, Silent}}, read::geojson::zones};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_min_m": 4, "gap_width": 9}, "geometry": {"type": "Polygon",
///     "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("a lower end is no width");
/// let Wrong::Geojson(InGeojson::GapNotGiven(widthless)) = &faults[0].what else { panic!("{}", faults[0]) };
/// let feature = Item::Feature { number: 1, name: None };
/// assert_eq!(widthless.named, [Silent { feature, near: Some("gap_width".to_owned()), unit: None, at_least_m: Some(4.0), guessed: false }]);
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Silent {
    /// Its feature.
    pub feature: Item,
    /// The property in which its width may stand.
    pub near: Option<String>,
    /// The unit that the name of this property ends with, where it is not metres.
    pub unit: Option<InUnit>,
    /// The lower end that it gives, metres.
    pub at_least_m: Option<f64>,
    /// Whether a width stands there that was assumed, by `gap_assumed`.
    pub guessed: bool,
}
