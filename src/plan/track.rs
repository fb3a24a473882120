//! One track of many, in figures: how much ice it crosses and what is found there.

use serde::Serialize;

use crate::{plan::verdict::Verdict, trip::route::Stretch};

/// What is known of a track that was held against ice and party. Lengths are metres, over all stages.
///
/// ```
/// use schrund::{Survey, plan::verdict::Verdict};
///
/// let job = schrund::example::job()?;
/// let facts = Survey::over(&job).of(&job.route)?;
/// let plan = schrund::plan(&job)?;
/// // The same figures as those of the plan.
/// assert!((facts.ice_m - plan.zones[0].crossings.iter().map(|c| c.exit_m - c.enter_m).sum::<f64>()).abs() < 1e-6);
/// assert_eq!((facts.crossings, facts.legs_roped, facts.verdict), (1, 1, Verdict::Look));
/// assert_eq!(facts.widest_gap_m, Some(15.0));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TrackFacts {
    /// What the file calls itself.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// How many stages it has.
    pub stages: usize,
    /// Metres walked.
    pub length_m: f64,
    /// Metres up, counted by turning points; absent where a leg has no heights.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ascent_m: Option<f64>,
    /// Metres down, likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub descent_m: Option<f64>,
    /// Metres on ice, drawn or of the inventory, without a margin.
    pub ice_m: f64,
    /// Of these, where gaps are hidden under snow, and where nobody drew any.
    pub hidden_ice_m: f64,
    /// Pieces of the track on ice.
    pub crossings: usize,
    /// The longest of these.
    pub longest_crossing_m: f64,
    /// Widest gap of the zones that its legs meet, margin included; absent where no zone gives one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub widest_gap_m: Option<f64>,
    /// Whether it has ice of which nobody gave the gaps, or where they were assumed.
    pub gaps_unknown: bool,
    /// Legs that ask for the rope.
    pub legs_roped: usize,
    /// Metres walked on the rope.
    pub roped_m: f64,
    /// Metres on which the team runs along the crevasses.
    pub along_m: f64,
    /// Steepest slope of a roped leg along the line, up or down, over the length that slopes are taken of; degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steepest_roped_deg: Option<f64>,
    /// The gravest word of its legs.
    pub verdict: Verdict,
    /// Minutes on the way, with rope changes, rests and halts.
    pub time_min: f64,
    /// Where [`Self::hidden_ice_m`] lies: number of the stage, chainage.
    #[serde(skip)]
    pub hidden_ice: Vec<(usize, Stretch)>,
}
