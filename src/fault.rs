//! What is wrong with inputs, as data: one variant a fault, its numbers and names inside, and its place.
//!
//! The sentences are made in [`crate::say::fault`]. Results that carry warnings are [`Noted`].

pub mod code;
pub mod coordinates;
pub mod files;
pub mod flatgeobuf;
pub mod geojson;
pub mod gpx;
pub mod instead;
pub mod name;
pub mod network;
pub mod place;
pub mod plan;
pub mod refusal;
pub mod strip;
pub mod terrain;
pub mod toml;
pub mod trip;
pub mod wrong;

use serde::{Serialize, Serializer, ser::SerializeStruct};
use serde_json::{Value, json};

pub use code::{Code, Level};
pub use place::{Item, Place};
pub use wrong::Wrong;

/// One fault or oddity of an input: what, and where.
///
/// ```
/// use schrund::{fault::{Fault, Item, Place, trip::InTrip}};
///
/// let fault = Fault::new(InTrip::Nobody, Place::item(Item::Flags));
/// assert_eq!(fault.code(), "bad-trip");
/// assert_eq!(
///     fault.to_string(),
///     "error[bad-trip]: a party of 0: nobody goes\n  at: flags\n  \
///      do: name who goes: how many, or their masses with pack in kg"
/// );
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// What it is.
    pub what: Wrong,
    /// Where it is.
    pub at: Place,
    /// How many more like it were met and are not told one by one.
    pub more: usize,
}

impl Fault {
    /// A fault in its place.
    #[must_use]
    pub fn new(what: impl Into<Wrong>, at: Place) -> Self {
        Self {
            what: what.into(),
            at,
            more: 0,
        }
    }

    /// Its kind, one of the closed list; decides the level.
    #[must_use]
    pub fn kind(&self) -> Code {
        self.what.kind()
    }

    /// The stable name of its kind; `schrund check --explain CODE` tells more.
    #[must_use]
    pub fn code(&self) -> &'static str {
        self.kind().as_str()
    }

    /// How much it matters.
    #[must_use]
    pub fn level(&self) -> Level {
        self.kind().level()
    }

    /// The numbers, names and texts that belong to it, by name; what has no name of its own stands under `value`.
    #[must_use]
    pub fn values(&self) -> Value {
        // Families and variants are the keys of objects with one member: `{"Gpx": {"Jump": {…}}}`.
        let family = serde_json::to_value(&self.what).unwrap_or_default();
        let variant = only_member(family).unwrap_or_default();
        match only_member(variant) {
            Some(values @ Value::Object(_)) => values,
            Some(value) => json!({ "value": value }),
            None => json!({}),
        }
    }

    /// What its kind means and what to do, in a few sentences.
    #[must_use]
    pub fn explain(&self) -> String {
        self.kind().explain()
    }
}

/// A fault as a document holds it, in the form of a finding of a plan: `level`, `at`, `code` and `values`.
impl Serialize for Fault {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut document = to.serialize_struct("Fault", 4)?;
        document.serialize_field("level", &self.level())?;
        document.serialize_field("at", &self.at)?;
        document.serialize_field("code", self.code())?;
        document.serialize_field("values", &self.values())?;
        document.end()
    }
}

fn only_member(value: Value) -> Option<Value> {
    match value {
        Value::Object(members) => members.into_iter().next().map(|(_, member)| member),
        _ => None,
    }
}

/// A good result with the warnings met on the way. Errors never get this far.
///
/// ```
/// use schrund::{fault::Noted, read::gpx, trip::route::Route};
///
/// let line = r#"<gpx><trk><trkseg><trkpt lat="46.5" lon="8"><ele>high</ele></trkpt>
///     <trkpt lat="46.6" lon="8"/></trkseg></trk></gpx>"#;
/// let read: Noted<Route> = gpx::route("tour.gpx", line.as_bytes())?;
/// assert_eq!(read.value.stages[0].points().len(), 2, "the line is good");
/// assert_eq!(read.notes[0].code(), "bad-height", "one height is not, and counts as not given");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Noted<T> {
    /// The result.
    pub value: T,
    /// Warnings and notes, in input order.
    pub notes: Vec<Fault>,
}
