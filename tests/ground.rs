//! The ground in the plan: synthetic rasters whose answer is known, and routes and zones on them.

mod heights;
mod ice;
mod slopes;
mod strikes;
