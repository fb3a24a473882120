//! Where a stage may be turned round in time, and what is in time where it is late.

use crate::{
    judge::place::position,
    plan::{
        clock::{TurnKind, TurnRound},
        in_time::{InTime, StartBy, TripHour, TurnInTime, WayOff},
    },
    practice::Rule,
    times::{backwards::WalkedStage, hours::Hours, turn::LatestTurn},
    trip::{clock::Clock, route::Stretch},
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
    let mut ways = walked.legs.iter().zip(walked.hours);
    let belayed = ways.any(|(leg, hours)| {
        hours.belay_min > 0.0 && leg.sketch.stretch.from_m < turn.spot.at_m - 1e-6
    });
    TurnRound {
        by: start.after(turn.min).cut_off(),
        at_m: turn.spot.at_m,
        at: at.unwrap_or_default(),
        leg: turn.spot.leg,
        before: before.map(|leg| leg.number),
        bridges_left: turn.bridges_left_min.map(|min| start.after(min)),
        on_firm_ground: turn.on_firm_ground,
        belayed_back: belayed && !turn.of_line,
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

/// What leaves all hidden gaps of a stage in time, where as planned they are left too late; nobody goes over these stretches. A start that
/// is in time for the hour to be back too is the one told.
pub(super) fn off_in_time(walked: &WalkedStage<'_>, barred: &[Stretch]) -> Option<InTime> {
    walked.late_on_bridges()?;
    let latest_start = walked.latest_start_for_all();
    let turns = if_belayed(walked, turns_off_bridges);
    let late = turns != TurnInTime::Yes;
    Some(InTime {
        start_by: start_by(walked, latest_start.or_else(|| walked.latest_start())),
        turns,
        off: late.then(|| way_off(walked, barred)).flatten(),
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
    if walked.hours.iter().all(|hours| hours.belay_min <= 0.0) {
        return TurnInTime::No;
    }
    let hours = walked.legs.iter().zip(walked.hours);
    let hours = hours.map(|(leg, hours)| match hours.belay_min > 0.0 {
        true => hours.unbelayed_back(leg, walked.job.rules),
        false => hours.clone(),
    });
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

/// Where who is under way is off hidden gaps; nobody goes over these stretches of the stage. `None` where nobody is under way.
fn way_off(walked: &WalkedStage<'_>, barred: &[Stretch]) -> Option<WayOff> {
    let (here_m, hour) = (walked.here_m()?, walked.job.timetable.start.value?);
    // A strip that is no wider than what a drawing errs by is none.
    let gaps = Stretch::merged(walked.hidden(), walked.job.rules[Rule::MarginM]);
    let stands_on = |gaps: &&Stretch| gaps.from_m <= here_m && here_m < gaps.to_m;
    let Some(on) = gaps.iter().find(stands_on) else {
        return Some(WayOff::NotOn);
    };
    let length_m = walked.legs.first()?.stage.stage.length_m();
    let begins = on.from_m <= 1e-6;
    let back = Off {
        min: walked.home_min(here_m) - walked.home_min(on.from_m),
        at_m: on.from_m,
        more: begins || gaps.iter().any(|other| other.to_m <= on.from_m),
        barred: is_barred(barred, here_m, on.from_m),
        way: if begins { Way::Begin } else { Way::Back },
    };
    let ahead = (on.to_m < length_m - 1e-6).then(|| Off {
        min: walked.moving_min(on.to_m) - walked.moving_min(here_m),
        at_m: on.to_m,
        more: gaps.iter().any(|other| other.from_m >= on.to_m),
        barred: is_barred(barred, here_m, on.to_m),
        way: Way::On,
    });
    let until = walked.job.timetable.bridges_until.value;
    let late = |off: &Off| until.is_some_and(|until| hour.after(off.min).is_later_than(until));
    // In time rather where none lie beyond; else whatever is sooner.
    let order = |off: &Off| (off.barred, late(off), off.more && !late(off));
    let ways = ahead.into_iter().chain([back]);
    let best = ways.min_by(|a, b| {
        let order = order(a).cmp(&order(b));
        order.then(a.min.total_cmp(&b.min))
    });
    best.map(|off| off.told(hour))
}

/// A way off the hidden gaps on which somebody stands.
struct Off {
    min: f64,
    at_m: f64,
    /// Whether others lie beyond.
    more: bool,
    /// Whether it leads over what nobody goes over.
    barred: bool,
    way: Way,
}

enum Way {
    Back,
    /// Back to where the line begins on them.
    Begin,
    On,
}

impl Off {
    fn told(&self, hour: Clock) -> WayOff {
        let (at_m, at, more) = (self.at_m, hour.after(self.min), self.more);
        match self.way {
            Way::Back => WayOff::Back { at_m, at, more },
            Way::Begin => WayOff::Begin { at },
            Way::On => WayOff::On { at_m, at, more },
        }
    }
}

/// Whether one of these stretches lies on the way from a place to another; who stands on one is on it either way.
fn is_barred(barred: &[Stretch], here_m: f64, to_m: f64) -> bool {
    let way = Stretch {
        from_m: here_m.min(to_m),
        to_m: here_m.max(to_m),
    };
    let stands_on = |on: &Stretch| on.from_m <= here_m && here_m <= on.to_m;
    barred.iter().any(|on| !stands_on(on) && on.overlaps(&way))
}
