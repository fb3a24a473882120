//! Words and figures of what is found of hours and halts.

use super::{
    placeable::{FactArgs, near},
    zones::ice,
};
use crate::{
    plan::{
        fact::Fact,
        finding::At,
        in_time::{StartBy, TripHour, TurnInTime, WayOff},
        name::ZoneName,
    },
    say::{
        arg::Arg,
        hour::{hour, hour_beside},
        round::Round,
        voice::Voice,
    },
    trip::clock::Clock,
};

/// All of one of them.
pub(super) fn of<'a>(fact: &'a Fact, at: &'a At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::HaltOnHidden {
            zone: z,
            minutes,
            beside,
            rest_m,
        } => halt(z.as_ref(), (*minutes, *beside, *rest_m), at, voice),
        Fact::DarkOnRope {
            from,
            until,
            minutes,
        } => dark([*from, *until], *minutes, voice),
        Fact::LongStage { minutes, most_h } => vec![
            ("time", Arg::Minutes(*minutes)),
            ("most", Arg::Minutes(most_h * 60.0)),
        ],
        Fact::HourBeforeStart {
            hour: of,
            at,
            start,
        } => vec![
            ("of", Arg::Word(trip_hour(*of))),
            ("name", Arg::Code(trip_hour(*of))),
            ("at", hour(*at, voice)),
            ("start", hour(*start, voice)),
        ],
        _ => late(fact, voice),
    }
}

/// What is late, and what leaves it in time.
fn late(fact: &Fact, voice: Voice) -> FactArgs<'_> {
    match fact {
        Fact::BridgesLate {
            zone: z,
            left_at,
            until,
            start_by,
            turns,
            off,
        } => {
            let late = [
                ("zone", Arg::Said(ice(z.as_ref(), voice))),
                just(*left_at, *until),
                ("left", hour(*left_at, voice)),
                ("until", hour_beside(*until, *left_at, voice)),
                ("turns", turn(*turns)),
            ];
            late.into_iter()
                .chain(by(*start_by, *until, voice))
                .chain(way_off(*off, voice))
                .collect()
        }
        Fact::SlowerBridgesLate { left_at, until } => vec![
            just(*left_at, *until),
            ("left", hour(*left_at, voice)),
            ("until", hour_beside(*until, *left_at, voice)),
        ],
        Fact::BackLate {
            arrival,
            back_by,
            start_by,
            turns,
        } => {
            let late = back_late(*arrival, *back_by, voice).into_iter();
            let turns = ("turns", turn(*turns));
            late.chain(by(*start_by, *back_by, voice))
                .chain([turns])
                .collect()
        }
        Fact::SlowerBackLate { arrival, back_by } => back_late(*arrival, *back_by, voice).into(),
        _ => Vec::new(),
    }
}

/// Where the ice is left, rounded away from it, which way that is and when.
fn way_off(off: Option<WayOff>, voice: Voice) -> [(&'static str, Arg<'static>); 4] {
    let (way, place, at, more) = match off {
        None | Some(WayOff::NotOn) => ("not-on", Arg::Word(""), None, false),
        Some(WayOff::Back { at_m, at, more }) => {
            ("back", Arg::DoneAt(at_m, Round::Down), Some(at), more)
        }
        Some(WayOff::On { at_m, at, more }) => ("on", Arg::DoneAt(at_m, Round::Up), Some(at), more),
        Some(WayOff::Begin { at }) => ("begin", Arg::Word(""), Some(at), false),
    };
    let at = at.map_or(Arg::Word(""), |at| hour(at, voice));
    let more = ("more", Arg::yes(more));
    [("off", Arg::Word(way)), ("place", place), ("at", at), more]
}

/// When the line is done, and when it had to be.
fn back_late<'a>(arrival: Clock, back_by: Clock, voice: Voice) -> [(&'static str, Arg<'a>); 3] {
    [
        just(arrival, back_by),
        ("arrival", hour(arrival, voice)),
        ("by", hour_beside(back_by, arrival, voice)),
    ]
}

/// By when to start, where that can be said, and why it cannot where it cannot.
fn by<'a>(start_by: StartBy, other: Clock, voice: Voice) -> [(&'static str, Arg<'a>); 2] {
    let start = match start_by {
        StartBy::At(start) => start,
        StartBy::NoneOfTheDay | StartBy::UnderWay | StartBy::NotReckoned => other,
    };
    [("known", known(start_by)), ("start", hour(start, voice))]
}

/// The time between the hours when the sun goes down and comes up, where it does.
fn dark<'a>([from, until]: [Option<Clock>; 2], minutes: f64, voice: Voice) -> FactArgs<'a> {
    let at = |clock: Option<Clock>| clock.map_or(Arg::Word(""), |clock| hour(clock, voice));
    vec![
        ("since", Arg::yes(from.is_some())),
        ("from", at(from)),
        ("rises", Arg::yes(until.is_some())),
        ("until", at(until)),
        ("time", Arg::Minutes(minutes)),
    ]
}

/// Whether an hour is late by seconds only, so that both are shown alike.
fn just<'a>(late: Clock, by: Clock) -> (&'static str, Arg<'a>) {
    ("just", Arg::yes(late.to_string() == by.to_string()))
}

/// A halt: its minutes, whether it is only beside the ice, and where else to rest, rounded away from the ice.
fn halt<'a>(
    drawn: Option<&'a ZoneName>,
    (minutes, beside, rest_m): (f64, bool, Option<f64>),
    at: &At,
    voice: Voice,
) -> FactArgs<'a> {
    let from_m = match at {
        At::Leg(place) => place.from_m,
        _ => 0.0,
    };
    let rest_m = rest_m.unwrap_or(from_m);
    let side = if rest_m < from_m {
        Round::Down
    } else {
        Round::Up
    };
    vec![
        ("minutes", Arg::Minutes(minutes)),
        near(at),
        ("beside", Arg::yes(beside)),
        ("drawn", Arg::yes(drawn.is_some())),
        ("zone", Arg::Said(ice(drawn, voice))),
        ("off", Arg::yes((rest_m - from_m).abs() > 1e-9)),
        ("rest", Arg::DoneAt(rest_m, side)),
    ]
}

fn trip_hour(of: TripHour) -> &'static str {
    match of {
        TripHour::BridgesUntil => "bridges_until",
        TripHour::BackBy => "back_by",
    }
}

/// Whether a turn is in time.
fn turn(turns: TurnInTime) -> Arg<'static> {
    Arg::Word(match turns {
        TurnInTime::Yes => "yes",
        TurnInTime::Unbelayed => "unbelayed",
        TurnInTime::No => "no",
    })
}

/// Whether a start is early enough, or why there is none.
fn known(start_by: StartBy) -> Arg<'static> {
    Arg::Word(match start_by {
        StartBy::At(_) => "yes",
        StartBy::NoneOfTheDay => "no",
        StartBy::UnderWay => "under-way",
        StartBy::NotReckoned => "unreckoned",
    })
}
