//! The hours for somebody who stands on the line: where and by when to turn back.

use crate::{
    plan::clock::{PlanClock, StageClock, TurnRound},
    say::{arg::Arg, hour::hour, round::Round, span::Said, voice::Voice},
    trip::clock::Clock,
    write::parts::clock::{belays, beside, other_turns, spot},
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
    /// When whoever goes on has left the last bridges, as planned.
    pub(crate) on: Option<Clock>,
}

/// For somebody who stands on the line: where and by when to turn back, stage by stage; beyond that place, that the start was
/// too late. Beyond the place where a slower party turns, that it should have: its later hour is none in hand there.
#[must_use]
pub(crate) fn on_the_way(clock: &PlanClock, voice: Voice) -> Vec<OnTheWay> {
    let of_stage = |clock: &StageClock| {
        let late = clock.late_min().is_some();
        let line = |(to_m, says): (Option<f64>, Said)| OnTheWay {
            stage: clock.stage,
            to_m,
            late,
            says: says.capital(),
            on: clock.as_planned.bridges_left,
        };
        let beyond = late.then(|| beyond_the_turn(clock, voice)).flatten();
        let told = turns_on_the_way(clock, late, voice)
            .into_iter()
            .chain(beyond);
        told.map(line).collect::<Vec<_>>()
    };
    clock.stages().flat_map(of_stage).collect()
}

/// The turn to keep to, up to it: in steps, where a slower party or one that belays turns sooner.
fn turns_on_the_way(clock: &StageClock, late: bool, voice: Voice) -> Vec<(Option<f64>, Said)> {
    let Some(turn) = clock.as_planned.turn_round else {
        let until = clock.as_planned.turn_round_back_by.and(clock.bridges_until);
        let never = until.map(|until| {
            let until = [("until", hour(until, voice))];
            (None, voice.say("clock-on-the-way-never", &until))
        });
        return never.into_iter().collect();
    };
    let [kind, place, at, _] = spot(turn, voice);
    let sooner = sooner(clock, turn);
    let ends = sooner.iter().map(|sooner| sooner.at_m).chain([turn.at_m]);
    let steps = ends.enumerate().map(|(step, to_m)| {
        let who = sooner.iter().enumerate();
        let said = who.map(|(i, sooner)| Some(sooner.said(i < step, voice)));
        let level = sooner.is_empty().then(|| same_place(clock, voice));
        let args = [
            kind.clone(),
            place.clone(),
            at.clone(),
            ("late", Arg::yes(late)),
            without_belays(clock, &sooner, voice),
            beside(said.chain(level.into_iter().flatten())),
        ];
        (Some(to_m), voice.say("clock-on-the-way-turn", &args))
    });
    steps.collect()
}

/// That the hour counts no belays, where nothing else says so.
fn without_belays(
    clock: &StageClock,
    sooner: &[Sooner],
    voice: Voice,
) -> (&'static str, Arg<'static>) {
    match sooner.iter().any(|sooner| sooner.who != "slower") {
        true => ("belays", Arg::Said(Said::default())),
        false => belays::named(clock, voice),
    }
}

/// Who turns sooner than planned.
struct Sooner {
    who: &'static str,
    at_m: f64,
    by: Clock,
}

impl Sooner {
    /// Where and by when they turn, or that they should have.
    fn said(&self, passed: bool, voice: Voice) -> Said {
        let args = [
            ("who", Arg::Word(self.who)),
            ("place", Arg::DoneAt(self.at_m, Round::Down)),
            ("at", hour(self.by, voice)),
        ];
        let key = match passed {
            true => "clock-turn-sooner-due",
            false => "clock-turn-sooner-first",
        };
        voice.say(key, &args)
    }
}

/// Two that turn within so many metres turn at one place. Our judgement.
const ONE_PLACE_M: f64 = 1.0;

/// A slower party and one that belays, where they turn before the turn as planned; those at one place together, by the earlier
/// of their hours.
fn sooner(clock: &StageClock, turn: TurnRound) -> Vec<Sooner> {
    let belayed = clock
        .with_belays
        .as_ref()
        .and_then(|with| with.times.turn_round);
    let slower = clock.slower.and_then(|slower| slower.turn_round);
    let all = [("slower", slower), ("belays", belayed)];
    let before = all.into_iter().filter_map(|(who, sooner)| {
        let sooner = sooner.filter(|sooner| sooner.at_m < turn.at_m)?;
        Some(Sooner {
            who,
            at_m: sooner.at_m,
            by: sooner.by,
        })
    });
    let mut before: Vec<Sooner> = before.collect();
    before.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    if let [a, b] = &before[..]
        && b.at_m - a.at_m <= ONE_PLACE_M
    {
        let by = if b.by.is_later_than(a.by) { a.by } else { b.by };
        let at_m = a.at_m;
        return vec![Sooner {
            who: "both",
            at_m,
            by,
        }];
    }
    before
}

/// The hours of those who turn where the plan turns.
fn same_place(clock: &StageClock, voice: Voice) -> [Option<Said>; 2] {
    other_turns(clock, clock.slower.unwrap_or_default(), voice)
}

fn beyond_the_turn(clock: &StageClock, voice: Voice) -> Option<(Option<f64>, Said)> {
    let args = [
        ("until", hour(clock.bridges_until?, voice)),
        ("passed", Arg::yes(clock.as_planned.turn_round.is_some())),
    ];
    Some((None, voice.say("clock-on-the-way-late", &args)))
}
