//! The only English: facts → words.
//!
//! A [`voice::Voice`] takes the key of a message and its facts ([`arg::Arg`]) and gives spans ([`span::Said`]):
//! words from `data/words/`, figures rounded by [`round::Round`], and the leader's own names as they were.

pub mod arg;
mod catalogue;
pub mod cautions;
pub mod fault;
mod ftl;
pub mod language;
mod pattern;
pub mod place;
pub mod plain;
mod render;
pub mod round;
pub mod span;
pub mod units;
pub mod voice;
pub mod words;
