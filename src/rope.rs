//! Legs → decisions: spacing, knots, reserve, and how much rope that takes.

pub(crate) mod answers;
pub mod arrest;
pub mod haul;
pub mod knots;
pub mod ledger;
pub mod marks;
pub mod reserve;

pub mod setup;
pub mod share;
