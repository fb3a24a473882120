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
/// assert_eq!(faults[0].what, InPlan::NoZoneMet(0).into());
/// assert_eq!(faults[0].at.item, Some(InPlan::NoZoneMet(0).item()));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InPlan {
    /// So many people cannot rope up.
    Alone(usize),
    /// None of so many zones is met.
    NoZoneMet(usize),
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

impl InPlan {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Alone(_) => Code::Alone,
            Self::NoZoneMet(_) => Code::NoZoneMet,
            Self::Window { .. } => Code::BadNumber,
        }
    }

    /// What it is about.
    #[must_use]
    pub fn item(&self) -> Item {
        match self {
            Self::Alone(_) => Item::Party,
            Self::NoZoneMet(_) => Item::Zones,
            Self::Window { .. } => Item::Relief,
        }
    }
}
