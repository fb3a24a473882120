//! How the route is cut into legs.

mod laws;
