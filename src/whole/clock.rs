//! The clock of a plan: times worked backwards, and the sun.

use crate::{
    plan::{
        clock::{Backwards, PlanClock, StageClock, SunAllDay, TurnKind, TurnRound},
        fact::Fact,
        finding::{At, Finding, JobPart, StagePlace},
    },
    practice::Rule,
    rope::legs::RopedLeg,
    times::{backwards::WalkedStage, hours::Hours, sun::SunDay, turn::LatestTurn},
    trip::{clock::Clock, job::Brief, route::Stage},
};

/// The clock of every stage; nothing where neither a start nor a day is given, or nothing can be told of them.
pub(crate) fn clock(job: &Brief<'_>, legs: &[RopedLeg<'_>], hours: &[Hours]) -> Option<PlanClock> {
    let stages = by_stage(job, legs, hours).into_iter();
    let mut clocks: Vec<StageClock> = stages.filter_map(|stage| stage_clock(&stage)).collect();
    let told = clocks.iter().any(tells);
    if !told {
        return None;
    }
    let other_stages = clocks.split_off(1);
    let first = clocks.pop()?;
    Some(PlanClock {
        first,
        other_stages,
    })
}

fn tells(clock: &StageClock) -> bool {
    clock.as_planned != Backwards::default() || clock.date.is_some()
}

/// The stages as planned, each with its legs.
fn by_stage<'a>(
    job: &'a Brief<'a>,
    legs: &'a [RopedLeg<'a>],
    hours: &'a [Hours],
) -> Vec<WalkedStage<'a>> {
    let mut from = 0;
    let runs = legs.chunk_by(|a, b| a.stage.stage.number == b.stage.stage.number);
    let stage = |legs: &'a [RopedLeg<'a>]| {
        let to = from + legs.len();
        let hours = hours.get(from..to).unwrap_or_default();
        from = to;
        WalkedStage {
            job,
            legs,
            hours,
            factor: 1.0,
        }
    };
    runs.map(stage).collect()
}

fn stage_clock(walked: &WalkedStage<'_>) -> Option<StageClock> {
    let stage = walked.legs.first()?.stage.stage;
    let slower = WalkedStage {
        factor: walked.job.rules[Rule::SlowerFactor],
        ..*walked
    };
    let slower = backwards(&slower);
    let (sun, times) = (sun(walked.job, stage), walked.job.timetable);
    let offset = times.utc_offset.value.unwrap_or_default();
    Some(StageClock {
        stage: stage.number,
        start: times.start.value,
        bridges_until: times.bridges_until.value,
        back_by: times.back_by.value,
        as_planned: backwards(walked),
        slower: (slower != Backwards::default()).then_some(slower),
        date: sun.and(times.date.value),
        sunrise: sun.and_then(|sun| sun.rises),
        sunset: sun.and_then(|sun| sun.sets),
        sun: sun.and_then(|sun| sun.up_all_day).map(|up| match up {
            true => SunAllDay::Up,
            false => SunAllDay::Down,
        }),
        utc_offset: sun.map(|_| offset),
    })
}

fn sun(job: &Brief<'_>, stage: &Stage) -> Option<SunDay> {
    let offset = job.timetable.utc_offset.value.unwrap_or_default();
    SunDay::at(*stage.points().first()?, job.timetable.date.value?, offset)
}

/// Nothing without a start, and nothing where the climb of a leg is unknown: hours for the way alone are too few.
fn backwards(walked: &WalkedStage<'_>) -> Backwards {
    let times = walked.job.timetable;
    let known = walked.legs.iter().all(|leg| leg.footing.climb.is_some());
    let Some(start) = times.start.value.filter(|_| known) else {
        return Backwards::default();
    };
    let until = times.bridges_until.value;
    let left_min = walked.bridges_left_min();
    let latest = until.zip(left_min);
    let spot = until.and_then(|until| walked.spot_at(until.min() - start.min()));
    let back = times.back_by.value;
    let back = back.and_then(|by| walked.latest_turn(by.min() - start.min()));
    let turn = binding(walked, back, until.map(|until| until.min() - start.min()));
    Backwards {
        arrival: Some(start.after(walked.arrival_min())),
        latest_start: latest.map(|(until, left_min)| until.after(-left_min).cut_off()),
        at_bridges_until_m: spot.map(|spot| spot.at_m),
        at_bridges_until_leg: spot.map(|spot| spot.leg),
        turn_round: turn.map(|turn| turn_round(walked, start, turn)),
        turn_round_back_by: back
            .filter(|_| turn != back)
            .map(|back| turn_round(walked, start, back)),
    }
}

/// The turn that the leader has to keep to: the one to be back in time, or the earlier one whose way back has left all hidden
/// gaps when bridges are no longer trusted.
fn binding(
    walked: &WalkedStage<'_>,
    back: Option<LatestTurn>,
    until_min: Option<f64>,
) -> Option<LatestTurn> {
    let left_min = back.and_then(|back| back.bridges_left_min);
    let late = until_min.zip(left_min).filter(|(until, left)| left > until);
    match late {
        Some((until_min, _)) => walked.latest_turn_off_bridges(until_min),
        None => back,
    }
}

fn turn_round(walked: &WalkedStage<'_>, start: Clock, turn: LatestTurn) -> TurnRound {
    let stage = walked.legs.first().map(|leg| leg.stage.stage);
    let at = stage.and_then(|stage| stage.at(turn.spot.at_m));
    TurnRound {
        by: start.after(turn.min).cut_off(),
        at_m: turn.spot.at_m,
        at: at.map_or([0.0, 0.0], |p| [p.normal().lon_deg, p.lat_deg]),
        leg: turn.spot.leg,
        bridges_left: turn.bridges_left_min.map(|min| start.after(min)),
        kind: if turn.of_line {
            TurnKind::OfTheLine
        } else {
            TurnKind::OffTheLine
        },
    }
}

/// What is found of the clock as a whole.
pub(super) fn findings(job: &Brief<'_>, legs: &[RopedLeg<'_>], hours: &[Hours]) -> Vec<Finding> {
    let times = job.timetable;
    let mut found = Vec::new();
    if let Some((start, back_by)) = times.start.value.zip(times.back_by.value) {
        let stages = by_stage(job, legs, hours);
        found.extend(stages.iter().filter_map(|s| late(s, start, back_by)));
    }
    if times.date.value.is_some() && times.utc_offset.value.is_none() {
        let of = JobPart::Route;
        found.push(Finding::new(At::Part { of }, Fact::SunInUtc {}));
    }
    found
}

fn late(walked: &WalkedStage<'_>, start: Clock, back_by: Clock) -> Option<Finding> {
    let stage = walked.legs.first()?.stage.stage;
    let arrival = start.after(walked.arrival_min());
    let at = At::Stage(StagePlace {
        stage: stage.number,
        name: stage.name.clone(),
    });
    let fact = Fact::BackLate { arrival, back_by };
    arrival
        .is_later_than(back_by)
        .then(|| Finding::new(at, fact))
}
