//! The belays that hours count.

use crate::{
    plan::{
        Plan,
        clock::{StageClock, TurnKind, TurnRound},
    },
    say::{arg::Arg, finding::on_legs, span::Said, voice::Voice},
};

/// Which of the lines about hours it is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum HourKind {
    Start,
    Turn,
    Arrival,
}

/// `about 8 belays (2 h 00)`.
pub(in crate::write) fn many(belays: usize, minutes: f64, voice: Voice) -> Said {
    let counted = [
        ("belays", Arg::Count(belays)),
        ("minutes", Arg::Minutes(minutes)),
    ];
    voice.say("way-belays", &counted)
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
            ("legs", Arg::Said(on_legs(&asked.legs, voice))),
            ("more", Arg::Minutes(asked.minutes)),
        ];
        voice.say("clock-belays", &args)
    });
    ("belays", Arg::Said(said.unwrap_or_default()))
}

/// How they are counted, where any are.
pub(super) fn counted(plan: &Plan, voice: Voice) -> Option<Said> {
    let mut clocks = plan.clock.iter().flat_map(|clock| clock.stages());
    let figures = plan.figures;
    let [min, each_min] = figures.belay_min;
    let args = [
        ("every", Arg::There(figures.belay_every_m)),
        ("pitch", Arg::There(figures.belay_pitch_m)),
        ("min", Arg::Minutes(min)),
        ("each", Arg::Minutes(each_min)),
    ];
    let asked = clocks.any(|clock| clock.belays.is_some());
    asked.then(|| voice.say("clock-belays-counted", &args))
}

/// Whether the belays of a stage are told by the hours that stand in the head, or there are none.
pub(in crate::write) fn are_in_head(clock: &StageClock) -> bool {
    let first = first_said(clock);
    clock.belays.is_none() || first.is_some_and(|first| first < HourKind::Arrival)
}

/// The first line of a stage that tells an hour.
fn first_said(clock: &StageClock) -> Option<HourKind> {
    let planned = clock.as_planned;
    // Who is under way is told by when to be where they are, and no start.
    let latest = planned.latest_start.and(clock.bridges_until);
    let start = clock.none_is_early() || (latest.is_some() && clock.start_at.is_none());
    // Belays behind the place where the line is left are none of its hour.
    let belayed = |turn: &TurnRound| {
        let legs = clock.belays.iter().flat_map(|asked| &asked.legs);
        turn.kind == TurnKind::OfTheLine || { legs }.any(|leg| *leg < turn.leg)
    };
    let turn = planned.turn_round.as_ref().is_some_and(belayed);
    let first = [
        start.then_some(HourKind::Start),
        turn.then_some(HourKind::Turn),
        planned.arrival.map(|_| HourKind::Arrival),
    ];
    first.into_iter().flatten().min()
}
