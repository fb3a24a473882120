//! How long it takes, and at what time of day the team is where.

pub(crate) mod hours;
pub mod pace;
