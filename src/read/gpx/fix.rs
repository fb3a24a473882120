//! Attributes and text → positions and heights.

use std::{borrow::Cow, collections::HashSet, ops::RangeInclusive};

use quick_xml::{
    XmlVersion,
    events::{
        BytesStart,
        attributes::{AttrError, Attribute},
    },
};

use crate::{
    fault::{
        gpx::{Axis, NoDegrees},
        place::Excerpt,
    },
    geometry::lonlat::{ANTIMERIDIAN_MISSED_DEG, LonLat},
};

/// Attribute lists up to this length are checked pair by pair, longer ones with a set, bytes. \[ours\]
const SHORT_LIST_BYTES: usize = 2048;
/// Characters of a value that are quoted back. \[ours\]
const QUOTED_CHARACTERS: usize = 40;

/// `lat` and `lon` as written.
#[derive(Debug, Default)]
pub(super) struct WrittenPosition<'t> {
    pub(super) lat: Option<Cow<'t, str>>,
    pub(super) lon: Option<Cow<'t, str>>,
}

impl WrittenPosition<'_> {
    /// Whether this can be a position at all.
    pub(super) fn is_position(&self) -> bool {
        self.lat.is_some() && self.lon.is_some()
    }
}

/// The position among the attributes of a tag; all of them are checked.
///
/// # Errors
/// An attribute is malformed or given twice.
pub(super) fn written<'t>(tag: &'t BytesStart<'_>) -> Result<WrittenPosition<'t>, AttrError> {
    let mut found = WrittenPosition::default();
    let list = tag.attributes_raw();
    if list.is_empty() {
        return Ok(found);
    }
    let long = list.len() > SHORT_LIST_BYTES;
    if long {
        each_once(tag)?;
    }
    for attribute in tag.attributes().with_checks(!long) {
        let attribute = attribute?;
        match attribute.key.0 {
            "lat" => found.lat = Some(value(attribute)),
            "lon" => found.lon = Some(value(attribute)),
            _ => {}
        }
    }
    Ok(found)
}

/// Checks a long attribute list for doubles in linear time.
fn each_once(tag: &BytesStart<'_>) -> Result<(), AttrError> {
    let mut seen = HashSet::new();
    for attribute in tag.attributes().with_checks(false) {
        let key = attribute?.key.0;
        if !seen.insert(key) {
            let tag: &str = tag;
            // The parser hands out slices of the tag, so the difference is where the key stands.
            let at = (key.as_ptr() as usize).saturating_sub(tag.as_ptr() as usize);
            return Err(AttrError::Duplicated(at, 0));
        }
    }
    Ok(())
}

/// The value with references resolved; one that cannot be resolved stays as written.
fn value(attribute: Attribute<'_>) -> Cow<'_, str> {
    attribute
        .normalized_value(XmlVersion::Implicit1_0)
        .unwrap_or(attribute.value)
}

/// Which number of a position is wrong, and how.
pub(super) type MisplacedAxis = (Axis, NoDegrees);

/// The position, or what is wrong with it. Its longitude may still miss the antimeridian.
pub(super) fn position(written: &WrittenPosition<'_>) -> Result<LonLat, Vec<MisplacedAxis>> {
    let lat = degrees(Axis::Latitude, written.lat.as_deref());
    let lon = degrees(Axis::Longitude, written.lon.as_deref());
    let swapped =
        matches!((&lat, &lon), (Ok(lat), Ok(lon)) if lat.abs() > 90.0 && lon.abs() <= 90.0);
    let lat = lat.and_then(|lat| within(Axis::Latitude, lat, 90.0, swapped));
    let most_deg = 180.0 + ANTIMERIDIAN_MISSED_DEG;
    let lon = lon.and_then(|lon| within(Axis::Longitude, lon, most_deg, false));
    match (lat, lon) {
        (Ok(lat), Ok(lon)) => Ok(LonLat::new(lon, lat)),
        (lat, lon) => Err(lat.err().into_iter().chain(lon.err()).collect()),
    }
}

fn degrees(axis: Axis, text: Option<&str>) -> Result<f64, MisplacedAxis> {
    let Some(text) = text else {
        return Err((axis, NoDegrees::Missing));
    };
    // Hardly any has white space round it.
    match text.parse::<f64>().or_else(|_| text.trim().parse()) {
        Ok(number) if number.is_finite() => Ok(number),
        Ok(_) => Err((axis, NoDegrees::NotFinite(excerpt(text)))),
        Err(_) => {
            let pointed = text.trim().replace(',', ".");
            let no_number = NoDegrees::NoNumber {
                found: excerpt(text),
                comma: text.contains(',') && pointed.parse::<f64>().is_ok(),
            };
            Err((axis, no_number))
        }
    }
}

fn within(axis: Axis, deg: f64, most_deg: f64, swapped: bool) -> Result<f64, MisplacedAxis> {
    if deg.abs() <= most_deg {
        return Ok(deg);
    }
    Err((axis, NoDegrees::Beyond { deg, swapped }))
}

/// Lowest height that counts as one, metres: below the deepest shores; our judgement.
pub(super) const LOWEST_M: f64 = -500.0;
/// Highest height that counts as one, metres: above the highest summit; our judgement.
pub(super) const HIGHEST_M: f64 = 9000.0;
/// The same as heights are kept: both ends are written exactly.
#[expect(
    clippy::cast_possible_truncation,
    reason = "whole numbers far below 2^24"
)]
const HEIGHTS_M: RangeInclusive<f32> = LOWEST_M as f32..=HIGHEST_M as f32;

/// Why something is no height.
#[derive(Debug, PartialEq)]
pub(super) enum NoHeight {
    /// No finite number.
    NoNumber(Excerpt),
    /// A number where no ground is.
    Outside(Excerpt),
}

/// A height in metres; nothing where none is written.
///
/// # Errors
/// The text is no finite number, or no height of ground.
pub(super) fn height_m(text: &str) -> Result<Option<f32>, NoHeight> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    if let Some(height) = text.parse().ok().filter(|h| HEIGHTS_M.contains(h)) {
        return Ok(Some(height));
    }
    match text.parse::<f64>() {
        Ok(exact) if exact.is_finite() => Err(NoHeight::Outside(excerpt(text))),
        _ => Err(NoHeight::NoNumber(excerpt(text))),
    }
}

/// As much of a text from the file as is quoted back.
pub(super) fn excerpt(text: &str) -> Excerpt {
    Excerpt::of(text, QUOTED_CHARACTERS)
}
