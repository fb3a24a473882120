//! What is said, in spans: words of ours, figures, the user's own names, and what is typed or written in files.

use std::fmt;

/// One piece of what is said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Span {
    /// Words of the catalogue.
    Words(String),
    /// A number with its unit.
    Figure(String),
    /// What the user calls something; never altered.
    Name(String),
    /// What is typed or written in a file; shown between backticks in plain text.
    Code(String),
}

/// Something said. Plain text by `to_string`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Said {
    spans: Vec<Span>,
}

impl Said {
    /// The spans, in order.
    #[must_use]
    pub fn spans(&self) -> &[Span] {
        &self.spans
    }

    /// Words that stand in no catalogue, such as punctuation between parts.
    #[must_use]
    pub fn words(text: &str) -> Self {
        Self::of(Span::Words(text.to_owned()))
    }

    /// A figure that is ready to be read.
    #[must_use]
    pub fn figure(text: &str) -> Self {
        Self::of(Span::Figure(text.to_owned()))
    }

    /// What the user calls something.
    #[must_use]
    pub fn name(text: &str) -> Self {
        Self::of(Span::Name(text.to_owned()))
    }

    /// Words with what stands between backticks as code.
    #[must_use]
    pub fn with_code(text: &str) -> Self {
        let mut said = Self::default();
        for (i, part) in text.split('`').enumerate() {
            said.push(match i % 2 {
                0 => Span::Words(part.to_owned()),
                _ => Span::Code(part.to_owned()),
            });
        }
        said
    }

    fn of(span: Span) -> Self {
        Self { spans: vec![span] }
    }

    /// Whether nothing is said.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.spans.is_empty()
    }

    /// Adds a span behind the others; words join words.
    pub(super) fn push(&mut self, span: Span) {
        match (self.spans.last_mut(), span) {
            (_, Span::Words(more)) if more.is_empty() => {}
            (Some(Span::Words(words)), Span::Words(more)) => words.push_str(&more),
            (_, span) => self.spans.push(span),
        }
    }

    /// This and then that.
    #[must_use]
    pub fn then(mut self, more: &Self) -> Self {
        for span in &more.spans {
            self.push(span.clone());
        }
        self
    }

    /// All of them with a separator between.
    #[must_use]
    pub fn join(all: impl IntoIterator<Item = Self>, separator: &str) -> Self {
        let mut joined = Self::default();
        for (i, said) in all.into_iter().enumerate() {
            if i > 0 {
                joined.push(Span::Words(separator.to_owned()));
            }
            joined = joined.then(&said);
        }
        joined
    }

    /// With the first letter in upper case, if it is one of ours.
    #[must_use]
    pub fn capital(mut self) -> Self {
        if let Some(Span::Words(words)) = self.spans.first_mut() {
            let mut letters = words.chars();
            if let Some(first) = letters.next() {
                *words = first.to_uppercase().chain(letters).collect();
            }
        }
        self
    }

    /// With the user's names made fit for the place where they will stand.
    #[must_use]
    pub fn map_names(mut self, fit: impl Fn(&str) -> String) -> Self {
        for span in &mut self.spans {
            if let Span::Name(name) = span {
                *name = fit(name);
            }
        }
        self
    }
}

impl fmt::Display for Said {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for span in &self.spans {
            match span {
                Span::Words(text) | Span::Figure(text) | Span::Name(text) => f.write_str(text)?,
                Span::Code(text) => write!(f, "`{text}`")?,
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_stay_as_they_are_and_words_take_the_capital() {
        let said = Said::words("zone ").then(&Said::name("upper icefall"));
        assert_eq!(said.clone().capital().to_string(), "Zone upper icefall");
        assert_eq!(Said::name("ada").capital().to_string(), "ada");
        let fit = said.map_names(|name| name.replace(' ', "_"));
        assert_eq!(fit.to_string(), "zone upper_icefall");
    }

    #[test]
    fn words_that_meet_are_one_span() {
        let joined = Said::join([Said::words("a"), Said::words("b")], ", ");
        assert_eq!(joined.spans(), [Span::Words("a, b".to_owned())]);
        assert!(Said::join([], ", ").is_empty(), "nothing of nothing");
    }
}
