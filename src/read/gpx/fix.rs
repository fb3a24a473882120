//! Attributes and text → positions and heights.

use std::borrow::Cow;
use std::collections::HashSet;

use quick_xml::{
    XmlVersion,
    events::{
        BytesStart,
        attributes::{AttrError, Attribute},
    },
};

use crate::geometry::LonLat;

/// Attribute lists up to this length are checked pair by pair, longer ones with a set, bytes. \[ours\]
const SHORT_LIST_BYTES: usize = 2048;
/// Characters of a value that are quoted back. \[ours\]
const QUOTED_CHARACTERS: usize = 40;

/// `lat` and `lon` as written.
#[derive(Debug, Default)]
pub(super) struct Written<'t> {
    pub(super) lat: Option<Cow<'t, str>>,
    pub(super) lon: Option<Cow<'t, str>>,
}

impl Written<'_> {
    /// Whether this can be a position at all.
    pub(super) fn is_position(&self) -> bool {
        self.lat.is_some() && self.lon.is_some()
    }
}

/// The position among the attributes of a tag; all of them are checked.
///
/// # Errors
/// An attribute is malformed or given twice.
pub(super) fn written<'t>(tag: &'t BytesStart<'_>) -> Result<Written<'t>, AttrError> {
    let mut found = Written::default();
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

/// What is wrong with one number.
#[derive(Debug, PartialEq)]
pub(super) struct Fault {
    /// The attribute.
    pub(super) property: &'static str,
    pub(super) says: String,
    pub(super) hint: String,
}

/// The position, or what is wrong with it.
pub(super) fn position(written: &Written<'_>) -> Result<LonLat, Vec<Fault>> {
    let lat = degrees("latitude", "lat", written.lat.as_deref());
    let lon = degrees("longitude", "lon", written.lon.as_deref());
    let swapped =
        matches!((&lat, &lon), (Ok(lat), Ok(lon)) if lat.abs() > 90.0 && lon.abs() <= 90.0);
    let lat = lat.and_then(|lat| latitude(lat, swapped));
    let lon = lon.and_then(longitude);
    match (lat, lon) {
        (Ok(lat), Ok(lon)) => Ok(LonLat::new(lon, lat)),
        (lat, lon) => Err(lat.err().into_iter().chain(lon.err()).collect()),
    }
}

fn degrees(word: &str, property: &'static str, text: Option<&str>) -> Result<f64, Fault> {
    let fault = |says: String, hint: String| Fault {
        property,
        says,
        hint,
    };
    let Some(text) = text else {
        let hint = format!("give `{property}` in degrees, or take the point out");
        return Err(fault(format!("the {word} is missing"), hint));
    };
    match text.trim().parse::<f64>() {
        Ok(number) if number.is_finite() => Ok(number),
        Ok(_) => Err(fault(
            format!("the {word} {} is not finite", quoted(text)),
            format!("give `{property}` in degrees, or take the point out"),
        )),
        Err(_) => Err(fault(
            format!("the {word} {} is no number", quoted(text)),
            number_hint(text),
        )),
    }
}

fn number_hint(text: &str) -> String {
    let pointed = text.trim().replace(',', ".");
    if text.contains(',') && pointed.parse::<f64>().is_ok() {
        return format!("write it with a point: {}", quoted(&pointed));
    }
    "write plain decimal degrees, south and west with a minus sign".to_owned()
}

fn latitude(lat_deg: f64, swapped: bool) -> Result<f64, Fault> {
    if lat_deg.abs() <= 90.0 {
        return Ok(lat_deg);
    }
    let hint = if swapped {
        "perhaps `lat` and `lon` are swapped"
    } else {
        "latitudes go from -90 to 90 degrees; projected coordinates have to be converted to WGS 84"
    };
    Err(Fault {
        property: "lat",
        says: format!("the latitude {lat_deg} is beyond 90 degrees"),
        hint: hint.to_owned(),
    })
}

fn longitude(lon_deg: f64) -> Result<f64, Fault> {
    if lon_deg.abs() <= 180.0 {
        return Ok(lon_deg);
    }
    let hint = if (180.0..=360.0).contains(&lon_deg) {
        let turned = format!("{:.9}", lon_deg - 360.0);
        let turned = turned.trim_end_matches('0').trim_end_matches('.');
        format!("GPX counts longitudes from -180 to 180: write {turned}")
    } else {
        "longitudes go from -180 to 180 degrees; projected coordinates have to be converted to WGS 84"
            .to_owned()
    };
    Err(Fault {
        property: "lon",
        says: format!("the longitude {lon_deg} is beyond 180 degrees"),
        hint,
    })
}

/// A height in metres; nothing where none is written.
///
/// # Errors
/// The text is no finite number; what it is, quoted.
pub(super) fn height_m(text: &str) -> Result<Option<f32>, String> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    match text.parse::<f32>() {
        Ok(height) if height.is_finite() => Ok(Some(height)),
        _ => Err(quoted(text)),
    }
}

/// Something from the file, fit to be printed: short, in quotes, without control characters.
pub(super) fn quoted(text: &str) -> String {
    let mut shown = String::new();
    for character in text.chars().take(QUOTED_CHARACTERS) {
        match character {
            '\'' => shown.push(character),
            _ => shown.extend(character.escape_debug()),
        }
    }
    let cut = text.chars().nth(QUOTED_CHARACTERS).map_or("", |_| "…");
    format!("\"{shown}{cut}\"")
}

/// A name as people read it: white space collapsed, nothing where nothing is left.
pub(super) fn tidy(text: &str) -> Option<String> {
    let words: Vec<&str> = text.split_whitespace().collect();
    (!words.is_empty()).then(|| words.join(" "))
}
