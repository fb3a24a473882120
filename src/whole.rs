//! What belongs to the whole trip: its legs put together, ropes to carry, set-ups kept, what the plan rests on.

pub(crate) mod assumptions;
pub(crate) mod carry;
pub(crate) mod clock;
pub(crate) mod field;
pub(crate) mod findings;
pub(crate) mod gear;
mod growing;
mod hours;
pub(crate) mod keep;
mod kept;
pub(crate) mod legs;
mod observed;
mod parts;
pub(crate) mod route;
pub mod runs;
mod spares;
mod turns;
pub(crate) mod worked;
pub(crate) mod zones;
