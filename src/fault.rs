//! What is wrong with inputs, as data: one variant a fault, its numbers and names inside, and its place.
//!
//! The sentences are made in [`crate::say::fault`]. Results that carry warnings are [`Noted`].

pub mod code;
pub mod coordinates;
pub mod files;
pub mod geojson;
pub mod gpx;
pub mod name;
pub mod place;
pub mod refusal;
pub mod terrain;
pub mod trip;
pub mod wrong;

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
/// assert_eq!(fault.code().as_str(), "bad-trip");
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

    /// Which kind it is; decides the level.
    #[must_use]
    pub fn code(&self) -> Code {
        self.what.code()
    }

    /// How much it matters.
    #[must_use]
    pub fn level(&self) -> Level {
        self.code().level()
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
    pub fn explain(&self) -> &'static str {
        self.code().explain()
    }
}

fn only_member(value: Value) -> Option<Value> {
    match value {
        Value::Object(members) => members.into_iter().next().map(|(_, member)| member),
        _ => None,
    }
}

/// A good result with the warnings met on the way. Errors never get this far.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted<T> {
    /// The result.
    pub value: T,
    /// Warnings and notes, in input order.
    pub notes: Vec<Fault>,
}
