//! Members of a geometry that stand there twice: which of them is meant nobody can tell.

use std::{cell::Cell, fmt};

use serde::de::{DeserializeSeed, Deserializer, Error, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

/// The members that a geometry is read from.
const MEMBERS: [&str; 3] = ["type", "coordinates", "geometries"];

/// The first such member, and the byte of the text at which it stands for the second time. Collections nested deeper than the reader
/// of geometries takes are not looked into.
pub(super) fn doubled(json: &str) -> Option<(&'static str, usize)> {
    let stands_twice = |name: &str| json.matches(&format!("\"{name}\"")).nth(1).is_some();
    // A name may be written with escapes; nearly no geometry holds any.
    if !json.contains('\\') && !MEMBERS.into_iter().any(stands_twice) {
        return None;
    }
    let second = Cell::new(None);
    let mut text = serde_json::Deserializer::from_str(json);
    // What is no geometry is told by whoever reads it.
    let _ = Looked(&second).deserialize(&mut text);
    let (name, value) = second.get()?;
    Some((name, value.as_ptr() as usize - json.as_ptr() as usize))
}

/// A geometry, or several, looked through once; holds the first member that stands twice with its second value.
#[derive(Clone, Copy)]
struct Looked<'l, 'de>(&'l Cell<Option<(&'static str, &'de str)>>);

impl<'de> DeserializeSeed<'de> for Looked<'_, 'de> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, json: D) -> Result<(), D::Error> {
        json.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Looked<'_, 'de> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a geometry, or several")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut parts: A) -> Result<(), A::Error> {
        while parts.next_element_seed(self)?.is_some() {}
        Ok(())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<(), A::Error> {
        let mut met = Vec::new();
        while let Some(name) = members.next_key::<String>()? {
            match MEMBERS.into_iter().find(|member| **member == name) {
                Some(member) if met.contains(&member) => {
                    let value = members.next_value::<&RawValue>()?;
                    self.0.set(Some((member, value.get())));
                    return Err(A::Error::custom("stands twice"));
                }
                Some("geometries") => {
                    met.push("geometries");
                    members.next_value_seed(self)?;
                }
                member => {
                    met.extend(member);
                    members.next_value::<IgnoredAny>()?;
                }
            }
        }
        Ok(())
    }
}
