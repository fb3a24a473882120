//! A message of the catalogue with its facts.

use std::fmt::Display;

use crate::say::{arg::Arg, span::Said, voice::Voice};

/// Characters of a number that is shown with all its digits: as many as the longest count has.
const LONGEST_NUMBER: usize = 20;

/// Facts by name, owned.
pub(super) type PhraseArgs = Vec<(&'static str, Arg<'static>)>;

/// A message by its key, with its facts.
pub(super) struct Phrase {
    key: &'static str,
    args: PhraseArgs,
}

impl Phrase {
    /// A message that takes no facts.
    pub(super) fn plain(key: &'static str) -> Self {
        Self {
            key,
            args: Vec::new(),
        }
    }

    /// A message with its facts.
    pub(super) fn of<const N: usize>(
        key: &'static str,
        args: [(&'static str, Arg<'static>); N],
    ) -> Self {
        Self {
            key,
            args: args.into(),
        }
    }

    /// The same with further facts.
    pub(super) fn and(mut self, args: PhraseArgs) -> Self {
        self.args.extend(args);
        self
    }

    /// What it says.
    pub(super) fn says(&self, voice: Voice) -> Said {
        voice.say(self.key, &self.args)
    }

    /// What to do about it.
    pub(super) fn hint(&self, voice: Voice) -> Option<Said> {
        voice.hint(self.key, &self.args)
    }
}

/// Somebody else's text: a file, a zone, what stands in a file, what the system says.
pub(super) fn name(text: impl Into<String>) -> Arg<'static> {
    Arg::Said(Said::name(text))
}

/// A number as it was written, with its unit.
pub(super) fn figure(value: impl Display, unit: &str) -> Arg<'static> {
    let value = written(value);
    Arg::Figure(match unit {
        "" | "1" => value,
        "°" => format!("{value}°"),
        unit => format!("{value} {unit}"),
    })
}

/// A bare number.
pub(super) fn number(value: impl Display) -> Arg<'static> {
    Arg::Figure(written(value))
}

/// A number as it was written, but for hundreds of noughts.
fn written(value: impl Display) -> String {
    let plain = value.to_string();
    match plain.parse::<f64>() {
        Ok(number) if plain.len() > LONGEST_NUMBER && number.is_finite() => format!("{number:e}"),
        _ => plain,
    }
}

/// Texts in a row.
pub(super) fn list(texts: impl IntoIterator<Item = impl Into<String>>) -> Arg<'static> {
    Arg::Said(Said::join(texts.into_iter().map(Said::name), ", "))
}

/// Things that were said, in a row.
pub(super) fn row(said: impl IntoIterator<Item = Said>) -> Arg<'static> {
    Arg::Said(Said::join(said, ", "))
}
