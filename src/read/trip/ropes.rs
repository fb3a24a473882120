//! The ropes at hand, as a trip file says it.

use serde::{Deserialize, Serialize};

use crate::{
    fault::{Fault, Place, trip::InTrip},
    trip::rope::Rope,
};

/// One rope of a trip file.
///
/// ```
/// use schrund::{fault::{Place, trip::InTrip}, read::trip::{RopeEntry, Trip}};
///
/// let with = |length_m| Trip { rope: Some(vec![RopeEntry::long(length_m)]), ..Trip::default() };
/// let ropes = with(60.0).ropes(&Place::default(), &Default::default())?;
/// assert_eq!((ropes[0].length_m, ropes[0].diameter_mm), (60.0, None));
/// let faults = with(600.0).ropes(&Place::default(), &Default::default()).expect_err("a slip of the pen");
/// assert_eq!(faults[0].what, InTrip::RopeLength { length_m: 600.0, within_m: [5.0, 200.0] }.into());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RopeEntry {
    /// Metres.
    pub length_m: f64,
    /// Millimetres.
    pub diameter_mm: Option<f64>,
    /// What the leader calls it.
    pub name: Option<String>,
    /// Whether two ropes are joined in it; its length is then what is left with the bend tied.
    pub joined: Option<bool>,
}

/// Shortest and longest rope, metres. The longest single ropes made are 200 m rolls `[from memory]`; more is a slip
/// of the pen.
const ROPE_M: [f64; 2] = [5.0, 200.0];
/// Thinnest and thickest rope, millimetres. Our judgement.
const ROPE_MM: [f64; 2] = [4.0, 14.0];

impl RopeEntry {
    /// A rope of so many metres of which nothing else is known.
    #[must_use]
    pub fn long(length_m: f64) -> Self {
        Self {
            length_m,
            diameter_mm: None,
            name: None,
            joined: None,
        }
    }

    pub(super) fn rope(&self) -> Rope {
        Rope {
            length_m: self.length_m,
            diameter_mm: self.diameter_mm,
            name: self.name.clone(),
            joined: self.joined.unwrap_or(false),
        }
    }

    pub(super) fn faults(&self, place: &Place) -> Vec<Fault> {
        let mut faults = Vec::new();
        let (length_m, [min_m, max_m]) = (self.length_m, ROPE_M);
        if !(min_m..=max_m).contains(&length_m) {
            let within_m = ROPE_M;
            let length = InTrip::RopeLength { length_m, within_m };
            faults.push(Fault::new(length, place.clone()));
        }
        let [min_mm, max_mm] = ROPE_MM;
        let across = self.diameter_mm;
        if let Some(diameter_mm) = across.filter(|d| !(min_mm..=max_mm).contains(d)) {
            let across = InTrip::RopeAcross {
                diameter_mm,
                within_mm: ROPE_MM,
            };
            faults.push(Fault::new(across, place.clone()));
        }
        faults
    }
}
