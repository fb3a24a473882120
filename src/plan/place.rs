//! Places on the line that a plan speaks of, and where its heights come from.

use schemars::JsonSchema;
use serde::Serialize;

use crate::trip::route::{Jump, Stretch};

/// A piece of a stage.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let pieces = plan.legs.iter().flat_map(|leg| &leg.ice_without_zone);
/// let without_m: f64 = pieces.map(|piece| piece.to_m - piece.from_m).sum();
/// let in_zones = plan.zones.iter().flat_map(|zone| &zone.crossings);
/// let in_zones_m: f64 = in_zones.map(|crossing| crossing.exit_m - crossing.enter_m).sum();
/// // The inventory has ice from behind the jump on.
/// let ice_m = plan.route.length_m - plan.route.stages[0].jumps[0].at_m;
/// assert!((without_m + in_zones_m - ice_m).abs() < 0.01);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Piece {
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, metres.
    pub to_m: f64,
}

impl From<Stretch> for Piece {
    fn from(Stretch { from_m, to_m }: Stretch) -> Self {
        Self { from_m, to_m }
    }
}

impl From<Piece> for Stretch {
    fn from(Piece { from_m, to_m }: Piece) -> Self {
        Self { from_m, to_m }
    }
}

/// A jump between segments; never walked.
///
/// ```
/// let job = schrund::example::pair()?;
/// let stage = &schrund::plan(&job)?.route.stages[0];
/// // This line is straight, and nobody walks its jump: the two together reach from end to end.
/// let points = job.route.stages[0].points();
/// let across_m = points.at(0).distance_m(points.at(points.len() - 1));
/// assert!((stage.length_m + stage.jumps[0].length_m - across_m).abs() < 0.01);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let [roll] = plan.legs[1].look_here[..] else { panic!("one") };
/// // Uphill of 66.515° the ground has 4°, below it 14°; what a model of 59 m cells shows of that is a little less.
/// assert!((roll.at[1] - 66.515).abs() < 0.0005, "{roll:?}");
/// assert!((8.0..10.0).contains(&roll.steepens_deg), "{roll:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RollOver {
    /// Chainage, metres.
    pub at_m: f64,
    /// Longitude, latitude.
    pub at: [f64; 2],
    /// Height of the line there, metres; absent where none is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height_m: Option<f64>,
    /// By how many degrees the ground below is steeper than the ground above.
    pub steepens_deg: f64,
}

/// Where heights come from.
///
/// ```
/// use schrund::{plan::place::HeightsFrom, raster::Terrain};
///
/// let mut job = schrund::example::pair()?;
/// assert_eq!(schrund::plan(&job)?.route.heights_from, [HeightsFrom::TerrainModel]);
/// job.terrain = Terrain::new();
/// assert_eq!(schrund::plan(&job)?.route.heights_from, [HeightsFrom::RouteFile]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeightsFrom {
    /// The route file.
    RouteFile,
    /// The terrain model.
    TerrainModel,
}

/// An end of the route.
///
/// ```
/// use schrund::plan::{fact::Fact, place::RouteEnd};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let leg = plan.legs.last().expect("a leg");
/// let cut_off = Fact::CutOff { at: RouteEnd::End };
/// assert!(leg.findings.iter().any(|f| f.fact() == Some(&cut_off)), "this line ends on the ice");
/// assert_eq!(leg.end_m, plan.route.length_m);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum RouteEnd {
    /// Where it begins.
    Begin,
    /// Where it ends.
    End,
}
