//! The top level of a file, streamed: one feature in memory at a time, each member with its place.

use std::{fmt, io, mem, rc::Rc};

use serde::de::{DeserializeSeed, Deserializer, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

use super::{
    members::{Found, MemberText, Members},
    reading::ZonesReading,
    text::{CountedText, TextClock},
};
use crate::{
    fault::{
        Fault, Place,
        files::InFiles,
        geojson::{InGeojson, Thing},
        instead::Instead,
    },
    read::signature,
};

/// The members of an object that mean something here; all others are read over.
pub(super) const MEMBERS: [&str; 6] = [
    "type",
    "geometry",
    "properties",
    "coordinates",
    "geometries",
    "crs",
];

/// Reads every top-level value of the text (newline-delimited files hold many) into `reading`.
pub(super) fn read(source: impl io::Read, reading: &mut ZonesReading<'_>) {
    let clock = Rc::new(TextClock::new());
    let mut json =
        serde_json::Deserializer::from_reader(CountedText::new(source, Rc::clone(&clock)));
    let mut values = 0_u64;
    loop {
        clock.next_value();
        let node = Node {
            clock: &clock,
            part: FilePart::Document(reading),
        };
        match node.deserialize(&mut json) {
            Ok(found) => {
                let at = found.spot(&clock);
                reading.document(found, at);
            }
            Err(error) if error.is_eof() && !clock.begun() && values > 0 => return,
            Err(error) => return reading.broken(broken(&error, &clock)),
        }
        values += 1;
    }
}

/// Which part of a file a value is.
enum FilePart<'a, 'k> {
    Document(&'a mut ZonesReading<'k>),
    Features(&'a mut ZonesReading<'k>),
    Feature,
}

struct Node<'a, 'k> {
    clock: &'a TextClock,
    part: FilePart<'a, 'k>,
}

impl<'de> DeserializeSeed<'de> for Node<'_, '_> {
    type Value = Found;

    fn deserialize<D: Deserializer<'de>>(self, json: D) -> Result<Found, D::Error> {
        json.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Node<'_, '_> {
    type Value = Found;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("any JSON")
    }

    fn visit_bool<E>(self, _: bool) -> Result<Found, E> {
        Ok(Found::Other(Thing::Truth))
    }

    fn visit_i64<E>(self, _: i64) -> Result<Found, E> {
        Ok(Found::Other(Thing::Number))
    }

    fn visit_u64<E>(self, _: u64) -> Result<Found, E> {
        Ok(Found::Other(Thing::Number))
    }

    fn visit_f64<E>(self, _: f64) -> Result<Found, E> {
        Ok(Found::Other(Thing::Number))
    }

    fn visit_str<E>(self, _: &str) -> Result<Found, E> {
        Ok(Found::Other(Thing::Text))
    }

    fn visit_unit<E>(self) -> Result<Found, E> {
        Ok(Found::Other(Thing::Null))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Found, A::Error> {
        let FilePart::Features(reading) = self.part else {
            while list.next_element::<IgnoredAny>()?.is_some() {}
            return Ok(Found::List);
        };
        if mem::take(&mut reading.some_read) {
            list.next_element::<IgnoredAny>()?;
        }
        loop {
            self.clock.mark();
            let feature = Node {
                clock: self.clock,
                part: FilePart::Feature,
            };
            reading.inside_feature = true;
            let found = list.next_element_seed(feature)?;
            reading.inside_feature = false;
            match found {
                Some(found) => {
                    let at = found.spot(self.clock);
                    reading.feature(found, at);
                }
                None => return Ok(Found::List),
            }
        }
    }

    fn visit_map<A: MapAccess<'de>>(mut self, mut map: A) -> Result<Found, A::Error> {
        let mut members = Members::begun(self.clock.start().unwrap_or_default());
        while let Some(key) = map.next_key::<String>()? {
            self.member(&key, &mut map, &mut members)?;
        }
        Ok(Found::Object(Box::new(members)))
    }
}

impl Node<'_, '_> {
    fn member<'de, A: MapAccess<'de>>(
        &mut self,
        key: &str,
        map: &mut A,
        members: &mut Members,
    ) -> Result<(), A::Error> {
        self.clock.mark();
        if let (FilePart::Document(reading), "features") = (&mut self.part, key) {
            let features = Node {
                clock: self.clock,
                part: FilePart::Features(reading),
            };
            members.features = Some(map.next_value_seed(features)?);
        } else if let Some(name) = MEMBERS.into_iter().find(|name| *name == key) {
            let json = map.next_value::<Box<RawValue>>()?;
            let piece = MemberText {
                at: self.clock.start().unwrap_or_default(),
                json: String::from(Box::<str>::from(json)),
                lead: 0,
            };
            members.keep(name, piece);
        } else {
            map.next_value::<IgnoredAny>()?;
        }
        Ok(())
    }
}

/// Why the text stopped making sense, at the byte read last.
fn broken(error: &serde_json::Error, clock: &TextClock) -> Fault {
    if error.is_io() {
        return Fault::new(InFiles::Stopped(error.to_string()), Place::default());
    }
    if !clock.begun() && error.is_eof() {
        return Fault::new(InGeojson::Empty, Place::default());
    }
    let at = || clock.of(error).place();
    let opening = clock.opening();
    if let Some(instead) = signature::of(&opening) {
        return Fault::new(InGeojson::Is(instead), Place::default());
    }
    match opening {
        [b'<', ..] => Fault::new(InGeojson::Is(Instead::Xml), Place::default()),
        [0xFF, 0xFE, ..] | [0xFE, 0xFF, ..] => Fault::new(InGeojson::IsUtf16, Place::default()),
        _ if error.is_eof() || clock.ended() => Fault::new(InGeojson::CutOff, at()),
        _ => Fault::new(InGeojson::Broken(reason(error)), at()),
    }
}

/// What serde_json says, without its own line and column.
fn reason(error: &serde_json::Error) -> String {
    let says = error.to_string();
    match says.rsplit_once(" at line ") {
        Some((reason, _)) => reason.to_owned(),
        None => says,
    }
}
