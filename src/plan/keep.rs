//! The trip with some set-ups kept over several legs.

use schemars::JsonSchema;
use serde::Serialize;

/// The trip with some set-ups kept over several roped legs, against changing before each leg.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let keep = plan.keep_setup.expect("the second roped leg asks for another set-up than the first");
/// assert!(keep.kept.minutes < keep.as_planned.minutes, "else nothing would be said");
/// assert_eq!(keep.runs[0].legs, [2, 4]);
/// // With one roped leg there is nothing to keep.
/// assert_eq!(schrund::plan(&schrund::example::job()?)?.keep_setup, None);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct KeepSetup {
    /// As the legs stand: how often the set-up changes, and what that costs in minutes.
    pub as_planned: ChangeCost,
    /// With the set-ups kept.
    pub kept: ChangeCost,
    /// The roped legs, those under one set-up together.
    pub runs: Vec<KeptRun>,
}

/// How often the set-up changes between the roped legs of a stage, and what that costs.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let keep = plan.keep_setup.expect("two set-ups that differ");
/// // A change takes 5 minutes; a metre of spacing too much costs half a minute in a kilometre (both our judgement).
/// let wider_m = plan.legs[3].teams[0].spacing_m - plan.legs[1].teams[0].spacing_m;
/// assert_eq!((keep.as_planned.changes, keep.as_planned.minutes), (1, 5.0));
/// assert_eq!(keep.kept.changes, 0);
/// assert!((keep.kept.minutes - 0.5 * wider_m * (plan.legs[1].length_m + wider_m) / 1000.0).abs() < 1e-9);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct ChangeCost {
    /// Changes.
    pub changes: usize,
    /// Minutes for them, and those lost by walking wider than a leg asks for.
    pub minutes: f64,
}

/// Roped legs of one stage under one set-up.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let runs = plan.keep_setup.map(|keep| keep.runs).unwrap_or_default();
/// let in_runs: Vec<usize> = runs.iter().flat_map(|run| run.legs.iter().copied()).collect();
/// let roped: Vec<usize> = plan.legs.iter().filter(|leg| leg.roped).map(|leg| leg.leg).collect();
/// assert_eq!(in_runs, roped, "every roped leg is in one run");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct KeptRun {
    /// Number of the stage.
    pub stage: usize,
    /// Numbers of the legs.
    pub legs: Vec<usize>,
    /// Where they are walked on the rope under it, in walking order: a longer team unropes later, and legs that come too
    /// close for unroping become one.
    pub stretches: Vec<KeptStretch>,
    /// One set-up for each rope team.
    pub teams: Vec<KeptTeam>,
}

/// A roped stretch under a kept set-up.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let run = &plan.keep_setup.as_ref().expect("two set-ups that differ").runs[0];
/// let (stretch, leg) = (&run.stretches[0], &plan.legs[1]);
/// assert_eq!((&stretch.legs[..], stretch.from_m), (&[2][..], leg.start_m));
/// // The pair walks wider than the first leg asks for, and is on the rope so much longer.
/// assert!((stretch.to_m - leg.end_m - run.teams[0].longer_m).abs() < 1e-9);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct KeptStretch {
    /// Numbers of the legs that lie in it.
    pub legs: Vec<usize>,
    /// Chainage of roping up, metres.
    pub from_m: f64,
    /// Chainage of unroping, metres.
    pub to_m: f64,
    /// Where the team ropes up: longitude, latitude.
    pub start: [f64; 2],
    /// Where it unropes: longitude, latitude.
    pub end: [f64; 2],
}

/// The set-up of one team over several legs.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let kept = &plan.keep_setup.as_ref().expect("two set-ups that differ").runs[0].teams[0];
/// let (first, last) = (&plan.legs[1].teams[0], &plan.legs[3].teams[0]);
/// assert_eq!(kept.spacing_m, first.spacing_m.max(last.spacing_m));
/// // The last person leaves the first leg later by what the rope is longer than planned.
/// assert_eq!(kept.longer_m, kept.spacing_m - first.spacing_m);
/// // Half of what is left over of the rope of 80 m lies in each coil.
/// assert!((kept.coil_carried_m - kept.coil_m - (80.0 - kept.needed_m) / 2.0).abs() < 1e-9);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct KeptTeam {
    /// Number of the rope team.
    pub team: usize,
    /// Walking distance between neighbours, metres: the least that suits all the legs.
    pub spacing_m: f64,
    /// Brake knots from each end person, where any of the legs wants them.
    pub knots_each_end: usize,
    /// Spare rope that each end person needs, metres.
    pub coil_m: f64,
    /// Spare rope that each end person carries with the rope of the team, or the length sold that it takes, metres.
    pub coil_carried_m: f64,
    /// Rope needed, metres.
    pub needed_m: f64,
    /// How much longer than planned the team stays on the rope after each leg, at most, metres.
    pub longer_m: f64,
}
