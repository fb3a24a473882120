//! The only English: facts → words.

pub mod cautions;
pub mod fault;
pub mod place;
pub mod plain;
pub mod units;
pub mod words;
