//! Figures and words by the names that a plan lists them under.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::{
    fault::{Code, Place, Problem},
    practice::{Choices, Origin, Rule, Rules},
};

/// A figure, a word, or figures whose names begin alike.
#[derive(Clone, Debug, PartialEq, Deserialize, schemars::JsonSchema)]
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

/// What a plan lists and something else sets: its name, or what its numbered names begin with, and the cure.
const SET_ELSEWHERE: [(&str, &str); 6] = [
    (
        "practice",
        "`--practice NAME`, or `practice` in the trip file",
    ),
    ("party", "`--party 82,75`, or `party` in the trip file"),
    ("rope", "`--rope 60`, or `[[rope]]` in the trip file"),
    ("terrain", "`--terrain FILE`, or `terrain` in the trip file"),
    (
        "gap_m",
        "`--gap 6`, `gap_m` in the trip file, or better `gap_m` of the zone",
    ),
    (
        "sold_lengths_m",
        "name the ropes at hand: `--rope 60`, or `[[rope]]` in the trip file",
    ),
];

/// Puts one figure or word in force by its name.
///
/// # Errors
/// There is no such name, it does not take that word, or the value lies outside its bounds.
pub fn assume(
    rules: &mut Rules,
    name: &str,
    value: &Assume,
    place: &Place,
    origin: &Origin,
) -> Result<(), Problem> {
    let place = place.clone().with_property(name);
    if let Some(words) = Choices::words(name) {
        let text = value.shown();
        let known = rules.choices.set_word(name, &text, origin.clone());
        return if known {
            Ok(())
        } else {
            Err(no_word(name, &text, words, place))
        };
    }
    let rule = Rule::named(name);
    if rule.is_none() && !rules.nature.knows(name) {
        return Err(unknown(name, place));
    }
    let Assume::Value(number) = value else {
        let says = format!("{name} takes a number, and \"{}\" is none", value.shown());
        return Err(Problem::new(Code::BadNumber, place, says));
    };
    let set = match rule {
        Some(rule) => rules.set(rule, *number, origin.clone()),
        None => rules.nature.set(name, *number, origin.clone()),
    };
    set.map_err(|says| Problem::new(Code::BadNumber, place, says))
}

fn no_word(name: &str, text: &str, words: &[&str], place: Place) -> Problem {
    if words.is_empty() {
        let says = format!("{name} takes a time of day, and \"{text}\" is none");
        return Problem::new(Code::BadTrip, place, says).hint("write it as 04:30");
    }
    let says = format!("{name} does not take the word \"{text}\"");
    Problem::new(Code::UnknownName, place, says).hint(format!("use one of {}", words.join(", ")))
}

fn unknown(name: &str, place: Place) -> Problem {
    let stem = match name.rsplit_once('.') {
        Some((stem, number)) if number.parse::<usize>().is_ok() => stem,
        _ => name,
    };
    if let Some((_, cure)) = SET_ELSEWHERE.iter().find(|(known, _)| *known == stem) {
        let says = format!("\"{name}\" is not set as an assumption");
        return Problem::new(Code::UnknownName, place, says).hint(*cure);
    }
    Problem::new(
        Code::UnknownName,
        place,
        format!("there is no figure \"{name}\""),
    )
    .hint("`schrund practice arm-span` prints the figures and words there are")
}
