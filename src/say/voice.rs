//! Who speaks: a language and the units of the figures.

use std::sync::LazyLock;

use super::{
    arg::Arg,
    catalogue::{Catalogue, Piece},
    figure::Units,
    language::Language,
    span::{Said, Span},
};

/// A language and units.
///
/// ```
/// use schrund::say::{arg::Arg, figure::Units, voice::Voice};
///
/// let voice = Voice { units: Units::Imperial, ..Voice::default() };
/// let rope = [("name", Arg::Name("blue 60 m static")), ("length", Arg::There(60.0))];
/// assert_eq!(voice.say("rope-named", &rope).to_string(), "rope \"blue 60 m static\" (196.8 ft)");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Voice {
    /// Whose words.
    pub language: Language,
    /// Whose figures.
    pub units: Units,
}

/// One for each language, in the order of [`Language::ALL`].
static CATALOGUES: LazyLock<Vec<Catalogue>> = LazyLock::new(|| {
    let all = Language::ALL.iter();
    all.map(|language| Catalogue::of(language.files()).0)
        .collect()
});

impl Voice {
    /// The message of this key with its placeables filled. A key or filling that is missing shows as itself; tests
    /// hold that none is.
    #[must_use]
    pub fn say(self, key: &str, args: &[(&str, Arg<'_>)]) -> Said {
        let mut said = Said::default();
        match self.message(key) {
            Some(pieces) => self.put(&mut said, pieces, args),
            None => said.push(Span::Code(key.to_owned())),
        }
        said
    }

    /// The hint that belongs to a message, where it has one.
    #[must_use]
    pub fn hint(self, key: &str, args: &[(&str, Arg<'_>)]) -> Option<Said> {
        let pieces = self.message(&format!("{key}.hint"))?;
        let mut said = Said::default();
        self.put(&mut said, pieces, args);
        Some(said)
    }

    fn message(self, key: &str) -> Option<&'static [Piece]> {
        CATALOGUES.get(self.language as usize)?.get(key)
    }

    fn put(self, said: &mut Said, pieces: &[Piece], args: &[(&str, Arg<'_>)]) {
        let filling = |slot: &str| args.iter().find(|(name, _)| *name == slot);
        for piece in pieces {
            match piece {
                Piece::Text(span) => said.push(span.clone()),
                Piece::Slot(slot) => match filling(slot) {
                    Some((_, arg)) => arg.put(said, self.language, self.units),
                    None => said.push(Span::Code(format!("${slot}"))),
                },
                Piece::Message(key) => {
                    self.put(said, self.message(key).unwrap_or_default(), args);
                }
                Piece::Choice {
                    slot,
                    variants,
                    default,
                } => {
                    let chosen = filling(slot).and_then(|(_, arg)| self.chosen(arg, variants));
                    let (_, pieces) = &variants[chosen.unwrap_or(*default)];
                    self.put(said, pieces, args);
                }
            }
        }
    }

    /// Which variant a filling chooses: its own word or number, else the category of the number.
    fn chosen(self, arg: &Arg<'_>, variants: &[(String, Vec<Piece>)]) -> Option<usize> {
        let of = |word: &str| variants.iter().position(|(key, _)| key == word);
        match arg {
            Arg::Word(word) => of(word),
            Arg::Count(n) => of(&n.to_string()).or_else(|| of(self.language.category(*n))),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_message_chooses_by_number_and_by_word() {
        let voice = Voice::default();
        let stages = |n: usize| {
            let args = [("count", Arg::Count(n)), ("legs", Arg::Name("4"))];
            voice.say("place-legs", &args).to_string()
        };
        assert_eq!(
            (stages(1).as_str(), stages(2).as_str()),
            ("leg 4", "legs 4")
        );
        let end = |word| voice.say("cut-off-by-route-end", &[("end", Arg::Word(word))]);
        assert!(end("begin").to_string().contains("begins"), "by word");
        assert!(end("end").to_string().contains("ends"), "by default");
    }

    #[test]
    fn what_is_missing_shows() {
        let voice = Voice::default();
        assert_eq!(voice.say("no-such-key", &[]).to_string(), "`no-such-key`");
        let rope = voice.say("rope-unnamed", &[]).to_string();
        assert_eq!(rope, "the `$length` rope");
        assert_eq!(voice.hint("knots-doubtful", &[]), None);
    }
}
