//! The nouns going in.

mod party;
