//! Each different set-up once, for people who were not there when it was planned: who where, what to tie, what is not
//! covered.

use crate::{
    physics::{assumed::Snow, haul::Can},
    plan::{
        Plan,
        fall::{Arrest, HaulAnswer, HaulTable, Held},
        leg::{Bite, Leg, TeamSetup},
        name::PersonOnRope,
    },
    say::{self, arg::Arg, finding, name, round::Round, span::Said, voice::Voice},
    write::parts::{paragraph::bullet, rope_line, tied::marks},
};

/// Columns for what a line is about.
const LABEL: usize = 12;

/// A label and what is said under it.
type LabelLine = (&'static str, String);

/// Legs set up alike, with one of their set-ups.
struct Alike<'a> {
    legs: Vec<usize>,
    setup: &'a TeamSetup,
    lines: Vec<LabelLine>,
    /// What differs from leg to leg, with the legs it holds for.
    of_legs: Vec<(LabelLine, Vec<usize>)>,
}

/// A block for each different set-up, the legs that share it named together.
pub(crate) fn blocks(out: &mut String, plan: &Plan, width: usize, voice: Voice) {
    let alike = alike(&plan.legs, voice);
    if alike.is_empty() {
        return;
    }
    out.push_str(&format!("\n{}\n", voice.say("title-set-ups", &[])));
    let modelled = alike.iter().any(|a| a.setup.arrest.is_some());
    let teams = plan.carry.len();
    for block in alike {
        bullet(out, "  ", &title(&block, teams, voice).to_string(), width);
        let room = width.saturating_sub(LABEL + 2).max(20);
        let drawn = rope_line::drawn(block.setup, voice, room);
        for (i, line) in drawn.iter().enumerate() {
            let label = if i == 0 {
                voice.say("block-label-rope", &[]).to_string()
            } else {
                String::new()
            };
            out.push_str(&format!("    {label:<10}{line}\n"));
        }
        for (label, text) in block.lines.iter().chain(&block.of_legs(voice)) {
            let label = voice.say(label, &[]).to_string();
            bullet(out, &format!("    {label:<10}"), text, width);
        }
    }
    let says = |key: &str| voice.say(key, &[]).to_string();
    bullet(out, "  ", &says("block-legend"), width);
    if modelled {
        bullet(out, "  ", &says("block-model"), width);
    }
}

impl Alike<'_> {
    fn add(&mut self, leg: usize, of_leg: Vec<LabelLine>) {
        self.legs.push(leg);
        for line in of_leg {
            match self.of_legs.iter_mut().find(|(l, _)| *l == line) {
                Some((_, legs)) => legs.push(leg),
                None => self.of_legs.push((line, vec![leg])),
            }
        }
    }

    /// What differs, by label; legs are named where it does not hold for all.
    fn of_legs(&self, voice: Voice) -> Vec<LabelLine> {
        let mut lines: Vec<LabelLine> = Vec::new();
        for ((label, text), legs) in &self.of_legs {
            let text = if legs.len() == self.legs.len() {
                text.clone()
            } else {
                let args = [
                    ("legs", Arg::Said(finding::legs(legs, voice))),
                    ("text", Arg::Said(Said::words(text))),
                ];
                voice.say("block-legs", &args).to_string()
            };
            lines.push((label, text));
        }
        lines.sort_by_key(|(label, _)| *label);
        lines
    }
}

fn alike(legs: &[Leg], voice: Voice) -> Vec<Alike<'_>> {
    let mut all: Vec<Alike<'_>> = Vec::new();
    let setups = legs
        .iter()
        .flat_map(|l| l.teams.iter().map(move |t| (l, t)));
    for (leg, setup) in setups {
        let (lines, of_leg) = (lines(setup, voice), of_leg(setup, voice));
        let same = |a: &Alike<'_>| a.setup.team == setup.team && a.lines == lines;
        let known = all.iter().position(same).unwrap_or_else(|| {
            all.push(Alike {
                legs: Vec::new(),
                setup,
                lines,
                of_legs: Vec::new(),
            });
            all.len() - 1
        });
        if let Some(alike) = all.get_mut(known) {
            alike.add(leg.leg, of_leg);
        }
    }
    all
}

fn title(block: &Alike<'_>, teams: usize, voice: Voice) -> Said {
    let args = [
        ("teams", Arg::Count(teams)),
        ("team", Arg::Count(block.setup.team)),
        (
            "legs",
            Arg::Said(finding::legs(&block.legs, voice).capital()),
        ),
        ("people", Arg::Count(block.setup.people)),
        ("spacing", Arg::Needed(block.setup.spacing_m)),
        ("rope", Arg::Said(rope(block.setup, voice))),
    ];
    voice.say("block-title", &args)
}

fn rope(setup: &TeamSetup, voice: Voice) -> Said {
    let (key, number, length_m) = match (&setup.rope, setup.sold_length_m) {
        (Some(rope), _) if rope.spare_m < 0.0 => ("block-rope-short", rope.number, rope.length_m),
        (Some(rope), _) => ("block-rope", rope.number, rope.length_m),
        (None, Some(sold_m)) => ("block-rope-sold", 0, sold_m),
        (None, None) => ("block-rope-none", 0, 0.0),
    };
    let args = [
        ("needed", Arg::Needed(setup.ledger.total_m)),
        ("rope", Arg::Count(number)),
        ("length", Arg::There(length_m)),
    ];
    voice.say(key, &args)
}

fn lines(setup: &TeamSetup, voice: Voice) -> Vec<LabelLine> {
    let mut lines = vec![
        ("block-label-people", people(setup, voice).to_string()),
        ("block-label-tie", ties(setup, voice).to_string()),
        ("block-label-knots", knots(setup, voice).to_string()),
        ("block-label-reserve", reserve(setup, voice).to_string()),
    ];
    let haul = setup.haul.as_ref();
    lines.extend(haul.map(|table| {
        (
            "block-label-hauling",
            hauling(setup, table, voice).to_string(),
        )
    }));
    lines
}

/// What rests on the leg too.
fn of_leg(setup: &TeamSetup, voice: Voice) -> Vec<LabelLine> {
    let mut lines = Vec::new();
    if let Some(arrest) = &setup.arrest {
        lines.push(("block-label-fall", fall(setup, arrest, voice).to_string()));
        let order = arrest.order.as_ref().filter(|o| o.worth_it);
        lines.extend(order.map(|o| ("block-label-order", say::setup::order(o, voice).to_string())));
    }
    lines.push(("block-label-gaps", spaced(setup, voice).to_string()));
    lines
}

/// `person 1 (80 kg), 2 Ada (75 kg)`, the first ahead; the position too where it is not the number of a person
/// without a name.
fn people(setup: &TeamSetup, voice: Voice) -> Said {
    let unnamed = |p: &PersonOnRope| p.called.name.is_none();
    let mut placed = setup.persons.iter().zip(1..);
    let apart = placed.any(|(p, position)| unnamed(p) && p.called.number != position);
    let person = |(person, position): (&PersonOnRope, usize)| {
        let key = match (unnamed(person), apart) {
            (false, _) => "block-person-at",
            (true, true) => "block-person-position",
            (true, false) => "block-person",
        };
        let mass = Arg::Kilograms(person.mass_kg, Round::Nearest);
        let args = [
            ("position", Arg::Count(position)),
            ("who", Arg::Said(name::person(&person.called, voice))),
            ("mass", mass),
        ];
        voice.say(key, &args)
    };
    let all = Said::join(setup.persons.iter().zip(1..).map(person), ", ");
    voice.say("block-people", &[("people", Arg::Said(all))])
}

/// Where along the rope each thing is tied, from the first person's free end.
fn ties(setup: &TeamSetup, voice: Voice) -> Said {
    let args = [
        ("unit", Arg::Said(Said::words(voice.units.short()))),
        ("marks", Arg::Said(marks(setup, |_| true, voice))),
    ];
    voice.say("block-ties", &args)
}

fn knots(setup: &TeamSetup, voice: Voice) -> Said {
    let knots = &setup.knots;
    let why = ("why", Arg::Said(say::setup::knots_why(&knots.why, voice)));
    if knots.count == 0 {
        return voice.say("block-knots-none", &[why]);
    }
    let bite = match knots.bite {
        Bite::Yes => voice.say("block-knots-deep", &[]),
        Bite::Doubtful | Bite::Unknown | Bite::No => {
            let from_m = setup.knots_count_from_snow_m.unwrap_or_default();
            voice.say("block-knots-from", &[("snow", Arg::Needed(from_m))])
        }
    };
    let args = [
        ("each", Arg::Count(knots.each_end)),
        ("first", Arg::Measured(knots.first_m)),
        ("step", Arg::Measured(knots.step_m)),
        ("bite", Arg::Said(bite)),
        why,
    ];
    voice.say("block-knots", &args)
}

/// The coils, and how deep a loop reaches for everybody.
fn reserve(setup: &TeamSetup, voice: Voice) -> Said {
    let short = setup.coil_carried_m < setup.coil_m - 1e-9;
    let args = [
        ("carried", Arg::There(setup.coil_carried_m)),
        ("needed", Arg::Needed(setup.coil_m)),
    ];
    let key = if short {
        "block-coils-short"
    } else {
        "block-coils"
    };
    let bag =
        (setup.bag_m > 1e-9).then(|| voice.say("block-bag", &[("bag", Arg::There(setup.bag_m))]));
    let coils = Said::join(std::iter::once(voice.say(key, &args)).chain(bag), ", ");
    let reach = setup.reach.iter().map(|reach| {
        let args = [
            (
                "who",
                Arg::Said(name::position(&setup.persons, reach.person, voice)),
            ),
            (
                "reaches",
                Arg::Said(say::setup::reach(reach, &setup.persons, voice)),
            ),
        ];
        voice.say("reach-of", &args)
    });
    let reach = Said::join(reach, "; ");
    if reach.is_empty() {
        let none = say::mark::no_place(setup, voice).unwrap_or_default();
        return voice.say("block-reserve-none", &[("none", Arg::Said(none))]);
    }
    let args = [("coils", Arg::Said(coils)), ("reach", Arg::Said(reach))];
    voice.say("block-reserve", &args)
}

/// `snow assumed: settled, 12° downhill to the lip`.
fn ground(arrest: &Arrest, voice: Voice) -> Said {
    let assumed = arrest.snow_assumed && arrest.snow != Snow::Ice;
    let snow = if assumed {
        let word = say::setup::snow_word(arrest.snow, voice);
        voice.say("block-snow-assumed", &[("snow", Arg::Said(word))])
    } else {
        say::setup::snow(arrest.snow, voice)
    };
    let snow = ("snow", Arg::Said(snow));
    if arrest.slope_known {
        let slope = ("slope", Arg::Said(say::setup::lip_slope(arrest, voice)));
        voice.say("block-ground", &[snow, slope])
    } else {
        voice.say("block-ground-flat", &[snow])
    }
}

fn fall(setup: &TeamSetup, arrest: &Arrest, voice: Voice) -> Said {
    let ([least_m, most_m], [least_kn, most_kn]) = (arrest.slide_m, arrest.holder_force_kn);
    let figure = |text: String| Arg::Said(Said::figure(&text));
    let within = |key: &str, said: Option<Said>| {
        let said = said.map(|said| voice.say(key, &[("says", Arg::Said(said))]));
        Arg::Said(said.unwrap_or_default())
    };
    let persons = &setup.persons;
    let args = [
        (
            "who",
            Arg::Said(name::position(persons, arrest.falls, voice)),
        ),
        (
            "usual",
            within(
                "block-usual",
                say::setup::usual_fall(arrest, persons, voice),
            ),
        ),
        (
            "middle",
            within(
                "block-middle",
                say::setup::in_the_middle(arrest, persons, voice),
            ),
        ),
        ("held", Arg::Said(say::setup::held(arrest, voice))),
        ("ground", Arg::Said(ground(arrest, voice))),
        ("verdict", Arg::Word(arrest.verdict.as_str())),
        (
            "least",
            if arrest.verdict == Held::Depends {
                Arg::There(least_m)
            } else {
                figure(voice.number(least_m, Round::Down))
            },
        ),
        ("most", Arg::Needed(most_m)),
        ("least-force", figure(voice.fixed(least_kn, 1, Round::Down))),
        ("most-force", Arg::Kilonewtons(most_kn, 1, Round::Up)),
    ];
    voice.say("block-fall", &args)
}

fn hauling(setup: &TeamSetup, table: &HaulTable, voice: Voice) -> Said {
    let own = if table.needs_own_strand { "yes" } else { "no" };
    let args = [
        (
            "who",
            Arg::Said(name::position(&setup.persons, table.person, voice)),
        ),
        ("depth", Arg::Needed(table.lip_to_person_m)),
        (
            "answer",
            Arg::Said(say::setup::haul_answer(&table.answer, voice)),
        ),
        ("pull", Arg::Said(pull(&table.answer, voice))),
        ("own", Arg::Word(own)),
    ];
    voice.say("block-haul", &args)
}

/// What the hauling named pulls with; where none will do, the least that any would ask for.
fn pull(answer: &HaulAnswer, voice: Voice) -> Said {
    match *answer {
        HaulAnswer::Best {
            can: Can::No,
            least_kn,
            ..
        } => voice.say(
            "block-pull-least",
            &[("force", Arg::Kilonewtons(least_kn, 2, Round::Up))],
        ),
        HaulAnswer::Best { pull_kn, .. } => voice.say(
            "block-pull",
            &[("force", Arg::Kilonewtons(pull_kn, 2, Round::Up))],
        ),
        HaulAnswer::TooShort { .. } | HaulAnswer::AnchorTooNear { .. } => Said::default(),
    }
}

/// For how wide a gap the team is spaced, and what nothing here is planned for.
fn spaced(setup: &TeamSetup, voice: Voice) -> Said {
    let mut not = Vec::new();
    let anew = setup.covers_gap_m.zip(setup.covers_at_spacing_m);
    let spaced = match anew {
        Some((gap_m, apart_m)) => {
            not.push(voice.say("block-not-wider", &[]));
            let args = [
                ("gap", Arg::There(gap_m)),
                ("apart", Arg::Measured(apart_m)),
                ("tied", Arg::There(setup.as_tied_gap_m.unwrap_or_default())),
                ("long-enough", Arg::yes(setup.as_tied_gap_m.is_some())),
            ];
            voice.say("block-spaced", &args)
        }
        None if setup.lacks_rope() || setup.as_tied_gap_m.is_some() => {
            voice.say("block-spaced-nothing", &[])
        }
        None => voice.say("block-spaced-unknown", &[]),
    };
    let short = setup
        .reach
        .iter()
        .filter(|f| f.barely || f.short_m().is_some());
    not.extend(short.map(|f| {
        let who = name::position(&setup.persons, f.person, voice);
        voice.say("block-not-loop", &[("who", Arg::Said(who))])
    }));
    not.push(voice.say("block-not-two", &[]));
    let args = [
        ("spaced", Arg::Said(spaced)),
        ("not", Arg::Said(Said::join(not, ", "))),
    ];
    voice.say("block-spaced-not", &args)
}
