//! Text → nouns: takes what a file holds, never its path, and reports every fault at once.

pub mod geojson;
pub mod gpx;
pub mod trip;
