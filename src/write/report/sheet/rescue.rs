//! What is left after a fall, a line a set-up: who holds, whose rope reaches how deep, what those left can haul.

use crate::{
    physics::haul::Can,
    plan::{
        fall::{Arrest, HaulAnswer, HaulTable, Held, Reach, Side},
        leg::TeamSetup,
    },
    say::{arg::Arg, mark, plain, setup::system, span::Said, voice::Voice},
    write::report::same::Same,
};

/// What would be shown as no depth, metres: as in the sentence of the annex.
const NO_DEPTH_M: f64 = 0.1;

/// One where all legs and teams of the set-up have the same, else one for each that differs: who holds, how deep the rope
/// reaches, what can be hauled, each in a sentence.
pub(super) fn lines(same: &Same<'_>, voice: Voice) -> Vec<Vec<Said>> {
    let named = same.one_team();
    let parts = same.parts(|setup| {
        sentences(&On {
            setup,
            named,
            voice,
        })
    });
    let one = parts.len() == 1;
    let lines = parts.into_iter().map(|(part, mut said)| {
        if let Some(first) = said.first_mut().filter(|_| !one) {
            let args = [
                ("legs", Arg::Said(Said::words(part.shown(voice)))),
                ("text", Arg::Said(first.clone())),
            ];
            *first = voice.say("sheet-only", &args);
        }
        let line = said.into_iter().map(|said| said.capital());
        line.map(|said| said.map_names(plain::line)).collect()
    });
    lines.collect()
}

/// A set-up, and whether its people are told by their names: not where several teams share it.
struct On<'a> {
    setup: &'a TeamSetup,
    named: bool,
    voice: Voice,
}

impl On<'_> {
    /// The name, else the place on the rope as it stands in the drawing.
    fn person(&self, at: usize) -> Said {
        let person = at.checked_sub(1).and_then(|i| self.setup.persons.get(i));
        let name = person.and_then(|person| person.called.name.as_ref());
        match name.filter(|_| self.named) {
            Some(name) => Said::name(name),
            None => self.voice.say("sheet-place", &[("place", Arg::Count(at))]),
        }
    }

    fn who(&self, at: usize) -> Arg<'static> {
        Arg::Said(self.person(at))
    }

    fn all(&self, at: &[usize]) -> Arg<'static> {
        Arg::Said(Said::join(at.iter().map(|at| self.person(*at)), ", "))
    }
}

fn sentences(on: &On<'_>) -> Vec<Said> {
    let fall = match &on.setup.arrest {
        Some(arrest) => fall(on, arrest),
        None => on.voice.say("sheet-no-fall", &[]),
    };
    let haul = on.setup.haul.as_ref().map(|table| haul(on, table));
    let said = [Some(fall), loops(on), haul];
    said.into_iter().flatten().collect()
}

/// `worst fall Ben: Ada, Cleo may hold`.
fn fall(on: &On<'_>, arrest: &Arrest) -> Said {
    let held = match arrest.verdict {
        Held::All => "all",
        Held::Depends => "depends",
        Held::None => "none",
    };
    let args = [
        ("who", on.who(arrest.falls)),
        ("holders", on.all(&arrest.holds)),
        ("held", Arg::Word(held)),
    ];
    on.voice.say("sheet-fall", &args)
}

/// `rope to drop, below the lip: Ada 10 m by Cleo’s coil, Cleo unties; …`.
fn loops(on: &On<'_>) -> Option<Said> {
    if on.setup.reach.is_empty() {
        let none = mark::no_place(on.setup, on.voice)?;
        return Some(on.voice.say("sheet-no-loop", &[("none", Arg::Said(none))]));
    }
    let loops = on.setup.reach.iter().map(|reach| one(on, reach));
    let loops = [("loops", Arg::Said(Said::join(loops, " · ")))];
    Some(on.voice.say("sheet-loops", &loops))
}

fn one(on: &On<'_>, reach: &Reach) -> Said {
    let (how, depth) = match reach.depth_m {
        m if m < -1e-9 => ("short", Arg::Needed(-m)),
        m if m < NO_DEPTH_M => ("lip", Arg::There(m)),
        m => ("below", Arg::There(m)),
    };
    let end = match reach.side {
        Side::Ahead => 1,
        Side::Behind => on.setup.people,
    };
    let untie = match reach.needs_untied[..] {
        [] => "nobody",
        [one] if one == end => "holder",
        _ => "others",
    };
    let from = if on.setup.coil_carried_m > 0.0 {
        "coil"
    } else {
        "end"
    };
    let args = [
        ("who", on.who(reach.person)),
        ("how", Arg::Word(how)),
        ("depth", depth),
        ("holder", on.who(end)),
        ("from", Arg::Word(from)),
        ("untie", Arg::Word(untie)),
        ("untied", on.all(&reach.needs_untied)),
    ];
    on.voice.say("sheet-loop", &args)
}

/// `hauling Ben from 6.5 m down: one person alone could not pull hard enough with any haul`.
fn haul(on: &On<'_>, table: &HaulTable) -> Said {
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
    let named = named.map(|named| system(named, on.voice));
    let args = [
        ("who", on.who(table.person)),
        ("depth", Arg::Needed(table.lip_to_person_m)),
        ("can", Arg::Word(can)),
        ("haulers", Arg::Count(table.haulers)),
        ("system", Arg::Said(named.unwrap_or_default())),
        ("missing", Arg::Needed(missing_m)),
    ];
    on.voice.say("sheet-haul", &args)
}
