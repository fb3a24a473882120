//! The clock of a plan: times worked backwards, and the sun.

use crate::{
    judge::place::position,
    plan::{
        clock::{
            Backwards, PlanClock, StageBelays, StageClock, StartAt, SunAllDay, TurnKind, TurnRound,
        },
        fact::Fact,
        leg::{Leg, Verdict},
    },
    practice::Rule,
    rope::legs::RopedLeg,
    times::{backwards::WalkedStage, hours::Hours, sun::SunDay, turn::LatestTurn},
    trip::{clock::Clock, job::Brief, route::Stage},
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
    let backwards = |walked: &WalkedStage<'_>| before(backwards(walked), barred);
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
    };
    if let Some(late_min) = clock.late_min() {
        clock.dark_if_latest = dark_if_earlier(walked, late_min);
    }
    Some(clock)
}

/// Where and when the team is on the way, where the leader says that and not when it starts.
fn start_at(walked: &WalkedStage<'_>) -> Option<StartAt> {
    let times = walked.job.timetable;
    let stage = walked.legs.first()?.stage.stage;
    Some(StartAt {
        at_m: times.start_at_m()?.min(stage.length_m()),
        hour: times.start.value?,
    })
}

/// The first leg of a stage on which roping up is no answer.
fn first_barred(walked: &WalkedStage<'_>, planned: &[Leg]) -> Option<usize> {
    let stage = walked.legs.first()?.stage.stage.number;
    let mut legs = planned.iter().filter(|leg| leg.stage == stage);
    let barred = legs.find(|leg| leg.verdict >= Verdict::Outside);
    barred.map(|leg| leg.leg)
}

/// The same without turns in or behind a leg: nobody is told to go as far as a place to which the way is barred.
fn before(times: Backwards, barred: Option<usize>) -> Backwards {
    let is_before = |turn: &TurnRound| barred.is_none_or(|leg| turn.leg < leg);
    let kept = times.turn_round.filter(is_before);
    Backwards {
        turn_round: kept,
        turn_round_back_by: times
            .turn_round_back_by
            .filter(|_| kept.is_some() || times.turn_round.is_none()),
        ..times
    }
}

/// The belays of a stage, and its hours without them.
fn belays(
    walked: &WalkedStage<'_>,
    planned: &[Leg],
    backwards: &dyn Fn(&WalkedStage<'_>) -> Backwards,
) -> Option<StageBelays> {
    let number = walked.legs.first()?.stage.stage.number;
    let legs = planned.iter().filter(|leg| leg.stage == number);
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
    let told = nights_of(walked).into_iter().filter_map(|night| {
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

/// Roped legs that are walked longer in the dark if the start is so many minutes earlier.
fn dark_if_earlier(walked: &WalkedStage<'_>, earlier_min: f64) -> Vec<usize> {
    let nights = nights_of(walked);
    let darker = roped(walked).filter(|(_, clock)| {
        let darker_min = dark_min(&nights, *clock, earlier_min) - dark_min(&nights, *clock, 0.0);
        darker_min >= DARK_MIN
    });
    darker.map(|(leg, _)| leg).collect()
}

/// Legs with belays that are walked in the dark.
fn dark_belays(walked: &WalkedStage<'_>, planned: &[Leg]) -> Vec<usize> {
    let nights = nights_of(walked);
    let belayed = |number: usize| {
        let mut legs = planned.iter().filter(|leg| leg.belays.is_some());
        legs.any(|leg| leg.leg == number)
    };
    let dark = roped(walked)
        .filter(|(leg, clock)| belayed(*leg) && dark_min(&nights, *clock, 0.0) >= DARK_MIN);
    dark.map(|(leg, _)| leg).collect()
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
    /// Its minutes between two hours that are so much earlier than said.
    fn min_of(self, [begin, end]: [Clock; 2], earlier_min: f64) -> f64 {
        let until_min = self.until.map_or(f64::INFINITY, Clock::min);
        let [begin_min, end_min] = [begin, end].map(|clock| clock.min() - earlier_min);
        (end_min.min(until_min) - begin_min.max(self.since_min)).max(0.0)
    }
}

/// The nights of the day of a stage and of the one after.
fn nights_of(walked: &WalkedStage<'_>) -> Vec<Night> {
    let stage = walked.legs.first().map(|leg| leg.stage.stage);
    let day = |days: f64| sun_after(days, walked.job, stage?);
    let Some((today, tomorrow)) = day(0.0).zip(day(1.0)) else {
        return Vec::new();
    };
    // Only a start that is reckoned back lies before the day.
    let before = walked.start().is_some_and(|start| start.min() < 0.0);
    let set_min = before.then(|| day(-1.0)?.sets).flatten().map(Clock::min);
    nights(&today, &tomorrow, set_min.unwrap_or(0.0))
}

/// Those of a day and of the night after it; the one before it began then.
fn nights(today: &SunDay, tomorrow: &SunDay, since_min: f64) -> Vec<Night> {
    let down = |day: &SunDay| day.up_all_day == Some(false);
    let ends = tomorrow.rises.is_some() || down(tomorrow);
    let before = |until| Night {
        from: None,
        since_min,
        until,
    };
    if down(today) {
        let until = ends.then_some(tomorrow.rises);
        return until.map(before).into_iter().collect();
    }
    let after = today.sets.filter(|_| ends).map(|sets| Night {
        from: Some(sets),
        since_min: sets.min(),
        until: tomorrow.rises,
    });
    let first = today.rises.map(|rises| before(Some(rises)));
    first.into_iter().chain(after).collect()
}

/// The roped legs, each with when it begins and ends.
fn roped(walked: &WalkedStage<'_>) -> impl Iterator<Item = (usize, [Clock; 2])> {
    let legs = walked.legs.iter().zip(walked.hours);
    legs.filter_map(|(leg, hours)| {
        let clock = hours.clock.filter(|_| leg.sketch.roped)?;
        Some((leg.number, clock))
    })
}

/// Nothing without a start, and nothing where the climb of a leg is unknown: hours for the way alone are too few.
fn backwards(walked: &WalkedStage<'_>) -> Backwards {
    let times = walked.job.timetable;
    let Some(start) = walked.start().filter(|_| walked.climb_is_known()) else {
        return Backwards::default();
    };
    let until = times.bridges_until.value;
    let spot = until.and_then(|until| walked.spot_at(until.min() - start.min()));
    let by = times.back_by.value;
    let back = by.and_then(|by| walked.latest_turn(by.min() - start.min()));
    // To be done in time, or else as planned.
    let left_min = match by {
        Some(_) => back.and_then(|back| back.bridges_left_min),
        None => walked.bridges_left_min(),
    };
    let until_min = until.map(|until| until.min() - start.min());
    let late = until_min.filter(|until_min| left_min.is_some_and(|left_min| left_min > *until_min));
    // Off the hidden gaps while bridges are trusted comes first.
    let turn = match late {
        Some(until_min) => walked.latest_turn_off_bridges(until_min),
        None => back,
    };
    Backwards {
        arrival: Some(start.after(walked.arrival_min())),
        bridges_left: walked.bridges_left_min().map(|min| start.after(min)),
        latest_start: walked.latest_start(),
        at_bridges_until_m: spot.map(|spot| spot.at_m),
        at_bridges_until_leg: spot.map(|spot| spot.leg),
        turn_round: turn.map(|turn| turn_round(walked, start, turn)),
        turn_round_back_by: back
            .filter(|_| turn != back)
            .map(|back| turn_round(walked, start, back)),
        no_turn_in_time: late.is_some() && turn.is_none(),
    }
}

fn turn_round(walked: &WalkedStage<'_>, start: Clock, turn: LatestTurn) -> TurnRound {
    let leg = walked.legs.first();
    let at = leg.map(|leg| position(leg, turn.spot.at_m));
    TurnRound {
        by: start.after(turn.min).cut_off(),
        at_m: turn.spot.at_m,
        at: at.unwrap_or_default(),
        leg: turn.spot.leg,
        bridges_left: turn.bridges_left_min.map(|min| start.after(min)),
        kind: if turn.of_line {
            TurnKind::OfTheLine
        } else {
            TurnKind::OffTheLine
        },
    }
}

/// The same stage, walked by a slower party.
pub(super) fn slower<'a>(walked: &WalkedStage<'a>) -> WalkedStage<'a> {
    WalkedStage {
        factor: walked.job.rules[Rule::SlowerFactor],
        ..*walked
    }
}
