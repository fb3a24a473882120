//! The trip with something missing in words: what is missing, and which legs are graver for it.

use crate::{
    fault::Fault,
    plan::{
        leg::Verdict,
        without::{Difference, LegWithout, TeamWithout, Without},
    },
    say::{
        arg::Arg,
        fault, finding,
        name::{person, rope},
        span::Said,
        voice::Voice,
    },
};

/// `One fewer: 2 people`, `Lost: rope "blue" (60 m)`.
#[must_use]
pub fn label(differs: &Difference, people: usize, voice: Voice) -> Said {
    let count = ("people", Arg::Count(people));
    match differs {
        Difference::OneFewer => voice.say("one-fewer", &[count]),
        Difference::OneMore => voice.say("one-more", &[count]),
        Difference::RopeLost { rope: lost } => {
            let lost = ("rope", Arg::Said(rope(lost, voice)));
            voice.say("rope-lost", &[lost])
        }
        Difference::OneHurt {
            hurt,
            carried_by: Some(carrier),
        } if people > 1 => {
            let who = ("who", Arg::Said(person(hurt, voice)));
            let carrier = ("carrier", Arg::Said(person(carrier, voice)));
            voice.say("one-hurt", &[who, carrier, count])
        }
        Difference::OneHurt { hurt, .. } => {
            let who = ("who", Arg::Said(person(hurt, voice)));
            voice.say("one-hurt-alone", &[who])
        }
    }
}

/// What is missing, and what comes of it; `faults` say why a trip is refused.
#[must_use]
pub fn says(without: &Without, faults: &[Fault], voice: Voice) -> Said {
    let label = label(&without.differs, without.people, voice);
    let label = ("label", Arg::Said(label));
    if let Some(fault) = faults.first() {
        let why = ("why", Arg::Said(fault::says(fault, voice)));
        return voice.say("without-refused", &[label, why]);
    }
    let changes = changes(without, voice);
    let says = if changes.is_empty() {
        voice.say("without-same", &[label])
    } else {
        let changes = ("changes", Arg::Said(Said::join(changes, "; ")));
        voice.say("without-graver", &[label, changes])
    };
    let takes = without.takes.iter().map(|taken| rope(taken, voice));
    let takes = Said::join(takes, ", ");
    match without.differs {
        Difference::OneMore if !takes.is_empty() => {
            let takes = voice.say("without-takes", &[("ropes", Arg::Said(takes))]);
            Said::join([says, takes], "; ")
        }
        Difference::OneHurt { .. } => Said::join([says, voice.say("without-weight", &[])], "; "),
        _ => says,
    }
}

/// The legs that are graver than as planned, the gravest first, and those on which a rope does not hold; each leg by
/// its number in the plan, where it has one.
fn changes(without: &Without, voice: Voice) -> Vec<Said> {
    let number = |leg: &LegWithout| leg.as_leg.unwrap_or(leg.leg);
    let numbers = |of: &dyn Fn(&LegWithout) -> bool| -> Vec<usize> {
        let mut all: Vec<usize> = without.legs.iter().filter(|l| of(l)).map(number).collect();
        all.dedup();
        all
    };
    let mut said = Vec::new();
    for verdict in Verdict::ALL.into_iter().rev() {
        let legs = numbers(&|leg| leg.verdict == verdict && leg.is_graver());
        if !legs.is_empty() {
            let word = voice.say(&format!("verdict-{}", verdict.as_str()), &[]);
            let args = [
                ("legs", Arg::Said(finding::legs(&legs, voice))),
                ("verdict", Arg::Said(word)),
            ];
            said.push(voice.say("without-legs", &args));
        }
    }
    let teams = without.legs.iter().map(|leg| leg.teams.len()).max();
    let teams = teams.unwrap_or_default();
    for number in 1..=teams {
        let short = |team: &TeamWithout| team.team == number && team.fits == Some(false);
        let legs = numbers(&|leg| leg.teams.iter().any(short));
        if !legs.is_empty() {
            let args = [
                ("teams", Arg::Count(teams)),
                ("team", Arg::Count(number)),
                ("legs", Arg::Said(finding::legs(&legs, voice))),
            ];
            said.push(voice.say("without-rope", &args));
        }
    }
    said
}
