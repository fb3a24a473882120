//! What the placeables of many messages share.

use crate::{plan::finding::At, say::arg::Arg};

/// A placeable's name with what stands in its place.
pub(super) type FactArgs<'a> = Vec<(&'static str, Arg<'a>)>;

/// The chainage of the place.
pub(super) fn near<'a>(at: &At) -> (&'static str, Arg<'a>) {
    let at_m = match at {
        At::Leg(place) => place.from_m,
        _ => 0.0,
    };
    ("at", Arg::Walked(at_m))
}

pub(super) fn span_of<'a>(at: &At) -> (&'static str, Arg<'a>) {
    let (from_m, to_m) = match at {
        At::Leg(place) => (place.from_m, place.to_m),
        _ => (0.0, 0.0),
    };
    ("span", Arg::Between(from_m, to_m))
}
