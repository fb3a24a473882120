//! What is left after a fall: who holds, whose rope reaches whom how deep, what those left can haul.

use maud::{Markup, html};

use crate::{
    physics::haul::Can,
    plan::{
        fall::{HaulAnswer, HaulTable, Held, Reach, Side},
        leg::TeamSetup,
    },
    say::{arg::Arg, mark, plain, setup::system, span::Said, voice::Voice},
    write::report::{markup::spans, same::Same},
};

/// What would be shown as no depth, metres: as in the sentence of the annex.
const NO_DEPTH_M: f64 = 0.1;

/// Under the drawing: for each person whether the fall is held and whose rope makes a loop; then what can be hauled. What
/// holds of everybody's fall is said once.
pub(super) fn after_a_fall(same: &Same<'_>, voice: Voice) -> Markup {
    let held = worst(same);
    let alike = held.windows(2).all(|pair| pair[0] == pair[1]);
    let each = if alike { &[] } else { &held[..] };
    let loops = told(same, voice, &|on| loops(on, each));
    let hauls = told(same, voice, &|on| haul(on).into_iter().collect());
    let fall = match held.first() {
        None => Some(voice.say("sheet-no-fall", &[])),
        Some(held) => alike.then(|| voice.say("sheet-fall", &[word(*held)])),
    };
    html! {
        @for part in loops.into_iter().filter(|part| !part.says.is_empty()) {
            @if let Some(legs) = part.legs { p class="only" { (spans(&legs)) } }
            ul class="loops" { @for said in &part.says { li { (spans(said)) } } }
        }
        p class="rescue" {
            @if let Some(fall) = fall { span { (spans(&fall.capital())) "." } " " }
            @for part in hauls { @for said in part.whole(voice) { span { (spans(&said)) "." } " " } }
        }
    }
}

/// Whether everybody's fall is held, in rope order: the worst of all legs that share the set-up. Empty where the model has no
/// answer on one of them.
fn worst(same: &Same<'_>) -> Vec<Held> {
    let mut worst: Vec<Held> = Vec::new();
    for (_, setup) in &same.uses {
        let Some(arrest) = &setup.arrest else {
            return Vec::new();
        };
        if worst.is_empty() {
            worst.clone_from(&arrest.everybody);
        }
        for (known, held) in worst.iter_mut().zip(&arrest.everybody) {
            *known = (*known).max(*held);
        }
    }
    worst
}

fn word(held: Held) -> (&'static str, Arg<'static>) {
    ("held", Arg::Word(held.as_str()))
}

/// What is said of some of the legs that share a set-up.
struct Part {
    /// Which, where of the others something else is said.
    legs: Option<Said>,
    says: Vec<Said>,
}

impl Part {
    /// The sentences, the legs before the first.
    fn whole(self, voice: Voice) -> Vec<Said> {
        let mut says = self.says;
        if let (Some(first), Some(legs)) = (says.first_mut(), self.legs) {
            let args = [
                ("legs", Arg::Said(legs)),
                ("text", Arg::Said(first.clone())),
            ];
            *first = voice.say("sheet-only", &args);
        }
        says.into_iter().map(Said::capital).collect()
    }
}

/// Once where all legs and teams of the set-up have the same, else once for each that differs.
fn told(same: &Same<'_>, voice: Voice, of: &dyn Fn(&On<'_>) -> Vec<Said>) -> Vec<Part> {
    let named = same.one_team();
    let line = |said: Said| said.map_names(plain::line);
    let parts = same.parts(|setup| {
        of(&On {
            setup,
            named,
            voice,
        })
    });
    let one = parts.len() == 1;
    let part = |(part, says): (Same<'_>, Vec<Said>)| Part {
        legs: (!one).then(|| match named {
            true => part.legs(voice),
            false => Said::words(part.shown(voice)),
        }),
        says: says.into_iter().map(line).collect(),
    };
    parts.into_iter().map(part).collect()
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

/// `Ada: not held; loop from Cleo, who unties: 10 m`, one for each person; whom the rope does not reach where it ends too soon.
fn loops(on: &On<'_>, held: &[Held]) -> Vec<Said> {
    if on.setup.reach.is_empty() {
        let none = mark::no_place(on.setup, on.voice);
        let said = none.map(|none| on.voice.say("sheet-no-loop", &[("none", Arg::Said(none))]));
        return said.into_iter().collect();
    }
    let reach = on.setup.reach.iter();
    let of = |reach: &Reach| held.get(reach.person.checked_sub(1)?).copied();
    reach.map(|reach| one(on, reach, of(reach))).collect()
}

fn one(on: &On<'_>, reach: &Reach, held: Option<Held>) -> Said {
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
    let args = [
        ("who", on.who(reach.person)),
        ("held", Arg::Word(held.map_or("said", Held::as_str))),
        ("how", Arg::Word(how)),
        ("depth", depth),
        ("holder", on.who(end)),
        ("untie", Arg::Word(untie)),
        ("untied", on.all(&reach.needs_untied)),
    ];
    on.voice.say("sheet-loop", &args)
}

/// `hauling Ben from 6.5 m down: one person alone could not pull hard enough with any haul`.
fn haul(on: &On<'_>) -> Option<Said> {
    on.setup.haul.as_ref().map(|table| hauled(on, table))
}

fn hauled(on: &On<'_>, table: &HaulTable) -> Said {
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
