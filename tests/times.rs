//! Hours on the way.

mod backwards;
mod clock;
mod halts;
mod inside;
mod partly;
mod sun;
