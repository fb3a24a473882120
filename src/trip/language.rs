//! The language in which a plan is told.

use crate::practice::term::{Terms, terms};

terms! {
    /// The language in which a plan is told, by its tag (BCP 47).
    ///
    /// ```
    /// use schrund::{practice::term::Terms, trip::language::Language};
    ///
    /// assert_eq!(Language::named("de"), Some(Language::German));
    /// assert_eq!((Language::default().tag(), Language::ALL.len()), ("en", Language::names().len()));
    /// ```
    Language {
        /// English.
        #[default]
        English "en",
        /// German.
        German "de",
    }
}

impl Language {
    /// All there are; English, which the others follow, first.
    pub const ALL: &[Self] = &[Self::English, Self::German];

    /// The tag of the language as in BCP 47: `en`.
    #[must_use]
    pub fn tag(self) -> &'static str {
        self.name()
    }
}
