//! What kind of file some bytes begin.

use crate::{raster, read::signature};

/// The kinds of input there are.
///
/// ```
/// use schrund::{example::{ROUTE_GPX, TRIP_TOML, ZONES_GEOJSON}, read::kind::{Kind, is_practice, of}};
///
/// let kinds = [ROUTE_GPX, ZONES_GEOJSON, TRIP_TOML].map(|text| of("standard input", text.as_bytes()));
/// assert_eq!(kinds, [Kind::Route, Kind::Zones, Kind::Toml]);
/// assert_eq!(of("N46E007.hgt", &[0x09, 0xC4]), Kind::Terrain, "heights without a beginning of their own");
/// assert!(!is_practice(TRIP_TOML), "it gives no spacings");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A terrain model.
    Terrain,
    /// Zones, or a glacier inventory.
    Zones,
    /// A route.
    Route,
    /// A trip file or a practice file; [`is_practice`] tells them apart.
    Toml,
}

/// What a file is, by how it begins, or by its name where that leaves it open.
///
/// ```
/// use schrund::read::kind::{Kind, of};
///
/// assert_eq!(of("somewhere", b"\xEF\xBB\xBF <gpx>"), Kind::Route);
/// assert_eq!(of("somewhere", b"party = 3"), Kind::Toml);
/// assert_eq!(of("somewhere", b"[[rope]]"), Kind::Toml);
/// assert_eq!(of("empty.toml", b""), Kind::Toml);
/// assert_eq!(of("somewhere", b"[[1, 2]]"), Kind::Zones);
/// ```
#[must_use]
pub fn of(name: &str, start: &[u8]) -> Kind {
    if is_terrain(name, start) {
        return Kind::Terrain;
    }
    if is_flatgeobuf(start) {
        return Kind::Zones;
    }
    match first_sign(start) {
        Some(b'[') if begins_toml_table(start) && !name.ends_with("json") => Kind::Toml,
        Some(b'{' | b'[' | 0x1E) => Kind::Zones,
        Some(b'<') => Kind::Route,
        _ if name.ends_with(".gpx") => Kind::Route,
        _ if name.ends_with("json") => Kind::Zones,
        None if !name.ends_with(".toml") => Kind::Route,
        _ => Kind::Toml,
    }
}

/// Whether the brackets are followed by a name: `[assume]` and `[[rope]]` are tables, `[1]` and `[[1]]` lists of JSON.
fn begins_toml_table(start: &[u8]) -> bool {
    let mut brackets = start.iter().skip_while(|b| **b != b'[');
    let inside = brackets.find(|b| **b != b'[');
    inside.is_some_and(u8::is_ascii_alphabetic)
}

/// Whether a TOML text is a practice file: only those give spacings.
#[must_use]
pub fn is_practice(text: &str) -> bool {
    text.contains("[spacing_")
}

/// Whether zones or an inventory are FlatGeobuf, by how the file begins.
///
/// ```
/// assert!(schrund::read::kind::is_flatgeobuf(b"fgb\x03fgb\x00"));
/// assert!(!schrund::read::kind::is_flatgeobuf(b"fgb = 3"));
/// ```
#[must_use]
pub fn is_flatgeobuf(start: &[u8]) -> bool {
    signature::is_flatgeobuf(start)
}

/// Whether a file is a terrain model, by its first bytes or by its name where it has none of its own.
fn is_terrain(name: &str, start: &[u8]) -> bool {
    let ends = |end: &str| name.to_ascii_lowercase().ends_with(end);
    raster::is_tiff(start) || [".hgt", ".tif", ".tiff"].into_iter().any(ends)
}

/// The first byte that is neither space nor byte-order mark.
pub(super) fn first_sign(start: &[u8]) -> Option<u8> {
    start
        .iter()
        .copied()
        .find(|b| !b.is_ascii_whitespace() && !matches!(b, 0xEF | 0xBB | 0xBF | 0xFE | 0xFF | 0))
}
