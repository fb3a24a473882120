//! FlatGeobuf into zones: what its features hold goes to the reader of GeoJSON, polygons as numbers, everything else
//! written down as a text of GeoJSON, one feature at a time.
//!
//! So that the same outlines mean the same in both formats, to the last byte of a plan, there is one reader of rings,
//! numbers and words. What is of the file alone is here: its header, its index, its tables.
//!
//! ```text
//! bytes ─opening▶ columns, index, system ─┬ index ▶ where the features near the route stand ┐
//!                                         └ or all of them, one after the other ────────────┴ features ▶ one in memory
//!    ─feature, outline, properties─┬▶ polygons and properties, on all cores ─┬▶ read::geojson
//!                                  └▶ from the first one on that is none: a text of GeoJSON ┘
//! ```
//!
//! Nothing that the file says of itself is believed: every length is held against the length of the file and against a
//! limit before anything is read or set aside, tables are verified before they are looked into, and the shape of the
//! index follows from the number of features alone. The format `[FlatGeobuf 3.x, specification at flatgeobuf.org]`.

mod ahead;
mod bytes;
mod feature;
mod features;
mod index;
mod near;
mod opening;
mod outline;
mod properties;
mod rewriting;

use std::io::Read;

use self::{
    features::{FeatureWay, Features},
    opening::{Preamble, Rest},
    rewriting::Rewriting,
};
use crate::{
    fault::{
        Fault, Item, Level, Noted, Place, Wrong, flatgeobuf::InFlatgeobuf, geojson::InGeojson,
    },
    limits::InputLimits,
    read::{
        geojson::{self, Given, KnownShapes, ZonesTaken},
        input::Seekable,
    },
    trip::zone::Zone,
};

pub(super) use self::near::Near;

/// What was read of ice.
type IceRead = Result<Noted<Vec<Zone>>, Vec<Fault>>;

/// All zones of a file.
pub(super) fn zones(
    name: &str,
    (bytes, limits): (impl Read, &InputLimits),
    given: &Given,
    known: Option<&KnownShapes>,
) -> IceRead {
    let rewriting = streamed(bytes, None, limits).map_err(|fault| vec![in_file(fault, name)])?;
    read(name, rewriting, given, known)
}

/// The outlines of an inventory that lie near, found by its index where it has one.
pub(super) fn zones_near(
    name: &str,
    (bytes, limits): (Seekable, &InputLimits),
    given: &Given,
    near: Near,
) -> IceRead {
    let rewriting = sought(bytes, near, limits).map_err(|fault| vec![in_file(fault, name)])?;
    read(name, rewriting, given, None)
}

/// The zones that lie near, found by the index, and how many those are of all; nothing where none does or something is wrong.
pub(super) fn drawn_near(
    name: &str,
    (bytes, limits): (Seekable, &InputLimits),
    given: &Given,
    near: Near,
) -> Option<Noted<Vec<Zone>>> {
    let rewriting = sought(bytes, near, limits).ok()?;
    let held = usize::try_from(rewriting.passed).unwrap_or(usize::MAX);
    let mut read = read(name, rewriting, given, None).ok()?;
    let near = read.value.len();
    if near < held {
        let only = Fault::new(InFlatgeobuf::NearOnly { near, held }, Place::file(name));
        read.notes.push(only);
    }
    (near > 0).then_some(read)
}

/// The same of an inventory that can be read only once and from its beginning.
pub(super) fn zones_near_once(
    name: &str,
    (bytes, limits): (impl Read, &InputLimits),
    given: &Given,
    near: Near,
) -> IceRead {
    let rewriting =
        streamed(bytes, Some(near), limits).map_err(|fault| vec![in_file(fault, name)])?;
    read(name, rewriting, given, None)
}

/// Whether a file has an index; it is at its beginning again afterwards.
pub(super) fn has_index(
    name: &str,
    file: &mut Seekable,
    limits: &InputLimits,
) -> Result<bool, Vec<Fault>> {
    let opened = Preamble::read(file, limits).and_then(|opening| Rest::of(&opening));
    // The length is found by going to the end and back to the beginning.
    let length = index::length(file);
    let rest = length.and_then(|length| opened?.within(length));
    rest.map(|rest| rest.has_index())
        .map_err(|fault| vec![in_file(fault, name)])
}

/// All features of a file as a text of GeoJSON.
pub(super) fn text(
    name: &str,
    bytes: impl Read,
    limits: &InputLimits,
) -> Result<String, Vec<Fault>> {
    let mut rewriting =
        streamed(bytes, None, limits).map_err(|fault| vec![in_file(fault, name)])?;
    whole(name, &mut rewriting)
}

/// Those near as a text of GeoJSON, and how many the file holds, as far as was seen.
pub(super) fn text_near(
    name: &str,
    (bytes, limits): (Seekable, &InputLimits),
    near: Near,
) -> Result<(String, usize), Vec<Fault>> {
    let mut rewriting = sought(bytes, near, limits).map_err(|fault| vec![in_file(fault, name)])?;
    let text = whole(name, &mut rewriting)?;
    Ok((
        text,
        usize::try_from(rewriting.passed).unwrap_or(usize::MAX),
    ))
}

fn streamed<'b>(
    mut bytes: impl Read + 'b,
    near: Option<Near>,
    limits: &InputLimits,
) -> Result<Rewriting<'b>, Fault> {
    let opening = Preamble::read(&mut bytes, limits)?;
    let rest = Rest::of(&opening)?;
    let features = Features::of(FeatureWay::in_a_row(bytes, &rest)?, limits);
    Ok(Rewriting::of(opening, features, near))
}

fn sought(
    mut bytes: Seekable,
    near: Near,
    limits: &InputLimits,
) -> Result<Rewriting<'static>, Fault> {
    let length = index::length(&mut bytes)?;
    let opening = Preamble::read(&mut bytes, limits)?;
    let rest = Rest::of(&opening)?.within(length)?;
    let way = if rest.has_index() {
        let found = index::found(&mut bytes, &rest, &near)?;
        FeatureWay::found(bytes, &rest, found, length)
    } else {
        FeatureWay::in_a_row(bytes, &rest)?
    };
    let features = Features::of(way, limits);
    Ok(Rewriting::of(opening, features, Some(near)))
}

fn whole(name: &str, rewriting: &mut Rewriting<'_>) -> Result<String, Vec<Fault>> {
    let mut text = String::new();
    let read = rewriting.read_to_string(&mut text);
    let mut faults = std::mem::take(&mut rewriting.faults);
    if let Err(why) = read {
        faults.push(bytes::stopped(&why));
    }
    match faults.is_empty() {
        true => Ok(text),
        false => Err(faults.into_iter().map(|f| in_file(f, name)).collect()),
    }
}

fn read(
    name: &str,
    mut rewriting: Rewriting<'_>,
    given: &Given,
    known: Option<&KnownShapes>,
) -> IceRead {
    let read = match known {
        Some(known) => geojson::zones_again(name, &mut rewriting, given, known),
        None => {
            let mut zones = ZonesTaken::new(name, given);
            rewriting.take_over(&mut zones);
            zones.then(&mut rewriting)
        }
    };
    let (value, told) = match read {
        Ok(Noted { value, notes }) => (value, notes),
        Err(told) => (Vec::new(), told),
    };
    let broken = !rewriting.faults.is_empty();
    let some_are_far = rewriting.is_near() && rewriting.passed > 0;
    let nothing = |fault: &Fault| matches!(fault.what, Wrong::Geojson(InGeojson::NoZones(..)));
    let mut all: Vec<Fault> = rewriting.faults.drain(..).collect();
    all.extend(
        told.into_iter()
            // Of a damaged file nobody knows whether it holds ice, and of an inventory ice may lie elsewhere.
            .filter(|fault| !(nothing(fault) && (broken || some_are_far)))
            .map(|fault| rewriting.placed(fault)),
    );
    let all: Vec<Fault> = all.into_iter().map(|fault| in_file(fault, name)).collect();
    if all.iter().any(|fault| fault.level() == Level::Error) {
        return Err(all);
    }
    let value = value.into_iter().map(|zone| rewriting.numbered(zone));
    Ok(Noted {
        value: value.collect(),
        notes: all,
    })
}

fn in_file(mut fault: Fault, name: &str) -> Fault {
    fault.at.file = Some(name.to_owned());
    fault
}

impl Rewriting<'_> {
    /// A complaint about the GeoJSON as one about the file: its lines and columns are nobody's.
    fn placed(&self, mut fault: Fault) -> Fault {
        (fault.at.line, fault.at.column) = (None, None);
        let named = match &mut fault.what {
            Wrong::Geojson(InGeojson::GapNotGiven(zones) | InGeojson::GapAssumed { zones, .. }) => {
                zones.named.iter_mut()
            }
            _ => Default::default(),
        };
        let named = named.map(|zone| &mut zone.feature);
        for item in fault.at.item.iter_mut().chain(named) {
            if let Item::Feature { number, .. } = item {
                *number = self.number(*number);
            }
        }
        fault
    }

    /// An outline by its number in the file.
    fn numbered(&self, mut zone: Zone) -> Zone {
        zone.feature = self.number(zone.feature);
        if self.is_near() {
            // How many of those that were not read are ice nobody knows; in an inventory all are.
            zone.number = zone.feature;
        }
        zone
    }
}
