//! What is left after a fall: who holds, whose rope reaches whom how deep, what those left can haul.

use maud::{Markup, html};

use crate::{
    physics::haul::{Can, System},
    plan::{
        fall::{HaulAnswer, Held},
        leg::{Leg, TeamSetup},
        reach::{Reach, Side},
    },
    say::{arg::Arg, mark, plain, setup, span::Said, voice::Voice},
    write::{
        parts::packs,
        report::{
            markup::spans,
            same::{Same, grouped},
        },
        sheet::Sheet,
    },
};

/// What would be shown as no depth, metres: as in the sentence of the annex.
const NO_DEPTH_M: f64 = 0.1;

/// Under the drawing: for each person whose rope makes a loop; then whether falls are held, and what can be hauled.
pub(super) fn after_a_fall(same: &Same<'_>, crowded: bool, voice: Voice) -> Markup {
    let loops = told(same, voice, &|on| loops(on, !crowded));
    let falls = all_falls(same, voice);
    let hauls = told(same, voice, &|on| haul(on, crowded).into_iter().collect());
    left(loops, falls, hauls, voice)
}

/// Parts that are told apart before only the worst is. Our judgement.
const APART: usize = 2;

/// Whether falls are held, leg by leg where that differs; where it differs much, on the worst of them.
fn all_falls(same: &Same<'_>, voice: Voice) -> Vec<Part> {
    let parts = told(same, voice, &|on| vec![falls(on)]);
    if parts.len() <= APART {
        return parts;
    }
    let of = |setup: &&TeamSetup| {
        let arrest = setup.arrest.as_ref()?;
        arrest
            .everybody
            .iter()
            .map(|held| FallHeld::of(*held, setup))
            .max()
    };
    let setups = same.uses.iter().map(|(_, setup)| *setup);
    let all: Option<Vec<FallHeld>> = setups.map(|setup| of(&setup)).collect();
    let says = match all.and_then(|all| all.into_iter().max()) {
        None => voice.say("sheet-no-fall", &[]),
        Some(held) => voice.say("sheet-fall-worst", &[("held", held.word())]),
    };
    let says = vec![says];
    vec![Part { legs: None, says }]
}

/// Whether falls are held: everybody's in one, else of those together for whom it is the same.
fn falls(on: &On<'_>) -> Said {
    let everybody = on.setup.arrest.iter().flat_map(|arrest| &arrest.everybody);
    let mut kinds: Vec<(FallHeld, Vec<usize>)> = Vec::new();
    for (person, held) in (1..).zip(everybody) {
        let held = FallHeld::of(*held, on.setup);
        match kinds.iter_mut().find(|(known, _)| *known == held) {
            Some((_, people)) => people.push(person),
            None => kinds.push((held, vec![person])),
        }
    }
    match &kinds[..] {
        [] => on.voice.say("sheet-no-fall", &[]),
        [(held, _)] => on.voice.say("sheet-fall", &[("held", held.word())]),
        kinds => {
            let of = |(held, people): &(FallHeld, Vec<usize>)| {
                let args = [("who", on.all(people)), ("held", held.word())];
                on.voice.say("sheet-fall-of", &args)
            };
            Said::join(kinds.iter().map(of), "; ")
        }
    }
}

/// How a fall is held, the worst last.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum FallHeld {
    All,
    Depends,
    /// It depends, and with middling assumptions not everybody is.
    IfKind,
    None,
}

impl FallHeld {
    fn of(held: Held, setup: &TeamSetup) -> Self {
        match held {
            Held::All => Self::All,
            Held::Depends if in_centre(setup) => Self::Depends,
            Held::Depends => Self::IfKind,
            Held::None => Self::None,
        }
    }

    fn word(self) -> Arg<'static> {
        Arg::Word(match self {
            Self::All => "all",
            Self::Depends => "depends",
            Self::IfKind => "kind",
            Self::None => "none",
        })
    }
}

/// For who stands on a leg where somebody has fallen in: whose rope makes a loop, and what can be hauled.
pub(super) fn of_leg(leg: &Leg, sheet: &Sheet<'_>) -> Markup {
    let voice = sheet.look.voice;
    let all = grouped(std::slice::from_ref(leg));
    let untied = packs::untied(sheet.plan, voice).filter(|_| !all.is_empty());
    let untied = untied.map(|ropes| voice.say("sheet-untied", &[("ropes", Arg::Said(ropes))]));
    html! {
        @if let Some(untied) = untied { p { (spans(&untied.capital().map_names(plain::line))) } }
        @for same in &all {
            @if all.len() > 1 { p class="only" { (same.shown(voice)) } }
            (left(
                told(same, voice, &|on| loops(on, true)),
                Vec::new(),
                told(same, voice, &|on| haul(on, false).into_iter().collect()),
                voice,
            ))
        }
    }
}

fn left(loops: Vec<Part>, falls: Vec<Part>, hauls: Vec<Part>, voice: Voice) -> Markup {
    let told = falls.into_iter().chain(hauls);
    html! {
        @for part in loops.into_iter().filter(|part| !part.says.is_empty()) {
            @if let Some(legs) = part.legs { p class="only" { (spans(&legs)) } }
            ul class="loops" { @for said in &part.says { li { (spans(said)) } } }
        }
        p class="rescue" {
            @for part in told { @for said in part.whole(voice) { span { (spans(&said)) "." } " " } }
        }
    }
}

/// Whether with everything assumed central every fall is held; where no width of gap is given nobody can say so.
fn in_centre(setup: &TeamSetup) -> bool {
    let mut runs = setup.arrest.iter().flat_map(|arrest| &arrest.runs);
    runs.all(|run| run.gap_given && run.in_centre)
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

/// `Ada: loop from Cleo, who unties: 10 m`, one for each person; whom the rope does not reach where it ends too soon.
fn loops(on: &On<'_>, with_haul: bool) -> Vec<Said> {
    if on.setup.reach.is_empty() {
        let none = mark::no_place(on.setup, on.voice);
        let said = none.map(|none| on.voice.say("sheet-no-loop", &[("none", Arg::Said(none))]));
        return said.into_iter().collect();
    }
    let reach = on.setup.reach.iter();
    let hauls = with_haul && same_haul(on.setup).is_none();
    let one = |reach: &Reach| {
        let reached = one(on, reach, !with_haul);
        let haul = reach.haul.filter(|_| hauls);
        let haul = haul.map(|haul| {
            on.voice
                .say("sheet-hauled", &Hauled::of(&haul).args(on.voice))
        });
        Said::join([reached].into_iter().chain(haul), "; ")
    };
    reach.map(one).collect()
}

fn one(on: &On<'_>, reach: &Reach, crowded: bool) -> Said {
    let (how, depth) = match (reach.short_m(), reach.depth_m) {
        (Some(short_m), _) => ("short", Arg::Needed(short_m)),
        (None, m) if m < NO_DEPTH_M => ("lip", Arg::There(m)),
        (None, m) => ("below", Arg::There(m)),
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
        ("how", Arg::Word(how)),
        ("depth", depth),
        ("crowded", Arg::yes(crowded)),
        ("holder", on.who(end)),
        ("untie", Arg::Word(untie)),
        ("untied", on.all(&reach.needs_untied)),
    ];
    on.voice.say("sheet-loop", &args)
}

/// What is said of a haul.
#[derive(Clone, Copy, PartialEq)]
struct Hauled {
    can: &'static str,
    haulers: usize,
    system: Option<System>,
    missing_m: f64,
}

impl Hauled {
    fn of(answer: &HaulAnswer) -> Self {
        let (can, system, haulers, missing_m) = match *answer {
            HaulAnswer::Best {
                system,
                can,
                haulers,
                ..
            } => {
                let word = match can {
                    Can::Yes => "yes",
                    Can::Perhaps => "perhaps",
                    Can::No => "no",
                };
                (word, Some(system), haulers, 0.0)
            }
            HaulAnswer::TooShort {
                system,
                missing_m,
                haulers,
            } => ("short", Some(system), haulers, missing_m),
            HaulAnswer::AnchorTooNear { haulers } => ("near", None, haulers, 0.0),
        };
        Self {
            can,
            haulers,
            system,
            missing_m,
        }
    }

    fn args(self, voice: Voice) -> [(&'static str, Arg<'static>); 5] {
        let system = self.system.map(|named| setup::system(named, voice));
        [
            ("can", Arg::Word(self.can)),
            ("haulers", Arg::Count(self.haulers)),
            ("named", Arg::Word(self.system.map_or("", System::as_str))),
            ("system", Arg::Said(system.unwrap_or_default())),
            ("missing", Arg::Needed(self.missing_m)),
        ]
    }
}

/// What can be hauled, where it is the same whoever falls.
fn same_haul(setup: &TeamSetup) -> Option<Hauled> {
    let mut hauls = setup.reach.iter().map(|reach| reach.haul.as_ref());
    let first = hauls.next()??;
    let first = Hauled::of(first);
    hauls
        .all(|haul| haul.map(Hauled::of) == Some(first))
        .then_some(first)
}

/// `hauling whoever falls from 6.5 m down: one person alone could perhaps pull 9:1`; where it is told under each person, only
/// from what depth, and where there is no room for that, of the one who is hardest to haul.
fn haul(on: &On<'_>, crowded: bool) -> Option<Said> {
    let table = on.setup.haul.as_ref()?;
    let depth = ("depth", Arg::Needed(table.lip_to_person_m));
    let (key, who, told) = match same_haul(on.setup) {
        Some(same) => {
            let anybody = on.voice.say("sheet-haul-anybody", &[]);
            ("sheet-haul", Arg::Said(anybody), same)
        }
        None if crowded => {
            let hardest = on.who(table.person);
            ("sheet-haul-hardest", hardest, Hauled::of(&table.answer))
        }
        None => return Some(on.voice.say("sheet-hauls-from", &[depth])),
    };
    let args = told.args(on.voice).into_iter().chain([depth, ("who", who)]);
    Some(on.voice.say(key, &args.collect::<Vec<_>>()))
}
