//! Figures in force that outputs show beside what they were used for.

use crate::practice::{Rule, Rules};

/// Some of what a plan rests on; its list of assumptions has all of it, with standing and origin.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// // A third slower, and slopes over 50 m (our judgement).
/// assert!((plan.figures.slower_factor - 4.0 / 3.0).abs() < 1e-9);
/// assert_eq!(plan.figures.steep_over_m, 50.0);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanFigures {
    /// How many times as long a slower party takes.
    pub slower_factor: f64,
    /// A belay is counted for so many metres of hidden gaps where something asks for belays over them.
    pub belay_every_m: f64,
    /// And for so many metres of ground that is too steep.
    pub belay_pitch_m: f64,
    /// Minutes that one takes, and for everybody on the rope.
    pub belay_min: [f64; 2],
    /// Steepness from which the avalanche bulletin decides, degrees.
    pub avalanche_deg: f64,
    /// Over what length slopes along the line are taken, metres.
    pub steep_over_m: f64,
    /// How near the heights beside one must lie that decides no slope alone, metres.
    pub lone_height_m: f64,
}

impl PlanFigures {
    /// Those in force.
    #[must_use]
    pub(crate) fn of(rules: &Rules) -> Self {
        Self {
            slower_factor: rules[Rule::SlowerFactor],
            belay_every_m: rules[Rule::BelayEveryM],
            belay_pitch_m: rules[Rule::BelayPitchM],
            belay_min: [Rule::BelayMin, Rule::BelayEachMin].map(|rule| rules[rule]),
            avalanche_deg: rules[Rule::AvalancheDeg],
            steep_over_m: rules[Rule::SteepOverM],
            lone_height_m: rules[Rule::LoneHeightM],
        }
    }
}
