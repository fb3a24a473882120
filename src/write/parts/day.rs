//! The day in one line: how far, how far on the rope, how high, from when to when.

use crate::{
    plan::Plan,
    practice::term::Terms as _,
    say::{arg::Arg, span::Said, voice::Voice},
    write::parts::clock::belays::are_in_head,
};

/// `17.13 km, 8.53 km on the rope; up 879 m, down 656 m; 04:30 to 14:21, 9 h 51`.
pub(crate) fn figures(plan: &Plan, voice: Voice) -> Said {
    let (route, legs) = (&plan.route, &plan.legs);
    let roped = legs.iter().filter(|leg| leg.roped);
    // Where hours are worked backwards those say it.
    let clock = plan.clock.as_ref();
    let belays = match clock.is_some_and(|clock| clock.stages().all(are_in_head)) {
        true => Arg::Word("unroped"),
        false => belays(plan),
    };
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
        ("travel", Arg::Word(route.travel.name())),
        ("roped", Arg::Walked(roped.map(|leg| leg.length_m).sum())),
        ("heights", Arg::yes(route.ascent_m.is_some())),
        ("up", Arg::Whole(route.ascent_m.unwrap_or_default())),
        ("down", Arg::Whole(route.descent_m.unwrap_or_default())),
        ("clock", Arg::Said(hours)),
        ("total", Arg::Minutes(route.time.total_min)),
        ("belays", belays),
        ("belay", Arg::Minutes(route.time.belay_min)),
    ];
    voice.say("page-figures", &args)
}

/// Whether the hours of a plan hold belays: asked for, none though somebody is on the rope, or nobody is.
pub(crate) fn belays(plan: &Plan) -> Arg<'static> {
    Arg::Word(match plan.legs.iter().any(|leg| leg.roped) {
        _ if plan.route.time.belay_min > 0.0 => "asked",
        true => "none",
        false => "unroped",
    })
}
