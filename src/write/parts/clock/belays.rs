//! That an hour counts no belays.

use crate::{
    plan::clock::StageClock,
    say::{arg::Arg, finding::legs, voice::Voice},
};

/// Which of the lines about hours it is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum HourKind {
    Start,
    Turn,
    Arrival,
}

/// That an hour counts no belays, where some are asked for; how many and where, on the first line that says so.
pub(super) fn belays(
    clock: &StageClock,
    of: HourKind,
    voice: Voice,
) -> (&'static str, Arg<'static>) {
    let said = clock.with_belays.as_ref().map(|with| {
        let args = [
            ("belays", Arg::Count(with.belays)),
            ("legs", Arg::Said(legs(&with.legs, voice))),
            ("more", Arg::Minutes(with.minutes)),
        ];
        match first_said(clock) == Some(of) {
            true => voice.say("clock-belays-counted", &args),
            false => voice.say("clock-belays", &[]),
        }
    });
    ("belays", Arg::Said(said.unwrap_or_default()))
}

/// The first line of a stage that tells an hour.
fn first_said(clock: &StageClock) -> Option<HourKind> {
    let planned = clock.as_planned;
    let start = planned.latest_start.and(clock.bridges_until);
    let turn = planned.turn_round.is_some();
    let first = [
        start.map(|_| HourKind::Start),
        turn.then_some(HourKind::Turn),
        planned.arrival.map(|_| HourKind::Arrival),
    ];
    first.into_iter().flatten().min()
}

/// The same without how many.
pub(super) fn named(clock: &StageClock, voice: Voice) -> (&'static str, Arg<'static>) {
    let asked = clock.with_belays.as_ref();
    let said = asked.map(|_| voice.say("clock-belays", &[]));
    ("belays", Arg::Said(said.unwrap_or_default()))
}
