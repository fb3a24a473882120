//! When and where, in words: the times of the whole route, and one line for each change of the set-up.

use crate::plan::Plan;
use crate::{
    say::{
        place,
        units::{Units, minutes},
    },
    write::change::{Change, Kind},
};

/// `Walking 5 h 10, roping up and unroping 40 min, breaks 25 min: 6 h 15 in all; from 04:30 to 10:45; 31.3
/// effort kilometres`. The clock only where the plan has one stage, since each stage is started anew.
#[must_use]
pub fn times(plan: &Plan) -> String {
    let (route, legs) = (&plan.route, &plan.legs);
    let time = route.time;
    let mut text = format!(
        "Walking {}, roping up and unroping {}, breaks {}: {} in all",
        minutes(time.walking_min),
        minutes(time.rope_min),
        minutes(time.break_min),
        minutes(time.total_min)
    );
    if route.ascent_m.is_none() {
        text += ", the heights not counted";
    }
    let clocks = (
        legs.first().and_then(|l| l.start_clock.as_ref()),
        legs.last().and_then(|l| l.end_clock.as_ref()),
    );
    if let (Some(start), Some(end), 1) = (clocks.0, clocks.1, route.stages.len()) {
        text += &format!("; from {start} to {end}");
    }
    if let Some(effort_km) = route.effort_km {
        text += &format!("; {effort_km:.1} effort kilometres");
    }
    text
}

/// The stage is named where the plan has several: `rope up at stage 2, 0.48 km`.
///
/// `04:50  rope up at 0.68 km  32T 500000 5149000  46.50000° N 9.00000° E  then 047° true`.
#[must_use]
pub fn change(change: &Change<'_>, stages: bool, units: Units) -> String {
    let spaced = |text: Option<&str>| text.map_or_else(String::new, |t| format!("{t}  "));
    let (clock, utm) = (spaced(change.clock), spaced(change.utm.as_deref()));
    let stage = if stages {
        format!("stage {}, ", change.stage)
    } else {
        String::new()
    };
    let at = format!(
        "{} at {stage}{} {}",
        change.kind.as_str(),
        units.chainage(change.at_m),
        units.long()
    );
    let bearing = change
        .leg
        .bearing_deg
        .filter(|_| change.kind == Kind::RopeUp);
    let bearing = bearing.map_or_else(String::new, |b| format!("  then {}", place::bearing(b)));
    format!("{clock}{at}  {utm}{}{bearing}", change.degrees)
}
