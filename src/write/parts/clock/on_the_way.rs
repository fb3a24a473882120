//! The hours for somebody who stands on the line: where and by when to turn back.

use crate::{
    plan::clock::{PlanClock, StageClock},
    say::{arg::Arg, hour::hour, round::Round, span::Said, voice::Voice},
    trip::clock::Clock,
    write::parts::clock::{
        line::beside,
        turns::{slower_turn, spot},
    },
};

/// What the hours ask of who is on the way.
#[derive(Clone, Debug)]
pub(crate) struct OnTheWay {
    pub(crate) stage: usize,
    /// Chainage up to which it holds, metres; `None` for all of the stage.
    pub(crate) to_m: Option<f64>,
    /// Whether the start is too late already.
    pub(crate) late: bool,
    pub(crate) says: Said,
    /// What is said instead where whoever turns back at once is off the bridges in time.
    pub(crate) turns: Option<Said>,
    /// When whoever goes on has left the last bridges, as planned.
    pub(crate) on: Option<Clock>,
}

/// For somebody who stands on the line: where and by when to turn back, stage by stage; beyond that place, that the start was
/// too late. Beyond the place where a slower party turns, that it should have: its later hour is none in hand there.
#[must_use]
pub(crate) fn on_the_way(clock: &PlanClock, voice: Voice) -> Vec<OnTheWay> {
    let of_stage = |clock: &StageClock| {
        let late = clock.is_late();
        let line = |(to_m, says): (Option<f64>, Said), turns: Option<Said>| OnTheWay {
            stage: clock.stage,
            to_m,
            late,
            says: says.capital(),
            turns: turns.map(Said::capital),
            on: clock.as_planned.bridges_left,
        };
        let beyond = late.then(|| beyond_the_turn(clock, voice)).flatten();
        let turns = turns_on_the_way(clock, late, voice).into_iter();
        let told = turns.map(|turn| line(turn, None));
        told.chain(beyond.map(|(says, turns)| line((None, says), Some(turns))))
            .collect::<Vec<_>>()
    };
    clock.stages().flat_map(of_stage).collect()
}

/// The turn to keep to, up to it.
fn turns_on_the_way(clock: &StageClock, late: bool, voice: Voice) -> Vec<(Option<f64>, Said)> {
    let planned = clock.as_planned;
    if let Some(turn) = planned.turn_round {
        let [kind, place, at, _] = spot(turn, voice);
        let until = |to_m: f64, slower: Option<Said>| {
            let args = [
                kind.clone(),
                place.clone(),
                at.clone(),
                ("late", Arg::yes(late)),
                beside([slower]),
            ];
            (Some(to_m), voice.say("clock-on-the-way-turn", &args))
        };
        let slower = clock.slower.unwrap_or_default();
        return match slower.turn_round.filter(|slower| slower.at_m < turn.at_m) {
            Some(sooner) => {
                let first = voice.say("clock-turn-slower-first", &spot(sooner, voice));
                let due = voice.say("clock-turn-slower-due", &[]);
                vec![until(sooner.at_m, Some(first)), until(turn.at_m, Some(due))]
            }
            None => vec![until(turn.at_m, slower_turn(slower, voice))],
        };
    }
    // Who is too late already is told that in `beyond_the_turn`.
    let until = clock.bridges_until;
    let until = until.filter(|_| planned.no_turn_in_time && !late);
    let never = until.map(|until| {
        let until = [("until", hour(until, voice))];
        (None, voice.say("clock-on-the-way-never", &until))
    });
    never.into_iter().collect()
}

/// Past the turning place: that bridges come late on and back, and what is to be done where it is not too late to go back.
fn beyond_the_turn(clock: &StageClock, voice: Voice) -> Option<(Said, Said)> {
    let turn = clock.as_planned.turn_round;
    let place = turn.map(|turn| voice.shown(&Arg::DoneAt(turn.at_m, Round::Down)));
    let args = [
        ("until", hour(clock.bridges_until?, voice)),
        ("passed", Arg::yes(turn.is_some())),
        ("place", Arg::Said(place.unwrap_or_default())),
    ];
    let turns = voice.say("clock-on-the-way-back", &args);
    Some((voice.say("clock-on-the-way-late", &args), turns))
}
