//! The only words: facts → sentences, in the units and the language of whoever reads.
//!
//! Messages stand in `data/words/`, a folder a language. A [`voice::Voice`] fills them and gives [`span::Said`]: spans,
//! so that names of the user are never touched and figures are told from words.

pub mod arg;
pub mod assumption;
pub mod carry;
mod catalogue;
pub mod cautions;
pub mod drawing;
pub mod fault;
pub mod fetched;
pub mod field;
pub mod finding;
mod ftl;
pub mod gear;
pub mod hour;
pub mod interface;
pub mod language;
pub mod mark;
pub mod name;
pub mod options;
mod pattern;
pub mod place;
pub mod plain;
mod render;
pub mod round;
pub mod setup;
pub mod spacing;
pub mod span;
pub mod strip;
pub mod units;
pub mod voice;
pub mod without;
