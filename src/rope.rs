//! Legs → set-ups: knots, reserve, ledger, marks, falls and hauls, and the one allocator of ropes.

mod ahead;
pub(crate) mod answers;
pub(crate) mod arrest;
pub mod carried;
pub(crate) mod cure;
pub mod draft;
pub(crate) mod haul;
pub(crate) mod held;
pub mod ledger;
pub(crate) mod legs;
pub mod marks;
pub(crate) mod otherwise;
pub mod reserve;
pub(crate) mod setup;
pub mod share;
mod stance;
pub(crate) mod tied;
pub(crate) mod trade;
