//! What the leader says where a zones file is silent.

use super::number::{GAP, admits};
use crate::fault::{Fault, Place, trip::InTrip};

/// What the leader says to assume where a file is silent.
///
/// ```
/// use schrund::read::geojson::{Given, zones};
///
/// let ice = r#"{"type": "Polygon", "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}"#;
/// assert!(zones("ice.geojson", ice.as_bytes(), &Given::default()).is_err(), "no width is assumed silently");
/// let read = zones("ice.geojson", ice.as_bytes(), &Given { gap_m: Some(6.0) })?;
/// assert!(read.value[0].gap.assumed && read.value[0].gap.max_m == 6.0);
/// assert_eq!(read.notes[0].code(), "gap-assumed", "and the plan is as good as that guess");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Given {
    /// Width of the gaps of zones that give none, metres (`--gap`).
    pub gap_m: Option<f64>,
}

impl Given {
    /// What is wrong with it; `place` is where it was said.
    #[must_use]
    pub fn fault(&self, place: &Place) -> Option<Fault> {
        let gap_m = self.gap_m.filter(|gap_m| !admits(GAP, *gap_m))?;
        let within_m = [GAP.min, GAP.max];
        let place = place.clone().with_property("gap_m");
        Some(Fault::new(InTrip::Gap { gap_m, within_m }, place))
    }
}
