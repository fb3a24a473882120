//! What is left after a fall, a line a set-up: who holds, whose rope reaches how deep, what those left can haul.

use crate::{
    physics::haul::Can,
    plan::{
        fall::{Arrest, HaulAnswer, HaulTable, Held, Reach, Side},
        leg::TeamSetup,
    },
    say::{arg::Arg, mark, name::position, plain, setup::system, span::Said, voice::Voice},
    write::report::same::Same,
};

/// What would be shown as no depth, metres: as in the sentence of the annex.
const NO_DEPTH_M: f64 = 0.1;

/// One where all legs and teams of the set-up have the same, else one for each that differs: who holds, how deep the rope
/// reaches, what can be hauled, each in a sentence.
pub(super) fn lines(same: &Same<'_>, voice: Voice) -> Vec<Vec<Said>> {
    let parts = same.parts(|setup| sentences(setup, voice));
    let one = parts.len() == 1;
    let lines = parts.into_iter().map(|(part, mut said)| {
        if let Some(first) = said.first_mut().filter(|_| !one) {
            let args = [
                ("legs", Arg::Said(Said::words(part.shown()))),
                ("text", Arg::Said(first.clone())),
            ];
            *first = voice.say("sheet-only", &args);
        }
        let line = said.into_iter().map(|said| said.capital());
        line.map(|said| said.map_names(plain::line)).collect()
    });
    lines.collect()
}

fn sentences(setup: &TeamSetup, voice: Voice) -> Vec<Said> {
    let fall = match &setup.arrest {
        Some(arrest) => fall(setup, arrest, voice),
        None => voice.say("sheet-no-fall", &[]),
    };
    let haul = setup.haul.as_ref().map(|table| haul(setup, table, voice));
    let said = [Some(fall), loops(setup, voice), haul];
    said.into_iter().flatten().collect()
}

fn who(setup: &TeamSetup, at: usize, voice: Voice) -> Arg<'static> {
    Arg::Said(position(&setup.persons, at, voice))
}

fn all(setup: &TeamSetup, at: &[usize], voice: Voice) -> Arg<'static> {
    let names = at.iter().map(|at| position(&setup.persons, *at, voice));
    Arg::Said(Said::join(names, ", "))
}

/// `worst fall Ben: Ada, Cleo may hold`.
fn fall(setup: &TeamSetup, arrest: &Arrest, voice: Voice) -> Said {
    let held = match arrest.verdict {
        Held::All => "all",
        Held::Depends => "depends",
        Held::None => "none",
    };
    let args = [
        ("who", who(setup, arrest.falls, voice)),
        ("holders", all(setup, &arrest.holds, voice)),
        ("held", Arg::Word(held)),
    ];
    voice.say("sheet-fall", &args)
}

/// `rope to drop, below the lip: Ada 10 m by Cleo’s coil, Cleo unties; …`.
fn loops(setup: &TeamSetup, voice: Voice) -> Option<Said> {
    if setup.reach.is_empty() {
        let none = mark::no_place(setup, voice)?;
        return Some(voice.say("sheet-no-loop", &[("none", Arg::Said(none))]));
    }
    let loops = setup.reach.iter().map(|reach| one(setup, reach, voice));
    let loops = [("loops", Arg::Said(Said::join(loops, " · ")))];
    Some(voice.say("sheet-loops", &loops))
}

fn one(setup: &TeamSetup, reach: &Reach, voice: Voice) -> Said {
    let (how, depth) = match reach.depth_m {
        m if m < -1e-9 => ("short", Arg::Needed(-m)),
        m if m < NO_DEPTH_M => ("lip", Arg::There(m)),
        m => ("below", Arg::There(m)),
    };
    let end = match reach.side {
        Side::Ahead => 1,
        Side::Behind => setup.people,
    };
    let untie = match reach.needs_untied[..] {
        [] => "nobody",
        [one] if one == end => "holder",
        _ => "others",
    };
    let from = if setup.coil_carried_m > 0.0 {
        "coil"
    } else {
        "end"
    };
    let args = [
        ("who", who(setup, reach.person, voice)),
        ("how", Arg::Word(how)),
        ("depth", depth),
        ("holder", who(setup, end, voice)),
        ("from", Arg::Word(from)),
        ("untie", Arg::Word(untie)),
        ("untied", all(setup, &reach.needs_untied, voice)),
    ];
    voice.say("sheet-loop", &args)
}

/// `hauling Ben from 6.5 m down: 1 left could not pull hard enough with any haul`.
fn haul(setup: &TeamSetup, table: &HaulTable, voice: Voice) -> Said {
    let (can, named, missing_m) = match table.answer {
        HaulAnswer::Best { system, can, .. } => {
            let word = match can {
                Can::Yes => "yes",
                Can::Perhaps => "perhaps",
                Can::No => "no",
            };
            (word, Some(system), 0.0)
        }
        HaulAnswer::TooShort {
            system, missing_m, ..
        } => ("short", Some(system), missing_m),
        HaulAnswer::AnchorTooNear { .. } => ("near", None, 0.0),
    };
    let named = named.map(|named| system(named, voice));
    let args = [
        ("who", who(setup, table.person, voice)),
        ("depth", Arg::Needed(table.lip_to_person_m)),
        ("can", Arg::Word(can)),
        ("haulers", Arg::Count(table.haulers)),
        ("system", Arg::Said(named.unwrap_or_default())),
        ("missing", Arg::Needed(missing_m)),
    ];
    voice.say("sheet-haul", &args)
}
