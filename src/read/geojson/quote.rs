//! Values of a file as messages quote them.

use serde_json::Value;

use super::text::as_written;
use crate::fault::{geojson::Thing, place::Excerpt};

/// Characters of a value that a message quotes; our judgement.
const QUOTED_CHARS: usize = 60;

/// JSON as it stood in the file, cut where it is too long to be quoted.
pub(super) fn quoted(json: &str) -> Excerpt {
    // Masks are as long as their words, so that a text cut here is cut below as well.
    let beginning = Excerpt::of(json, 2 * QUOTED_CHARS);
    Excerpt::of(&as_written(&beginning.text), QUOTED_CHARS)
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
