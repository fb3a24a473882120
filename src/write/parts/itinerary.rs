//! When and where, in words: the times of the whole route, and one line for each change of the set-up.

use crate::{
    plan::Plan,
    say::{arg::Arg, place, round::Round, span::Said, voice::Voice},
    write::parts::{
        change::{ChangeKind, ChangePoint},
        day,
    },
};

/// `Walking 5 h 10, roping up and unroping 40 min, breaks 25 min: 6 h 15 in all, no belay counted; from 04:30
/// to 10:45; 31.3 effort kilometres`. The clock only where the plan has one stage, since each stage is started anew.
#[must_use]
pub fn times(plan: &Plan, voice: Voice) -> Said {
    let (route, legs) = (&plan.route, &plan.legs);
    let time = route.time;
    let heights = if route.ascent_m.is_some() {
        "yes"
    } else {
        "no"
    };
    let args = [
        ("walking", Arg::Minutes(time.walking_min)),
        ("rope", Arg::Minutes(time.rope_min)),
        ("breaks", Arg::Minutes(time.break_min)),
        ("halts", Arg::Minutes(time.halt_min)),
        ("halted", Arg::yes(time.halt_min > 0.0)),
        ("total", Arg::Minutes(time.total_min)),
        ("heights", Arg::Word(heights)),
        ("belays", day::belays(plan)),
        ("belay", Arg::Minutes(time.belay_min)),
    ];
    let mut says = voice.say("hours", &args);
    let clocks = (
        legs.first().and_then(|l| l.start_clock),
        legs.last().and_then(|l| l.end_clock),
    );
    if let (Some(start), Some(end), 1) = (clocks.0, clocks.1, route.stages.len()) {
        let args = [
            ("start", Arg::Figure(start.to_string())),
            ("end", Arg::Figure(end.to_string())),
        ];
        says = says.then(voice.say("hours-clock", &args));
    }
    if let Some(effort_km) = route.effort_km {
        let effort = Said::figure(voice.fixed(effort_km, 1, Round::Nearest));
        says = says.then(voice.say("hours-effort", &[("effort", Arg::Said(effort))]));
    }
    says
}

/// The stage is named where the plan has several: `rope up at stage 2, 0.48 km`.
///
/// `04:50  rope up at 0.68 km  2310 m  32T 500000 5149000  46.50000° N 9.00000° E  then 047° true`.
#[must_use]
pub fn change(change: &ChangePoint<'_>, stages: usize, voice: Voice) -> String {
    let args = [
        ("stages", Arg::Count(stages)),
        ("stage", Arg::Count(change.stage)),
        ("what", Arg::Said(change.kind.says(voice))),
        ("at", Arg::DoneAt(change.at_m, change.kind.round())),
    ];
    let mut parts: Vec<String> = Vec::new();
    parts.extend(change.clock.map(|c| c.to_string()));
    parts.push(voice.say("change-at", &args).to_string());
    parts.extend(change.height(voice));
    parts.extend(change.utm.clone());
    parts.push(change.degrees.clone());
    parts.extend(then(change, voice).map(|then| then.to_string()));
    parts.join("  ")
}

/// `then 047° true`: the bearing of a straight leg that begins here.
#[must_use]
pub fn then(change: &ChangePoint<'_>, voice: Voice) -> Option<Said> {
    let bearing = change.leg.bearing_deg;
    let bearing = bearing.filter(|_| change.kind == ChangeKind::RopeUp)?;
    let args = [("bearing", Arg::Said(place::bearing(bearing, voice)))];
    Some(voice.say("change-bearing", &args))
}
