//! Where the route meets the ice.

mod laws;
mod reference;
mod touch;
mod undrawn;
