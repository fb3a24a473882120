//! Files that a trip names and that nobody laid beside it: a plan without them would look like one with them.

use super::trip::Trip;
use crate::{
    fault::{
        Fault, Place,
        trip::{InTrip, NamedFile},
    },
    practice::set,
};

/// A fault for each terrain model that the trip names, where fewer are laid than it names and none of them is that one.
pub(super) fn terrain(trip: &Trip, laid: &[String], place: &Place) -> Vec<Fault> {
    if laid.len() >= trip.terrain.len() {
        return Vec::new();
    }
    let is_there = |name: &String| laid.iter().any(|there| last_part(there) == last_part(name));
    let missing = trip.terrain.iter().filter(|name| !is_there(name));
    let fault = |name: &String| fault(name, NamedFile::Terrain, place);
    missing.map(fault).collect()
}

/// The fault of a glacier inventory that is named and not laid.
pub(super) fn glaciers(trip: &Trip, laid: bool, place: &Place) -> Option<Fault> {
    let name = trip.glaciers.as_ref().filter(|_| !laid)?;
    Some(fault(name, NamedFile::Glaciers, place))
}

/// The fault of a practice file that is named and not laid; a name that is no path is that of a set.
pub(super) fn practice(name: &str, place: &Place) -> Option<Fault> {
    let embedded = set::EMBEDDED.iter().any(|(known, _)| *known == name);
    let is_path = name.contains(['/', '\\', '.']);
    (!embedded && is_path).then(|| fault(name, NamedFile::Practice, place))
}

fn fault(name: &str, what: NamedFile, place: &Place) -> Fault {
    let file = name.to_owned();
    let place = place.clone().with_property(what.property());
    Fault::new(InTrip::NotLaid { file, what }, place)
}

/// A file's own name: whoever opens it may call it by another folder.
fn last_part(path: &str) -> &str {
    path.rsplit(['/', '\\']).next().unwrap_or(path)
}
