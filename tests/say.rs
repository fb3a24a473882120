//! Facts in words.

mod figures;
mod names;
