//! The belays that hours count.

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

/// How many belays an hour counts, where and how long they take: on the first line that tells an hour.
pub(super) fn belays(
    clock: &StageClock,
    of: HourKind,
    voice: Voice,
) -> (&'static str, Arg<'static>) {
    let asked = clock.belays.as_ref();
    let asked = asked.filter(|_| first_said(clock) == Some(of));
    let said = asked.map(|asked| {
        let args = [
            ("belays", Arg::Count(asked.belays)),
            ("legs", Arg::Said(legs(&asked.legs, voice))),
            ("more", Arg::Minutes(asked.minutes)),
        ];
        voice.say("clock-belays", &args)
    });
    ("belays", Arg::Said(said.unwrap_or_default()))
}

/// The first line of a stage that tells an hour.
fn first_said(clock: &StageClock) -> Option<HourKind> {
    let planned = clock.as_planned;
    let start = planned.latest_start.and(clock.bridges_until).is_some() || clock.none_is_early();
    let turn = planned.turn_round.is_some();
    let first = [
        start.then_some(HourKind::Start),
        turn.then_some(HourKind::Turn),
        planned.arrival.map(|_| HourKind::Arrival),
    ];
    first.into_iter().flatten().min()
}
