//! What is tied where along a rope, in words.

use crate::{
    plan::leg::{Mark, MarkKind, NoPlace, TeamSetup},
    say::{arg::Arg, name::position, span::Said, voice::Voice},
};

/// What is tied at a mark: `Ada ties in`, `brake knot`.
#[must_use]
pub fn mark(mark: &Mark, setup: &TeamSetup, voice: Voice) -> Said {
    tied(mark.kind, mark.person, setup, voice)
}

/// What would be tied where the rope has no place for it: `Ada ties in`, `brake knot`.
#[must_use]
pub fn beyond(none: &NoPlace, setup: &TeamSetup, voice: Voice) -> Said {
    tied(none.kind, none.person, setup, voice)
}

fn tied(kind: MarkKind, person: Option<usize>, setup: &TeamSetup, voice: Voice) -> Said {
    match kind {
        MarkKind::TieIn => {
            let who = position(&setup.persons, person.unwrap_or_default(), voice);
            voice.say("mark-tie-in", &[("who", Arg::Said(who))])
        }
        MarkKind::Knot => voice.say("mark-knot", &[]),
        MarkKind::End => match setup.rope_short_m() {
            Some(short_m) => rope_ends(short_m, voice),
            None => {
                let bag = if setup.bag_m > 1e-9 { "yes" } else { "no" };
                voice.say("mark-end", &[("bag", Arg::Word(bag))])
            }
        },
    }
}

/// `rope ends here, 3.5 m short`.
#[must_use]
pub fn rope_ends(short_m: f64, voice: Voice) -> Said {
    voice.say("mark-end-short", &[("short", Arg::Needed(short_m))])
}

/// What finds no place on a rope that is too short: `no place for 2 brake knots, Cy`; `None` where everything does.
#[must_use]
pub fn no_place(setup: &TeamSetup, voice: Voice) -> Option<Said> {
    let knots = |none: &&NoPlace| none.kind == MarkKind::Knot;
    let knots = setup.no_place.iter().filter(knots).count();
    let knots =
        (knots > 0).then(|| voice.say("mark-knots-counted", &[("knots", Arg::Count(knots))]));
    let who = setup.no_place.iter().filter_map(|none| none.person);
    let who = who.map(|person| position(&setup.persons, person, voice));
    let all: Vec<Said> = knots.into_iter().chain(who).collect();
    let what = || Arg::Said(Said::join(all.iter().cloned(), ", "));
    (!all.is_empty()).then(|| voice.say("mark-no-place", &[("what", what())]))
}
