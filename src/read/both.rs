//! Route and zones read side by side.

use super::{
    gpx, ice,
    input::{Input, Text},
};
use crate::{
    cores,
    fault::{Fault, Noted, Place, files::InFiles},
    read::geojson::{Given, KnownShapes},
    trip::route::Route,
};

/// Both files; one fault where each was given in the place of the other.
pub(super) fn route_and_zones(
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

fn route(input: Input<Text<'_>>) -> Result<Noted<Route>, Vec<Fault>> {
    gpx::route(&input.name, input.source?)
}
