//! The direction in which the gaps of a zone run, and how sure it is.

use super::{
    number::{STRIKE, STRIKE_UNCERTAINTY},
    properties::{Properties, number},
};
use crate::{
    fault::{Fault, Place, geojson::InGeojson},
    trip::zone::Strike,
};

/// Reads `strike_deg` and `strike_uncertainty_deg`; without the latter the strike is taken as exact,
/// and the plan says so.
pub(super) fn strike(properties: &mut Properties, faults: &mut Vec<Fault>) -> Option<Strike> {
    let doubt = number(
        properties,
        "strike_uncertainty_deg",
        STRIKE_UNCERTAINTY,
        faults,
    );
    let mut met = Vec::new();
    let given = number(properties, "strike_deg", STRIKE, &mut met);
    let range = given.low.zip(given.high);
    if let Some((low, high)) = range {
        met = vec![is_range(low, high)];
    } else if given.high.is_none() && met.is_empty() && doubt.high.is_some() {
        met.push(alone());
    }
    faults.append(&mut met);
    let deg = given.high.filter(|_| range.is_none())?;
    Some(Strike {
        // Whole half-turns, also a hair below zero, are north.
        deg: deg.rem_euclid(180.0) % 180.0 + 0.0,
        uncertainty_deg: doubt.high,
    })
}

fn is_range(low_deg: f64, high_deg: f64) -> Fault {
    let place = Place::default().with_property("strike_deg");
    Fault::new(InGeojson::StrikeRange { low_deg, high_deg }, place)
}

fn alone() -> Fault {
    let place = Place::default().with_property("strike_uncertainty_deg");
    Fault::new(InGeojson::StrikeMissing, place)
}
