//! Ways to split the party and to use the ropes, side by side.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::leg::Verdict;

/// The ways nobody would rule out, best first. Units stand in the names.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Options {
    /// Version of this document's form.
    pub schema_version: u32,
    /// How many go.
    pub people: usize,
    /// How many ways were weighed.
    pub weighed: usize,
    /// The ways left: each is best in something, or in some weighing of things.
    pub ways: Vec<Way>,
    /// What must be said of all of them.
    pub says: Vec<String>,
    /// What they must be read with.
    pub cautions: Vec<String>,
}

impl Options {
    /// The verdict of the best way.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        let verdicts = self.ways.iter().map(|way| way.verdict);
        verdicts.min().unwrap_or(Verdict::Outside)
    }
}

/// One way to split the party and to share the ropes out, over all legs of the trip.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Way {
    /// Number from 1, best first.
    pub way: usize,
    /// The rope teams.
    pub teams: Vec<WayTeam>,
    /// What is done otherwise than the rules in force say; empty where nothing is.
    pub changes: Vec<String>,
    /// The worst verdict of all legs, falls not modelled.
    pub verdict: Verdict,
    /// Metres of rope missing over all teams, or of spacing where more is missing there; 0 unless outside.
    pub short_m: f64,
    /// Fewest people left to hold anywhere, everybody counted who can stand over one gap at once.
    pub left_to_hold: usize,
    /// Whether another rope team is there to help after a fall.
    pub another_team: bool,
    /// Mass of all ropes, kilograms.
    pub rope_mass_kg: f64,
    /// Longest coil on one person anywhere, metres.
    pub coil_m: f64,
    /// How often the set-up changes between roped legs of a stage.
    pub setup_changes: usize,
    /// Why it is shown.
    pub why: String,
}

/// One rope team of a way.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WayTeam {
    /// How many.
    pub people: usize,
    /// Names of the people, in the order named.
    pub persons: Vec<String>,
    /// Least and greatest spacing over the legs, metres.
    pub spacing_m: [f64; 2],
    /// Number of its rope among those at hand, from 1; absent where a length sold is taken or none is left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope: Option<usize>,
    /// Length of its rope, metres; 0 where none is left.
    pub rope_m: f64,
    /// Rope needed on the leg that asks most, metres.
    pub needed_m: f64,
    /// That leg; absent where none is roped.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leg: Option<usize>,
}
