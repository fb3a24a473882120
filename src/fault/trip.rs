//! What can be wrong with trip files, flags and practice files.

use serde::Serialize;

use super::{code::Code, refusal::Refusal};

/// What is wrong with what the leader says, by trip file or flag.
///
/// ```
/// use schrund::{fault::{Place, trip::InTrip}, read::trip};
///
/// let rules = schrund::example::job()?.rules;
/// let said = trip::trip("trip.toml", "party = 82")?; // kilograms, where a head count stands
/// let faults = said.party(&Place::file("trip.toml"), &rules, &Default::default()).expect_err("82 people");
/// assert_eq!(faults[0].what, InTrip::TooMany { people: Some(82), most: 60 }.into());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InTrip {
    /// A party of none.
    Nobody,
    /// More people than are planned for.
    TooMany {
        /// How many; `None` where it is too large for a count.
        people: Option<usize>,
        /// The most that are planned for.
        most: usize,
    },
    /// More ropes than are planned for.
    TooManyRopes {
        /// How many.
        ropes: usize,
        /// The most that are planned for.
        most: usize,
    },
    /// Nobody said how many go.
    NobodySaid,
    /// No rope is left of those at hand.
    NoRope,
    /// A mass that cannot be.
    Mass {
        /// Which person, from 1.
        person: usize,
        /// What the leader calls them.
        name: Option<String>,
        /// Kilograms with pack.
        kg: f64,
        /// Least mass.
        min_kg: f64,
        /// Greatest mass.
        max_kg: f64,
        /// The mass before it, where this one may be its decimals behind a comma.
        decimals_of: Option<f64>,
    },
    /// All masses are so great that they may be pounds.
    Pounds {
        /// Masses in kilograms, if they are.
        kg: Vec<f64>,
        /// Nobody's mass as given is as small, kilograms.
        most_kg: f64,
    },
    /// Rope teams of these sizes do not come to the people who go, or one is too small or too large.
    Teams {
        /// The sizes, as given.
        sizes: Vec<f64>,
        /// How many go.
        people: usize,
        /// Least and most on one rope.
        within: [usize; 2],
    },
    /// A rope of so many metres cannot be.
    RopeLength {
        /// Its length, metres.
        length_m: f64,
        /// Least and greatest length, metres.
        within_m: [f64; 2],
    },
    /// A gap width to assume that cannot be.
    Gap {
        /// The width, metres.
        gap_m: f64,
        /// Least and greatest width, metres.
        within_m: [f64; 2],
    },
    /// A rope so thick or thin cannot be.
    RopeAcross {
        /// Its diameter, millimetres.
        diameter_mm: f64,
        /// Least and greatest diameter, millimetres.
        within_mm: [f64; 2],
    },
    /// The route has no such stage.
    NoStage {
        /// Which was asked for.
        asked: Asked,
        /// Number and name of those it has.
        has: Vec<(usize, Option<String>)>,
    },
    /// Bridges are trusted until a time, and nobody said when the party starts.
    BridgesWithoutStart {
        /// Until when, minutes of the day.
        until_min: f64,
    },
    /// The line is to be done by a time, and nobody said when the party starts.
    BackWithoutStart {
        /// By when, minutes of the day.
        by_min: f64,
    },
    /// The hour of the start counts at a kilometre that is none.
    StartBefore {
        /// As given.
        at_km: f64,
    },
    /// The hour of the start counts beyond the end of every stage.
    StartBeyond {
        /// As given.
        at_km: f64,
        /// Length of the longest stage, metres.
        length_m: f64,
    },
    /// Where an hour counts that nobody said.
    PlaceWithoutStart {
        /// As given.
        at_km: f64,
    },
    /// A halt of so many minutes cannot be.
    HaltMinutes {
        /// Its minutes.
        minutes: f64,
        /// Least and most minutes.
        within: [f64; 2],
    },
    /// A halt without a kilometre and without the name of a waypoint.
    HaltNowhere,
    /// A halt at a kilometre that is none.
    HaltBefore {
        /// As given.
        at_km: f64,
    },
    /// A halt beyond the end of its stage.
    HaltBeyond {
        /// As given.
        at_km: f64,
        /// Length of the stage, metres.
        length_m: f64,
    },
    /// A halt at a kilometre, and nobody said of which stage.
    HaltOnWhichStage {
        /// Number and name of the stages there are.
        has: Vec<(usize, Option<String>)>,
    },
    /// The route file has no waypoint of that name.
    NoWaypoint {
        /// As given.
        name: String,
        /// The name most like it.
        near: Option<String>,
        /// How many waypoints with a name it has.
        has: usize,
    },
    /// A waypoint too far from the line to be a halt on it.
    WaypointAway {
        /// Its name.
        name: String,
        /// How far from the line, metres.
        away_m: f64,
        /// How far it may be, metres.
        margin_m: f64,
    },
    /// No figure and no word has that name.
    NoFigure {
        /// As given.
        name: String,
        /// The name most like it.
        near: Option<String>,
    },
    /// A name that a plan lists and that something else sets.
    SetElsewhere {
        /// The name.
        name: String,
        /// What sets it.
        by: Setter,
    },
    /// A word that is not taken.
    NoWord {
        /// The name of the choice.
        name: String,
        /// As given.
        found: String,
        /// What it takes.
        words: Vec<&'static str>,
    },
    /// Something that is no time of day, where one is taken.
    NoTime {
        /// The name.
        name: String,
        /// As given.
        found: String,
    },
    /// Something that is no day, where one is taken.
    NoDay {
        /// The name.
        name: String,
        /// As given.
        found: String,
    },
    /// Something that is no distance from UTC, where one is taken.
    NoOffset {
        /// The name.
        name: String,
        /// As given.
        found: String,
    },
    /// Something that is no number, where one is taken.
    NoNumber {
        /// The name of the figure.
        name: String,
        /// As given.
        found: String,
    },
    /// A figure that is not taken.
    Figure(Refusal),
    /// A file that the trip names was not laid beside it.
    NotLaid {
        /// As the trip names it.
        file: String,
        /// What it holds.
        what: NamedFile,
    },
}

/// The files that a trip can name.
///
/// ```
/// use schrund::{example, fault::{Wrong, trip::{InTrip, NamedFile}}, read::{input::Input, lay::Sources, trip}};
///
/// let mut sources = Sources::new(
///     Input::text("route.gpx", example::PAIR_ROUTE_GPX.as_bytes()),
///     Input::text("zones.geojson", example::PAIR_ZONES_GEOJSON.as_bytes()),
/// );
/// sources.trip = Some(trip::file(Input::text("trip.toml", example::PAIR_TRIP_TOML.as_bytes())));
/// let faults = sources.job().expect_err("it names two files that nobody laid beside it");
/// let named = faults.iter().filter_map(|fault| match fault.what {
///     Wrong::Trip(InTrip::NotLaid { what, .. }) => Some(what),
///     _ => None,
/// });
/// assert_eq!(named.collect::<Vec<_>>(), [NamedFile::Terrain, NamedFile::Glaciers]);
/// assert_eq!(faults[0].at.property.as_deref(), Some(NamedFile::Terrain.property()));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NamedFile {
    /// A practice file.
    Practice,
    /// A terrain model.
    Terrain,
    /// A glacier inventory.
    Glaciers,
}

impl NamedFile {
    /// The member that names it.
    #[must_use]
    pub fn property(self) -> &'static str {
        match self {
            Self::Practice => "practice",
            Self::Terrain => "terrain",
            Self::Glaciers => "glaciers",
        }
    }
}

/// A stage as it was asked for.
///
/// ```
/// use schrund::{fault::{Place, Wrong, trip::{Asked, InTrip}}, read::trip::StageWord};
///
/// let route = schrund::example::job()?.route;
/// let fault = StageWord::parse("Day two").of(route, &Place::file("trip.toml")).expect_err("it has one day");
/// let Wrong::Trip(InTrip::NoStage { asked, has }) = fault.what else { panic!("{fault}") };
/// assert_eq!(asked, Asked::Name("Day two".to_owned()));
/// assert_eq!(has, [(1, Some("Invented glacier".to_owned()))]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Asked {
    /// By number.
    Number(usize),
    /// By name.
    Name(String),
}

/// What sets something that is listed among the assumptions.
///
/// ```
/// use schrund::{fault::{Place, trip::{InTrip, Setter}}, practice::Origin, read::trip::{Assume, Laid, assume}};
///
/// let mut laid = Laid::of(schrund::example::job()?.rules);
/// let fault = assume(&mut laid, "rope.1", &Assume::Value(50.0), &Place::default(), &Origin::Flag)
///     .expect_err("a plan lists the ropes, and they are no assumption");
/// assert_eq!(fault.what, InTrip::SetElsewhere { name: "rope.1".to_owned(), by: Setter::Rope }.into());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Setter {
    /// The practice set.
    Practice,
    /// Who goes.
    Party,
    /// The one who has that mass.
    Person,
    /// The ropes at hand.
    Rope,
    /// The terrain models.
    Terrain,
    /// The gap width of zones that give none.
    Gap,
    /// The lengths in which ropes are sold.
    Sold,
    /// The trip itself.
    Trip,
}

/// What is wrong with a practice set or file.
///
/// ```
/// use schrund::{fault::trip::InPractice, practice::{Rules, set::Source}};
///
/// let text = "name = \"mine\"\n[spacing_2_m]\nvalue = 12\nstanding = \"our judgement\"\n";
/// let faults = Rules::with_practice(&Source::File { name: "mine.toml", text }).expect_err("three are missing");
/// let missing = ["spacing_3_m", "spacing_4_m", "spacing_5_m"].map(|name| InPractice::Missing(name).into());
/// assert!(faults.iter().map(|fault| &fault.what).eq(&missing), "{faults:?}");
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InPractice {
    /// No set has that name.
    NoSet {
        /// As given.
        name: String,
        /// The set most like it.
        near: Option<&'static str>,
        /// The sets there are.
        sets: Vec<&'static str>,
    },
    /// A set gives a figure that does not exist.
    NoFigure {
        /// As given.
        name: String,
        /// The name most like it.
        near: Option<&'static str>,
    },
    /// A set does not give a figure that it must.
    Missing(&'static str),
    /// The spacing grows with the number of people.
    Growing {
        /// So many people have less.
        few: usize,
        /// So many have more.
        many: usize,
    },
    /// A figure in another unit than the one it has.
    Unit {
        /// As given.
        found: String,
        /// The unit of the figure.
        takes: String,
    },
    /// A figure that is not taken.
    Figure(Refusal),
    /// A file that comes with the program is broken; a test proves that none is.
    BuiltIn(Refusal),
}

impl InTrip {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::NoStage { .. }
            | Self::NoWaypoint { .. }
            | Self::NoFigure { .. }
            | Self::SetElsewhere { .. }
            | Self::NoWord { .. } => Code::UnknownName,
            Self::HaltMinutes { .. }
            | Self::HaltBefore { .. }
            | Self::HaltBeyond { .. }
            | Self::StartBeyond { .. }
            | Self::StartBefore { .. } => Code::BadNumber,
            Self::NoNumber { .. } | Self::Gap { .. } | Self::Figure(_) => Code::BadNumber,
            Self::NotLaid { .. } => Code::Unreadable,
            Self::Pounds { .. } => Code::Pounds,
            _ => Code::BadTrip,
        }
    }
}

impl InPractice {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::NoSet { .. } | Self::NoFigure { .. } => Code::UnknownName,
            Self::Missing(_) => Code::MissingFigure,
            Self::Growing { .. } | Self::Figure(_) | Self::Unit { .. } => Code::BadNumber,
            Self::BuiltIn(_) => Code::BrokenText,
        }
    }
}
