//! The readers: what is accepted, what is noted, what is refused.

mod flatgeobuf;
mod geojson;
mod gpx;
mod lay;
mod swapped;
mod trip;
