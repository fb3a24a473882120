//! What is tied where along a rope, in one line.

use crate::{
    plan::leg::{Mark, MarkKind, TeamSetup},
    say::{self, arg::Arg, name, round::Round, span::Said, voice::Voice},
    write::parts::row,
};

/// Rope that each tie-in takes, metres: the same for everybody.
pub(crate) fn tie_in_m<'s>(mut setups: impl Iterator<Item = &'s TeamSetup>) -> f64 {
    setups.next().map_or(0.0, |setup| {
        let people = u32::try_from(setup.people).unwrap_or(u32::MAX);
        setup.ledger.tie_ins_m / f64::from(people.max(1))
    })
}

/// `no knots`, or how many on each side and where.
pub(crate) fn knots(setup: &TeamSetup, voice: Voice) -> Said {
    let knots = &setup.knots;
    let args = [
        ("knots", Arg::Count(knots.count)),
        ("each", Arg::Count(knots.each_end)),
        ("first", Arg::Measured(knots.first_m)),
        ("step", Arg::Measured(knots.step_m)),
        ("bite", row::bite(setup)),
    ];
    voice.say("page-knots", &args)
}

/// `coils 15.5 m`, those needed where they are longer, and what of the rope goes into a bag.
pub(crate) fn carried(setup: &TeamSetup, voice: Voice) -> Said {
    let bag = [("bag", Arg::There(setup.bag_m))];
    let bag = (setup.bag_m > 1e-9).then(|| voice.say("block-bag", &bag));
    let coils = [row::coils_of(setup, voice)];
    Said::join(coils.into_iter().chain(bag), ", ")
}

/// What is tied at these marks, and what finds no place: `Ada 15.5 · Ben 29.5`.
pub(crate) fn marks(setup: &TeamSetup, shown: impl Fn(&Mark) -> bool, voice: Voice) -> Said {
    let mut knots = 0;
    let mark = |mark: &Mark| {
        let what = match mark.kind {
            MarkKind::Knot => {
                knots += 1;
                Said::words(format!("x{knots}"))
            }
            MarkKind::TieIn => {
                name::position(&setup.persons, mark.person.unwrap_or_default(), voice)
            }
            MarkKind::End => say::mark::mark(mark, setup, voice),
        };
        let at = Said::figure(voice.number(mark.at_m, Round::Down));
        if mark.kind == MarkKind::End && setup.rope_short_m().is_some() {
            return at.then(Said::from(": ")).then(what);
        }
        what.then(Said::from(" ")).then(at)
    };
    let marks = setup.marks.iter().filter(|at| shown(at)).map(mark);
    let marks = Said::join(marks, " · ");
    let no_place = say::mark::no_place(setup, voice);
    Said::join([marks].into_iter().chain(no_place), "; ")
}
