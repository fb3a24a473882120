//! What belongs to the whole trip: ropes to carry, set-ups kept, what the plan rests on.

pub(crate) mod account;
pub(crate) mod assumptions;
pub(crate) mod frame;
pub(crate) mod keep;
pub mod runs;
