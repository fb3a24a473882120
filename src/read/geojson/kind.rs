//! The `type` of a GeoJSON object, and a bare geometry put together from its members.

use serde_json::Value;

use super::{
    members::{MemberText, Members},
    quote::thing,
    text::Spot,
};
use crate::fault::{
    Fault, Place,
    geojson::{InGeojson, NoType, Object},
};

pub(super) fn type_of(members: &Members) -> Option<Value> {
    let piece = members.get("type")?;
    serde_json::from_str(&piece.json).ok()
}

/// A bare geometry put together from its members.
pub(super) fn bare(kind: &str, members: &mut Members, at: Spot) -> MemberText {
    let name = if kind == "GeometryCollection" {
        "geometries"
    } else {
        "coordinates"
    };
    let front = format!("{{\"type\":\"{kind}\"");
    let Some(mut piece) = members.take(name) else {
        return MemberText {
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
    of: Object,
    known: &[&'static str],
) -> Result<&'static str, Fault> {
    let wrong = |why| {
        let known = known.to_vec();
        let place = Place::default().with_property("type");
        Fault::new(InGeojson::Type { of, why, known }, place)
    };
    let given = match given {
        Some(Value::String(given)) => given,
        Some(other) => return Err(wrong(NoType::NoWord(thing(other)))),
        None => return Err(wrong(NoType::Missing)),
    };
    if let Some(word) = known.iter().find(|word| *word == given) {
        return Ok(word);
    }
    let given = given.clone();
    match known.iter().find(|word| word.eq_ignore_ascii_case(&given)) {
        Some(right) => Err(wrong(NoType::Misspelt { given, right })),
        None => Err(wrong(NoType::Unknown(given))),
    }
}
