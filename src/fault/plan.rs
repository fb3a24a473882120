//! Why sound inputs make no plan.

use serde::Serialize;

use crate::fault::{code::Code, place::Item};

/// Why there is no plan of sound inputs.
///
/// ```
/// use schrund::fault::plan::InPlan;
///
/// let mut job = schrund::example::job()?;
/// job.zones.clear();
/// let faults = schrund::plan(&job).expect_err("a plan without a roped leg would look like an all-clear");
/// assert_eq!(faults[0].what, InPlan::NoZoneMet { zones: 0, far: Vec::new() }.into());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InPlan {
    /// So many people cannot rope up.
    Alone(usize),
    /// None of the zones is met.
    NoZoneMet {
        /// How many there are.
        zones: usize,
        /// Where the nearest of them lie, the nearest first.
        far: Vec<FarZone>,
    },
    /// A window of heights is empty or too large.
    Window {
        /// Columns of heights.
        columns: usize,
        /// Rows of heights.
        rows: usize,
        /// The most heights there can be.
        most: usize,
    },
}

/// A zone that the route does not come near.
///
/// ```
/// use schrund::fault::{Wrong, plan::InPlan};
///
/// let mut job = schrund::example::job()?;
/// for point in job.zones.iter_mut().flat_map(|zone| &mut zone.outline.polygons).flat_map(|part| &mut part.outer) {
///     point.lon_deg += 10.0;
/// }
/// let faults = schrund::plan(&job).expect_err("ten degrees to the east");
/// let Wrong::Plan(InPlan::NoZoneMet { far, .. }) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!((far.len(), far[0].zone, far[0].name.as_deref()), (1, 1, Some("Middle icefall")));
/// assert!((far[0].away_m - 444_000.0).abs() < 1000.0, "ten degrees of longitude at 66.5° N");
/// // A geodesic to the east sets out to the north of it, by half the longitudes times the sine of the latitude.
/// assert!((far[0].bearing_deg - 85.4).abs() < 0.2, "{}", far[0].bearing_deg);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FarZone {
    /// Its number.
    pub zone: usize,
    /// What the leader calls it.
    pub name: Option<String>,
    /// From the nearest point of the line to the nearest corner of the zone, metres.
    pub away_m: f64,
    /// In which direction it lies from there, degrees clockwise from true north.
    pub bearing_deg: f64,
    /// That corner: longitude, latitude.
    pub at: [f64; 2],
}

impl InPlan {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Alone(_) => Code::Alone,
            Self::NoZoneMet { .. } => Code::NoZoneMet,
            Self::Window { .. } => Code::BadNumber,
        }
    }

    /// What it is about.
    #[must_use]
    pub fn item(&self) -> Item {
        match self {
            Self::Alone(_) => Item::Party,
            Self::NoZoneMet { .. } => Item::Zones,
            Self::Window { .. } => Item::Relief,
        }
    }
}
