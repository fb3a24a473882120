//! Text → nouns: takes what a file holds, never its path, and reports every fault at once.
//!
//! [`lay::Sources`] takes all inputs of a trip and makes a [`crate::Job`] of them; the other rooms read one kind of
//! file each.

mod alone;
pub mod as_text;
mod both;
mod endless;
#[cfg(feature = "flatgeobuf")]
mod flatgeobuf;
mod gathered;
pub mod geojson;
pub mod gpx;
mod grid;
mod ice;
pub mod input;
mod inventory;
pub mod kind;
pub mod lay;
pub mod number;
pub mod practice;
mod signature;
pub mod swapped;
mod timed;
pub mod trip;
mod unlaid;
