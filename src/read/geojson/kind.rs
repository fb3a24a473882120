//! The `type` of a GeoJSON object, and a bare geometry put together from its members.

use serde_json::Value;

use super::{
    document::{Members, Piece},
    nowhere, shape,
    text::Spot,
};
use crate::fault::{Code, Problem};

pub(super) fn type_of(members: &Members) -> Option<Value> {
    let piece = members.get("type")?;
    serde_json::from_str(&piece.json).ok()
}

/// A bare geometry put together from its members.
pub(super) fn bare(kind: &str, members: &mut Members, at: Spot) -> Piece {
    let name = if kind == "GeometryCollection" {
        "geometries"
    } else {
        "coordinates"
    };
    let front = format!("{{\"type\":\"{kind}\"");
    let Some(mut piece) = members.take(name) else {
        return Piece {
            lead: front.len(),
            json: front + "}",
            at,
        };
    };
    let front = format!("{front},\"{name}\":");
    piece.lead = front.len();
    piece.json.insert_str(0, &front);
    piece.json.push('}');
    piece
}

/// The `type` of an object, or why it is none of the words known.
pub(super) fn document_type(
    given: Option<&Value>,
    what: &str,
    known: &[&'static str],
) -> Result<&'static str, Problem> {
    let place = nowhere().with_property("type");
    let wrong = |says: String| Problem::new(Code::BadGeojson, place.clone(), says);
    let one_of = match known {
        [word] => format!("write \"{word}\""),
        words => format!("write one of {}", words.join(", ")),
    };
    let given = match given {
        Some(Value::String(given)) => given,
        Some(other) => {
            return Err(wrong(format!(
                "the `type` of the {what} is {}, not a word",
                shape::named(other)
            ))
            .hint(one_of));
        }
        None => return Err(wrong(format!("the {what} has no `type`")).hint(one_of)),
    };
    if let Some(word) = known.iter().find(|word| *word == given) {
        return Ok(word);
    }
    match known.iter().find(|word| word.eq_ignore_ascii_case(given)) {
        Some(word) => Err(wrong(format!("\"{given}\" is not spelt as GeoJSON has it"))
            .hint(format!("write \"{word}\""))),
        None => Err(wrong(format!("\"{given}\" is no type of a {what}")).hint(one_of)),
    }
}
