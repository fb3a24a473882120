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
/// assert_eq!(faults[0].what, InPlan::NoZoneMet { zones: 0, nearest: None }.into());
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
        /// Where the nearest lies.
        nearest: Option<FarZone>,
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
/// let Wrong::Plan(InPlan::NoZoneMet { nearest: Some(far), .. }) = &faults[0].what else { panic!("{}", faults[0]) };
/// assert_eq!((far.zone, (far.away_m / 1000.0).round()), (1, 444.0));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FarZone {
    /// Its number.
    pub zone: usize,
    /// From where the route begins to the first corner of the zone, metres.
    pub away_m: f64,
    /// That corner: longitude, latitude.
    pub at: [f64; 2],
    /// Where the route begins: longitude, latitude.
    pub begins: [f64; 2],
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
