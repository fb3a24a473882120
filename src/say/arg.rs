//! What a message is given: facts with their kind, from which their rounding and their unit follow.

use crate::say::{
    round::Round,
    span::{Said, Span},
    units::{Units, minutes},
};

/// An argument of a message. Lengths are in metres, and are shown in metres or feet.
///
/// ```
/// use schrund::say::{arg::Arg, round::Round, units::Units};
///
/// let shown = |arg: Arg<'_>, units| arg.said(units).to_string();
/// assert_eq!(shown(Arg::Needed(43.21), Units::Metric), "43.3 m");
/// assert_eq!(shown(Arg::There(60.0), Units::Imperial), "196.8 ft");
/// assert_eq!(shown(Arg::Between(7980.0, 8710.0), Units::Metric), "7.98–8.71 km");
/// assert_eq!(shown(Arg::Degrees(36.2, 0, Round::Up), Units::Metric), "37°");
/// assert_eq!(shown(Arg::Name("blue 60 m static"), Units::Imperial), "blue 60 m static");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub enum Arg<'a> {
    /// How many, or which by its number. Chooses variants: by the exact number, then by the plural of the language.
    Count(usize),
    /// A length that is needed, metres: rounded up.
    Needed(f64),
    /// A length that there is, metres: rounded down.
    There(f64),
    /// A length that was measured, metres: rounded to the nearest.
    Measured(f64),
    /// A range of lengths, least and most, metres: rounded outward.
    Within(f64, f64),
    /// A distance walked or a place on the route, metres: shown in kilometres or miles with two decimals.
    Walked(f64),
    /// A stretch of the route, from and to, metres: shown as [`Arg::Walked`].
    Between(f64, f64),
    /// A place on the route where something is done, metres: as [`Arg::Walked`], rounded to the side that errs well.
    DoneAt(f64, Round),
    /// A stretch of the route between two such places.
    DoneBetween((f64, Round), (f64, Round)),
    /// A distance in whole metres or feet, from metres.
    Whole(f64),
    /// An angle, degrees, with so many decimals.
    Degrees(f64, u8, Round),
    /// A duration, minutes, to the nearest: `1 h 05`.
    Minutes(f64),
    /// A mass, kilograms, with at most one decimal.
    Kilograms(f64, Round),
    /// A force, kilonewtons, with so many decimals.
    Kilonewtons(f64, u8, Round),
    /// A number without unit, as short as it can be written. A whole one chooses variants as [`Arg::Count`] does.
    Number(f64),
    /// A figure that shows itself: a time of day, a position.
    Figure(String),
    /// The leader's own text; never altered.
    Name(&'a str),
    /// A keyword that chooses a variant: the stable name of an enum's variant. Not meant to be shown.
    Word(&'a str),
    /// What the reader types or writes.
    Code(&'a str),
    /// What was said already.
    Said(Said),
}

/// What an argument chooses a variant by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Choice<'a> {
    Number(u64),
    Word(&'a str),
    /// Nothing: the default is taken.
    Default,
}

impl Arg<'static> {
    /// The keyword `yes` or `no`.
    #[must_use]
    pub fn yes(it_is: bool) -> Self {
        Self::Word(if it_is { "yes" } else { "no" })
    }
}

impl Arg<'_> {
    /// The argument in spans, in these units, with decimals behind a dot; [`Voice::shown`] has the mark of the language.
    ///
    /// [`Voice::shown`]: crate::say::voice::Voice::shown
    #[must_use]
    pub fn said(&self, units: Units) -> Said {
        let mut spans = Vec::with_capacity(1);
        self.speak(units, '.', &mut spans);
        spans.into()
    }

    pub(crate) fn speak(&self, units: Units, mark: char, spans: &mut Vec<Span>) {
        spans.push(match self {
            Self::Said(said) => return spans.extend_from_slice(said.spans()),
            Self::Name(text) => Span::Name((*text).to_owned()),
            Self::Word(text) | Self::Code(text) => Span::Code((*text).to_owned()),
            Self::Figure(text) => Span::Figure(text.clone()),
            _ => Span::Figure(marked(self.figure(units), mark)),
        });
    }

    /// The figure with its unit; nothing for what is no figure.
    fn figure(&self, units: Units) -> String {
        match *self {
            Self::Count(n) => n.to_string(),
            Self::Number(x) => (x + 0.0).to_string(),
            Self::Degrees(deg, decimals, round) => format!("{}°", round.fixed(deg, decimals)),
            Self::Minutes(min) => minutes(min),
            Self::Kilograms(kg, round) => format!("{} kg", round.tenths(kg)),
            Self::Kilonewtons(kn, decimals, round) => format!("{} kN", round.fixed(kn, decimals)),
            _ => self.length(units),
        }
    }

    fn length(&self, units: Units) -> String {
        let (short, long) = (units.short(), units.long());
        match *self {
            Self::Needed(m) => units.length(m, Round::Up),
            Self::There(m) => units.length(m, Round::Down),
            Self::Measured(m) => units.length(m, Round::Nearest),
            Self::Within(least, most) => {
                let (least, most) = (
                    units.number(least, Round::Down),
                    units.number(most, Round::Up),
                );
                format!("{least}–{most} {short}")
            }
            Self::Walked(m) => format!("{} {long}", units.chainage(m, Round::Nearest)),
            Self::DoneAt(m, round) => format!("{} {long}", units.chainage(m, round)),
            Self::Between(from, to) => {
                let nearest = |m| (m, Round::Nearest);
                Self::DoneBetween(nearest(from), nearest(to)).length(units)
            }
            Self::DoneBetween((from, down), (to, up)) => {
                let (from, to) = (units.chainage(from, down), units.chainage(to, up));
                if from == to {
                    return format!("{to} {long}");
                }
                format!("{from}–{to} {long}")
            }
            Self::Whole(m) => format!("{} {short}", units.whole(m)),
            _ => String::new(),
        }
    }

    pub(crate) fn choice(&self) -> Choice<'_> {
        match *self {
            Self::Count(n) => u64::try_from(n).map_or(Choice::Default, Choice::Number),
            Self::Number(x) => whole(x).map_or(Choice::Default, Choice::Number),
            Self::Word(word) => Choice::Word(word),
            _ => Choice::Default,
        }
    }
}

/// A number as it is written in a language.
pub(crate) fn marked(number: String, mark: char) -> String {
    match mark {
        '.' => number,
        _ => number.replace('.', mark.encode_utf8(&mut [0; 4])),
    }
}

/// The whole number that a number is, where it is one.
fn whole(x: f64) -> Option<u64> {
    format!("{x}").parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_is_shown_with_its_unit_and_its_side() {
        let metric = |arg: Arg<'_>| arg.said(Units::Metric).to_string();
        let imperial = |arg: Arg<'_>| arg.said(Units::Imperial).to_string();
        assert_eq!(metric(Arg::Count(3)), "3");
        assert_eq!(metric(Arg::Measured(20.14)), "20.1 m");
        assert_eq!(imperial(Arg::Needed(15.25)), "50.1 ft");
        assert_eq!(metric(Arg::Within(3.15, 4.51)), "3.1–4.6 m");
        assert_eq!(metric(Arg::Walked(8700.0)), "8.70 km");
        assert_eq!(metric(Arg::DoneAt(8709.9, Round::Down)), "8.70 km");
        let done = Arg::DoneBetween((979.9, Round::Down), (1440.1, Round::Up));
        assert_eq!(metric(done), "0.97–1.45 km");
        assert_eq!(imperial(Arg::Between(7980.0, 8710.0)), "4.96–5.41 mi");
        assert_eq!(metric(Arg::Between(26_258.0, 26_262.0)), "26.26 km");
        assert_eq!(imperial(Arg::Whole(100.0)), "328 ft");
        assert_eq!(metric(Arg::Minutes(65.4)), "1 h 05");
        assert_eq!(metric(Arg::Kilograms(3.01, Round::Up)), "3.1 kg");
        assert_eq!(metric(Arg::Kilonewtons(0.5, 2, Round::Up)), "0.50 kN");
        assert_eq!(metric(Arg::Number(0.25)), "0.25");
        assert_eq!(metric(Arg::Figure("04:30".to_owned())), "04:30");
        assert_eq!(metric(Arg::Code("gap_m")), "`gap_m`");
    }

    #[test]
    fn whole_numbers_and_keywords_choose_and_names_do_not() {
        assert_eq!(Arg::Count(2).choice(), Choice::Number(2));
        assert_eq!(Arg::Number(2.0).choice(), Choice::Number(2));
        assert_eq!(Arg::Number(2.5).choice(), Choice::Default);
        assert_eq!(Arg::Number(-1.0).choice(), Choice::Default);
        assert_eq!(Arg::Word("leader").choice(), Choice::Word("leader"));
        assert_eq!(Arg::Name("leader").choice(), Choice::Default);
    }
}
