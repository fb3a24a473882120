//! A pattern and its arguments → spans.

use std::borrow::Cow;

use crate::say::{
    arg::{Arg, Choice},
    catalogue::{Catalogue, DEEPEST},
    interface::Interface,
    pattern::{BUILT_IN, Key, Pattern, PatternPiece, Select},
    span::{Said, Span},
    units::Units,
};

/// What every message can choose by without being given it.
#[derive(Clone, Copy)]
pub(crate) struct Reader {
    pub(crate) units: Units,
    pub(crate) interface: Interface,
    /// The decimal mark of figures; what is typed has a dot.
    pub(crate) mark: char,
}

impl Reader {
    fn built_in(self, name: &str) -> Option<&'static str> {
        let words = [self.units.as_str(), self.interface.as_str()];
        let at = BUILT_IN.iter().position(|known| *known == name)?;
        words.get(at).copied()
    }
}

/// What the pattern says with these arguments. What is missing shows as [`gap`] says.
pub(crate) fn render(
    catalogue: &'static Catalogue,
    reader: Reader,
    pattern: &'static Pattern,
    args: &[(&str, Arg<'_>)],
) -> Said {
    let mut speaker = Speaker {
        catalogue,
        reader,
        args,
        within: 0,
        spans: Vec::with_capacity(pattern.0.len()),
    };
    speaker.pattern(pattern);
    speaker.spans.into()
}

/// A message or an argument that is not there, so that it is seen where it should have stood: `⟦key⟧`.
pub(crate) fn gap(what: &str) -> Span {
    Span::Words(Cow::Owned(format!("⟦{what}⟧")))
}

struct Speaker<'a> {
    catalogue: &'static Catalogue,
    reader: Reader,
    args: &'a [(&'a str, Arg<'a>)],
    /// References that were followed to here.
    within: u8,
    spans: Vec<Span>,
}

impl<'a> Speaker<'a> {
    fn pattern(&mut self, pattern: &'static Pattern) {
        for piece in &pattern.0 {
            self.piece(piece);
        }
    }

    fn piece(&mut self, piece: &'static PatternPiece) {
        match piece {
            PatternPiece::Words(words) => self.spans.push(Span::Words(Cow::Borrowed(words))),
            PatternPiece::Code(inner) => self.code(inner),
            PatternPiece::Argument(name) => match self.arg(name) {
                Some(arg) => arg.speak(self.reader.units, self.reader.mark, &mut self.spans),
                None => self.spans.push(gap(&format!("${name}"))),
            },
            PatternPiece::Entry(key) => match self.catalogue.entry(key) {
                Some(entry) if self.within < DEEPEST => {
                    self.within += 1;
                    self.pattern(&entry.value);
                    self.within -= 1;
                }
                _ => self.spans.push(gap(key)),
            },
            PatternPiece::Select(select) => match self.variant(select) {
                Some(variant) => self.pattern(variant),
                None => self.spans.push(gap(&format!("${}", select.argument))),
            },
        }
    }

    /// Whatever stands between the backticks becomes one span.
    fn code(&mut self, inner: &'static Pattern) {
        let (before, mark) = (self.spans.len(), self.reader.mark);
        self.reader.mark = '.';
        self.pattern(inner);
        self.reader.mark = mark;
        let text = self.spans.drain(before..).map(|span| match span {
            Span::Words(text) => text.into_owned(),
            Span::Figure(text) | Span::Name(text) | Span::Code(text) => text,
        });
        let text = text.collect();
        self.spans.push(Span::Code(text));
    }

    fn arg(&self, name: &str) -> Option<&'a Arg<'a>> {
        let found = self.args.iter().find(|(known, _)| *known == name);
        found.map(|(_, arg)| arg)
    }

    fn choice(&self, name: &str) -> Option<Choice<'a>> {
        match self.arg(name) {
            None => self.reader.built_in(name).map(Choice::Word),
            Some(arg) => Some(arg.choice()),
        }
    }

    /// The exact number before the plural, either before the default; `None` where nothing was given to choose by.
    fn variant(&self, select: &'static Select) -> Option<&'static Pattern> {
        let by = |wanted: &dyn Fn(&Key) -> bool| {
            let found = select.variants.iter().find(|(key, _)| wanted(key));
            found.map(|(_, pattern)| pattern)
        };
        let by_word = |word: &str| by(&|key| matches!(key, Key::Word(known) if known == word));
        let chosen = match self.choice(&select.argument)? {
            Choice::Number(n) => {
                by(&|key| *key == Key::Number(n)).or_else(|| by_word((self.catalogue.plural)(n)))
            }
            Choice::Word(word) => by_word(word),
            Choice::Default => None,
        };
        chosen.or_else(|| Some(&select.variants.get(select.default)?.1))
    }
}

#[cfg(test)]
mod tests {
    use std::sync::LazyLock;

    use super::*;

    const TEXT: &str = "
zones = { $n ->
    [0] no zone
    [one] { $n } zone
   *[other] { $n } zones
 }
who = { $who ->
    [leader] the leader
   *[other] somebody
 }
-unit = { $units ->
    [imperial] feet
   *[metric] metres
 }
head = length in { -unit }
told = { zones } on { $zone }{ \",\" }
    in two lines
code = give `--rope { $m }` or `gap_m`
";

    static WORDS: LazyLock<Catalogue> = LazyLock::new(|| {
        Catalogue::of(
            &[("f", TEXT)],
            &[],
            |n| if n == 1 { "one" } else { "other" },
        )
    });

    fn said(key: &str, units: Units, args: &[(&str, Arg<'_>)]) -> Said {
        let catalogue = &*WORDS;
        assert_eq!(catalogue.faults(), [""; 0]);
        let reader = Reader {
            units,
            interface: Interface::default(),
            mark: '.',
        };
        render(
            catalogue,
            reader,
            &catalogue.entry(key).unwrap().value,
            args,
        )
    }

    #[track_caller]
    fn says(key: &str, args: &[(&str, Arg<'_>)], text: &str) {
        assert_eq!(said(key, Units::Metric, args).to_string(), text);
    }

    #[test]
    fn a_circle_ends_in_a_gap() {
        static CIRCLE: LazyLock<Catalogue> = LazyLock::new(|| {
            Catalogue::of(&[("f", "a = so { b }\nb = and { a }\n")], &[], |_| "other")
        });
        let reader = Reader {
            units: Units::Metric,
            interface: Interface::default(),
            mark: '.',
        };
        let said = render(&CIRCLE, reader, &CIRCLE.entry("a").unwrap().value, &[]);
        assert!(said.to_string().starts_with("so and so and"), "{said}");
        assert!(said.to_string().contains('⟦'), "{said}");
    }

    #[test]
    fn variants_are_chosen_by_number_plural_and_keyword() {
        says("zones", &[("n", Arg::Count(0))], "no zone");
        says("zones", &[("n", Arg::Count(1))], "1 zone");
        says("zones", &[("n", Arg::Count(12))], "12 zones");
        says("zones", &[("n", Arg::Measured(1.0))], "1 m zones");
        says("zones", &[], "⟦$n⟧");
        says("who", &[("who", Arg::Word("leader"))], "the leader");
        says("who", &[("who", Arg::Word("last"))], "somebody");
        says("who", &[("who", Arg::Name("leader"))], "somebody");
    }

    #[test]
    fn units_choose_without_being_given() {
        says("head", &[], "length in metres");
        let imperial = said("head", Units::Imperial, &[]).to_string();
        assert_eq!(imperial, "length in feet");
    }

    #[test]
    fn references_take_the_arguments_along_and_lines_are_joined() {
        let args = [("n", Arg::Count(1)), ("zone", Arg::Name("The 30 m step"))];
        says("told", &args, "1 zone on The 30 m step, in two lines");
        let spans = said("told", Units::Imperial, &args);
        let name = Span::Name("The 30 m step".to_owned());
        assert!(spans.spans().contains(&name), "{spans:?}");
    }

    #[test]
    fn what_stands_between_backticks_is_one_span() {
        let spans = said("code", Units::Metric, &[("m", Arg::Number(60.0))]);
        let code = |text: &str| Span::Code(text.to_owned());
        assert_eq!(spans.spans()[1], code("--rope 60"));
        assert_eq!(spans.spans()[3], code("gap_m"));
        assert_eq!(spans.to_string(), "give `--rope 60` or `gap_m`");
    }
}
