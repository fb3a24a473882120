//! The direction in which the gaps of a zone run, and how sure it is.

use super::{
    nowhere,
    number::{STRIKE, STRIKE_UNCERTAINTY},
    properties::{Properties, number},
};
use crate::{
    fault::{Code, Problem},
    trip::zone::Strike,
};

/// Reads `strike_deg` and `strike_uncertainty_deg`; without the latter the strike is taken as exact,
/// and the plan says so.
pub(super) fn strike(properties: &mut Properties, problems: &mut Vec<Problem>) -> Option<Strike> {
    let doubt = number(
        properties,
        "strike_uncertainty_deg",
        &STRIKE_UNCERTAINTY,
        problems,
    );
    let mut met = Vec::new();
    let given = number(properties, "strike_deg", &STRIKE, &mut met);
    let range = given.low.zip(given.high);
    if let Some((low, high)) = range {
        met = vec![is_range(low, high)];
    } else if given.high.is_none() && met.is_empty() && doubt.high.is_some() {
        met.push(alone());
    }
    problems.append(&mut met);
    let deg = given.high.filter(|_| range.is_none())?;
    Some(Strike {
        // Whole half-turns, also a hair below zero, are north.
        deg: deg.rem_euclid(180.0) % 180.0 + 0.0,
        uncertainty_deg: doubt.high,
    })
}

fn is_range(low_deg: f64, high_deg: f64) -> Problem {
    let place = nowhere().with_property("strike_deg");
    let says = format!("a strike is one direction, not a range from {low_deg} to {high_deg}");
    let (middle, half) = (low_deg.midpoint(high_deg), (high_deg - low_deg) / 2.0);
    Problem::new(Code::BadNumber, place, says).hint(format!(
        "write `strike_deg` {middle} and `strike_uncertainty_deg` {half} if that is what you mean"
    ))
}

fn alone() -> Problem {
    let place = nowhere().with_property("strike_uncertainty_deg");
    let says = "an uncertainty without a strike says nothing and was not used";
    Problem::new(Code::StrikeMissing, place, says)
        .hint("add `strike_deg`, the direction in which the gaps run")
}
