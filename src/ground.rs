//! What lies under the line: heights, slopes, the slope toward the lip, roll-overs, proposed strikes, relief.
//!
//! *Model:* heights and slopes of [`crate::raster`] at places along the line. *Valid:* for what is wider than a
//! few cells; a model flattens whatever is shorter, so its figures may only make a plan more careful.
//! *Checked:* tests/ground, on surfaces whose answer is known.

pub(crate) mod agreement;
pub(crate) mod along;
pub mod climb;
pub(crate) mod convex;
pub(crate) mod footing;
pub(crate) mod gradient;
pub mod heights;
pub(crate) mod incline;
pub(crate) mod known;
pub(crate) mod line;
mod lone;
mod marks;
pub(crate) mod met;
mod pieces;
mod places;
pub mod profile;
pub(crate) mod proposal;
pub mod relief;
pub mod samples;
mod smooth;
pub mod steep;
mod steepening;
pub(crate) mod underfoot;
pub(crate) mod underway;
