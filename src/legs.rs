//! Contacts → legs: what a rope meets on a stretch, how far apart that asks people to walk, and which stretches are roped.

pub mod knots;
pub(crate) mod memo;
pub mod over;
pub(crate) mod sketch;
pub mod spacing;
pub(crate) mod stretch;
pub mod worst;
