//! Where a stage may be turned round in time, and what is in time where it is late.

use crate::{
    judge::place::position,
    plan::{
        clock::{TurnKind, TurnRound},
        in_time::{InTime, StartBy, TripHour, TurnInTime, WayOff},
    },
    times::{backwards::WalkedStage, hours::Hours, turn::LatestTurn},
    trip::clock::Clock,
};

/// Where a stage may be turned round.
pub(super) struct Turns {
    /// To be done in time.
    pub(super) back: Option<LatestTurn>,
    /// The one to keep to: off the hidden gaps while bridges are trusted comes first.
    pub(super) turn: Option<LatestTurn>,
    /// For which hour that one is.
    pub(super) hour: TripHour,
    /// Whether none leaves the hidden gaps in time.
    pub(super) none_in_time: bool,
    /// Whether one would without belays on the way back.
    pub(super) if_unbelayed: bool,
}

impl Turns {
    pub(super) fn of(walked: &WalkedStage<'_>, barred: Option<usize>, start: Clock) -> Self {
        let times = walked.job.timetable;
        let after = |hour: Clock| hour.min() - start.min();
        let back = times.back_by.value.map(after);
        let back = back.and_then(|by_min| walked.latest_turn(by_min, barred));
        // By the turn to be done in time, or else as planned.
        let left_min = match back {
            Some(back) => back.bridges_left_min,
            None => walked.bridges_left_min(),
        };
        let until_min = times.bridges_until.value.map(after);
        let late = until_min.filter(|until_min| left_min.is_some_and(|min| min > *until_min));
        let off = |until_min: f64| walked.latest_turn_off_bridges(until_min, barred);
        let in_time = late.map(|_| if_belayed(walked, turns_off_bridges));
        Self {
            back,
            turn: late.map_or(back, off),
            hour: match late {
                Some(_) => TripHour::BridgesUntil,
                None => TripHour::BackBy,
            },
            none_in_time: in_time.is_some_and(|turn| turn != TurnInTime::Yes),
            if_unbelayed: in_time == Some(TurnInTime::Unbelayed),
        }
    }
}

/// As it is handed out.
pub(super) fn turn_round(
    walked: &WalkedStage<'_>,
    (start, hour): (Clock, TripHour),
    turn: LatestTurn,
    barred: Option<usize>,
) -> TurnRound {
    let at = walked.legs.first().map(|leg| position(leg, turn.spot.at_m));
    let mut legs = walked.legs.iter();
    let next = legs.find(|leg| Some(leg.number) == barred);
    let before = next.filter(|leg| turn.spot.at_m >= leg.sketch.stretch.from_m - 1e-6);
    TurnRound {
        by: start.after(turn.min).cut_off(),
        at_m: turn.spot.at_m,
        at: at.unwrap_or_default(),
        leg: turn.spot.leg,
        before: before.map(|leg| leg.number),
        bridges_left: turn.bridges_left_min.map(|min| start.after(min)),
        on_firm_ground: turn.on_firm_ground,
        hour,
        kind: if turn.of_line {
            TurnKind::OfTheLine
        } else {
            TurnKind::OffTheLine
        },
    }
}

/// By when a stage has to be started for an hour, where that is the latest start for it.
pub(super) fn start_by(walked: &WalkedStage<'_>, latest_start: Option<Clock>) -> StartBy {
    match latest_start {
        _ if walked.here_m().is_some() => StartBy::UnderWay,
        _ if !walked.climb_is_known() => StartBy::NotReckoned,
        Some(start) => StartBy::At(start),
        None => StartBy::NoneOfTheDay,
    }
}

/// What leaves all hidden gaps of a stage in time, where as planned they are left too late. A start that is in time for the hour to be
/// back too is the one told.
pub(super) fn off_in_time(walked: &WalkedStage<'_>) -> Option<InTime> {
    walked.late_on_bridges()?;
    let latest_start = walked.latest_start_for_all();
    let turns = if is_before_hidden(walked) {
        TurnInTime::Yes
    } else {
        if_belayed(walked, turns_off_bridges)
    };
    Some(InTime {
        start_by: start_by(walked, latest_start.or_else(|| walked.latest_start())),
        turns,
        off: way_off(walked).filter(|_| turns != TurnInTime::Yes),
    })
}

/// Whether a turn that lies ahead is back by the hour that the leader gives, be the way barred or not, and off hidden gaps by the
/// other one.
pub(super) fn back_in_time(walked: &WalkedStage<'_>) -> TurnInTime {
    // Be it late too: bridges that are trusted no more are worse.
    match is_before_hidden(walked) && walked.late_on_bridges().is_some() {
        true => TurnInTime::Yes,
        false => if_belayed(walked, turns_back),
    }
}

/// The same with the belays of the way out on the way back, else without.
fn if_belayed(walked: &WalkedStage<'_>, turns: fn(&WalkedStage<'_>) -> bool) -> TurnInTime {
    if turns(walked) {
        return TurnInTime::Yes;
    }
    let hours = walked.legs.iter().zip(walked.hours);
    let hours = hours.map(|(leg, hours)| hours.unbelayed_back(leg, walked.job.rules));
    let hours: Vec<Hours> = hours.collect();
    let unbelayed = WalkedStage {
        hours: &hours,
        ..*walked
    };
    match turns(&unbelayed) {
        true => TurnInTime::Unbelayed,
        false => TurnInTime::No,
    }
}

fn turns_back(walked: &WalkedStage<'_>) -> bool {
    let times = walked.job.timetable;
    let turn = times.back_by.value.zip(walked.start());
    let turn = turn.and_then(|(by, start)| walked.latest_turn(by.min() - start.min(), None));
    turn.is_some_and(|turn| {
        let over = times.bridges_until.value.and(turn.bridges_left_min);
        over.is_none() || is_before_hidden(walked) || turns_off_bridges(walked)
    })
}

/// Where nothing is reckoned there may be one.
fn turns_off_bridges(walked: &WalkedStage<'_>) -> bool {
    let until = walked.job.timetable.bridges_until.value;
    let hours = until.zip(walked.start().filter(|_| walked.climb_is_known()));
    hours.is_none_or(|(until, start)| {
        let turn = walked.latest_turn_off_bridges(until.min() - start.min(), None);
        turn.is_some()
    })
}

/// Whether who is under way has crossed no hidden gaps, and can turn there.
fn is_before_hidden(walked: &WalkedStage<'_>) -> bool {
    let here_m = walked.here_m();
    here_m.is_some_and(|here_m| !walked.is_over_hidden(here_m))
}

/// Where who stands among hidden gaps is off them the shorter way, unless the line begins or ends there.
fn way_off(walked: &WalkedStage<'_>) -> Option<WayOff> {
    let (here_m, stage) = (walked.here_m()?, walked.legs.first()?.stage.stage);
    let gaps = walked.hidden().into_iter();
    let mut among = gaps.filter(|gaps| gaps.from_m <= here_m && here_m < gaps.to_m);
    let on = among.next()?;
    let ways = [(on.from_m, true), (on.to_m, false)].map(|(at_m, back)| WayOff { at_m, back });
    let off = |way: &WayOff| 1e-6 < way.at_m && way.at_m < stage.length_m() - 1e-6;
    let away_m = |way: &WayOff| (way.at_m - here_m).abs();
    let ways = ways.into_iter().filter(off);
    ways.min_by(|a, b| away_m(a).total_cmp(&away_m(b)))
}
