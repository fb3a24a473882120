//! Numbers → findings → verdicts. No sentence is made here.

mod falls;
mod ground;
pub(crate) mod jumps;
pub(crate) mod leg;
mod place;
mod team;
mod travel;
mod zones;
