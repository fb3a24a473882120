//! The only English: facts → words.

pub mod cautions;
pub mod place;
pub mod plain;
pub mod round;
pub mod units;
pub mod words;
