//! When a way has left the last snow bridges.

use super::named;
use crate::{
    plan::clock::{PlanClock, StageClock},
    say::{arg::Arg, hour::hour, span::Said, voice::Voice},
};

/// For each stage with snow bridges, and whether they are no longer trusted then.
pub(in crate::write::parts) fn off_bridges(clock: &PlanClock, voice: Voice) -> Vec<Said> {
    let stages = clock.stages().count();
    let line = |clock: &StageClock| {
        let left = clock.as_planned.bridges_left?;
        let until = clock.bridges_until.filter(|_| clock.is_late());
        let later =
            until.map(|until| voice.say("way-bridges-late", &[("until", hour(until, voice))]));
        let args = [
            ("at", hour(left, voice)),
            ("later", Arg::Said(later.unwrap_or_default())),
        ];
        let says = voice.say("way-bridges", &args);
        Some(named(says, clock.stage, stages, voice))
    };
    clock.stages().filter_map(line).collect()
}
