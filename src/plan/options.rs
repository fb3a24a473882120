//! Ways to split the party and to use the ropes, side by side.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{plan::leg::Verdict, trip::party::Called};

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
    pub remarks: Vec<Remark>,
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
    pub changes: Vec<Change>,
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
    /// What it is best in among those shown, as far as not all are alike in it.
    pub best_in: Vec<Merit>,
}

/// One rope team of a way.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WayTeam {
    /// How many.
    pub people: usize,
    /// The people, in the order named.
    pub persons: Vec<Called>,
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

/// Something done otherwise than the rules in force say.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "change", rename_all = "kebab-case")]
pub enum Change {
    /// Another practice set.
    Practice {
        /// Its name.
        name: String,
    },
    /// Butterflies for brake knots; they bite less.
    Butterflies,
    /// Brake knots nearer to the end person and to each other.
    TighterLayout {
        /// Distance walked from the end person to the first, metres.
        first_m: f64,
        /// Distance walked from one to the next, metres.
        step_m: f64,
    },
    /// A long sling in the drop loop.
    LongSling {
        /// Its length, metres.
        sling_m: f64,
    },
}

/// Something that a way can be best in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Merit {
    /// The verdict.
    Verdict,
    /// Nothing is done otherwise than the rules say.
    NothingChanged,
    /// People left to hold a fall.
    LeftToHold,
    /// Another rope team is there to help.
    AnotherTeam,
    /// Mass of the ropes.
    LightestRopes,
    /// The coil on one person.
    ShortestCoil,
    /// Set-up changes.
    FewestChanges,
}

/// What must be said of all ways.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(tag = "remark", rename_all = "kebab-case")]
pub enum Remark {
    /// The party is too small for two rope teams.
    TooSmallForTwo,
    /// More people than go on one rope.
    TooManyForOne {
        /// Most on one rope.
        most: usize,
    },
    /// One rope team and two are both taught, and both are shown.
    OneAndTwo,
    /// The same, but nothing is left with two.
    OnlyOne,
    /// The same, but nothing is left with one.
    OnlyTwo,
    /// No way is inside the limits.
    NoneInside,
    /// As the rules stand no split fits: every way changes something.
    AllChanged,
    /// No rope at hand was named.
    NoRopeNamed,
    /// Falls are not modelled for the ways.
    FallsNotModelled,
}
