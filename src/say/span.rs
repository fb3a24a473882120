//! What was said, in spans: words, figures, the reader's own names, and what he types.

use std::{borrow::Cow, fmt};

/// One stretch of text of one kind, so that a writer can set it, fit it or leave it alone.
///
/// ```
/// use schrund::say::{finding::says, span::Span, voice::Voice};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let exact = plan.legs[3].findings.iter().find(|finding| finding.code() == "strike-taken-as-exact");
/// let said = says(exact.expect("one strike is given without its uncertainty"), Voice::default());
/// // What the leader wrote is told from words, so that a writer can leave it alone.
/// let names = said.spans().iter().filter(|span| matches!(span, Span::Name(_)));
/// assert_eq!(names.map(Span::text).collect::<Vec<_>>(), ["Upper step"]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Span {
    /// Words of the catalogue.
    Words(Cow<'static, str>),
    /// A number with its unit, with plain spaces between them; a writer may keep it on one line.
    Figure(String),
    /// The leader's own text: a zone, a rope, a person, a stage. Never altered on its way.
    Name(String),
    /// What the reader types or writes: `--rope 60`, `gap_m`. It may quote the leader's own text.
    Code(String),
}

impl Span {
    /// The text of the span, without marks.
    #[must_use]
    pub fn text(&self) -> &str {
        match self {
            Self::Words(text) => text,
            Self::Figure(text) | Self::Name(text) | Self::Code(text) => text,
        }
    }
}

impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Code(text) => write!(f, "`{text}`"),
            _ => f.write_str(self.text()),
        }
    }
}

/// A piece of language made of [`Span`]s; `to_string` gives plain text with code between backticks.
///
/// ```
/// use schrund::say::span::Said;
///
/// let ropes = Said::join([Said::name("blue"), Said::name("old 50 m")], ", ");
/// let said = Said::from("ropes: ").then(ropes).then(", see ").then(Said::code("--rope"));
/// assert_eq!(said.capital().to_string(), "Ropes: blue, old 50 m, see `--rope`");
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct Said(Vec<Span>);

impl Said {
    /// The leader's own text.
    #[must_use]
    pub fn name(text: impl Into<String>) -> Self {
        Span::Name(text.into()).into()
    }

    /// Words that were said before, such as a line that is put under a label.
    #[must_use]
    pub fn words(text: impl Into<String>) -> Self {
        Span::Words(Cow::Owned(text.into())).into()
    }

    /// A number with its unit.
    #[must_use]
    pub fn figure(text: impl Into<String>) -> Self {
        Span::Figure(text.into()).into()
    }

    /// What the reader types or writes.
    #[must_use]
    pub fn code(text: impl Into<String>) -> Self {
        Span::Code(text.into()).into()
    }

    /// The spans in order. A word may be made of several.
    #[must_use]
    pub fn spans(&self) -> &[Span] {
        &self.0
    }

    /// Whether nothing was said.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.iter().all(|span| span.text().is_empty())
    }

    /// This, and the other right behind it.
    #[must_use]
    pub fn then(mut self, other: impl Into<Self>) -> Self {
        self.0.extend(other.into().0);
        self
    }

    /// All of them with the separator between each two.
    #[must_use]
    pub fn join(list: impl IntoIterator<Item = Self>, separator: impl Into<Self>) -> Self {
        let separator = separator.into();
        let mut spans = Vec::new();
        for (i, said) in list.into_iter().enumerate() {
            if i > 0 {
                spans.extend_from_slice(&separator.0);
            }
            spans.extend(said.0);
        }
        Self(spans)
    }

    /// The first letter in upper case, unless a name, a figure or code stands first.
    #[must_use]
    pub fn capital(mut self) -> Self {
        if let Some(Span::Words(words)) = self.0.first_mut() {
            let mut letters = words.chars();
            if let Some(first) = letters.next().filter(|c| !c.is_uppercase()) {
                *words = Cow::Owned(first.to_uppercase().chain(letters).collect());
            }
        }
        self
    }

    /// The leader's names as a writer must have them for its line; everything else as it was.
    #[must_use]
    pub fn map_names(mut self, mut fit: impl FnMut(&str) -> String) -> Self {
        for span in &mut self.0 {
            if let Span::Name(text) = span {
                *text = fit(text);
            }
        }
        self
    }

    /// The same for code, which may quote what the leader wrote.
    #[must_use]
    pub fn map_code(mut self, mut fit: impl FnMut(&str) -> String) -> Self {
        for span in &mut self.0 {
            if let Span::Code(text) = span {
                *text = fit(text);
            }
        }
        self
    }
}

impl fmt::Display for Said {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|span| span.fmt(f))
    }
}

impl From<Span> for Said {
    fn from(span: Span) -> Self {
        Self(vec![span])
    }
}

impl From<&Self> for Said {
    fn from(said: &Self) -> Self {
        said.clone()
    }
}

impl From<Vec<Span>> for Said {
    fn from(spans: Vec<Span>) -> Self {
        Self(spans)
    }
}

/// Words that are the same in every language: punctuation, mostly.
impl From<&'static str> for Said {
    fn from(words: &'static str) -> Self {
        Span::Words(Cow::Borrowed(words)).into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_words_are_put_in_upper_case() {
        assert_eq!(Said::from("éboulis").capital().to_string(), "Éboulis");
        assert_eq!(Said::name("iPhone").capital().to_string(), "iPhone");
        assert_eq!(Said::code("gap_m").capital().to_string(), "`gap_m`");
        assert_eq!(Said::default().capital(), Said::default());
    }

    #[test]
    fn joined_said_and_empty() {
        let list = ["a", "b", "c"].map(Said::name);
        assert_eq!(Said::join(list, " / ").to_string(), "a / b / c");
        assert!(
            Said::join([], ", ").is_empty(),
            "nothing joined is something"
        );
        assert!(Said::from("").is_empty(), "no text is something");
        assert!(!Said::figure("3").is_empty(), "a figure is nothing");
    }

    #[test]
    fn a_writer_fits_names_and_code_apart() {
        let said = Said::from("on ")
            .then(Said::name("a\nb"))
            .then(Said::code("c\nd"));
        let fit = |text: &str| text.replace('\n', " ");
        assert_eq!(said.clone().map_names(fit).to_string(), "on a b`c\nd`");
        assert_eq!(said.map_code(fit).to_string(), "on a\nb`c d`");
    }
}
