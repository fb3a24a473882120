//! What is found of the hours of a trip as a whole.

use crate::{
    plan::{
        fact::Fact,
        finding::{At, Finding, JobPart, StagePlace},
        in_time::TripHour,
    },
    practice::Rule,
    rope::legs::RopedLeg,
    times::{backwards::WalkedStage, hours::Hours},
    trip::{clock::Clock, job::Brief, timetable::Timetable},
    whole::{
        clock::{dark, slower},
        turns::{back_in_time, start_by},
    },
};

/// What is found of the clock of the trip, and of how long its stages take.
pub(super) fn findings(job: &Brief<'_>, legs: &[RopedLeg<'_>], hours: &[Hours]) -> Vec<Finding> {
    let times = job.timetable;
    let mut found = Vec::new();
    for walked in WalkedStage::all(job, legs, hours) {
        let facts = long(&walked).into_iter().chain(late(&walked));
        found.extend(facts.filter_map(|fact| of_stage(&walked, fact)));
    }
    // Who is under way may be there after them.
    if let (Some(start), None) = (times.start.value, times.start_at_km.value) {
        found.extend(before_start(start, times));
    }
    if times.date.value.is_some() && times.utc_offset.value.is_none() {
        found.push(of_route(Fact::SunInUtc {}));
    }
    found
}

fn of_route(fact: Fact) -> Finding {
    let of = JobPart::Route;
    Finding::new(At::Part { of }, fact)
}

fn of_stage(walked: &WalkedStage<'_>, fact: Fact) -> Option<Finding> {
    let stage = walked.legs.first()?.stage.stage;
    let place = StagePlace {
        stage: stage.number,
        name: stage.name.clone(),
    };
    Some(Finding::new(At::Stage(place), fact))
}

/// Where a team is on the way for so long that it has to sleep. Halts are not counted, where it may, nor belays, which are reckoned
/// and told by themselves.
fn long(walked: &WalkedStage<'_>) -> Option<Fact> {
    let hours = walked.hours.iter();
    let apart_min: f64 = hours.map(|hours| hours.halt_min + hours.belay_min).sum();
    let minutes = (walked.arrival_min() - apart_min).round();
    let most_h = walked.job.rules[Rule::LongestStageH];
    (minutes > most_h * 60.0).then_some(Fact::LongStage { minutes, most_h })
}

/// Hours that lie before the start.
fn before_start(start: Clock, times: &Timetable) -> impl Iterator<Item = Finding> {
    let hours = [
        (TripHour::BridgesUntil, times.bridges_until.value),
        (TripHour::BackBy, times.back_by.value),
    ];
    hours.into_iter().filter_map(move |(hour, at)| {
        let at = at.filter(|at| start.is_later_than(*at))?;
        Some(of_route(Fact::HourBeforeStart { hour, at, start }))
    })
}

/// Where a stage is done too late, and what is too late for a slower party alone.
fn late(walked: &WalkedStage<'_>) -> Vec<Fact> {
    if walked.start().is_none() {
        return Vec::new();
    }
    let slower = slower(walked);
    let back = walked.late_back().map(|[arrival, back_by]| Fact::BackLate {
        arrival,
        back_by,
        start_by: start_by(walked, walked.latest_start_for_all()),
        turns: back_in_time(walked),
    });
    let back = back.or_else(|| {
        let [arrival, back_by] = slower.late_back()?;
        Some(Fact::SlowerBackLate { arrival, back_by })
    });
    let bridges = slower
        .late_on_bridges()
        .filter(|_| walked.late_on_bridges().is_none());
    let bridges = bridges.map(|[left_at, until]| Fact::SlowerBridgesLate { left_at, until });
    back.into_iter()
        .chain(bridges)
        .chain(dark(walked))
        .collect()
}
