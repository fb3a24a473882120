//! What can go wrong with files, addresses and flags before anything is read, or when something is written.

use serde::Serialize;

use super::{code::Code, instead::Instead, place::Excerpt};

/// What is wrong with files, addresses or flags.
///
/// ```
/// use schrund::{example::{ROUTE_GPX, ZONES_GEOJSON}, fault::files::InFiles, read::{input::Input, lay::Sources}};
///
/// let line = Input::text("line.gpx", ROUTE_GPX.as_bytes());
/// let ice = Input::text("ice.json", ZONES_GEOJSON.as_bytes());
/// let faults = Sources::new(ice, line).job().expect_err("the line comes first");
/// let swapped = InFiles::Swapped { route: "ice.json".to_owned(), zones: "line.gpx".to_owned(), call: None };
/// assert_eq!(faults[0].what, swapped.into());
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InFiles {
    /// It cannot be read.
    Unreadable {
        /// As messages call it.
        name: String,
        /// Why.
        why: Refused,
        /// The file that is probably meant.
        near: Option<String>,
        /// Other files that may be meant: of the folder that it is, or of the one in which it is not.
        holds: Vec<String>,
    },
    /// Reading stopped on the way, in the words of the system.
    Stopped(String),
    /// Several inputs are standard input.
    OneStandardInput,
    /// A terrain model that is no file.
    NotSeekable,
    /// It is no UTF-8 text.
    NotUtf8,
    /// A trip or practice file that is something else.
    NoToml(Instead),
    /// A text that is held whole is larger than that.
    TooLarge {
        /// The most that is read, MiB.
        most_mib: u64,
    },
    /// A name holds a NUL character; here it stands as `␀`.
    NulInName(Excerpt),
    /// Route and zones were given in each other's place.
    Swapped {
        /// Given as the route.
        route: String,
        /// Given as the zones.
        zones: String,
        /// The call with the two exchanged, where there is one.
        call: Option<String>,
    },
    /// A trip file stands in the place of another input.
    TripInPlace {
        /// Of which.
        of: PlaceOf,
        /// The call with the trip file behind its flag.
        call: String,
    },
    /// Route and zones lie apart, and would meet with longitude and latitude swapped in one of them.
    SwappedAxes {
        /// The route file.
        route: String,
        /// The zones file.
        zones: String,
    },
    /// A folder cannot be made.
    NoFolder {
        /// The folder.
        path: String,
        /// Why.
        why: Refused,
        /// What was to be written into it.
        kind: WrittenAs,
        /// A name that is free.
        free: String,
    },
    /// A file cannot be written.
    Unwritable {
        /// The file.
        path: String,
        /// Why.
        why: Refused,
    },
    /// A file to be written is an input.
    IsInput {
        /// Its name.
        name: String,
        /// What was to be written there.
        kind: WrittenAs,
        /// A name that is free: of a file, or of a folder.
        free: String,
    },
    /// A file is to be written under the name of a folder.
    IsFolder {
        /// The folder.
        name: String,
        /// A name in it that is free.
        free: String,
    },
    /// Files to be written are there already.
    There {
        /// Their names.
        names: Vec<String>,
        /// What they were to be.
        kind: WrittenAs,
        /// A name that is free: of a file, or of a folder for all of them.
        free: String,
    },
    /// No code has that name.
    NoCode {
        /// As given.
        name: String,
        /// The codes most like it, the nearest first.
        near: Vec<&'static str>,
    },
    /// A text that is no longitude and latitude.
    NoPlace(String),
    /// One number, where a place takes two.
    OneNumber(String),
    /// A place of the UTM grid whose letter is not that of the band it lies in.
    NoBand {
        /// The letter, as given.
        letter: char,
        /// The place with the letters that suit its northing, that in the south first.
        meant: Vec<String>,
    },
}

/// Whose place it is that a trip file stands in.
///
/// ```
/// use schrund::fault::{Fault, Place, files::{InFiles, PlaceOf}};
///
/// let call = "schrund plan ROUTE.gpx zones.geojson --trip trip.toml".to_owned();
/// let stands = InFiles::TripInPlace { of: PlaceOf::Route, call };
/// assert!(Fault::new(stands, Place::file("trip.toml")).to_string().contains("the route comes first"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum PlaceOf {
    /// Of the route.
    Route,
    /// Of the zones.
    Zones,
    /// Of the glacier inventory.
    Inventory,
}

/// What was to be written.
///
/// ```
/// use schrund::fault::{Fault, Place, files::{InFiles, WrittenAs}};
///
/// let there = |kind| InFiles::There { names: vec!["map.toml".to_owned()], kind, free: "map-2.toml".to_owned() };
/// let fault = |kind| Fault::new(there(kind), Place::file("map.toml")).to_string();
/// assert!(!fault(WrittenAs::Output).contains("--force"), "it may be the leader's own");
/// assert!(fault(WrittenAs::Set).contains("--force"), "the files of an older plan have these names");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum WrittenAs {
    /// One output, under a name that the leader gave.
    Output,
    /// A trip file, by the name that the leader gave to the output.
    Trip,
    /// The set of outputs, under names of the program's.
    Set,
    /// A trip file and a zones file to fill in.
    Start,
    /// A zones file with a zone more.
    Zones,
}

/// Why the system refused.
///
/// ```
/// use schrund::{fault::{Fault, Place, files::{InFiles, Refused}}, read::input::{Input, Text}};
///
/// let why = Refused::NotFound;
/// let fault = Fault::new(InFiles::Unreadable { name: "tour.gpx".to_owned(), why, near: None, holds: Vec::new() }, Place::file("tour.gpx"));
/// let input: Input<Text<'_>> = Input::opened("tour.gpx", Err(fault));
/// let told = input.whole().expect_err("it was never opened")[0].to_string();
/// assert!(told.starts_with("error[unreadable]: cannot read tour.gpx: there is no such file or folder\n"), "{told}");
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Refused {
    /// It is a folder.
    Folder,
    /// It is a file.
    File,
    /// There is no such file or folder.
    NotFound,
    /// No permission.
    Permission,
    /// The disk is full, or nothing more of this size may be written.
    Full,
    /// Something else, in the words of the system.
    Other(String),
}

impl InFiles {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Unreadable { .. }
            | Self::Stopped(_)
            | Self::OneStandardInput
            | Self::NotSeekable => Code::Unreadable,
            Self::NotUtf8 => Code::BrokenText,
            Self::TooLarge { .. }
            | Self::NoToml(_)
            | Self::Swapped { .. }
            | Self::TripInPlace { .. } => Code::WrongKind,
            Self::NulInName(_) => Code::BadName,
            // A file of that name is there, and it is kept.
            Self::NoFolder {
                why: Refused::File, ..
            }
            | Self::IsInput { .. }
            | Self::IsFolder { .. }
            | Self::There { .. } => Code::WouldOverwrite,
            Self::NoFolder { .. } | Self::Unwritable { .. } => Code::Unwritable,
            Self::NoCode { .. } => Code::UnknownName,
            Self::NoPlace(_)
            | Self::OneNumber(_)
            | Self::NoBand { .. }
            | Self::SwappedAxes { .. } => Code::BadPosition,
        }
    }
}
