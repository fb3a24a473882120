//! The parts of a leg, from stop to stop.

use crate::{
    judge::place::height_m,
    plan::part::LegPart,
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
    times::hours::Hours,
};

/// From stop to stop; nothing where the leg has none.
pub(super) fn parts(leg: &RopedLeg<'_>, hours: &Hours, rules: &Rules) -> Vec<LegPart> {
    if hours.parts.iter().all(|part| part.stop.is_none()) {
        return Vec::new();
    }
    let mut parts = Vec::new();
    let mut now = hours
        .clock
        .map(|[begins, _]| begins.after(hours.rope_up_min));
    for part in &hours.parts {
        let arrive = now.map(|depart| depart.after(hours.inside.over_min(part.stretch)));
        let depart = std::mem::replace(&mut now, arrive.map(|at| at.after(part.halt_min())));
        if part.stretch.length_m() <= 0.0 {
            continue;
        }
        let under = &leg.stage.met.under.line;
        let climb = under.climbing();
        let climb = climb.climb(part.stretch, rules[Rule::AscentThresholdM]);
        let stop = part.stop.as_ref();
        parts.push(LegPart {
            from_m: part.stretch.from_m,
            to_m: part.stretch.to_m,
            depart,
            arrive,
            ascent_m: climb.map(|c| c.ascent_m),
            descent_m: climb.map(|c| c.descent_m),
            steepest_deg: under.steepest(part.stretch, rules).map(|s| s.deg.abs()),
            halt_min: part.halt_min(),
            turns: stop.is_some_and(|stop| stop.back_m.is_some()),
            name: stop.and_then(|stop| stop.name.clone()),
            end_height_m: height_m(leg, part.stretch.to_m),
        });
    }
    parts
}
