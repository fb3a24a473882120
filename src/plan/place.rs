//! Places on the line that a plan speaks of, and where its heights come from.

use schemars::JsonSchema;
use serde::Serialize;

use crate::trip::route::Jump;

/// A piece of a stage.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Piece {
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, metres.
    pub to_m: f64,
}

/// A jump between segments; never walked.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct JumpSummary {
    /// Chainage, metres.
    pub at_m: f64,
    /// Geodesic from one end to the other, metres.
    pub length_m: f64,
}

impl From<Jump> for JumpSummary {
    fn from(jump: Jump) -> Self {
        Self {
            at_m: jump.at_m,
            length_m: jump.length_m,
        }
    }
}

/// A place where the ground steepens down the fall line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RollOver {
    /// Chainage, metres.
    pub at_m: f64,
    /// Longitude, latitude.
    pub at: [f64; 2],
    /// By how many degrees the ground below is steeper than the ground above.
    pub steepens_deg: f64,
}

/// Where heights come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeightsFrom {
    /// The route file.
    RouteFile,
    /// The terrain model.
    TerrainModel,
}
