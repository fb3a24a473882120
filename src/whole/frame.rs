//! What a leg is before anything is judged: place, length, heights, time.

use crate::{
    ground::footing,
    legs::sketch::{LegSketch, Sketch},
    trip::job::Case,
};
use crate::{
    plan::leg::{Leg, Verdict},
    practice::Rule,
    times::pace,
};

/// Place, length, heights and time of a leg; what the rest of its members say is filled in later.
pub(crate) fn frame(job: &Case<'_>, stage: &Sketch<'_>, sketch: &LegSketch, number: usize) -> Leg {
    let stretch = sketch.stretch;
    let at = |m: f64| {
        stage
            .stage
            .at(m)
            .map_or([0.0, 0.0], |p| [p.normal().lon_deg, p.lat_deg])
    };
    let climb = stage
        .under
        .profile
        .climb(stretch, job.rules[Rule::AscentThresholdM]);
    let steepest = stage.under.steepest(stretch, job.rules);
    let time_min = pace::walking_min(stretch.length_m(), climb.unwrap_or_default(), job.rules);
    Leg {
        leg: number,
        stage: stage.stage.number,
        roped: sketch.roped,
        start_m: stretch.from_m,
        end_m: stretch.to_m,
        length_m: stretch.length_m(),
        start: at(stretch.from_m),
        end: at(stretch.to_m),
        ascent_m: climb.map(|c| c.ascent_m),
        descent_m: climb.map(|c| c.descent_m),
        steepest_deg: steepest.map(|s| s.deg.abs()),
        steepest_at: steepest.map(|s| at(s.at_m)),
        ground_steepest_deg: None,
        ground_steepest_at: None,
        ground_aspect_deg: None,
        lip_slope_deg: None,
        lip_slope_behind_deg: None,
        bearing_deg: footing::bearing_deg(stage.stage, stretch, job.rules),
        zones: Vec::new(),
        gap_m: None,
        effective_gap_m: None,
        along: false,
        strike_proposed_deg: None,
        may_run_along: Vec::new(),
        look_here: Vec::new(),
        ice_without_zone: Vec::new(),
        snow_depth_m: None,
        time_min,
        rope_min: if sketch.roped {
            job.rules[Rule::RopeUpMin] + job.rules[Rule::ChangeMin]
        } else {
            0.0
        },
        break_min: pace::break_min(time_min, job.rules),
        start_clock: None,
        end_clock: None,
        verdict: Verdict::Unroped,
        teams: Vec::new(),
        findings: Vec::new(),
    }
}
