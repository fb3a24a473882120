//! How long it takes, at what time of day the team is where, and how late it may be there; when the sun is up.

pub(crate) mod backwards;
pub(crate) mod bridges;
pub(crate) mod hours;
pub(crate) mod inside;
pub mod pace;
pub(crate) mod stops;
pub mod sun;
pub(crate) mod turn;
