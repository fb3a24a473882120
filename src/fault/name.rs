//! Names as people read them, and what is wrong with one.

use super::{files::InFiles, place::Excerpt};

/// Characters of a name that are quoted back; our judgement.
const QUOTED_CHARACTERS: usize = 60;
/// Stands for a NUL where it must be shown.
const SHOWN_NUL: char = '\u{2400}';

/// A name with runs of spaces and line breaks closed up to one space; nothing where nothing is left.
///
/// ```
/// use schrund::fault::name::tidy;
///
/// assert_eq!(tidy(" Upper \n  icefall ").as_deref(), Some("Upper icefall"));
/// assert_eq!(tidy(" \t"), None);
/// ```
#[must_use]
pub fn tidy(name: &str) -> Option<String> {
    let words: Vec<&str> = name.split_whitespace().collect();
    (!words.is_empty()).then(|| words.join(" "))
}

/// What is wrong with a name that holds a NUL: it ends there for many programs, and no XML can hold it.
#[must_use]
pub fn nul(name: &str) -> Option<InFiles> {
    name.contains('\0').then(|| {
        let shown = name.replace('\0', &SHOWN_NUL.to_string());
        InFiles::NulInName(Excerpt::of(&shown, QUOTED_CHARACTERS))
    })
}
