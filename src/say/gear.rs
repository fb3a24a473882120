//! The list of gear in words.

use crate::{
    plan::gear::GearRow,
    say::{arg::Arg, setup::system, span::Said, voice::Voice},
};

/// `2 prusik cords: to climb the rope out of a crevasse`.
#[must_use]
pub fn row(gear: &GearRow, voice: Voice) -> Said {
    let what = format!("gear-{}", gear.what.as_str());
    let what = voice.say(&what, &[("count", Arg::Count(gear.count))]);
    let args = [
        ("what", Arg::Said(what)),
        ("for", Arg::Said(purpose(gear, voice))),
    ];
    voice.say("gear-row", &args)
}

/// `to climb the rope out of a crevasse`.
#[must_use]
pub fn purpose(gear: &GearRow, voice: Voice) -> Said {
    let key = format!("gear-for-{}", gear.purpose.as_str());
    let of = gear
        .system
        .map(|of| ("system", Arg::Said(system(of, voice))));
    let long = gear.length_m.map(|m| ("length", Arg::Measured(m)));
    let args: Vec<_> = of.into_iter().chain(long).collect();
    voice.say(&key, &args)
}
