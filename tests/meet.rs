//! Where the route meets the ice.

mod angle;
mod covered;
mod jumps;
mod laws;
mod near;
mod reference;
mod touch;
mod turns;
mod undrawn;
