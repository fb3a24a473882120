//! Figures and words by the names that a plan lists them under.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::laid::Laid;
use crate::{
    fault::{
        Fault, Place,
        trip::{InTrip, Setter},
    },
    practice::{Choices, Origin, Rule, Rules, alike::nearest},
    read::number,
    trip::timetable::Timetable,
};

/// A figure, a word, or figures whose names begin alike.
///
/// ```
/// use schrund::{fault::Place, practice::{Origin, Rule}, read::trip::{Assume, Laid, assume}};
///
/// let mut laid = Laid::of(schrund::example::job()?.rules);
/// let mut say = |name, text| assume(&mut laid, name, &Assume::of(text), &Place::default(), &Origin::Flag);
/// assert!(say("margin_m", "35").is_ok() && say("pace", "munter").is_ok());
/// assert!(say("margin_m", "wide").is_err(), "a figure takes a number");
/// assert_eq!(laid.rules[Rule::MarginM], 35.0);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, schemars::JsonSchema)]
#[serde(untagged)]
pub enum Assume {
    /// The value.
    Value(f64),
    /// Yes or no.
    Truth(bool),
    /// The word.
    Word(String),
    /// What follows after the dot.
    Table(BTreeMap<String, Assume>),
}

impl Assume {
    /// A number where it is one, else a word.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let number = text.parse().map(Self::Value);
        number.unwrap_or_else(|_| Self::Word(text.to_owned()))
    }

    /// The number, written with its unit or not.
    fn number(&self, unit: &str) -> Option<f64> {
        match self {
            Self::Value(value) => Some(*value),
            Self::Word(word) => number::alone(word, unit),
            Self::Truth(_) | Self::Table(_) => None,
        }
    }

    fn shown(&self) -> String {
        match self {
            Self::Value(value) => value.to_string(),
            Self::Truth(truth) => truth.to_string(),
            Self::Word(word) => word.clone(),
            Self::Table(_) => "a table".to_owned(),
        }
    }

    /// Every figure and word below, by its whole name.
    pub(super) fn figures(&self, name: &str) -> Vec<(String, &Self)> {
        match self {
            Self::Value(_) | Self::Truth(_) | Self::Word(_) => vec![(name.to_owned(), self)],
            Self::Table(inner) => inner
                .iter()
                .flat_map(|(next, assume)| assume.figures(&format!("{name}.{next}")))
                .collect(),
        }
    }
}

/// What a plan lists or a trip file holds, and something else sets: its name, or what its numbered names begin with.
const SET_ELSEWHERE: [(&str, Setter); 14] = [
    ("practice", Setter::Practice),
    ("party", Setter::Party),
    ("mass_kg", Setter::Person),
    ("rope", Setter::Rope),
    ("length_m", Setter::Rope),
    ("diameter_mm", Setter::Rope),
    ("terrain", Setter::Terrain),
    ("gap_m", Setter::Gap),
    ("sold_lengths_m", Setter::Sold),
    ("name", Setter::Trip),
    ("stage", Setter::Trip),
    ("glaciers", Setter::Trip),
    ("emergency", Setter::Trip),
    ("halt", Setter::Trip),
];

/// Puts one figure or word in force by its name.
///
/// # Errors
/// There is no such name, it does not take that word, or the value lies outside its bounds.
pub fn assume(
    laid: &mut Laid,
    name: &str,
    value: &Assume,
    place: &Place,
    origin: &Origin,
) -> Result<(), Fault> {
    let set = set(laid, name, value, place, origin);
    set.map_err(|why| why.fault(name, &laid.rules, place))
}

/// Why a figure or word is not in force.
pub(super) enum NotSet {
    /// There is none of that name; what was meant is looked for only where it is told.
    NoName,
    /// It does not take that.
    Refused(Box<Fault>),
}

impl NotSet {
    pub(super) fn fault(self, name: &str, rules: &Rules, place: &Place) -> Fault {
        match self {
            Self::NoName => unknown(name, rules, place.clone().with_property(name)),
            Self::Refused(fault) => *fault,
        }
    }
}

/// The same as [`assume`], told later.
pub(super) fn set(
    laid: &mut Laid,
    name: &str,
    value: &Assume,
    place: &Place,
    origin: &Origin,
) -> Result<(), NotSet> {
    let refused = |what: InTrip| {
        let place = place.clone().with_property(name);
        NotSet::Refused(Box::new(Fault::new(what, place)))
    };
    let Laid { rules, timetable } = laid;
    let found = value.shown();
    if let Some(words) = Choices::words(name) {
        let known = rules.choices.set_word(name, &found, *origin);
        let name = name.to_owned();
        let no_word = InTrip::NoWord { name, found, words };
        return known.then_some(()).ok_or(refused(no_word));
    }
    if let Some(known) = timetable.set(name, &found, *origin) {
        let (name, of) = (name.to_owned(), name);
        let no_time = match of {
            "date" => InTrip::NoDay { name, found },
            "utc_offset" => InTrip::NoOffset { name, found },
            _ => InTrip::NoTime { name, found },
        };
        return known.then_some(()).ok_or(refused(no_time));
    }
    let rule = Rule::named(name);
    if rule.is_none() && !rules.nature.knows(name) {
        return Err(NotSet::NoName);
    }
    let unit = rule.map_or("", |rule| rules.figure(rule).unit.as_str());
    let Some(number) = value.number(unit) else {
        let name = name.to_owned();
        return Err(refused(InTrip::NoNumber { name, found }));
    };
    let set = match rule {
        Some(rule) => rules.set(rule, number, *origin).map_err(Into::into),
        None => rules.nature.set(name, number, *origin),
    };
    set.map_err(|why| refused(InTrip::Figure(why)))
}

fn unknown(name: &str, rules: &Rules, place: Place) -> Fault {
    let stem = match name.rsplit_once('.') {
        Some((stem, number)) if number.parse::<usize>().is_ok() => stem,
        _ => name,
    };
    let known = SET_ELSEWHERE.iter().find(|(known, _)| *known == stem);
    let what = match known {
        Some((_, by)) => InTrip::SetElsewhere {
            name: name.to_owned(),
            by: *by,
        },
        None => InTrip::NoFigure {
            name: name.to_owned(),
            near: nearest(name, names(rules)),
        },
    };
    Fault::new(what, place)
}

/// Every name that can be assumed.
fn names(rules: &Rules) -> impl Iterator<Item = String> {
    let figures = Rule::ALL.iter().map(|rule| rule.name());
    let times = Timetable::default().said().map(|time| time.name);
    let plain = figures.chain(Choices::NAMES.iter().copied()).chain(times);
    let nature = rules.nature.figures().into_iter();
    plain
        .map(str::to_owned)
        .chain(nature.map(|figure| figure.name))
}
