//! How long it takes, and when the team is where.

pub(crate) mod clock;
pub mod pace;
