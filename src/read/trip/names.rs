//! The names of a trip file, made fit to be printed in one line.

use super::{folk::Folk, form::Trip, stage::StageWord};
use crate::fault::name;

/// The trip with runs of white space in its names closed up to one space; a name of which nothing is left is none.
pub(super) fn tidied(mut trip: Trip) -> Trip {
    let tidy = |text: &String| name::tidy(text).unwrap_or_default();
    trip.name = trip.name.and_then(|name| name::tidy(&name));
    if let Some(Folk::Named(people)) = &mut trip.party {
        people.iter_mut().for_each(|p| p.name = tidy(&p.name));
    }
    for rope in trip.rope.iter_mut().flatten() {
        rope.name = rope.name.as_ref().and_then(|name| name::tidy(name));
    }
    if let Some(StageWord::Name(name)) = &mut trip.stage {
        *name = tidy(name);
    }
    for halt in &mut trip.halt {
        halt.name = halt.name.as_ref().and_then(|name| name::tidy(name));
        if let Some(StageWord::Name(name)) = &mut halt.stage {
            *name = tidy(name);
        }
    }
    for call in &mut trip.emergency {
        (call.name, call.contact) = (tidy(&call.name), tidy(&call.contact));
    }
    trip
}
