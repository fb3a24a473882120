//! The clock of a plan: times worked backwards, and the sun.

use crate::{
    plan::{
        belay::LegBelays,
        clock::{Backwards, PlanClock, StageBelays, StageClock, StartAt, SunAllDay},
        fact::Fact,
        in_time::TripHour,
        leg::{Leg, Verdict},
        place::RouteEnd,
    },
    practice::Rule,
    rope::legs::RopedLeg,
    times::{backwards::WalkedStage, hours::Hours, sun::SunDay},
    trip::{clock::Clock, job::Brief, route::Stage},
    whole::turns::{Turns, turn_round},
};

/// The clock of every stage; nothing where the leader gives no hour and no day.
pub(crate) fn clock(
    job: &Brief<'_>,
    legs: &[RopedLeg<'_>],
    hours: &[Hours],
    planned: &[Leg],
) -> Option<PlanClock> {
    let stages = WalkedStage::all(job, legs, hours).into_iter();
    let clocks = stages.filter_map(|stage| stage_clock(&stage, planned));
    let mut clocks: Vec<StageClock> = clocks.collect();
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

/// Hours that the leader gives are kept where nothing can be worked backwards from them: findings are told by them.
fn tells(clock: &StageClock) -> bool {
    let given = [clock.start, clock.bridges_until, clock.back_by];
    given.iter().any(Option::is_some) || clock.date.is_some()
}

fn stage_clock(walked: &WalkedStage<'_>, planned: &[Leg]) -> Option<StageClock> {
    let stage = walked.legs.first()?.stage.stage;
    let barred = first_barred(walked, planned);
    let backwards = |walked: &WalkedStage<'_>| backwards(walked, barred);
    let slower = backwards(&slower(walked));
    let (sun, times) = (sun(walked, stage), walked.job.timetable);
    let offset = times.utc_offset.value.unwrap_or_default();
    let mut clock = StageClock {
        stage: stage.number,
        start: walked.start(),
        start_at: start_at(walked),
        bridges_until: times.bridges_until.value,
        back_by: times.back_by.value,
        as_planned: backwards(walked),
        belays: belays(walked, planned, &backwards),
        slower: (slower != Backwards::default()).then_some(slower),
        date: sun.and(times.date.value),
        sunrise: sun.and_then(|sun| sun.rises),
        sunset: sun.and_then(|sun| sun.sets),
        sun: sun.and_then(|sun| sun.up_all_day).map(|up| match up {
            true => SunAllDay::Up,
            false => SunAllDay::Down,
        }),
        utc_offset: sun.map(|_| offset),
        dark_if_latest: Vec::new(),
        dark_belays: dark_belays(walked, planned),
        ends_on_hidden: ends_on_hidden(walked, stage),
    };
    let earlier_min = clock
        .start
        .zip(clock.start_told())
        .map(|(start, latest)| start.min() - latest.min());
    // What is dark as planned is a finding.
    if let Some(earlier_min) = earlier_min.filter(|min| min.abs() > 1e-6) {
        clock.dark_if_latest = dark_if(walked, earlier_min);
    }
    Some(clock)
}

/// Where and when the team is on the way, where the leader says that and not when it starts.
fn start_at(walked: &WalkedStage<'_>) -> Option<StartAt> {
    Some(StartAt {
        at_m: walked.here_m()?,
        hour: walked.job.timetable.start.value?,
    })
}

/// The ends of a stage that lie on hidden gaps.
fn ends_on_hidden(walked: &WalkedStage<'_>, stage: &Stage) -> Vec<RouteEnd> {
    let gaps = walked.hidden();
    let begins = gaps.first().is_some_and(|gaps| gaps.from_m <= 1e-6);
    let ends = gaps
        .last()
        .is_some_and(|gaps| gaps.to_m >= stage.length_m() - 1e-6);
    let begin = begins.then_some(RouteEnd::Begin);
    begin
        .into_iter()
        .chain(ends.then_some(RouteEnd::End))
        .collect()
}

/// The first leg of a stage on which roping up is no answer.
fn first_barred(walked: &WalkedStage<'_>, planned: &[Leg]) -> Option<usize> {
    let stage = walked.legs.first()?.stage.stage.number;
    let mut legs = planned.iter().filter(|leg| leg.stage == stage);
    let barred = legs.find(|leg| leg.verdict >= Verdict::Outside);
    barred.map(|leg| leg.leg)
}

/// The belays of a stage, and its hours without them.
fn belays(
    walked: &WalkedStage<'_>,
    planned: &[Leg],
    backwards: &dyn Fn(&WalkedStage<'_>) -> Backwards,
) -> Option<StageBelays> {
    let number = walked.legs.first()?.stage.stage.number;
    let passed_m = walked.passed_m();
    let ahead = |leg: &&Leg| leg.stage == number && leg.end_m > passed_m;
    let legs = planned.iter().filter(ahead);
    let asked = legs.filter_map(|leg| Some((leg.leg, leg.belays.as_ref()?)));
    let asked: Vec<_> = asked.collect();
    let start = walked.job.timetable.start.value;
    // Nothing is worked backwards without a start.
    let without = || match start {
        Some(_) => backwards(&WalkedStage {
            hours: &without_belays(walked),
            ..*walked
        }),
        None => Backwards::default(),
    };
    (!asked.is_empty()).then(|| StageBelays {
        belays: asked.iter().map(|(_, belays)| belays.belays).sum(),
        minutes: asked.iter().map(|(_, belays)| belays.minutes).sum(),
        legs: asked.iter().map(|(leg, _)| *leg).collect(),
        without: without(),
    })
}

fn without_belays(walked: &WalkedStage<'_>) -> Vec<Hours> {
    let hours = walked.legs.iter().zip(walked.hours);
    let without = hours.map(|(leg, hours)| match hours.belay_min > 0.0 {
        true => Hours::of(walked.job, leg, None),
        false => hours.clone(),
    });
    without.collect()
}

/// The sun of the day of the start, or of the day after where it has set before the start.
fn sun(walked: &WalkedStage<'_>, stage: &Stage) -> Option<SunDay> {
    let job = walked.job;
    let sun = sun_after(0.0, job, stage)?;
    let start = walked.start();
    let over = start
        .zip(sun.sets)
        .is_some_and(|(start, sets)| start.is_later_than(sets));
    match over {
        // Where it does not rise then, this day is told.
        true => sun_after(1.0, job, stage)
            .filter(|next| next.rises.is_some())
            .or(Some(sun)),
        false => Some(sun),
    }
}

/// The sun so many days after the day of the start.
fn sun_after(days: f64, job: &Brief<'_>, stage: &Stage) -> Option<SunDay> {
    let times = job.timetable;
    let offset = times.utc_offset.value.unwrap_or_default();
    SunDay::days_after(days, stage.points().first()?, times.date.value?, offset)
}

/// The time on the rope between the sunsets and sunrises of a stage.
pub(super) fn dark(walked: &WalkedStage<'_>) -> Vec<Fact> {
    let told = nights_of(walked, 0.0).into_iter().filter_map(|night| {
        let minutes: f64 = roped(walked)
            .map(|(_, clock)| night.min_of(clock, 0.0))
            .sum();
        let Night { from, until, .. } = night;
        (minutes >= DARK_MIN).then_some(Fact::DarkOnRope {
            from,
            until,
            minutes,
        })
    });
    told.collect()
}

/// Less than this of a leg in the dark is none.
const DARK_MIN: f64 = 1.0;

/// Roped legs that are walked in the dark if the start is so many minutes earlier, or later where that is negative.
fn dark_if(walked: &WalkedStage<'_>, earlier_min: f64) -> Vec<usize> {
    let nights = nights_of(walked, earlier_min);
    let is_dark = |clock: [Clock; 2]| dark_min(&nights, clock, earlier_min) >= DARK_MIN;
    let dark = roped(walked).filter(|(_, clock)| is_dark(*clock));
    dark.map(|(leg, _)| leg).collect()
}

/// Legs on which belays are made in the dark, and be it one.
fn dark_belays(walked: &WalkedStage<'_>, planned: &[Leg]) -> Vec<usize> {
    let (nights, here) = (nights_of(walked, 0.0), start_at(walked));
    let is_dark = |hours: &Hours, belays: &LegBelays| {
        let mut clocks = belays.pieces.iter().filter_map(|piece| {
            let begin = hours.arrived_at(piece.from_m)?;
            let end = hours.arrived_at(piece.to_m)?;
            // Those at a single place are made behind it.
            let made = begin.after(belays.minutes_of(piece));
            let end = if made.is_later_than(end) { made } else { end };
            from_here(here, piece.to_m, [begin, end])
        });
        clocks.any(|clock| nights.iter().any(|night| night.holds_of(clock)))
    };
    let legs = walked.legs.iter().zip(walked.hours);
    let dark = legs.filter(|(leg, hours)| {
        let planned = planned.iter().find(|planned| planned.leg == leg.number);
        let belays = planned.and_then(|leg| leg.belays.as_ref());
        belays.is_some_and(|belays| is_dark(hours, belays))
    });
    dark.map(|(leg, _)| leg.number).collect()
}

/// How long of a leg lies in nights if the start is so many minutes earlier.
fn dark_min(nights: &[Night], clock: [Clock; 2], earlier_min: f64) -> f64 {
    let minutes = nights.iter().map(|night| night.min_of(clock, earlier_min));
    minutes.sum()
}

/// From when until when no sun is up.
#[derive(Clone, Copy)]
struct Night {
    /// None where it had begun before the day.
    from: Option<Clock>,
    /// Likewise, minutes from the begin of the day.
    since_min: f64,
    /// None where the sun does not rise again.
    until: Option<Clock>,
}

impl Night {
    /// Whether something of the time from one hour to another lies in it.
    fn holds_of(self, [begin, end]: [Clock; 2]) -> bool {
        let until_min = self.until.map_or(f64::INFINITY, Clock::min);
        begin.min() < until_min && end.min() > self.since_min
    }

    /// Its minutes between two hours that are so much earlier than said.
    fn min_of(self, [begin, end]: [Clock; 2], earlier_min: f64) -> f64 {
        let until_min = self.until.map_or(f64::INFINITY, Clock::min);
        let [begin_min, end_min] = [begin, end].map(|clock| clock.min() - earlier_min);
        (end_min.min(until_min) - begin_min.max(self.since_min)).max(0.0)
    }
}

/// The nights of the day on which a stage is started so many minutes earlier, or later, and of the two after.
fn nights_of(walked: &WalkedStage<'_>, earlier_min: f64) -> Vec<Night> {
    let stage = walked.legs.first().map(|leg| leg.stage.stage);
    let day = |days: f64| sun_after(days, walked.job, stage?);
    let Some(start) = walked.start().filter(|_| day(0.0).is_some()) else {
        return Vec::new();
    };
    let first = start.after(-earlier_min).day();
    let days = [first, first + 1.0, first + 2.0].map(day);
    let [Some(today), Some(tomorrow), Some(next)] = days else {
        return Vec::new();
    };
    let set_min = day(first - 1.0).and_then(|day| day.sets).map(Clock::min);
    // Of the day of the trip the night is told without when it fell.
    let since_min = if first == 0.0 { None } else { set_min };
    let begun = night_begun(
        &today,
        &tomorrow,
        since_min.unwrap_or(Clock::of_day_after(first).min()),
    );
    let after = (!is_down(&today)).then(|| night_after(&today, &tomorrow));
    let all = [begun, after.flatten(), night_after(&tomorrow, &next)];
    all.into_iter().flatten().collect()
}

fn is_down(day: &SunDay) -> bool {
    day.up_all_day == Some(false)
}

/// The night in which a day begins, since then.
fn night_begun(today: &SunDay, tomorrow: &SunDay, since_min: f64) -> Option<Night> {
    let until = match is_down(today) {
        true => (tomorrow.rises.is_some() || is_down(tomorrow)).then_some(tomorrow.rises),
        false => today.rises.map(Some),
    };
    until.map(|until| Night {
        from: None,
        since_min,
        until,
    })
}

/// The night after a day on which the sun sets.
fn night_after(day: &SunDay, next: &SunDay) -> Option<Night> {
    let ends = next.rises.is_some() || is_down(next);
    day.sets.filter(|_| ends).map(|sets| Night {
        from: Some(sets),
        since_min: sets.min(),
        until: next.rises,
    })
}

/// The roped legs that lie ahead, each with when it begins and ends; of the one where the team is from then on.
fn roped(walked: &WalkedStage<'_>) -> impl Iterator<Item = (usize, [Clock; 2])> {
    let here = start_at(walked);
    let legs = walked.legs.iter().zip(walked.hours);
    legs.filter_map(move |(leg, hours)| {
        let clock = hours.clock.filter(|_| leg.sketch.roped)?;
        Some((leg.number, from_here(here, leg.sketch.stretch.to_m, clock)?))
    })
}

/// What of the time on a piece of a leg lies ahead of who is under way.
fn from_here(here: Option<StartAt>, to_m: f64, [begin, end]: [Clock; 2]) -> Option<[Clock; 2]> {
    match here {
        Some(here) if here.at_m >= to_m => None,
        Some(here) if here.hour.is_later_than(begin) => Some([here.hour, end]),
        _ => Some([begin, end]),
    }
}

/// Nothing without a start, and nothing where the climb of a leg is unknown: hours for the way alone are too few. Nobody is told
/// to go on to a leg to which the way is barred.
fn backwards(walked: &WalkedStage<'_>, barred: Option<usize>) -> Backwards {
    let times = walked.job.timetable;
    let Some(start) = walked.start().filter(|_| walked.climb_is_known()) else {
        return Backwards::default();
    };
    let until = times.bridges_until.value;
    // Who is under way knows better where they were.
    let here = start_at(walked);
    let ahead = until.filter(|until| here.is_none_or(|here| !here.hour.is_later_than(*until)));
    let spot = ahead.and_then(|until| walked.spot_at(until.min() - start.min()));
    let turns = Turns::of(walked, barred, start);
    let told = |turn, hour| turn_round(walked, (start, hour), turn, barred);
    let hour = turns.hour;
    Backwards {
        arrival: Some(start.after(walked.arrival_min())),
        bridges_left: walked.bridges_left_min().map(|min| start.after(min)),
        latest_start: walked.latest_start(),
        latest_start_back_by: walked.latest_start_back(),
        latest_start_for_all: walked.latest_start_for_all(),
        at_bridges_until_m: spot.map(|spot| spot.at_m),
        at_bridges_until_leg: spot.map(|spot| spot.leg),
        turn_round: turns.turn.map(|turn| told(turn, hour)),
        turn_round_back_by: turns
            .back
            .filter(|_| turns.turn != turns.back)
            .map(|turn| told(turn, TripHour::BackBy)),
        no_turn_in_time: turns.none_in_time,
        turn_if_unbelayed: turns.if_unbelayed,
    }
}

/// The same stage, walked by a slower party.
pub(super) fn slower<'a>(walked: &WalkedStage<'a>) -> WalkedStage<'a> {
    WalkedStage {
        factor: walked.job.rules[Rule::SlowerFactor],
        ..*walked
    }
}
