//! Where a stage may be turned round in time, and whether it can be.

use crate::{
    judge::place::position,
    plan::clock::{TripHour, TurnKind, TurnRound},
    times::{backwards::WalkedStage, turn::LatestTurn},
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
}

impl Turns {
    pub(super) fn of(walked: &WalkedStage<'_>, barred: Option<usize>, start: Clock) -> Self {
        let times = walked.job.timetable;
        // Who is under way is past what lies behind.
        let passed_m = walked.passed_m();
        let ahead = |turn: &LatestTurn| turn.spot.at_m > passed_m;
        let after = |hour: Clock| hour.min() - start.min();
        let back = times.back_by.value.map(after);
        let back = back.and_then(|by_min| walked.latest_turn(by_min, barred));
        let back = back.filter(ahead);
        // By the turn to be done in time, or else as planned.
        let left_min = match back {
            Some(back) => back.bridges_left_min,
            None => walked.bridges_left_min(),
        };
        let until_min = times.bridges_until.value.map(after);
        let late = until_min.filter(|until_min| left_min.is_some_and(|min| min > *until_min));
        let off = |until_min: f64, barred: Option<usize>| {
            let turn = walked.latest_turn_off_bridges(until_min, barred);
            turn.filter(ahead)
        };
        Self {
            back,
            turn: late.map_or(back, |until_min| off(until_min, barred)),
            hour: match late {
                Some(_) => TripHour::BridgesUntil,
                None => TripHour::BackBy,
            },
            none_in_time: late.is_some_and(|until_min| off(until_min, None).is_none()),
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

/// Whether a turn that still lies ahead is back by the hour that the leader gives, be the way barred or not, and off hidden gaps by
/// the other one.
pub(super) fn turns_back(walked: &WalkedStage<'_>) -> bool {
    let times = walked.job.timetable;
    // Be it late too: bridges that are trusted no more are worse.
    if is_before_hidden(walked) && are_bridges_late(walked) {
        return true;
    }
    let turn = times.back_by.value.zip(walked.start());
    let turn = turn.and_then(|(by, start)| walked.latest_turn(by.min() - start.min(), None));
    let turn = turn.filter(|turn| turn.spot.at_m > walked.passed_m());
    turn.is_some_and(|turn| {
        let over = times.bridges_until.value.and(turn.bridges_left_min);
        over.is_none() || turns_off_bridges(walked)
    })
}

/// The same for the hour until which bridges are trusted; where nothing is reckoned there may be one, and who is under way before the
/// first of them can turn there.
pub(super) fn turns_off_bridges(walked: &WalkedStage<'_>) -> bool {
    if is_before_hidden(walked) {
        return true;
    }
    let until = walked.job.timetable.bridges_until.value;
    let hours = until.zip(walked.start().filter(|_| walked.climb_is_known()));
    hours.is_none_or(|(until, start)| {
        let turn = walked.latest_turn_off_bridges(until.min() - start.min(), None);
        turn.is_some_and(|turn| turn.spot.at_m > walked.passed_m())
    })
}

/// Whether who is under way has crossed no hidden gaps.
fn is_before_hidden(walked: &WalkedStage<'_>) -> bool {
    let passed_m = walked.passed_m();
    passed_m.is_finite() && !walked.is_over_hidden(passed_m)
}

/// Whether hidden gaps that lie ahead are left as planned later than bridges are trusted.
fn are_bridges_late(walked: &WalkedStage<'_>) -> bool {
    let until = walked.job.timetable.bridges_until.value;
    let left = walked.start().zip(walked.bridges_left_min());
    let left = left.map(|(start, min)| start.after(min));
    until
        .zip(left)
        .is_some_and(|(until, left)| left.is_later_than(until))
}
