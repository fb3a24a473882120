//! Why coordinates of a zones file are no positions.

use serde::Serialize;

use super::{code::Code, place::Excerpt};

/// Why a value is no position.
///
/// ```
/// use schrund::{fault::{Wrong, coordinates::NoPosition, geojson::InGeojson, place::Excerpt}, read::geojson::zones};
///
/// let ice = r#"{"type": "Polygon", "coordinates": [[[8.0, "46"], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("a text is no latitude");
/// let Wrong::Geojson(InGeojson::NoPosition { way, why }) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!(*why, NoPosition::Holds(Excerpt::of(r#""46""#, 10)));
/// assert_eq!(way.as_slice(), [("ring", 1), ("position", 1)]);
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoPosition {
    /// It is something else.
    Is(Excerpt),
    /// It holds this in the place of a number.
    Holds(Excerpt),
    /// It is empty.
    Empty,
    /// It has one number only.
    OneNumber(Excerpt),
}

/// Numbers that are no longitude and latitude, and where they stand.
///
/// ```
/// use schrund::{fault::coordinates::{Misplaced, NoLonLat}, fault::{Wrong, geojson::InGeojson}, read::geojson::zones};
///
/// let swiss = r#"{"type": "Polygon", "coordinates": [[[2600000, 1200000], [2600100, 1200000], [2600100, 1200100]]]}"#;
/// let faults = zones("ice.geojson", swiss.as_bytes(), &Default::default()).expect_err("metres of a map grid");
/// let misplaced = Misplaced {
///     numbers: vec![2_600_000.0, 1_200_000.0], why: NoLonLat::Projected, position: 1, ring: 0, polygon: None,
///     grids: Vec::new(), // nobody said where the route is
/// };
/// assert_eq!(faults[0].what, Wrong::Geojson(InGeojson::Misplaced(misplaced)));
/// assert_eq!(faults[0].code(), "projected-position");
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Misplaced {
    /// The first two.
    pub numbers: Vec<f64>,
    /// Why not.
    pub why: NoLonLat,
    /// From 1.
    pub position: usize,
    /// 0 is the outer ring, others are holes.
    pub ring: usize,
    /// Number of the polygon, where there are several.
    pub polygon: Option<usize>,
    /// The map grids in which the numbers are a place near the route.
    pub grids: Vec<MapGrid>,
}

/// A map grid by its number in the EPSG dataset.
///
/// ```
/// use schrund::{example::PAIR_ROUTE_GPX, fault::{Wrong, geojson::InGeojson}, read::{input::Input, lay::Sources}};
/// use schrund::geometry::{Utm, LonLat};
///
/// let route = schrund::read::gpx::route("route.gpx", PAIR_ROUTE_GPX.as_bytes())?.value;
/// let at = Utm::of(route.stages[0].points().at(0)).expect("no pole");
/// let (x, y) = (at.easting_m.round(), at.northing_m.round());
/// let ice = format!(r#"{{"type": "Polygon", "coordinates": [[[{x}, {y}], [{x}, {y}], [{x}, {y}]]]}}"#);
/// let sources = Sources::new(
///     Input::text("route.gpx", PAIR_ROUTE_GPX.as_bytes()),
///     Input::text("zones.geojson", ice.as_bytes()),
/// );
/// let faults = sources.job().expect_err("metres");
/// let grids = faults.iter().find_map(|fault| match &fault.what {
///     Wrong::Geojson(InGeojson::Misplaced(misplaced)) => Some(&misplaced.grids),
///     _ => None,
/// });
/// let zone = 32_600 + u32::from(at.zone);
/// assert!(grids.is_some_and(|all| all.iter().any(|grid| grid.epsg == zone)), "the UTM zone of the route");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct MapGrid {
    /// Its number.
    pub epsg: u32,
    /// Its name there.
    pub name: String,
}

/// Why two numbers are no longitude and latitude.
///
/// ```
/// use schrund::{fault::{Wrong, coordinates::NoLonLat, geojson::InGeojson}, read::geojson::zones, say};
///
/// let ice = r#"{"type": "Polygon", "coordinates": [[[-16.7, 64.0], [-16.6, 64.0], [64.0, -116.6], [-16.7, 64.0]]]}"#;
/// let faults = zones("ice.geojson", ice.as_bytes(), &Default::default()).expect_err("a latitude of -116.6");
/// let Wrong::Geojson(InGeojson::Misplaced(misplaced)) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!(misplaced.why, NoLonLat::Swapped);
/// let hint = say::fault::hint(&faults[0], Default::default()).map(|hint| hint.to_string());
/// assert_eq!(hint.as_deref(), Some("GeoJSON has the longitude first: swap the two numbers"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoLonLat {
    /// There are not two.
    TooShort,
    /// One is beyond ±360: metres of a map grid.
    Projected,
    /// The longitude is beyond ±180.
    Longitude,
    /// The latitude is beyond ±90.
    Latitude,
    /// The latitude is beyond ±90, but the other way round both would do.
    Swapped,
}

impl NoLonLat {
    pub(super) fn kind(self) -> Code {
        match self {
            Self::TooShort => Code::BadGeojson,
            Self::Projected => Code::ProjectedPosition,
            Self::Longitude | Self::Latitude | Self::Swapped => Code::BadPosition,
        }
    }
}
