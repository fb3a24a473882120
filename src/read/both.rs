//! Route and zones read side by side.

use super::{
    alone::route,
    ice,
    input::{Input, Seekable, Text},
    inventory,
};
use crate::{
    cores,
    fault::{Fault, Noted, Place, files::InFiles},
    limits::InputLimits,
    read::geojson::{Given, KnownShapes},
    trip::route::Route,
};

/// Where the zones stand: a text; the same as a file in which they can be looked up; and whether they are read for each line, by
/// somebody else.
pub(super) struct IceSources<'a>(
    pub(super) Input<Text<'a>>,
    pub(super) Option<Input<Seekable>>,
    pub(super) bool,
);

/// The ice, and the line if there is one; of ice that can be looked up what lies near the line, if anything does.
pub(super) fn ice_and_perhaps_a_line(
    line: Option<Input<Text<'_>>>,
    IceSources(text, near, later): IceSources<'_>,
    gap: Result<Given, Fault>,
    known: Option<&KnownShapes>,
) -> (Result<Noted<Route>, Vec<Fault>>, ice::IceRead) {
    let Some(line) = line else {
        let zones = match later {
            true => gap.map(|_| nothing()).map_err(|fault| vec![fault]),
            false => ice::zones(text, gap, known),
        };
        return (Ok(nothing()), zones);
    };
    let Some(sought) = near.and_then(has_index) else {
        return route_and_zones(line, text, gap, known);
    };
    let line = route(line);
    let near = line.as_ref().ok().and_then(|line| {
        let given = gap.as_ref().ok()?;
        ice::zones_near_alone(sought, &line.value, given)
    });
    let zones = near.map_or_else(|| ice::zones(text, gap, known), Ok);
    (line, zones)
}

fn nothing<T: Default>() -> Noted<T> {
    Noted {
        value: T::default(),
        notes: Vec::new(),
    }
}

/// A file of outlines, where it has an index. What is wrong with it is told by whoever reads it whole.
fn has_index(file: Input<Seekable>) -> Option<(String, Seekable, InputLimits)> {
    let (name, limits, mut file) = (file.name, file.limits, file.source.ok()?);
    let has = inventory::has_index(&name, &mut file, &limits);
    has.unwrap_or(false).then_some((name, file, limits))
}

/// Both files; one fault where each was given in the place of the other.
fn route_and_zones(
    mut line: Input<Text<'_>>,
    mut ice: Input<Text<'_>>,
    gap: Result<Given, Fault>,
    known: Option<&KnownShapes>,
) -> (Result<Noted<Route>, Vec<Fault>>, ice::IceRead) {
    let begins = |sign: Option<u8>, signs: &[u8]| sign.is_some_and(|b| signs.contains(&b));
    let look_swapped = begins(line.first_sign(), b"{[") && begins(ice.first_sign(), b"<");
    let (first, second) = (line.name.clone(), ice.name.clone());
    let (line, ice) = cores::both(|| route(line), || ice::zones(ice, gap, known));
    if !(look_swapped && line.is_err() && ice.is_err()) {
        return (line, ice);
    }
    let place = Place::file(&first);
    let swapped = InFiles::Swapped {
        route: first,
        zones: second,
        call: None,
    };
    (Err(vec![Fault::new(swapped, place)]), Err(Vec::new()))
}
