//! Why a figure is not taken, in words.

use std::fmt;

use super::{
    phrase::{Phrase, figure, name, number},
    quote::quoted,
};
use crate::{
    fault::refusal::{OutOfBounds, Refusal},
    say::{arg::Arg, voice::Voice},
};

/// The message, with what was given as it was given.
pub(super) fn phrase(refusal: &Refusal) -> Phrase {
    match refusal {
        Refusal::OutOfBounds(out) => out_of_bounds(out),
        Refusal::Disorder {
            name: range,
            adverse,
            central,
            favourable,
        } => Phrase::of(
            "figure-disorder",
            [
                ("name", name(range)),
                ("adverse", number(adverse)),
                ("central", number(central)),
                ("favourable", number(favourable)),
            ],
        ),
        Refusal::NoSpringPeak(n) => Phrase::of("figure-no-spring-peak", [("force", number(n))]),
        Refusal::NoSpringStretch(share) => {
            Phrase::of("figure-no-spring-stretch", [("share", number(share))])
        }
        Refusal::Unknown(unknown) => Phrase::of("figure-unknown", [("name", quoted(unknown))]),
        Refusal::BuiltIn(words) => Phrase::of("figure-built-in", [("words", name(words))]),
        Refusal::NobodyOnRope => Phrase::plain("figure-nobody"),
        Refusal::Sides(sides) => Phrase::of("figure-sides", [("sides", Arg::Count(*sides))]),
        Refusal::NoHolder => Phrase::plain("figure-no-holder"),
        Refusal::Orders(people) => Phrase::of("figure-orders", [("people", Arg::Count(*people))]),
        Refusal::NoTurn(turn) => Phrase::of("figure-no-turn", [("turn", name(*turn))]),
    }
}

fn out_of_bounds(out: &OutOfBounds) -> Phrase {
    let args = vec![
        ("what", name(&out.what)),
        ("value", figure(out.value, &out.unit)),
        ("min", number(out.min)),
        ("max", figure(out.max, &out.unit)),
    ];
    match &out.name {
        Some(by) => Phrase::of("figure-out-of-bounds-named", [("name", name(by))]),
        None => Phrase::plain("figure-out-of-bounds"),
    }
    .and(args)
}

impl fmt::Display for OutOfBounds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        out_of_bounds(self).says(Voice::default()).fmt(f)
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        phrase(self).says(Voice::default()).fmt(f)
    }
}
