//! The clock of a plan in short lines: how late to start, where the team is at an hour, how late to turn round, when it is
//! done, where it halts, when the sun is up.

pub(in crate::write) mod belays;
pub(in crate::write::parts) mod left;
pub(in crate::write) mod line;
pub(crate) mod on_the_way;
mod turns;

use crate::{
    plan::{
        Plan,
        clock::{Backwards, PlanClock, StageClock, StartAt, SunAllDay},
        part::LegPart,
        place::RouteEnd,
    },
    say::{arg::Arg, finding, hour::hour, round::Round, span::Said, voice::Voice},
    trip::{clock::Clock, day::UtcOffset},
};

use belays::{HourKind, belays, counted};
use line::{beside, named};
use turns::turns;

/// The lines, stage by stage; the stage is named where the plan has several.
///
/// ```
/// use schrund::{practice::Origin, say::voice::Voice, write::parts::clock};
///
/// let mut job = schrund::example::job()?;
/// job.timetable.set("bridges_until", "09:00", Origin::Flag);
/// let lines = clock::lines(&schrund::plan(&job)?, Voice::default());
/// assert_eq!(lines[0].to_string(), "latest start 05:54 with about 7 belays on leg 2 (1 h 45), 07:39 without, off all bridges by 09:00; a slower party 04:52");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[must_use]
pub fn lines(plan: &Plan, voice: Voice) -> Vec<Said> {
    let stages = plan.route.stages.len();
    let mut lines = Vec::new();
    let clocks = plan.clock.iter().flat_map(|clock| clock.stages());
    for clock in clocks {
        lines.extend(of_stage(clock, voice).map(|l| named(l, clock.stage, stages, voice)));
    }
    for leg in &plan.legs {
        let halts = leg
            .parts
            .iter()
            .filter(|part| part.turns || part.halt_min > 0.0);
        let said = halts.map(|part| halt(part, voice));
        lines.extend(said.map(|line| named(line, leg.stage, stages, voice)));
    }
    let slower = |clock: &StageClock| clock.slower.is_some();
    if plan.clock.iter().flat_map(|c| c.stages()).any(slower) {
        lines.push(slower_by(plan, voice));
    }
    lines.extend(counted(plan, voice));
    lines
}

/// For a message: how late to start and to turn round, and when it is done, without a slower party and the sun.
#[must_use]
pub fn message(clock: &PlanClock, voice: Voice) -> Vec<Said> {
    let stages = clock.stages().count();
    let slower = Backwards::default();
    let mut lines = Vec::new();
    for clock in clock.stages() {
        let planned = clock.as_planned;
        let start = latest_start(clock, planned, slower, false, voice);
        let turns = turns(clock, planned, slower, voice);
        let told = start.into_iter().chain(turns);
        let told = told.chain(arrival(clock, planned, slower, voice));
        lines.extend(told.map(|l| named(l.capital(), clock.stage, stages, voice)));
    }
    lines
}

/// A line about the hours.
#[derive(Clone, Debug)]
pub(crate) struct HourLine {
    /// Whether the start is too late already.
    pub(crate) late: bool,
    pub(crate) says: Said,
}

/// For the head of a page: how late to start, a slower party too, and how late to turn round.
#[must_use]
pub(crate) fn head(clock: &PlanClock, voice: Voice) -> Vec<HourLine> {
    let stages = clock.stages().count();
    let none = Backwards::default();
    let of_stage = |clock: &StageClock| {
        let planned = clock.as_planned;
        let slower = clock.slower.unwrap_or_default();
        let start = latest_start(clock, planned, slower, false, voice);
        let turn = turns(clock, planned, none, voice).into_iter().next();
        let late = clock.is_late() || clock.late_for_all_min().is_some();
        let start = start.map(|says| (late, says));
        let told = start.into_iter().chain(turn.map(|says| (false, says)));
        let line = |(late, says): (bool, Said)| HourLine {
            late,
            says: named(says.capital(), clock.stage, stages, voice),
        };
        told.map(line).collect::<Vec<_>>()
    };
    clock.stages().flat_map(of_stage).collect()
}

/// The latest start, the place at an hour, the latest turn, the arrival and the sun, as far as they are known.
fn of_stage(clock: &StageClock, voice: Voice) -> impl Iterator<Item = Said> {
    let slower = clock.slower.unwrap_or_default();
    let planned = clock.as_planned;
    let first = [
        latest_start(clock, planned, slower, true, voice),
        at_until(clock, planned, slower, voice),
    ];
    let last = [arrival(clock, planned, slower, voice), sun(clock, voice)];
    let turns = turns(clock, planned, slower, voice);
    let first = first.into_iter().flatten();
    first.chain(turns).chain(last.into_iter().flatten())
}

/// The later hour of who belays nowhere stands only in detail: read in haste it invites to.
fn latest_start(
    clock: &StageClock,
    planned: Backwards,
    slower: Backwards,
    in_detail: bool,
    voice: Voice,
) -> Option<Said> {
    let at = |start: Clock| ("at", hour(start, voice));
    if clock.back_comes_first() {
        return back_first(clock, slower, voice);
    }
    let until = ("until", hour(clock.bridges_until?, voice));
    let belays = belays(clock, HourKind::Start, voice);
    let asked = clock.belays.as_ref().filter(|_| in_detail);
    let without = |name: &'static str, key: &str, told: bool| {
        let asked = asked.filter(|_| told);
        let start = asked.and_then(|asked| asked.without.latest_start);
        let said = start.map(|start| voice.say(key, &[at(start)]));
        (name, Arg::Said(said.unwrap_or_default()))
    };
    if clock.none_is_early() {
        let args = [
            until,
            belays,
            without("without", "clock-latest-start-none-without", true),
            beside([ends_on(clock, voice), dark_as_planned(clock, voice)]),
        ];
        return Some(voice.say("clock-latest-start-none", &args));
    }
    if let Some(here) = clock.start_at {
        return latest_here(clock, here, dark(clock, voice), voice);
    }
    let slower = slower_start(planned, slower, voice);
    let late_min = clock.late_min();
    let late = clock.start.filter(|_| late_min.is_some());
    let start = late.map_or_else(Said::default, |start| Said::figure(start.to_string()));
    let args = [
        at(planned.latest_start?),
        ("earlier", Arg::Minutes(late_min.unwrap_or_default())),
        ("late", Arg::yes(late.is_some())),
        ("start", Arg::Said(start)),
        until,
        belays,
        without("without", "clock-latest-start-without", late.is_none()),
        without(
            "without-late",
            "clock-latest-start-without-late",
            late.is_some(),
        ),
        beside([
            ends_on(clock, voice),
            dark(clock, voice),
            slower,
            back_never(clock, voice),
        ]),
    ];
    Some(voice.say("clock-latest-start", &args))
}

/// That no start of the day is done by the hour to be back.
fn back_never(clock: &StageClock, voice: Voice) -> Option<Said> {
    let never = clock.as_planned.latest_start_back_by.is_none();
    let by = clock
        .back_by
        .filter(|_| never && clock.start_at.is_none())?;
    Some(voice.say("clock-latest-start-back-never", &[("by", hour(by, voice))]))
}

/// The same where the hour to be back asks for the earlier start, or for the only one.
fn back_first(clock: &StageClock, slower: Backwards, voice: Voice) -> Option<Said> {
    let at = |start: Clock| ("at", hour(start, voice));
    let late_min = clock.late_for_all_min();
    let planned = clock.as_planned;
    let bridges = planned.latest_start.zip(clock.bridges_until);
    let bridges = bridges.map(|(start, until)| {
        let args = [at(start), ("until", hour(until, voice))];
        voice.say("clock-latest-start-bridges", &args)
    });
    let ends_on = bridges.as_ref().and_then(|_| ends_on(clock, voice));
    // Whoever gave no hour for bridges is told of it only where that is late.
    if bridges.is_none() && late_min.is_none() {
        return None;
    }
    let args = [
        at(planned.latest_start_back_by?),
        ("late", Arg::yes(late_min.is_some())),
        ("start", Arg::Figure(clock.start?.to_string())),
        ("earlier", Arg::Minutes(late_min.unwrap_or_default())),
        ("by", hour(clock.back_by?, voice)),
        belays(clock, HourKind::Start, voice),
        beside([
            dark(clock, voice),
            slower_start(planned, slower, voice),
            bridges,
            ends_on,
        ]),
    ];
    Some(voice.say("clock-latest-start-back", &args))
}

/// How late a slower party may start, or that none of the day is early enough for it; for the bridges alone where as planned that is
/// so too.
fn slower_start(planned: Backwards, slower: Backwards, voice: Voice) -> Option<Said> {
    let for_all = planned.latest_start_for_all.is_some();
    let start = match for_all {
        true => slower.latest_start_for_all,
        false => slower.latest_start,
    };
    match start {
        Some(start) => {
            let at = ("at", hour(start, voice));
            Some(voice.say("clock-latest-start-slower", &[at]))
        }
        None => (slower.arrival).map(|_| voice.say("clock-latest-start-slower-none", &[])),
    }
}

/// That the line ends on hidden gaps.
pub(super) fn ends_on(clock: &StageClock, voice: Voice) -> Option<Said> {
    let ends = clock.ends_on_hidden.contains(&RouteEnd::End);
    ends.then(|| voice.say("clock-ends-on-hidden", &[]))
}

/// What is dark with the start told last before it, and which belays are as planned, where that start is early enough.
fn dark(clock: &StageClock, voice: Voice) -> Option<Said> {
    let then = told_dark("clock-latest-start-dark", &clock.dark_if_latest, voice);
    let planned = clock.late_for_all_min().is_none();
    let planned = planned.then(|| dark_as_planned(clock, voice)).flatten();
    then.into_iter().chain(planned).reduce(Said::then)
}

fn dark_as_planned(clock: &StageClock, voice: Voice) -> Option<Said> {
    told_dark("clock-latest-start-dark-belays", &clock.dark_belays, voice)
}

fn told_dark(key: &str, dark: &[usize], voice: Voice) -> Option<Said> {
    (!dark.is_empty()).then(|| {
        let args = [
            ("on", Arg::Said(finding::on_legs(dark, voice))),
            ("legs", Arg::Said(finding::legs(dark, voice))),
        ];
        voice.say(key, &args)
    })
}

/// The same for who is under way: by when they had to be where they are.
fn latest_here(
    clock: &StageClock,
    here: StartAt,
    dark: Option<Said>,
    voice: Voice,
) -> Option<Said> {
    let latest = clock.as_planned.latest_start?;
    let late_min = clock.late_min();
    let begun_min = here.hour.min() - clock.start?.min();
    let by = latest.after(begun_min).cut_off();
    let args = [
        ("place", Arg::DoneAt(here.at_m, Round::Nearest)),
        ("hour", hour(here.hour, voice)),
        ("by", hour(by, voice)),
        ("earlier", Arg::Minutes(here.hour.min() - by.min())),
        ("late", Arg::yes(late_min.is_some())),
        ("until", hour(clock.bridges_until?, voice)),
        beside([ends_on(clock, voice), dark]),
    ];
    Some(voice.say("clock-latest-here", &args))
}

fn at_until(
    clock: &StageClock,
    planned: Backwards,
    slower: Backwards,
    voice: Voice,
) -> Option<Said> {
    let spot = |times: Backwards| {
        let place = Arg::Walked(times.at_bridges_until_m?);
        let leg = Arg::Count(times.at_bridges_until_leg?);
        Some([("place", place), ("leg", leg)])
    };
    let slower = spot(slower).map(|spot| voice.say("clock-at-until-slower", &spot));
    let [place, leg] = spot(planned)?;
    let until = ("until", hour(clock.bridges_until?, voice));
    Some(voice.say("clock-at-until", &[place, leg, until, beside([slower])]))
}

fn arrival(
    clock: &StageClock,
    planned: Backwards,
    slower: Backwards,
    voice: Voice,
) -> Option<Said> {
    let at = |arrival: Clock| ("at", hour(arrival, voice));
    let slower = slower.arrival;
    let slower = slower.map(|arrival| voice.say("clock-arrival-slower", &[at(arrival)]));
    let without = clock.belays.as_ref();
    let without = without.and_then(|asked| {
        let at = at(asked.without.arrival?);
        Some(voice.say("clock-arrival-without", &[at]))
    });
    let args = [
        at(planned.arrival?),
        belays(clock, HourKind::Arrival, voice),
        beside([slower, without]),
    ];
    Some(voice.say("clock-arrival", &args))
}

fn sun(clock: &StageClock, voice: Voice) -> Option<Said> {
    let sun = match (clock.sun, clock.sunrise, clock.sunset) {
        (Some(SunAllDay::Up), ..) => "up",
        (Some(SunAllDay::Down), ..) => "down",
        (None, None, _) => "sets",
        (None, Some(_), None) => "rises",
        (None, Some(_), Some(_)) => "both",
    };
    let shown = |at: Option<Clock>| Arg::Figure(at.map(|at| at.to_string()).unwrap_or_default());
    let args = [
        ("sun", Arg::Word(sun)),
        ("date", Arg::Figure(clock.date?.to_string())),
        ("sunrise", shown(clock.sunrise)),
        ("sunset", shown(clock.sunset)),
        ("offset", Arg::Figure(clock_of(clock.utc_offset?))),
    ];
    Some(voice.say("clock-sun", &args))
}

/// `UTC`, `UTC+02:00`.
fn clock_of(offset: UtcOffset) -> String {
    if offset == UtcOffset::default() {
        "UTC".to_owned()
    } else {
        format!("UTC{offset}")
    }
}

/// `halt "Summit" at 4.20 km, 2310 m: 09:10 to 09:40`.
pub(crate) fn halt(part: &LegPart, voice: Voice) -> Said {
    let what = match part.turns {
        true => voice.say("clock-halt-turn", &[]),
        false => voice.say("clock-halt-rest", &[]),
    };
    let what = match &part.name {
        Some(name) => {
            let args = [("what", Arg::Said(what)), ("name", Arg::Name(name))];
            voice.say("clock-halt-named", &args)
        }
        None => what,
    };
    let height = part.end_height_m.map(|m| {
        let height = [("height", Arg::Whole(m))];
        voice.say("clock-halt-height", &height)
    });
    let when = part.arrive.map(|arrive| {
        let left = arrive.after(part.halt_min);
        let args = [
            ("arrive", hour(arrive, voice)),
            ("depart", hour(left, voice)),
        ];
        let key = if part.halt_min > 0.0 {
            "clock-halt-when"
        } else {
            "clock-halt-passed"
        };
        voice.say(key, &args)
    });
    let args = [
        ("what", Arg::Said(what)),
        ("place", Arg::Walked(part.to_m)),
        ("height", Arg::Said(height.unwrap_or_default())),
        ("when", Arg::Said(when.unwrap_or_default())),
    ];
    voice.say("clock-halt", &args)
}

/// How much slower a slower party is.
fn slower_by(plan: &Plan, voice: Voice) -> Said {
    let shown = Arg::Figure(voice.fixed(plan.figures.slower_factor, 2, Round::Nearest));
    voice.say("clock-slower", &[("factor", shown)])
}
