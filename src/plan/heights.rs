//! Where two sources of heights do not agree, and where one has none.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::place::HeightsFrom;

/// How far the terrain model lies from the heights of the route file.
///
/// ```
/// use schrund::plan::{fact::Fact, place::HeightsFrom};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let apart = plan.findings.iter().find_map(|f| match f.fact()? {
///     Fact::HeightsCompared { apart } => Some(*apart),
///     _ => None,
/// });
/// let apart = apart.expect("both sources have heights");
/// assert!((apart.median_m + 5.0).abs() < 0.1, "the model lies 5 m below the heights of the file");
/// assert_eq!(apart.used, HeightsFrom::TerrainModel);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HeightsApart {
    /// The middle one of the differences, metres; positive where the model lies higher.
    pub median_m: f64,
    /// The greatest difference, metres, likewise.
    pub worst_m: f64,
    /// Chainage of that one, metres.
    pub worst_at_m: f64,
    /// The heights that are used for climbs and times.
    pub used: HeightsFrom,
}

/// Where the terrain model has no heights.
///
/// ```
/// use std::io::Cursor;
/// use schrund::{example, plan::{fact::Fact, place::HeightsFrom}};
///
/// let mut job = example::job()?;
/// let north = Box::new(Cursor::new(example::pair_terrain_hgt()));
/// job.terrain.add("N67E002.hgt", north).map_err(|fault| vec![fault])?;
/// let plan = schrund::plan(&job)?;
/// let mut voids = plan.findings.iter().filter_map(|f| match f.fact()? {
///     Fact::TerrainVoid { void } => Some((void.void_m, void.used)),
///     _ => None,
/// });
/// assert_eq!(voids.next(), Some((None, HeightsFrom::RouteFile)), "a tile that the line never meets");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct TerrainVoid {
    /// Metres of the line without a height; absent where the model has none along the whole stage.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub void_m: Option<f64>,
    /// Chainage of the first of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_m: Option<f64>,
    /// The heights that are used for climbs and times.
    pub used: HeightsFrom,
    /// Whether the route file has heights.
    pub file_has_heights: bool,
}
