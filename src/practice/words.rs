//! The words in force by their names: as plans list them, and as `--assume` and `[assume]` set them.

use serde::{
    Serialize,
    de::{DeserializeOwned, IntoDeserializer, value::Error},
};
use serde_json::Value;

use crate::practice::{
    Origin, Standing,
    choice::{Choices, Word},
};
use crate::trip::clock::Clock;

/// One word in force, ready to be listed.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    /// The name that [`Choices::set_word`] takes.
    pub name: &'static str,
    /// What it is.
    pub says: &'static str,
    /// The word; null for a time that nobody gave.
    pub value: Value,
    /// What stands behind it.
    pub standing: Standing,
    /// Who put it in force.
    pub origin: Origin,
}

impl Said {
    fn of<T: Serialize>(name: &'static str, says: &'static str, word: &Word<T>) -> Self {
        Self {
            name,
            says,
            value: serde_json::to_value(&word.value).unwrap_or(Value::Null),
            standing: word.standing,
            origin: word.origin.clone(),
        }
    }
}

/// The words that a name can take; none for a time of day.
const TAKES: [(&str, &[&str]); 10] = [
    ("travel", &["foot", "snowshoe", "ski"]),
    ("knots", &["auto", "always", "never"]),
    ("reserve", &["reach", "chest-coils"]),
    ("cover", &["ends", "anyone"]),
    ("rope_on_bare", &["true", "false"]),
    ("pace", &["din", "munter", "naismith"]),
    ("use_proposed_strike", &["true", "false"]),
    ("snow", &["soft", "settled", "firm", "refrozen", "ice"]),
    ("start", &[]),
    ("bridges_until", &[]),
];

/// The words that a choice of that name takes; empty for a time of day.
#[must_use]
pub fn taken(name: &str) -> Option<&'static [&'static str]> {
    Choices::words(name)
}

impl Choices {
    /// The words that stand under a name, empty where it is a time of day; `None` where no choice has that name.
    #[must_use]
    pub fn words(name: &str) -> Option<&'static [&'static str]> {
        let known = TAKES.iter().find(|(known, _)| *known == name);
        known.map(|(_, words)| *words)
    }

    /// Every word in force.
    #[must_use]
    pub fn said(&self) -> Vec<Said> {
        let bare = "whether bare ice is roped where the zone does not say";
        let strike = "whether a strike proposed from the ground counts";
        let snow = "what the team stands on where there is snow, for the fall model";
        let until = "until when snow bridges are trusted";
        vec![
            Said::of("travel", "how the party travels", &self.travel),
            Said::of("knots", "when brake knots are tied", &self.knots),
            Said::of("reserve", "how the spare rope is measured", &self.reserve),
            Said::of("cover", "whose fall the spare rope must reach", &self.cover),
            Said::of("rope_on_bare", bare, &self.rope_on_bare),
            Said::of(
                "pace",
                "by which rule walking times are reckoned",
                &self.pace,
            ),
            Said::of("use_proposed_strike", strike, &self.use_proposed_strike),
            Said::of("snow", snow, &self.snow),
            Said::of("start", "when each stage is started", &self.start),
            Said::of("bridges_until", until, &self.bridges_until),
        ]
    }

    /// Puts a word in force by its name. False where there is no such name or it does not take that word.
    #[must_use]
    pub fn set_word(&mut self, name: &str, text: &str, origin: Origin) -> bool {
        match name {
            "travel" => put(&mut self.travel, parse(text), origin),
            "knots" => put(&mut self.knots, parse(text), origin),
            "reserve" => put(&mut self.reserve, parse(text), origin),
            "cover" => put(&mut self.cover, parse(text), origin),
            "rope_on_bare" => put(&mut self.rope_on_bare, text.parse().ok(), origin),
            "pace" => put(&mut self.pace, parse(text), origin),
            "use_proposed_strike" => put(&mut self.use_proposed_strike, text.parse().ok(), origin),
            "snow" => put(&mut self.snow, parse(text), origin),
            "start" => put(&mut self.start, time(text), origin),
            "bridges_until" => put(&mut self.bridges_until, time(text), origin),
            _ => false,
        }
    }
}

fn put<T>(word: &mut Word<T>, value: Option<T>, origin: Origin) -> bool {
    let known = value.is_some();
    word.set(value, origin);
    known
}

fn parse<T: DeserializeOwned>(text: &str) -> Option<T> {
    T::deserialize(IntoDeserializer::<Error>::into_deserializer(text)).ok()
}

fn time(text: &str) -> Option<Option<Clock>> {
    Clock::parse(text).ok().map(Some)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_listed_can_be_set_by_the_name_it_is_listed_under() {
        let mut choices = Choices::default();
        let names: Vec<&str> = choices.said().iter().map(|s| s.name).collect();
        assert_eq!(names, TAKES.map(|(name, _)| name));
        for (i, (name, words)) in TAKES.into_iter().enumerate() {
            let times = ["04:30", "10:00"];
            for word in if words.is_empty() { &times } else { words } {
                assert!(choices.set_word(name, word, Origin::Flag), "{name}={word}");
                let said = &choices.said()[i];
                let shown = said
                    .value
                    .as_str()
                    .map_or(said.value.to_string(), str::to_owned);
                assert_eq!(
                    (shown.as_str(), &said.origin),
                    (*word, &Origin::Flag),
                    "{name}"
                );
            }
            assert!(
                !choices.set_word(name, "no-such-word", Origin::Flag),
                "{name}"
            );
        }
    }
}
