//! Times of day: when each leg begins and ends, and which snow bridges are crossed too late.

use crate::trip::job::Case;
use crate::{
    fault::{Code, Place, Problem},
    plan::{
        Finding, ZoneSummary,
        leg::{Leg, Verdict},
    },
    practice::{Rule, Rules},
    trip::clock::Clock,
};

/// Sets the times of day, if the leader says when they start. Every stage is started at that time.
pub(crate) fn set(job: &Case<'_>, zones: &[ZoneSummary], legs: &mut [Leg]) {
    let Some(start) = job.timetable.start.value else {
        return;
    };
    let (mut stage, mut now) = (None, start);
    for leg in legs {
        if stage != Some(leg.stage) {
            (stage, now) = (Some(leg.stage), start);
        }
        if let Some(until) = job.timetable.bridges_until.value {
            let late = zones.iter().filter(|z| z.surface == "snow");
            let late: Vec<Problem> = late
                .filter_map(|zone| says(leg, zone, now, until, job.rules))
                .collect();
            add(leg, late);
        }
        let end = now.after(leg.time_min + leg.rope_min + leg.break_min);
        leg.start_clock = Some(now.to_string());
        leg.end_clock = Some(end.to_string());
        now = end;
    }
}

/// The last crossing of a zone on this leg, if it ends later than bridges are trusted.
fn says(
    leg: &Leg,
    zone: &ZoneSummary,
    begins: Clock,
    until: Clock,
    rules: &Rules,
) -> Option<Problem> {
    let on_leg = zone.crossings.iter().filter(|c| c.stage == leg.stage);
    let ends_m = on_leg
        .filter(|c| c.enter_m < leg.end_m && c.exit_m > leg.start_m)
        .map(|c| c.exit_m.min(leg.end_m))
        .reduce(f64::max)?;
    let leaves = begins.after(min_until(leg, ends_m, rules));
    if leaves <= until {
        return None;
    }
    let name = zone
        .name
        .as_ref()
        .map_or_else(String::new, |n| format!(" \"{n}\""));
    let says = format!(
        "zone {}{name} is left at {leaves}, after {until}, until when the leader trusts snow bridges",
        zone.zone
    );
    let place = Place::item(format!("leg {}", leg.leg));
    Some(Problem::new(Code::BridgesLate, place, says).hint("start earlier, or turn round in time"))
}

/// Minutes from the beginning of a leg to a chainage on it, breaks spread evenly.
fn min_until(leg: &Leg, at_m: f64, rules: &Rules) -> f64 {
    let share = if leg.length_m > 0.0 {
        (at_m - leg.start_m) / leg.length_m
    } else {
        1.0
    };
    let roping_up = if leg.roped {
        rules[Rule::RopeUpMin]
    } else {
        0.0
    };
    roping_up + share * (leg.time_min + leg.break_min)
}

fn add(leg: &mut Leg, late: Vec<Problem>) {
    if late.is_empty() {
        return;
    }
    leg.verdict = leg.verdict.max(Verdict::Look);
    leg.findings.extend(late.into_iter().map(Finding::from));
    leg.findings.sort_by_key(|f| f.level);
}
