//! Facts in words.

mod figures;
mod languages;
mod names;
