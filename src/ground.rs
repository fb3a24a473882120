//! What lies under the line: heights, slopes, the slope toward the lip, roll-overs, proposed strikes, relief.
//!
//! *Model:* heights and slopes of [`crate::raster`] at places along the line. *Valid:* for what is wider than a
//! few cells; a model flattens whatever is shorter, so its figures may only make a plan more careful.
//! *Checked:* tests/ground, on surfaces whose answer is known.

pub mod agreement;
pub mod along;
pub mod climb;
pub mod convex;
pub mod footing;
pub mod heights;
pub mod met;
mod places;
pub mod profile;
pub mod proposal;
pub mod relief;
mod smooth;
pub mod underfoot;
