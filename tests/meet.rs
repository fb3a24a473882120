//! Where the route meets the ice.

mod covered;
mod laws;
mod reference;
mod touch;
mod undrawn;
