//! Places, grids and strips of ground.

mod corridor;
mod utm;
