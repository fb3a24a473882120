//! Values of a file as messages quote them.

use serde_json::Value;

use super::text::unmasked;
use crate::fault::{geojson::Thing, place::Excerpt};

/// Characters of a value that a message quotes; our judgement.
const QUOTED_CHARS: usize = 60;

/// JSON as it stood in the file, cut where it is too long to be quoted.
pub(super) fn quoted(json: &str) -> Excerpt {
    let word = unmasked(json.trim_matches('"'));
    Excerpt::of(word.unwrap_or(json), QUOTED_CHARS)
}

/// What a value is.
pub(super) fn thing(value: &Value) -> Thing {
    match value {
        Value::Null => Thing::Null,
        Value::Array(_) => Thing::List,
        Value::Object(_) => Thing::Object,
        _ => Thing::Value(quoted(&value.to_string())),
    }
}
