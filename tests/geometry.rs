//! Places and grids.

mod utm;
