//! The top level of a file, streamed: one feature in memory at a time, each member with its place.

use std::{fmt, io, rc::Rc};

use serde::de::{DeserializeSeed, Deserializer, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

use super::{
    reading::Reading,
    text::{Clock, Spot, Text},
};
use crate::fault::{Code, Problem};

/// The members of an object that mean something here; all others are read over.
const MEMBERS: [&str; 6] = [
    "type",
    "geometry",
    "properties",
    "coordinates",
    "geometries",
    "crs",
];

/// JSON text of one member and where it began.
#[derive(Debug)]
pub(super) struct Piece {
    pub(super) json: String,
    pub(super) at: Spot,
    /// Bytes at the front that the file does not hold.
    pub(super) lead: usize,
}

impl Piece {
    /// The spot of a byte of the text.
    pub(super) fn spot(&self, offset: usize) -> Spot {
        let before = self.json.get(self.lead..offset.max(self.lead));
        self.at.after(before.unwrap_or_default())
    }
}

/// An object without the members that mean nothing here.
#[derive(Debug, Default)]
pub(super) struct Members {
    /// Where its brace opens.
    at: Spot,
    kept: Vec<(&'static str, Piece)>,
    /// A member that stands there twice.
    pub(super) doubled: Option<&'static str>,
    /// What `features` was, where it was there.
    pub(super) features: Option<Found>,
}

impl Members {
    pub(super) fn get(&self, name: &str) -> Option<&Piece> {
        let found = self.kept.iter().find(|(key, _)| *key == name);
        found.map(|(_, piece)| piece)
    }

    pub(super) fn take(&mut self, name: &str) -> Option<Piece> {
        let index = self.kept.iter().position(|(key, _)| *key == name)?;
        Some(self.kept.swap_remove(index).1)
    }

    fn keep(&mut self, name: &'static str, piece: Piece) {
        if self.get(name).is_some() {
            self.doubled = Some(name);
        } else {
            self.kept.push((name, piece));
        }
    }
}

/// What a value turned out to be.
#[derive(Debug)]
pub(super) enum Found {
    Object(Box<Members>),
    List,
    Other(&'static str),
}

impl Found {
    /// Where it began; the clock still knows unless members were read since.
    fn spot(&self, clock: &Clock) -> Spot {
        match self {
            Self::Object(members) => members.at,
            _ => clock.start().unwrap_or_default(),
        }
    }

    /// The kind in words.
    pub(super) fn kind(&self) -> &'static str {
        match self {
            Self::Object(_) => "an object",
            Self::List => "a list",
            Self::Other(kind) => kind,
        }
    }
}

/// Reads every top-level value of the text (newline-delimited files hold many) into `reading`.
pub(super) fn read(source: impl io::Read, reading: &mut Reading) {
    let clock = Rc::new(Clock::new());
    let mut json = serde_json::Deserializer::from_reader(Text::new(source, Rc::clone(&clock)));
    let mut values = 0_u64;
    loop {
        clock.mark();
        let node = Node {
            clock: &clock,
            part: Part::Document(reading),
        };
        match node.deserialize(&mut json) {
            Ok(found) => {
                let at = found.spot(&clock);
                reading.document(found, at);
            }
            Err(error) if error.is_eof() && clock.start().is_none() && values > 0 => return,
            Err(error) => return reading.broken(broken(&error, &clock)),
        }
        values += 1;
    }
}

/// Which part of a file a value is.
enum Part<'a> {
    Document(&'a mut Reading),
    Features(&'a mut Reading),
    Feature,
}

struct Node<'a> {
    clock: &'a Clock,
    part: Part<'a>,
}

impl<'de> DeserializeSeed<'de> for Node<'_> {
    type Value = Found;

    fn deserialize<D: Deserializer<'de>>(self, json: D) -> Result<Found, D::Error> {
        json.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Node<'_> {
    type Value = Found;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("any JSON")
    }

    fn visit_bool<E>(self, _: bool) -> Result<Found, E> {
        Ok(Found::Other("true or false"))
    }

    fn visit_i64<E>(self, _: i64) -> Result<Found, E> {
        Ok(Found::Other("a number"))
    }

    fn visit_u64<E>(self, _: u64) -> Result<Found, E> {
        Ok(Found::Other("a number"))
    }

    fn visit_f64<E>(self, _: f64) -> Result<Found, E> {
        Ok(Found::Other("a number"))
    }

    fn visit_str<E>(self, _: &str) -> Result<Found, E> {
        Ok(Found::Other("a text"))
    }

    fn visit_unit<E>(self) -> Result<Found, E> {
        Ok(Found::Other("null"))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Found, A::Error> {
        let Part::Features(reading) = self.part else {
            while list.next_element::<IgnoredAny>()?.is_some() {}
            return Ok(Found::List);
        };
        loop {
            self.clock.mark();
            let feature = Node {
                clock: self.clock,
                part: Part::Feature,
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
        let mut members = Members {
            at: self.clock.start().unwrap_or_default(),
            ..Members::default()
        };
        while let Some(key) = map.next_key::<String>()? {
            self.member(&key, &mut map, &mut members)?;
        }
        Ok(Found::Object(Box::new(members)))
    }
}

impl Node<'_> {
    fn member<'de, A: MapAccess<'de>>(
        &mut self,
        key: &str,
        map: &mut A,
        members: &mut Members,
    ) -> Result<(), A::Error> {
        self.clock.mark();
        if let (Part::Document(reading), "features") = (&mut self.part, key) {
            let features = Node {
                clock: self.clock,
                part: Part::Features(reading),
            };
            members.features = Some(map.next_value_seed(features)?);
        } else if let Some(name) = MEMBERS.into_iter().find(|name| *name == key) {
            let json = map.next_value::<Box<RawValue>>()?;
            let piece = Piece {
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
fn broken(error: &serde_json::Error, clock: &Clock) -> Problem {
    let at = clock.of(error);
    let problem = |code, says: String| Problem::new(code, super::at(at), says);
    if error.is_io() {
        let says = format!("reading failed: {error}");
        return Problem::new(Code::Unreadable, super::nowhere(), says);
    }
    if clock.start().is_none() && error.is_eof() {
        return Problem::new(Code::WrongKind, super::nowhere(), "the file is empty")
            .hint("draw the zones as polygons in a map editor and save them as GeoJSON");
    }
    match clock.opening() {
        [b'<', ..] => Problem::new(
            Code::WrongKind,
            super::nowhere(),
            "this is XML, not GeoJSON",
        )
        .hint("save or convert the zones as GeoJSON; a GPX file is the route"),
        [0xFF, 0xFE, ..] | [0xFE, 0xFF, ..] => {
            Problem::new(Code::WrongKind, super::nowhere(), "this is UTF-16 text")
                .hint("save the file as UTF-8")
        }
        _ if error.is_eof() => problem(
            Code::BrokenText,
            "the text stops before the JSON is complete".to_owned(),
        )
        .hint("the file was cut off: save or download it again"),
        _ => problem(Code::BrokenText, format!("broken JSON: {}", reason(error)))
            .hint("mend the text here, or save it again from the map editor"),
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
