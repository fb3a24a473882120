//! A glacier inventory: all of it, or what lies near the route.

use std::io::BufReader;

use super::{
    geojson::KnownShapes,
    ice::{self, ANY_GAP, IceRead, gapless},
    input::{Input, Seekable, Text},
    signature,
    swapped::{FileNames, swapped},
};
use crate::{
    fault::{Fault, Noted, Place, Wrong, geojson::InGeojson},
    limits::InputLimits,
    trip::{route::Route, zone::Zone},
};

/// An inventory that was read, or that waits for the route, since only what lies near it is to be read.
pub(super) enum Inventory<'a> {
    Read(IceRead),
    Waits(String, WaitingIce<'a>, InputLimits),
}

/// FlatGeobuf, nothing of it read.
pub(super) enum WaitingIce<'a> {
    /// Read once, from its beginning.
    Once(Text<'a>),
    /// A file.
    Here(Seekable),
}

impl<'a> Inventory<'a> {
    /// Reads it, unless it waits for the route; without one it is none.
    pub(super) fn begun(
        whole: Option<Input<Text<'a>>>,
        near: Option<Input<Seekable>>,
        known: Option<&KnownShapes>,
    ) -> Self {
        let (name, limits, begun) = match (near, whole) {
            (Some(near), _) => {
                let begun = near.source.and_then(|file| of_file(&near.name, file));
                (near.name, near.limits, begun)
            }
            (None, Some(whole)) => (whole.name, whole.limits, whole.source.map(of_text)),
            (None, None) => return Self::Read(Ok(nothing())),
        };
        match begun {
            Ok(Begun::Waits(ice)) => Self::Waits(name, ice, limits),
            Ok(Begun::Text(text)) => {
                let text = Input::new(name, text).within(limits);
                Self::Read(all(text, known))
            }
            Err(faults) => Self::Read(Err(faults)),
        }
    }

    /// Its ice; of what waited that near the route. Where route and zones may lie apart because longitude and latitude
    /// were exchanged, the ice by the zones too.
    pub(super) fn near(
        self,
        route: Option<&Noted<Route>>,
        zones: Option<&Noted<Vec<Zone>>>,
        names: &[String; 2],
    ) -> IceRead {
        let (name, ice, limits) = match self {
            Self::Read(ice) => return ice,
            Self::Waits(name, ice, limits) => (name, ice, limits),
        };
        let route = route.map(|route| &route.value);
        let exchanged = route.and_then(|route| apart(route, zones, &[], names));
        let beside = exchanged.and(zones).map(|zones| zones.value.as_slice());
        let read = ice.near((&name, &limits), route, beside.unwrap_or_default());
        of_inventory(read, Place::file(&name))
    }
}

/// The outlines of an inventory that lie near a line: of FlatGeobuf with an index no more is read, of any other file all.
///
/// # Errors
/// It could not be opened, or is damaged where it is read.
///
/// ```
/// use schrund::{example, read::{input::{Input, Seekable}, lay}};
///
/// let held: Seekable = Box::new(std::io::Cursor::new(example::PAIR_GLACIERS_GEOJSON.as_bytes()));
/// let near = lay::glaciers_near(Input::new("ice.geojson", held), &example::pair()?.route)?;
/// assert_eq!(near.value, example::pair()?.glaciers);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn glaciers_near(input: Input<Seekable>, route: &Route) -> IceRead {
    let file = Place::file(&input.name);
    match Inventory::begun(None, Some(input), None) {
        Inventory::Read(ice) => ice,
        Inventory::Waits(name, ice, limits) => {
            of_inventory(ice.near((&name, &limits), Some(route), &[]), file)
        }
    }
}

/// Whether outlines are found in a file by its index, so that it need not be read whole; it is at its beginning again afterwards.
///
/// # Errors
/// It cannot be read, or what stands before its outlines makes no sense.
///
/// ```
/// use schrund::{example, read::{input::Seekable, lay}};
///
/// let mut held: Seekable = Box::new(std::io::Cursor::new(example::PAIR_GLACIERS_GEOJSON.as_bytes()));
/// assert!(!lay::has_index("ice.geojson", &mut held, &Default::default())?);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn has_index(
    name: &str,
    file: &mut Seekable,
    limits: &InputLimits,
) -> Result<bool, Vec<Fault>> {
    if !signature::begins_flatgeobuf(name, &mut **file)? {
        return Ok(false);
    }
    indexed(name, file, limits)
}

#[cfg(feature = "flatgeobuf")]
fn indexed(name: &str, file: &mut Seekable, limits: &InputLimits) -> Result<bool, Vec<Fault>> {
    super::flatgeobuf::has_index(name, file, limits)
}

/// This build does not read it.
#[cfg(not(feature = "flatgeobuf"))]
fn indexed(_: &str, _: &mut Seekable, _: &InputLimits) -> Result<bool, Vec<Fault>> {
    Ok(false)
}

/// The fault of files that would meet with longitude and latitude swapped in one of them.
pub(super) fn apart(
    line: &Route,
    ice: Option<&Noted<Vec<Zone>>>,
    known: &[Zone],
    [route, zones]: &[String; 2],
) -> Option<Fault> {
    swapped(line, &ice?.value, known, FileNames { route, zones })
}

/// What begins a file.
enum Begun<'a> {
    Waits(WaitingIce<'a>),
    Text(Text<'a>),
}

fn of_text(mut text: Text<'_>) -> Begun<'_> {
    let start = text.fill_buf().unwrap_or_default();
    if signature::is_flatgeobuf(start) {
        Begun::Waits(WaitingIce::Once(text))
    } else {
        Begun::Text(text)
    }
}

fn of_file<'a>(name: &str, mut file: Seekable) -> Result<Begun<'a>, Vec<Fault>> {
    Ok(match signature::begins_flatgeobuf(name, &mut file)? {
        true => Begun::Waits(WaitingIce::Here(file)),
        false => Begun::Text(Box::new(BufReader::new(file))),
    })
}

impl WaitingIce<'_> {
    #[cfg(feature = "flatgeobuf")]
    fn near(
        self,
        (name, limits): (&str, &InputLimits),
        route: Option<&Route>,
        zones: &[Zone],
    ) -> IceRead {
        use super::flatgeobuf::{Near, zones_near, zones_near_once};

        let near = Near::of(route, zones);
        match self {
            Self::Once(text) => zones_near_once(name, (text, limits), &ANY_GAP, near),
            Self::Here(file) => zones_near(name, (file, limits), &ANY_GAP, near),
        }
    }

    /// This build does not read it, and the reader of zones says what it is.
    #[cfg(not(feature = "flatgeobuf"))]
    fn near(self, (name, limits): (&str, &InputLimits), _: Option<&Route>, _: &[Zone]) -> IceRead {
        let text = match self {
            Self::Once(text) => text,
            Self::Here(file) => Box::new(BufReader::new(file)),
        };
        ice::read(Input::new(name, text).within(*limits), &ANY_GAP, None)
    }
}

fn all(input: Input<Text<'_>>, known: Option<&KnownShapes>) -> IceRead {
    let file = Place::file(&input.name);
    of_inventory(ice::read(input, &ANY_GAP, known), file)
}

/// What it says about gaps is not used, which is told, and a file without a polygon is a fault.
fn of_inventory(read: IceRead, file: Place) -> IceRead {
    let mut ice =
        gapless(read).map_err(|faults| faults.into_iter().map(named).collect::<Vec<_>>())?;
    let given = ice.value.iter().filter(|zone| !zone.gap.assumed).count();
    if given > 0 {
        let gaps = Fault::new(InGeojson::InventoryGaps(given), file);
        ice.notes.push(gaps);
    }
    Ok(ice)
}

/// A zones file without ice is to be drawn, an inventory without ice is the wrong file.
fn named(mut fault: Fault) -> Fault {
    fault.what = match fault.what {
        Wrong::Geojson(InGeojson::NoZones(features, _)) => InGeojson::NoIce(features).into(),
        Wrong::Geojson(InGeojson::Empty) => InGeojson::EmptyInventory.into(),
        what => what,
    };
    fault
}

fn nothing() -> Noted<Vec<Zone>> {
    Noted {
        value: Vec::new(),
        notes: Vec::new(),
    }
}
