//! The head of the page: which day it is, how far, how high, when, and how late to start and to turn round.

use crate::{
    plan::Plan,
    say::{arg::Arg, span::Said, voice::Voice},
    write::{
        parts::{clock, paragraph::bullet},
        sheet::Sheet,
    },
};

/// The name, the figures of the day, and its hours.
pub(super) fn head(out: &mut String, sheet: &Sheet<'_>) {
    let (plan, voice, width) = (sheet.plan, sheet.look.voice, sheet.look.width);
    let name = plan.route.name.as_deref();
    let name = name.map_or_else(|| voice.say("route", &[]), Said::name);
    bullet(out, "", &name.to_string(), width);
    bullet(out, "", &figures(plan, voice).to_string(), width);
    let hours = plan.clock.iter().flat_map(|all| clock::head(all, voice));
    for line in hours {
        bullet(out, "", &line.to_string(), width);
    }
}

/// `17.13 km, 8.53 km on the rope; up 879 m, down 656 m; 04:30 to 14:21, 9 h 51`.
fn figures(plan: &Plan, voice: Voice) -> Said {
    let (route, legs) = (&plan.route, &plan.legs);
    let roped = legs.iter().filter(|leg| leg.roped);
    let clocks = (
        legs.first().and_then(|leg| leg.start_clock),
        legs.last().and_then(|leg| leg.end_clock),
    );
    let hours = match clocks {
        (Some(start), Some(end)) if route.stages.len() == 1 => {
            let args = [
                ("start", Arg::Figure(start.to_string())),
                ("end", Arg::Figure(end.to_string())),
            ];
            voice.say("page-clock", &args)
        }
        _ => Said::default(),
    };
    let args = [
        ("length", Arg::Walked(route.length_m)),
        ("roped", Arg::Walked(roped.map(|leg| leg.length_m).sum())),
        ("heights", Arg::yes(route.ascent_m.is_some())),
        ("up", Arg::Whole(route.ascent_m.unwrap_or_default())),
        ("down", Arg::Whole(route.descent_m.unwrap_or_default())),
        ("clock", Arg::Said(hours)),
        ("total", Arg::Minutes(route.time.total_min)),
    ];
    voice.say("page-figures", &args)
}
