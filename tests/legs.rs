//! How the route is cut into legs.

mod ice;
mod laws;
