//! What is wrong with inputs, as data: one variant a fault, its numbers and names inside, and its place.
//!
//! The sentences are made in [`crate::say::fault`]. Results that carry warnings are [`Noted`].

pub mod code;
pub mod coordinates;
pub mod files;
pub mod geojson;
pub mod gpx;
pub mod place;
pub mod refusal;
pub mod terrain;
pub mod trip;
pub mod wrong;

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

    /// What its kind means and what to do, in a few sentences.
    #[must_use]
    pub fn explain(&self) -> &'static str {
        self.code().explain()
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

/// A finding of a plan as a finished sentence. Goes away: findings become data of their own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Which kind it is; decides the level.
    pub code: Code,
    /// Where it is.
    pub place: Place,
    /// What is wrong, one sentence without a full stop; quotes the value found.
    pub says: String,
    /// How to mend it, if there is a way.
    pub hint: Option<String>,
}

impl Problem {
    /// A complaint without advice.
    #[must_use]
    pub fn new(code: Code, place: Place, says: impl Into<String>) -> Self {
        Self {
            code,
            place,
            says: says.into(),
            hint: None,
        }
    }

    /// The same complaint with advice.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = Some(hint.into());
        self
    }

    /// How much it matters.
    #[must_use]
    pub fn level(&self) -> Level {
        self.code.level()
    }
}
