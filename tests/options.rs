//! Ways to split the party and use the ropes.

mod planned;
mod tried;
mod ways;

use schrund::{Planner, plan::options::Options};

use crate::fixture::trip::Trip;

/// The ways of a trip.
fn weighed(made: &Trip) -> Options {
    Planner::new(&made.job())
        .and_then(|p| p.options())
        .unwrap_or_else(|p| panic!("{p:?}"))
}
