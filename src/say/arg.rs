//! What fills the placeables of a message: figures with their direction of rounding, names, words to choose by.

use super::{
    figure::{Round, Units, minutes},
    language::Language,
    span::{Said, Span},
};

/// One filling. Lengths are metres.
#[derive(Clone, Debug, PartialEq)]
pub enum Arg<'a> {
    /// A whole number; messages can choose by it.
    Count(usize),
    /// A length that is needed.
    Needed(f64),
    /// A length that there is.
    There(f64),
    /// A length that was measured.
    Measured(f64),
    /// A length in whole metres or feet.
    Whole(f64),
    /// A distance walked, in kilometres or miles.
    Way(f64),
    /// From one chainage to another, likewise.
    Stretch(f64, f64),
    /// Whole degrees.
    Degrees(f64, Round),
    /// Kilograms.
    Kilograms(f64, Round),
    /// Kilonewtons, with as many decimals.
    Kilonewtons(f64, usize),
    /// Minutes, as hours and minutes.
    Minutes(f64),
    /// A time of day.
    Time(String),
    /// A pure number, as it is.
    Number(f64),
    /// What the user calls something.
    Name(&'a str),
    /// What is typed or written in a file.
    Code(&'a str),
    /// A word that a message chooses by; not for reading.
    Word(&'static str),
    /// Something said already.
    Said(Said),
}

impl Arg<'_> {
    /// As it is read, put behind what is said already.
    pub(super) fn put(&self, said: &mut Said, language: Language, units: Units) {
        let figure = match self {
            Self::Name(name) => return said.push(Span::Name((*name).to_owned())),
            Self::Code(code) => return said.push(Span::Code((*code).to_owned())),
            Self::Word(word) => return said.push(Span::Words((*word).to_owned())),
            Self::Said(more) => {
                more.spans().iter().for_each(|span| said.push(span.clone()));
                return;
            }
            Self::Count(n) => n.to_string(),
            Self::Needed(m) => units.length(*m, Round::Up),
            Self::There(m) => units.length(*m, Round::Down),
            Self::Measured(m) => units.length(*m, Round::Nearest),
            Self::Whole(m) => format!("{} {}", units.whole(*m), units.short()),
            Self::Way(m) => format!("{} {}", units.chainage(*m), units.long()),
            Self::Stretch(from, to) => {
                let ends = (units.chainage(*from), units.chainage(*to));
                format!("{}–{} {}", ends.0, ends.1, units.long())
            }
            Self::Degrees(deg, round) => format!("{:.0}°", round.whole(*deg)),
            Self::Kilograms(kg, round) => format!("{} kg", round.tenths(*kg)),
            Self::Kilonewtons(kn, decimals) => format!("{kn:.decimals$} kN"),
            Self::Minutes(min) => minutes(*min),
            Self::Time(time) => return said.push(Span::Figure(time.clone())),
            Self::Number(x) => x.to_string(),
        };
        said.push(Span::Figure(language.decimals(figure)));
    }
}
