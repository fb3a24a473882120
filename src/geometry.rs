//! Plane and ellipsoid; knows no glaciers.

pub mod lonlat;

pub use lonlat::LonLat;
