//! What is wrong with a zone by kilometre, in words.

use super::{
    phrase::{Phrase, figure, name, number},
    quote::quoted,
    stages::stages,
};
use crate::{
    fault::strip::InStrip,
    say::{arg::Arg, round::Round, voice::Voice},
};

/// Figures as they were given: flags are metric.
pub(super) fn phrase(what: &InStrip, voice: Voice) -> Phrase {
    match what {
        InStrip::NoStretch { found } => of("stretch-none", found),
        InStrip::Comma {
            found,
            pointed,
            whole,
        } => {
            of("stretch-comma", found).and(vec![("pointed", name(pointed)), ("whole", name(whole))])
        }
        InStrip::Metres { found, meant } => {
            of("stretch-metres", found).and(vec![("meant", name(meant))])
        }
        InStrip::Backwards { found, meant } => {
            of("stretch-backwards", found).and(vec![("meant", name(meant))])
        }
        InStrip::Before { found } => of("stretch-before", found),
        InStrip::Short { found, least_m } => {
            of("stretch-short", found).and(vec![("least", figure(least_m, "m"))])
        }
        InStrip::Beyond {
            found,
            length_m,
            meant,
        } => {
            let length = Round::Down.fixed(length_m / 1000.0, 2);
            of("stretch-beyond", found).and(vec![
                ("length", figure(length, "km")),
                ("metres", Arg::yes(meant.is_some())),
                ("meant", name(meant.clone().unwrap_or_default())),
            ])
        }
        InStrip::HalfWidth {
            half_width_m,
            within_m: [min, max],
        } => Phrase::of(
            "stretch-half-width",
            [
                ("half", figure(half_width_m, "m")),
                ("min", number(min)),
                ("max", figure(max, "m")),
            ],
        ),
        InStrip::WhichStage { has } => {
            Phrase::of("stretch-which-stage", [("stages", stages(has, voice))])
        }
        InStrip::Stretched { found, most } => {
            let most = figure(Round::Up.fixed(most * 100.0, 0), "%");
            of("stretch-stretched", found).and(vec![("most", most)])
        }
        InStrip::Is(instead) => Phrase::of(
            "stretch-is",
            [("what", Arg::Word(super::gpx::word(instead)))],
        ),
        InStrip::Empty => Phrase::plain("stretch-empty"),
        InStrip::NoCollection => Phrase::plain("stretch-no-collection"),
        InStrip::Changed => Phrase::plain("stretch-changed"),
    }
}

fn of(key: &'static str, found: &str) -> Phrase {
    Phrase::of(key, [("found", quoted(found))])
}
