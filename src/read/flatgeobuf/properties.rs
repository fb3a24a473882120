//! The properties of a feature as GeoJSON: the number of a column and its value, again and again.

use base64::{Engine, prelude::BASE64_STANDARD};
use flatgeobuf::ColumnType;
use serde::{Serialize, de::IgnoredAny};

use super::opening::Column;

/// Writes the properties that these bytes hold; `None` where they make no sense.
pub(super) fn write(mut bytes: &[u8], columns: &[Column], text: &mut Vec<u8>) -> Option<()> {
    text.push(b'{');
    let mut written = 0;
    while !bytes.is_empty() {
        let column = usize::from(u16::from_le_bytes(taken(&mut bytes)?));
        let column = columns.get(column)?;
        separate(written, text);
        json(column.name.as_str(), text);
        text.push(b':');
        value(column.kind, &mut bytes, text)?;
        written += 1;
    }
    text.push(b'}');
    Some(())
}

fn value(kind: ColumnType, bytes: &mut &[u8], text: &mut Vec<u8>) -> Option<()> {
    match kind {
        ColumnType::Byte => json(i8::from_le_bytes(taken(bytes)?), text),
        ColumnType::UByte => json(u8::from_le_bytes(taken(bytes)?), text),
        ColumnType::Bool => json(taken::<1>(bytes)? != [0], text),
        ColumnType::Short => json(i16::from_le_bytes(taken(bytes)?), text),
        ColumnType::UShort => json(u16::from_le_bytes(taken(bytes)?), text),
        ColumnType::Int => json(i32::from_le_bytes(taken(bytes)?), text),
        ColumnType::UInt => json(u32::from_le_bytes(taken(bytes)?), text),
        ColumnType::Long => json(i64::from_le_bytes(taken(bytes)?), text),
        ColumnType::ULong => json(u64::from_le_bytes(taken(bytes)?), text),
        ColumnType::Float => single(f32::from_le_bytes(taken(bytes)?), text),
        ColumnType::Double => number(f64::from_le_bytes(taken(bytes)?), text),
        ColumnType::String | ColumnType::DateTime => json(words(bytes)?, text),
        ColumnType::Json => {
            let words = words(bytes)?;
            match serde_json::from_str::<IgnoredAny>(words) {
                Ok(_) => text.extend(words.as_bytes()),
                Err(_) => json(words, text),
            }
        }
        ColumnType::Binary => json(BASE64_STANDARD.encode(long(bytes)?), text),
        _ => return None,
    }
    Some(())
}

/// A number; one that is none as the reader of GeoJSON knows it.
pub(super) fn number(value: f64, text: &mut Vec<u8>) {
    if value.is_finite() {
        json(value, text);
    } else {
        none(value, text);
    }
}

/// With the digits that it was written with: a tenth, and not what the nearest short number to it comes to.
fn single(value: f32, text: &mut Vec<u8>) {
    if value.is_finite() {
        json(value, text);
    } else {
        none(f64::from(value), text);
    }
}

fn none(value: f64, text: &mut Vec<u8>) {
    let word: &[u8] = match value.is_nan() {
        true => b"NaN",
        false if value > 0.0 => b"Infinity",
        false => b"-Infinity",
    };
    text.extend(word);
}

/// A value that JSON can hold.
fn json(value: impl Serialize, text: &mut Vec<u8>) {
    let before = text.len();
    if serde_json::to_writer(&mut *text, &value).is_err() {
        // Memory takes everything, and these values can all stand in JSON.
        text.truncate(before);
        text.extend(b"null");
    }
}

fn words<'b>(bytes: &mut &'b [u8]) -> Option<&'b str> {
    std::str::from_utf8(long(bytes)?).ok()
}

/// A length and as many bytes.
fn long<'b>(bytes: &mut &'b [u8]) -> Option<&'b [u8]> {
    let long = usize::try_from(u32::from_le_bytes(taken(bytes)?)).ok()?;
    let (value, rest) = bytes.split_at_checked(long)?;
    *bytes = rest;
    Some(value)
}

fn taken<const N: usize>(bytes: &mut &[u8]) -> Option<[u8; N]> {
    let (first, rest) = bytes.split_first_chunk()?;
    *bytes = rest;
    Some(*first)
}

/// A comma in front of all but the first.
pub(super) fn separate(index: usize, text: &mut Vec<u8>) {
    if index > 0 {
        text.push(b',');
    }
}
