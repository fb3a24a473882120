//! Laws that hold whatever the route and the ice look like, tried on thousands of invented ones.

mod crossings;
mod figures;
mod ground;
mod legs;
