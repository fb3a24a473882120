//! The words of the page for drawing, which stand in its file: it asks for them by name, and they take no arguments.

use crate::say::{language::Language, voice::Voice};

/// What their names begin with in the catalogue.
const DRAW: &str = "draw-";

/// All of them by their names, in the order of these.
///
/// ```
/// use schrund::say::{drawing::words, language::Language};
///
/// let names = |language| words(language).into_iter().map(|(name, _)| name).collect::<Vec<_>>();
/// assert_eq!(names(Language::English), names(Language::German));
/// ```
#[must_use]
pub fn words(language: Language) -> Vec<(&'static str, String)> {
    let voice = Voice {
        language,
        ..Voice::default()
    };
    let messages = language.catalogue().messages();
    let messages = messages.filter(|name| name.starts_with(DRAW));
    let mut words: Vec<_> = messages
        .map(|name| (name, voice.say(name, &[]).to_string()))
        .collect();
    words.sort_unstable();
    words
}
