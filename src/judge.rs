//! Numbers → findings → verdicts. No sentence is made here.

mod bare;
pub(crate) mod belays;
pub(crate) mod cure;
mod falls;
pub(crate) mod falls_on;
mod ground;
mod halts;
pub(crate) mod jumps;
pub(crate) mod leg;
mod one_by_one;
pub(crate) mod place;
mod steepest;
mod team;
pub(crate) mod tied;
mod travel;
pub(crate) mod verdict;
mod zones;
