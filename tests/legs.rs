//! How the route is cut into legs.

mod askew;
mod ice;
mod laws;
