//! GeoJSON into zones: streamed, one feature at a time, every fault reported in one go.
//!
//! ```text
//! text ─document▶ members of one feature ─┬ shape ▶ rings ▶ Outline ─┐
//!                                         └ properties, gap ─────────┴▶ Zone
//! ```

mod blocks;
mod crs;
mod document;
mod doubled;
mod gap;
mod given;
mod held;
mod judge;
mod kind;
mod known;
mod log;
mod members;
mod names;
mod nesting;
mod number;
mod opening;
mod plain;
mod positions;
mod properties;
mod quote;
mod reading;
mod rings;
mod shape;
mod strike;
#[cfg(feature = "flatgeobuf")]
mod taken;
mod text;

use std::io::Read;

use self::reading::ZonesReading;
use crate::{
    fault::{Fault, Noted},
    trip::zone::Zone,
};

#[cfg(feature = "flatgeobuf")]
pub(super) use self::{
    crs::is_wgs84,
    plain::READ,
    taken::{PlainFeature, ZonesTaken},
};
pub use self::{given::Given, known::KnownShapes};

/// Reads the zones of a GeoJSON text `[rfc7946]`; `name` is what the messages call the file.
///
/// FeatureCollection, Feature, bare geometry, several of them one after the other (newline-delimited,
/// or with the record separators of RFC 8142), with or without byte-order mark. Only one feature is
/// held as text at a time.
///
/// # Errors
/// Every fault of the file at once, in input order, repeats grouped, followed by the warnings and notes
/// met on the way. Only broken JSON ends the reading early.
pub fn zones(name: &str, text: impl Read, given: &Given) -> Result<Noted<Vec<Zone>>, Vec<Fault>> {
    read(name, text, given, None)
}

/// The same for who reads a file again and again with little of it changed: what is known of its geometries is not read
/// anew, and what is new is known from then on.
///
/// # Errors
/// As [`zones`].
pub fn zones_again(
    name: &str,
    text: impl Read,
    given: &Given,
    known: &KnownShapes,
) -> Result<Noted<Vec<Zone>>, Vec<Fault>> {
    read(name, text, given, Some(known))
}

fn read(
    name: &str,
    text: impl Read,
    given: &Given,
    known: Option<&KnownShapes>,
) -> Result<Noted<Vec<Zone>>, Vec<Fault>> {
    let mut reading = ZonesReading::new(name, *given, known);
    plain::read(text, &mut reading);
    reading.finish()
}
