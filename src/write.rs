//! Plan → bytes: one file per format. Writers are pure, start from the same rows, and round for reading.

pub mod change;
pub mod csv;
pub mod findings;
pub mod geojson;
pub mod gpx;
pub mod itinerary;
pub mod json;
mod keep;
pub mod kml;
pub mod options;
mod outline;
mod paragraph;
pub mod report;
pub mod rope_line;
pub mod row;
pub mod setups;
pub mod style;
pub mod table;
pub mod text;

use crate::{
    plan::Plan,
    trip::{route::Route, zone::Zone},
};

/// What every writer writes from: the plan and the geometry it was made from.
#[derive(Clone, Copy, Debug)]
pub struct Sheet<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The stages planned.
    pub route: &'a Route,
    /// The zones, numbered as in the plan.
    pub zones: &'a [Zone],
}
