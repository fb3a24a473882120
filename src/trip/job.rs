//! Everything a plan is made from.

use crate::{
    fault::Problem,
    practice::Rules,
    raster::Terrain,
    trip::{
        party::{Party, Rope},
        route::Route,
        zone::Zone,
    },
};

/// Everything a plan is made from.
#[derive(Clone, Copy, Debug)]
pub struct Job<'a> {
    /// The stages to plan.
    pub route: &'a Route,
    /// The ice.
    pub zones: &'a [Zone],
    /// Who goes.
    pub party: &'a Party,
    /// The ropes at hand; without one the plan says what to take.
    pub ropes: &'a [Rope],
    /// The figures and words in force.
    pub rules: &'a Rules,
    /// Heights of the ground, if the leader has them.
    pub terrain: Option<&'a Terrain>,
    /// Ice of a glacier inventory, gap widths meaning nothing: where no zone is drawn on it, the plan says so.
    pub glaciers: &'a [Zone],
    /// Notices from reading the inputs; they go into the plan, since a leader reads the paper.
    pub notices: &'a [Problem],
}
