//! Where and how late to turn round.

use super::{
    belays::{HourKind, belays},
    line::beside,
};
use crate::{
    plan::{
        clock::{Backwards, StageClock, TurnKind, TurnRound},
        in_time::TripHour,
        place::RouteEnd,
    },
    say::{arg::Arg, hour::hour, round::Round, span::Said, voice::Voice},
};

/// The turn to keep to, and where that one leaves hidden gaps in time, the later one that would only be back in time.
pub(super) fn turns(
    clock: &StageClock,
    planned: Backwards,
    slower: Backwards,
    voice: Voice,
) -> Vec<Said> {
    let late = planned.turn_round_back_by;
    let of_bridges = planned
        .turn_round
        .is_some_and(|turn| turn.hour == TripHour::BridgesUntil);
    let off_first = of_bridges || planned.no_turn_in_time;
    let lines = match off_first {
        true => [
            off_bridges(clock, planned, slower, voice),
            late.and_then(|late| back_by(clock, late, voice)),
        ],
        false => [turn_round(clock, planned, slower, voice), None],
    };
    lines.into_iter().flatten().collect()
}

fn turn_round(
    clock: &StageClock,
    planned: Backwards,
    slower: Backwards,
    voice: Voice,
) -> Option<Said> {
    let turn = planned.turn_round?;
    let over = turn.bridges_left.map(|left| {
        let left = [("left", hour(left, voice))];
        voice.say("clock-turn-over", &left)
    });
    let [kind, place, at, leg] = spot(turn, voice);
    let args = [
        kind,
        place,
        at,
        leg,
        ("firm", Arg::yes(turn.on_firm_ground)),
        ("by", hour(clock.back_by?, voice)),
        ("over", Arg::Said(over.unwrap_or_default())),
        belays(clock, HourKind::Turn, voice),
        beside([
            led_back(turn, voice),
            slower_turn(slower, voice),
            begins_on(clock, voice),
        ]),
    ];
    Some(voice.say("clock-turn", &args))
}

/// The last turn whose way back leaves all hidden gaps in time, or that there is none.
fn off_bridges(
    clock: &StageClock,
    planned: Backwards,
    slower: Backwards,
    voice: Voice,
) -> Option<Said> {
    let until = ("until", hour(clock.bridges_until?, voice));
    if planned.no_turn_in_time {
        return Some(never_off_bridges(planned, until, voice));
    }
    let turn = planned.turn_round?;
    let [kind, place, at, leg] = spot(turn, voice);
    let others = beside([
        led_back(turn, voice),
        slower_turn(slower, voice),
        begins_on(clock, voice),
    ]);
    let args = [
        kind,
        place,
        at,
        leg,
        until,
        ("firm", Arg::yes(turn.on_firm_ground)),
        ("late", Arg::yes(clock.is_late())),
        belays(clock, HourKind::Turn, voice),
        others,
    ];
    Some(voice.say("clock-turn-bridges", &args))
}

/// That no turn leaves all hidden gaps in time: none at all, or not the one to be back in time.
fn never_off_bridges(
    planned: Backwards,
    until: (&'static str, Arg<'static>),
    voice: Voice,
) -> Said {
    let off = ("kind", Arg::Word("off"));
    let belayed = ("belayed", Arg::yes(planned.turn_if_unbelayed));
    let late = planned.turn_round_back_by;
    match late.map(|late| spot(late, voice)) {
        // At its turn the line goes back as planned, with its own belays.
        Some([kind, place, ..]) => {
            let planned = late.is_some_and(|late| late.kind == TurnKind::OfTheLine);
            let belayed = match planned {
                true => ("belayed", Arg::yes(false)),
                false => belayed,
            };
            voice.say("clock-turn-never", &[kind, place, until, belayed])
        }
        None => voice.say("clock-turn-never", &[off, until, belayed]),
    }
}

/// Who leads on a way back that is reckoned with belays, and with which.
fn led_back(turn: TurnRound, voice: Voice) -> Option<Said> {
    turn.belayed_back
        .then(|| voice.say("clock-turn-led-back", &[]))
}

/// That the line begins on hidden gaps, where the way back then ends.
fn begins_on(clock: &StageClock, voice: Voice) -> Option<Said> {
    let begins = clock.ends_on_hidden.contains(&RouteEnd::Begin);
    begins.then(|| voice.say("clock-begins-on-hidden", &[]))
}

fn back_by(clock: &StageClock, late: TurnRound, voice: Voice) -> Option<Said> {
    let [kind, place, at, _] = spot(late, voice);
    let by = ("by", hour(clock.back_by?, voice));
    let left = ("left", hour(late.bridges_left?, voice));
    Some(voice.say("clock-turn-back-by", &[kind, place, at, by, left]))
}

pub(super) fn slower_turn(slower: Backwards, voice: Voice) -> Option<Said> {
    let turn = spot(slower.turn_round?, voice);
    Some(voice.say("clock-turn-slower", &turn))
}

pub(super) fn spot(turn: TurnRound, voice: Voice) -> [(&'static str, Arg<'static>); 4] {
    let kind = match turn.kind {
        TurnKind::OfTheLine => "of",
        TurnKind::OffTheLine => "off",
    };
    let place = Arg::DoneAt(turn.at_m, Round::Down);
    [
        ("kind", Arg::Word(kind)),
        ("place", place),
        ("at", hour(turn.by, voice)),
        ("leg", Arg::Said(leg(turn, voice))),
    ]
}

/// `leg 4`, or before which it is because the way is barred there.
fn leg(turn: TurnRound, voice: Voice) -> Said {
    let key = turn
        .before
        .map_or("clock-turn-leg", |_| "clock-turn-before");
    let leg = turn.before.unwrap_or(turn.leg);
    voice.say(key, &[("leg", Arg::Count(leg))])
}
