//! The trip file: who goes, with what, and what the leader sets differently.

mod assume;
mod folk;
mod form;
mod forms;
mod halts;
mod laid;
mod names;
mod reading;
mod rest;
mod ropes;
mod stage;
pub(crate) mod who;
mod written;

pub use assume::{Assume, assume};
pub use folk::{Folk, PersonEntry};
pub use form::{Trip, TripFiles};
pub use halts::HaltEntry;
pub use laid::Laid;
pub use reading::{check, file, schema, trip};
pub use ropes::RopeEntry;
pub use stage::StageWord;
pub use written::toml_of_json;

/// How far beyond the end of the line a kilometre that was read off a table may lie, metres: half its last digit.
pub(super) const READ_OFF_M: f64 = 5.0;
