//! Plane and ellipsoid; knows no glaciers.

pub mod antimeridian;
pub mod area;
pub mod bounds;
pub mod corridor;
mod edge;
pub mod ellipsoid;
pub mod frame;
pub mod lie;
pub mod lonlat;
pub mod outline;
pub mod projection;
pub mod segment;
mod short;
#[cfg(test)]
mod spread;
mod tangle;
pub mod utm;

pub use bounds::Bounds;
pub use lonlat::LonLat;
pub use outline::{Outline, Polygon};
pub use utm::Utm;
