//! From flags to inputs: opens the files that flags and trip name, and leaves the reading to the library.

use std::path::Path;

use schrund::{
    Job,
    fault::{
        Fault, Item, Place, Wrong,
        files::{InFiles, PlaceOf},
        geojson::InGeojson,
        gpx::InGpx,
        instead::Instead,
        place::STANDARD_INPUT,
        trip::InTrip,
    },
    practice::{Rule, set},
    read::{
        input::{Input, Seekable, Text},
        lay::Sources,
        trip::{self, Assume, RopeEntry, StageWord, Trip, TripFiles},
    },
};

use crate::{
    args::{JobArgs, LaidArgs},
    kept, mistaken, naming, source,
};

/// Reads the files and lays trip file and flags over the rules.
pub(crate) fn read(args: &JobArgs) -> Result<Job, Vec<Fault>> {
    let own = [&args.route, &args.zones].into_iter();
    let laid = &args.laid;
    let one = one_standard_input(own.chain(&laid.trip).chain(&laid.glaciers));
    let Err(twice) = one else {
        return sources(args).job();
    };
    let others = sources(args).job().err().unwrap_or_default();
    Err(twice.into_iter().chain(others).collect())
}

/// The same over terrain models that are kept from call to call.
///
/// # Errors
/// Every fault of every input.
pub(crate) fn over_kept_ground(args: &JobArgs) -> Result<Job, Vec<Fault>> {
    let trip = trip_file(&args.laid);
    let files = files(&args.laid, trip.as_ref());
    let sources = sources(args);
    // All faults are told together.
    let opened = match kept::ground(&files.terrain) {
        Ok(models) => Some(models),
        Err(faults) => return Err(sources.job().err().unwrap_or(faults)),
    };
    let ice = files.glaciers.as_deref().unwrap_or_default();
    let names = [&args.zones, ice].map(source::shown);
    kept::SHAPES.only(&names.each_ref().map(String::as_str));
    let known = Some(&*kept::SHAPES);
    Sources {
        opened,
        known,
        ..sources
    }
    .job()
}

fn sources(args: &JobArgs) -> Sources<'static> {
    let mut own = Sources::new(text(&args.route), text(&args.zones));
    own.zones_near = zones_sought(&args.zones);
    laid_over(own, &args.laid)
}

/// A zones file that is read here and there: one on this machine, since what comes from an address was fetched whole when it was
/// opened as a text.
pub(crate) fn zones_sought(name: &str) -> Option<Input<Seekable>> {
    let here = naming::path(name).is_file() && source::can_be_sought(name);
    here.then(|| sought(name))
}

/// What is laid beside route and ice, with them.
pub(crate) fn laid_over(own: Sources<'static>, args: &LaidArgs) -> Sources<'static> {
    let trip = trip_file(args);
    let files = files(args, trip.as_ref());
    let models = files.terrain.iter();
    let models = models.map(|name| source::within(name, source::seekable(name)));
    let glaciers = files.glaciers.as_deref();
    let (here, elsewhere) = glaciers
        .map(|name| match source::can_be_sought(name) {
            true => (Some(sought(name)), None),
            false => (None, Some(text(name))),
        })
        .unwrap_or_default();
    Sources {
        practice: files.practice.as_deref().and_then(practice_file),
        glaciers: elsewhere,
        glaciers_near: here,
        terrain: models.collect(),
        trip,
        flags: flags(args),
        ..own
    }
}

/// The faults of a job, in the words of the call: the file of the zones, and the flag of the margin, which is laid as
/// any other figure.
pub(crate) fn named(mut faults: Vec<Fault>, args: &JobArgs) -> Vec<Fault> {
    trip_in_place(&mut faults, args);
    for fault in &mut faults {
        if let Wrong::Files(InFiles::Swapped { call, .. }) = &mut fault.what {
            *call = Some(exchanged(&args.route, &args.zones));
        }
    }
    let margin = Some("assume.margin_m");
    let laid = &args.laid;
    let margin_by_flag = laid.margin.is_some() && laid.assume.iter().all(|(n, _)| n != "margin_m");
    for at in faults.iter_mut().map(|fault| &mut fault.at) {
        if at.file.is_none() && at.item == Some(Item::Zones) {
            *at = Place::file(&source::shown(&args.zones));
        } else if margin_by_flag && at.property.as_deref() == margin {
            at.property = Some("margin_m".to_owned());
        }
    }
    faults
}

/// A trip file in the place of route or ice is told with the call that is meant. Who goes, what is to be assumed: that may
/// stand in it, so nothing is said of it.
fn trip_in_place(faults: &mut Vec<Fault>, args: &JobArgs) {
    let is_toml = |fault: &Fault| {
        matches!(
            fault.what,
            Wrong::Gpx(InGpx::Is(Instead::Toml)) | Wrong::Geojson(InGeojson::Is(Instead::Toml))
        )
    };
    let place = |name: &str| Place::file(&source::shown(name)).file;
    let stands = |fault: &Fault, name: &str| is_toml(fault) && fault.at.file == place(name);
    let inputs = [
        (PlaceOf::Route, Some(&args.route)),
        (PlaceOf::Zones, Some(&args.zones)),
        (PlaceOf::Inventory, args.laid.glaciers.as_ref()),
    ];
    let mut inputs = inputs
        .into_iter()
        .filter_map(|(of, name)| Some((of, name?)));
    let found = inputs.find(|(_, name)| faults.iter().any(|fault| stands(fault, name)));
    let Some((of, trip)) = found.filter(|_| args.laid.trip.is_none()) else {
        return;
    };
    let in_place = InFiles::TripInPlace {
        of,
        call: mistaken::with_trip(&words(), trip),
    };
    let at = Place::file(&source::shown(trip));
    faults.retain(|fault| {
        !stands(fault, trip) && !matches!(fault.what, Wrong::Trip(InTrip::NobodySaid))
    });
    faults.insert(0, Fault::new(in_place, at));
}

/// The words of the call.
fn words() -> Vec<String> {
    let words = std::env::args_os().skip(1);
    words
        .map(|word| word.to_string_lossy().into_owned())
        .collect()
}

/// The call with route and zones in each other's place.
fn exchanged(route: &str, zones: &str) -> String {
    let (mut route_due, mut zones_due) = (true, true);
    let mut place = |word: String| {
        if word == route && std::mem::take(&mut route_due) {
            zones.to_owned()
        } else if word == zones && std::mem::take(&mut zones_due) {
            route.to_owned()
        } else {
            word
        }
    };
    let words: Vec<String> = words().into_iter().map(&mut place).collect();
    naming::call(words.iter().map(String::as_str))
}

/// A text by its name.
pub(crate) fn text(name: &str) -> Input<Text<'static>> {
    source::within(name, source::open(name))
}

/// A file that is read here and there by its name.
pub(crate) fn sought(name: &str) -> Input<Seekable> {
    source::within(name, source::indexed(name))
}

/// The trip file, read.
pub(crate) fn trip_file(laid: &LaidArgs) -> Option<Input<Trip>> {
    laid.trip.as_ref().map(|name| trip::file(text(name)))
}

/// The files of the flags, or else those of the trip file, which lie beside it.
pub(crate) fn files(laid: &LaidArgs, trip: Option<&Input<Trip>>) -> TripFiles {
    let trip = trip.and_then(|trip| trip.source.as_ref().ok());
    let trip = trip.map(Trip::files).unwrap_or_default();
    let terrain = match laid.terrain.as_slice() {
        [] => trip.terrain.iter().map(|t| beside_trip(laid, t)).collect(),
        flags => flags.to_vec(),
    };
    let practice = || trip.practice.map(|p| practice_beside_trip(laid, p));
    let glaciers = || trip.glaciers.map(|g| beside_trip(laid, &g));
    TripFiles {
        practice: laid.practice.clone().or_else(practice),
        terrain,
        glaciers: laid.glaciers.clone().or_else(glaciers),
    }
}

/// All files that a job is read from, those that its trip file names too.
pub(crate) fn all_files(args: &JobArgs) -> Vec<String> {
    let own = [Some(&args.route), Some(&args.zones)];
    own.into_iter()
        .flatten()
        .cloned()
        .chain(laid_files(&args.laid))
        .collect()
}

/// Those that are laid beside route and ice.
pub(crate) fn laid_files(laid: &LaidArgs) -> Vec<String> {
    let again = |name: &&String| *name != "-" && !source::is_address(name);
    let trip = laid.trip.as_ref().filter(again);
    let trip = trip.map(|name| trip::file(text(name)));
    let named = files(laid, trip.as_ref());
    let own = laid.trip.iter().cloned();
    let more = named.practice.into_iter().chain(named.glaciers);
    own.chain(more).chain(named.terrain).collect()
}

/// A path of the trip file, which is relative to the folder the trip file lies in.
fn beside_trip(laid: &LaidArgs, path: &str) -> String {
    let folder = laid.trip.as_deref().filter(|t| !source::is_address(t));
    let folder = folder.and_then(|t| naming::path(t).parent().map(Path::to_owned));
    match folder {
        Some(folder) if !source::is_address(path) => naming::text(folder.join(path).as_os_str()),
        _ => path.to_owned(),
    }
}

/// A practice set of the trip file: one that is embedded, or a file that lies beside it.
fn practice_beside_trip(laid: &LaidArgs, name: String) -> String {
    let beside = beside_trip(laid, &name);
    match practice_file_is(&name, &beside) {
        true => beside,
        false => name,
    }
}

/// Reads standard input once for all where it is one of these inputs or of those that the trip file names: they are opened
/// again. More than one it cannot be.
///
/// # Errors
/// It is more than one of them, or cannot be read.
#[cfg(feature = "page")]
pub(crate) fn keep_standard_input<'n>(
    own: impl Iterator<Item = &'n String>,
    laid: &'n LaidArgs,
) -> Result<(), Vec<Fault>> {
    let mut all: Vec<String> = own.chain(&laid.trip).cloned().collect();
    one_standard_input(all.iter().chain(&laid.glaciers))?;
    // The trip itself may come from there.
    source::keep_standard_input(&laid.trip).map_err(|fault| vec![fault])?;
    let named = files(laid, trip_file(laid).as_ref());
    all.extend(named.glaciers.into_iter().chain(named.practice));
    one_standard_input(all.iter())?;
    source::keep_standard_input(&all).map_err(|fault| vec![fault])
}

/// Only one input can come from standard input.
fn one_standard_input<'n>(names: impl Iterator<Item = &'n String>) -> Result<(), Vec<Fault>> {
    if names.filter(|name| *name == "-").count() < 2 {
        return Ok(());
    }
    let twice = Fault::new(InFiles::OneStandardInput, Place::file(STANDARD_INPUT));
    Err(vec![twice])
}

/// A practice file, unless the name is that of an embedded set or of nothing at all.
pub(crate) fn practice_file(name: &str) -> Option<Input<Text<'static>>> {
    practice_file_is(name, name).then(|| text(name))
}

/// Whether what is named as a practice set is the file under this path.
fn practice_file_is(name: &str, path: &str) -> bool {
    let embedded = set::EMBEDDED.iter().any(|(n, _)| *n == name);
    !embedded && (name.contains(['/', '\\', '.']) || naming::path(path).exists())
}

/// The text of a practice file, where the name is not that of an embedded set.
///
/// # Errors
/// It cannot be read.
pub(crate) fn practice_text(name: &str) -> Result<Option<String>, Vec<Fault>> {
    practice_file(name).map(Input::whole).transpose()
}

/// The flags in the form of a trip file.
pub(crate) fn flags(args: &LaidArgs) -> Trip {
    let margin = args.margin.map(Assume::Value);
    let margin = margin.map(|m| (Rule::MarginM.name().to_owned(), m));
    Trip {
        language: args.lang,
        practice: args.practice.clone(),
        gap_m: args.gap,
        terrain: args.terrain.clone(),
        travel: args.travel,
        pace: args.pace,
        undrawn_ice: args.undrawn_ice,
        start: args.start,
        start_at_km: args.start_at_km,
        bridges_until: args.bridges_until,
        back_by: args.back_by,
        party: args.party.clone(),
        teams: args.teams.clone(),
        rope: (!args.rope.is_empty())
            .then(|| args.rope.iter().map(|&m| RopeEntry::long(m)).collect()),
        stage: args.stage.as_deref().map(StageWord::parse),
        snow: args.snow,
        assume: args.assume.iter().cloned().chain(margin).collect(),
        ..Trip::default()
    }
}
