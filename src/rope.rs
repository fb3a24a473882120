//! Legs → set-ups: knots, reserve, ledger, marks, falls and hauls, and the one allocator of ropes.

pub(crate) mod answers;
pub mod arrest;
pub mod carried;
pub mod draft;
pub mod haul;
pub mod ledger;
pub(crate) mod legs;
pub mod marks;
pub mod reserve;
pub mod setup;
pub mod share;
