//! The voice of one reader: his language, his units, and how he gives what is asked of him.

use crate::say::{
    arg::{Arg, marked},
    interface::Interface,
    language::Language,
    render::{Reader, gap, render},
    round::Round,
    span::Said,
    units::Units,
};

/// Says facts in the words and units of a reader.
///
/// A message stands in `data/words/` under its key; lengths are turned and rounded here, and what the leader
/// wrote goes through untouched. A key or argument that is not there shows as `⟦key⟧`, `⟦$argument⟧`.
///
/// ```
/// use schrund::say::{arg::Arg, span::Span, units::Units, voice::Voice};
///
/// let voice = Voice { units: Units::Imperial, ..Voice::default() };
/// let args = [("name", Arg::Name("blue 60 m static")), ("length", Arg::There(60.0))];
/// let said = voice.say("rope-named", &args);
///
/// assert_eq!(said.to_string(), "rope \"blue 60 m static\" (196.8 ft)");
/// assert!(said.spans().contains(&Span::Name("blue 60 m static".to_owned())));
/// assert!(said.spans().contains(&Span::Figure("196.8 ft".to_owned())));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Voice {
    /// Which words.
    pub language: Language,
    /// Which units lengths are shown in.
    pub units: Units,
    /// What cures may speak of.
    pub interface: Interface,
}

impl Voice {
    /// The message with its arguments by name; those it does not take are left aside.
    #[must_use]
    pub fn say(self, key: &str, args: &[(&str, Arg<'_>)]) -> Said {
        let catalogue = self.language.catalogue();
        match catalogue.entry(key) {
            Some(entry) => render(catalogue, self.reader(), &entry.value, args),
            None => gap(key).into(),
        }
    }

    /// The attribute of that name, where the message has one.
    #[must_use]
    pub fn attribute(self, key: &str, name: &str, args: &[(&str, Arg<'_>)]) -> Option<Said> {
        let catalogue = self.language.catalogue();
        let pattern = catalogue.entry(key)?.attribute(name)?;
        Some(render(catalogue, self.reader(), pattern, args))
    }

    /// The attribute `.hint`: what to do about it.
    #[must_use]
    pub fn hint(self, key: &str, args: &[(&str, Arg<'_>)]) -> Option<Said> {
        self.attribute(key, "hint", args)
    }

    fn reader(self) -> Reader {
        Reader {
            units: self.units,
            interface: self.interface,
            mark: self.language.decimal_mark(),
        }
    }

    /// An argument as it is shown.
    ///
    /// ```
    /// use schrund::say::{arg::Arg, language::Language, voice::Voice};
    ///
    /// let german = Voice { language: Language::German, ..Voice::default() };
    /// assert_eq!(german.shown(&Arg::Walked(8120.0)).to_string(), "8,12 km");
    /// ```
    #[must_use]
    pub fn shown(self, arg: &Arg<'_>) -> Said {
        let mut spans = Vec::with_capacity(1);
        arg.speak(self.units, self.language.decimal_mark(), &mut spans);
        spans.into()
    }

    /// A length in the short unit without its name, with at most one decimal.
    #[must_use]
    pub fn number(self, metres: f64, round: Round) -> String {
        self.marked(self.units.number(metres, round))
    }

    /// A length in the short unit with its name.
    #[must_use]
    pub fn length(self, metres: f64, round: Round) -> String {
        self.marked(self.units.length(metres, round))
    }

    /// A chainage in the long unit without its name, two decimals.
    #[must_use]
    pub fn chainage(self, metres: f64, round: Round) -> String {
        self.marked(self.units.chainage(metres, round))
    }

    /// A figure with exactly so many decimals.
    #[must_use]
    pub fn fixed(self, value: f64, decimals: u8, round: Round) -> String {
        self.marked(round.fixed(value, decimals))
    }

    /// A number that was written with a dot, as people read it.
    #[must_use]
    pub fn marked(self, number: String) -> String {
        marked(number, self.language.decimal_mark())
    }

    /// Whether the message is there.
    #[must_use]
    pub fn knows(self, key: &str) -> bool {
        self.language.catalogue().entry(key).is_some()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const VOICE: Voice = Voice {
        language: Language::English,
        units: Units::Metric,
        interface: Interface::Flags,
    };

    #[test]
    fn what_is_missing_is_seen_and_nothing_falls_over() {
        assert_eq!(VOICE.say("no-such-key", &[]).to_string(), "⟦no-such-key⟧");
        assert_eq!(VOICE.hint("no-such-key", &[]), None);
        assert_eq!(VOICE.hint("rope-unnamed", &[]), None);
        assert_eq!(
            VOICE.say("rope-named", &[]).to_string(),
            "rope \"⟦$name⟧\" (⟦$length⟧)"
        );
    }

    #[test]
    fn every_message_is_whole_when_it_is_given_what_it_takes() {
        for &language in Language::ALL {
            let (catalogue, voice) = (language.catalogue(), Voice { language, ..VOICE });
            for key in catalogue.messages() {
                let entry = catalogue.entry(key).unwrap();
                for pattern in entry.patterns() {
                    let names = catalogue.arguments(pattern);
                    let args: Vec<_> = names.iter().map(|n| (*n, Arg::Count(2))).collect();
                    let said = render(catalogue, voice.reader(), pattern, &args);
                    assert!(!said.is_empty(), "{language:?} {key} says nothing");
                    assert!(!said.to_string().contains('⟦'), "{key}: {said}");
                }
            }
        }
    }

    #[test]
    fn hints_and_code_come_from_the_catalogue() {
        let args = [("people", Arg::Count(1))];
        assert_eq!(
            VOICE.say("alone", &args).to_string(),
            "a party of 1 cannot rope up: nobody goes alone"
        );
        assert_eq!(
            VOICE.hint("alone", &args).map(|hint| hint.to_string()),
            Some("take at least one partner: `--party 2`".to_owned())
        );
    }

    #[test]
    fn who_has_no_command_line_is_never_told_of_a_flag() {
        for &language in Language::ALL {
            let catalogue = language.catalogue();
            let voice = Voice {
                language,
                ..Voice::default()
            };
            let only_there = |key: &str| ONLY_THE_COMMAND_LINE_SAYS.contains(&key);
            for key in catalogue.messages().filter(|key| !only_there(key)) {
                for pattern in catalogue.entry(key).unwrap().patterns() {
                    let names = catalogue.arguments(pattern);
                    for n in 0..3 {
                        let args: Vec<_> = names.iter().map(|a| (*a, Arg::Count(n))).collect();
                        let said = render(catalogue, voice.reader(), pattern, &args).to_string();
                        let typed = said.contains("`--") || said.contains("`schrund ");
                        assert!(!typed, "{key}: {said}");
                    }
                }
            }
        }
    }

    /// What nobody else meets.
    const ONLY_THE_COMMAND_LINE_SAYS: [&str; 12] = [
        "file-there",
        "file-is-folder",
        "file-is-input",
        "file-no-folder",
        "file-one-number",
        "file-no-place",
        "file-no-code",
        "place-flag",
        "place-assumed",
        "strip-wrote",
        "strip-no-gap",
        "strip-zones-unknown",
    ];
}
