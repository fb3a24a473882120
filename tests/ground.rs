//! The ground in the plan: synthetic rasters whose answer is known, and routes and zones on them.

mod climbs;
mod heights;
mod ice;
mod lone;
mod real;
mod slopes;
mod strikes;
