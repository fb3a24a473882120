//! Heights of the ground from raster files: one or several terrain models, the finest first.
//!
//! A model is opened from anything that can be read and sought in; only the strips or tiles under the asked
//! positions are unpacked, and 24 MiB of them are kept. Read are GeoTIFF (uncompressed, LZW, Deflate, PackBits) and
//! `.hgt` tiles; everything that would have to be guessed is refused with a command that converts it.
//! Voids are never filled and never turned into numbers.
//!
//! *Model:* bilinear between the four surrounding cell centres. *Valid:* inside a model, away from voids.
//! *Error:* the arithmetic is exact to 1 mm; what a model of 30 m cells says about the ground is another matter:
//! it flattens short steps. Positions in a system of another datum can be off by 2 m (data/crs.toml).
//! *Checked:* tests/raster

mod chunks;
#[cfg(feature = "fetch")]
mod excerpt;
mod geokeys;
mod geotags;
mod geotiff;
mod grid;
mod hgt;
mod kind;
mod met;
mod metadata;
mod model;
mod parts;
mod placing;
mod reading;
mod refusal;
mod relief;
mod slope;
mod systems;
mod terrain;

pub use crate::raster::{
    chunks::{RasterSource, ReadSeek},
    slope::GroundSlope,
    terrain::{SourcedHeight, Terrain},
};

pub(crate) use crate::raster::{
    kind::is_tiff,
    met::ModelsAsked,
    systems::{CoordinateSystem, projected},
    terrain::Identity,
};
