//! The route as a whole: length, climb, effort, hours.

use std::collections::BTreeSet;

use crate::{
    ground::climb::Climb,
    legs::sketch::Sketch,
    plan::{
        RouteSummary, StageSummary, TimeSummary,
        place::{HeightsFrom, JumpSummary},
    },
    practice::{Rule, Rules},
    times::{hours::Hours, pace},
    trip::job::Brief,
};

/// The line as a whole.
pub(crate) fn route(job: &Brief<'_>, stages: &[Sketch<'_>], hours: &[Hours]) -> RouteSummary {
    let threshold_m = job.rules[Rule::AscentThresholdM];
    let climb = |s: &Sketch<'_>| {
        s.met
            .under
            .line
            .climbing()
            .climb(s.stage.whole(), threshold_m)
    };
    let climbs: Vec<Climb> = stages.iter().filter_map(climb).collect();
    let sources = stages.iter().filter_map(|s| s.met.under.line.heights_from);
    let sources: BTreeSet<HeightsFrom> = sources.collect();
    let sum = |of: fn(&Climb) -> f64| (!climbs.is_empty()).then(|| climbs.iter().map(of).sum());
    RouteSummary {
        name: job.route.name.clone(),
        travel: job.rules.choices.travel.value,
        length_m: job.route.length_m(),
        ascent_m: sum(|c| c.ascent_m),
        descent_m: sum(|c| c.descent_m),
        ascent_threshold_m: threshold_m,
        heights_from: sources.into_iter().collect(),
        effort_km: effort_km(job.rules, stages),
        time: time(hours),
        stages: stages.iter().map(stage).collect(),
    }
}

/// Over all stages; absent where one of them has no heights.
fn effort_km(rules: &Rules, stages: &[Sketch<'_>]) -> Option<f64> {
    let of_stage = |s: &Sketch<'_>| {
        let (under, all) = (&s.met.under.line, s.stage.whole());
        let climb = under.climbing().climb(all, rules[Rule::AscentThresholdM])?;
        let steep_m = under.profile.steep_descent_m(
            all,
            rules[Rule::EffortSteepShare],
            rules[Rule::SteepOverM],
        )?;
        Some(pace::effort_km(
            all.length_m(),
            climb.ascent_m,
            steep_m,
            rules,
        ))
    };
    stages.iter().map(of_stage).sum()
}

fn time(hours: &[Hours]) -> TimeSummary {
    let sum = |of: fn(&Hours) -> f64| hours.iter().map(of).sum::<f64>() + 0.0;
    let (walking_min, rope_min) = (sum(|h| h.walking_min), sum(|h| h.rope_min));
    let (break_min, halt_min) = (sum(|h| h.break_min), sum(|h| h.halt_min));
    let belay_min = sum(|h| h.belay_min);
    TimeSummary {
        walking_min,
        rope_min,
        break_min,
        halt_min,
        belay_min,
        total_min: walking_min + rope_min + break_min + halt_min + belay_min,
    }
}

fn stage(sketch: &Sketch<'_>) -> StageSummary {
    StageSummary {
        stage: sketch.stage.number,
        name: sketch.stage.name.clone(),
        length_m: sketch.stage.length_m(),
        points: sketch.stage.points().len(),
        jumps: sketch.stage.jumps().map(JumpSummary::from).collect(),
    }
}
