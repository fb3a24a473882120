//! Plans the rope set-up of a team for every leg of a glacier route.
//!
//! Facts, then words: planning makes numbers, names and enums; the last rooms make sentences and files of them, and
//! nothing reads a number back from a sentence. Each arrow is a room, in the order of the modules below:
//!
//! ```text
//! GPX, GeoJSON, TOML, GeoTIFF ─read▶ Job (trip/) ─meet▶ Contacts ─ground▶ Met ─legs▶ stretches, spacings
//!    ─rope▶ drafts, falls, ropes ─times▶ Hours ─judge▶ Findings, Verdicts ─whole▶ Plan (plan/)
//!    ─say▶ words ─write▶ table, JSON, GeoJSON, GPX, KML, CSV, report, message
//! geometry, physics (nature), raster (heights) and practice (what is taught) stand under all of them;
//! options asks the same rooms for many teams over one meeting of route and ice.
//! ```
//!
//! # From bytes to bytes
//!
//! The library touches no file, socket, thread or clock: whoever uses it opens files and hands in what they hold. Text
//! comes in, a plan is made, and any of [`write::FORMATS`] goes out. This is a whole program but for its files:
//!
//! ```
//! use schrund::{Planner, fault::Fault, read::{input::Input, lay::Sources, trip}, write::{FORMATS, Sheet}};
//!
//! fn planned(line: &[u8], ice: &[u8], trip: &[u8], format: &str) -> Result<Vec<u8>, Vec<Fault>> {
//!     let mut sources = Sources::new(Input::text("line.gpx", line), Input::text("ice.geojson", ice));
//!     sources.trip = Some(trip::file(Input::text("trip.toml", trip)));
//!     let job = sources.job()?;
//!     let planner = Planner::new(&job)?;
//!     let plan = planner.plan()?;
//!     let scene = planner.scene(&plan)?;
//!     let format = FORMATS.iter().find(|known| known.name() == format).expect("one of their names");
//!     let mut bytes = Vec::new();
//!     format.write(&mut bytes, &Sheet::of(&job, &plan, &scene)).expect("memory takes everything");
//!     Ok(bytes)
//! }
//!
//! let line = br#"<gpx><trk><trkseg><trkpt lat="66.50" lon="2.0"/><trkpt lat="66.52" lon="2.0"/></trkseg></trk></gpx>"#;
//! let ice = br#"{"type": "Feature", "properties": {"name": "Icefall", "gap_m": 15}, "geometry": {"type": "Polygon",
//!     "coordinates": [[[1.9, 66.505], [2.1, 66.505], [2.1, 66.51], [1.9, 66.51], [1.9, 66.505]]]}}"#;
//! let trip = br#"party = [82, 75, 90]
//!     rope = [{ length_m = 60, name = "blue" }]"#;
//! let message = String::from_utf8_lossy(&planned(line, ice, trip, "text")?).into_owned();
//! assert!(message.contains("3 at 13.5 m no knots coil 15 rope 43.5 of 60 m"), "{message}");
//!
//! // All faults of all inputs come at once, each with its code, its place and what to do.
//! let faults = planned(line, b"{}", b"party = 0", "text").expect_err("no ice, nobody");
//! let codes: Vec<&str> = faults.iter().map(|fault| fault.code()).collect();
//! assert_eq!(codes, ["bad-geojson", "bad-trip"]);
//! # Ok::<(), Vec<Fault>>(())
//! ```
//!
//! # What a plan says
//!
//! A [`plan::Plan`] holds legs, a leg holds the set-up of each rope team and what was found, all of it as numbers and
//! names. [`say`] makes sentences of them, in metres or in feet:
//!
//! ```
//! use schrund::{say::{finding::says, units::Units, voice::Voice}, write::{Look, Scene, Sheet, table}};
//!
//! let job = schrund::example::job()?;
//! let plan = schrund::plan(&job)?;
//! let (leg, team) = (&plan.legs[1], &plan.legs[1].teams[0]);
//! assert_eq!((team.people, team.spacing_m), (3, 13.5), "0.9 of the gap of 15 m (our judgement)");
//!
//! let two = leg.findings.iter().find(|finding| finding.code() == "two-over-one-gap").expect("13.5 m on a gap of 15 m");
//! let metres = says(two, Voice::default()).to_string();
//! assert_eq!(metres, "2 people can stand over one gap of 15 m at once with 13.5 m between them; 1 left to hold");
//! let voice = Voice { units: Units::Imperial, ..Voice::default() };
//! let feet = says(two, voice).to_string();
//! assert_eq!(feet, "2 people can stand over one gap of 49.3 ft at once with 44.3 ft between them; 1 left to hold");
//!
//! // A whole document in feet; what is meant for programs (JSON, GeoJSON, CSV) stays in metres.
//! let scene = Scene::default();
//! let sheet = Sheet { look: Look { voice, ..Look::default() }, ..Sheet::of(&job, &plan, &scene) };
//! assert!(table::plan(&sheet).text.contains("44.3 ft apart"));
//! # Ok::<(), Vec<schrund::fault::Fault>>(())
//! ```
//!
//! # What a trip file asks for
//!
//! A trip file can name a terrain model, a glacier inventory and a practice file. [`read::trip::Trip::files`] tells
//! which; whoever opened the trip file opens those too, however they do that (here: `open`, `text`), and puts them
//! beside it before the job is made. The files of this trip stand in [`example`].
//!
//! ```
//! # use std::io::Cursor;
//! use schrund::{example, plan::place::HeightsFrom, read::{input::Input, lay::Sources, trip::{self, Trip}}};
//!
//! # let open = |_: &str| Cursor::new(example::pair_terrain_hgt());
//! # let text = |_: &str| example::PAIR_GLACIERS_GEOJSON.as_bytes();
//! let mut sources = Sources::new(
//!     Input::text("route.gpx", example::PAIR_ROUTE_GPX.as_bytes()),
//!     Input::text("zones.geojson", example::PAIR_ZONES_GEOJSON.as_bytes()),
//! );
//! let trip = trip::file(Input::text("trip.toml", example::PAIR_TRIP_TOML.as_bytes()));
//! let asked = trip.source.as_ref().map(Trip::files).unwrap_or_default();
//! sources.trip = Some(trip);
//! for name in &asked.terrain {
//!     sources.terrain.push(Input::new(name, Box::new(open(name)))); // a file that can be sought in
//! }
//! sources.glaciers = asked.glaciers.map(|name| Input::text(&name, text(&name)));
//!
//! let plan = schrund::plan(&sources.job()?)?;
//! assert_eq!(asked.terrain, ["N66E002.hgt"]);
//! assert_eq!(plan.route.heights_from, [HeightsFrom::TerrainModel]);
//! assert!(plan.legs.iter().any(|leg| !leg.ice_without_zone.is_empty()), "ice where no zone is drawn");
//! # Ok::<(), Vec<schrund::fault::Fault>>(())
//! ```
//!
//! What could not be opened goes in as [`read::input::Input::opened`] with its fault, and is told with all others; a model
//! or an inventory that is asked for and not put there is not missed. A practice file goes to
//! [`read::lay::Sources::practice`], unless its name is that of a set in [`practice::set::EMBEDDED`].
//!
//! # The formats
//!
//! [`write::FORMATS`] is the list of what can be handed out. All of it is made from one [`write::Sheet`]; the
//! report alone shows all that [`Planner::scene`] gives: heights, the shape of the ground, the trip with something
//! missing. The JSON plan shows the last of these ([`Planner::others`]); the others do with `Scene::default()`.
//!
//! ```
//! use schrund::{Planner, write::{FORMATS, Sheet}};
//!
//! assert_eq!(FORMATS.map(|format| format.name()), ["table", "json", "csv", "geojson", "kml", "gpx", "html", "sheet", "text"]);
//!
//! let job = schrund::example::pair()?;
//! let planner = Planner::new(&job)?;
//! let plan = planner.plan()?;
//! let scene = planner.scene(&plan)?;
//! let report = FORMATS.iter().find(|format| format.needs_scene()).expect("the report");
//! let mut page = Vec::new();
//! report.write(&mut page, &Sheet::of(&job, &plan, &scene)).expect("memory takes everything");
//! let page = String::from_utf8_lossy(&page);
//! assert_eq!(report.file(), Some("report.html"));
//! assert!(page.contains("Height profile") && page.contains("If something is missing"));
//! # Ok::<(), Vec<schrund::fault::Fault>>(())
//! ```
//!
//! Ways to split the party and to use the ropes are weighed by [`Planner::options`] and shown by [`write::options`];
//! JSON Schemas of plan and trip file come from [`write::json::schema`] and [`read::trip::schema`].
#![warn(clippy::print_stdout, clippy::print_stderr)]

mod answered;
mod cores;

pub mod fault;
pub mod limits;

pub mod geometry;
pub mod physics;
pub mod raster;

pub mod practice;
pub mod trip;

pub mod plan;

mod schema;

pub mod read;

pub mod meet;
pub mod strip;

pub mod ground;

pub mod legs;

pub mod rope;

pub mod times;

pub mod judge;

pub mod whole;

pub mod options;

pub mod say;

pub mod write;

pub mod example;

mod scene;
mod unmet;

mod again;

#[cfg(feature = "survey")]
pub mod survey;

#[cfg(feature = "fetch")]
pub mod fetch;

pub use again::Memory;
#[cfg(feature = "survey")]
pub use survey::Survey;
pub use trip::job::Job;

use std::{
    cell::RefCell,
    mem,
    sync::{Mutex, MutexGuard, PoisonError},
};

use fault::{Fault, plan::InPlan};
use ground::{
    known::KnownLines,
    met::{Met, Prepared},
};
use judge::cure::Promised;
use legs::{memo::Memo, sketch::Sketch};
use plan::{Plan, depth::Depth, options::Options};
use rope::{
    answers::{Answers, KnownFalls},
    legs::demands_m,
    trade::{self, Trade},
};
use times::hours::hours;
use trip::{
    job::Brief,
    party::{Party, RopeTeam},
};
use whole::{legs::Settled, worked::Worked};

/// Plans every leg of the job.
///
/// # Errors
/// The party cannot go, no ice is met by the route, or a terrain file is broken where it is read.
pub fn plan(job: &Job) -> Result<Plan, Vec<Fault>> {
    Planner::new(job)?.plan()
}

/// A job whose route has met its ice: plans, options and the same trip with another party share that meeting and
/// everything that was asked of it.
///
/// ```
/// use schrund::{Planner, trip::party::Party};
///
/// let job = schrund::example::job()?;
/// let planner = Planner::new(&job)?;
/// let three = planner.plan()?;
/// let two = planner.plan_for(&Party::weighing(&[82.0, 75.0]))?;
/// // The same legs of ice, asked for another team: a pair walks the gap and 5 m apart (our judgement).
/// assert_eq!((three.legs[1].teams[0].spacing_m, two.legs[1].teams[0].spacing_m), (13.5, 20.0));
/// assert!(planner.plan_for(&Party::weighing(&[82.0])).is_err(), "nobody goes alone");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug)]
pub struct Planner<'j> {
    case: Brief<'j>,
    ice: Prepared<'j>,
    met: Met,
    memo: Memo,
    falls: Mutex<KnownFalls>,
    memory: Option<&'j Memory>,
}

impl<'j> Planner<'j> {
    /// Lets the route meet the ice and reads the ground under it.
    ///
    /// # Errors
    /// No ice is met by the route, or a terrain file is broken where it is read.
    pub fn new(job: &'j Job) -> Result<Self, Vec<Fault>> {
        Self::of(job.case())
    }

    /// The same for what belongs to somebody else.
    ///
    /// # Errors
    /// See [`Planner::new`].
    pub fn of(case: Brief<'j>) -> Result<Self, Vec<Fault>> {
        Self::on(case, KnownLines::default())
    }

    fn on(case: Brief<'j>, lines: KnownLines) -> Result<Self, Vec<Fault>> {
        let ice = Prepared::of(&case, lines);
        let met = Met::of(&case, &ice).map_err(|fault| vec![fault])?;
        unmet::met_by(&case, &met)?;
        Ok(Self::having_met(case, ice, met))
    }

    fn having_met(case: Brief<'j>, ice: Prepared<'j>, met: Met) -> Self {
        Self {
            case,
            ice,
            met,
            memo: Memo::default(),
            falls: Mutex::default(),
            memory: None,
        }
    }

    /// The plan for the party of the job.
    ///
    /// # Errors
    /// The party cannot go.
    pub fn plan(&self) -> Result<Plan, Vec<Fault>> {
        self.plan_for(self.case.party)
    }

    /// As much of the plan for the party of the job as is asked for: less is a good deal faster.
    ///
    /// # Errors
    /// The party cannot go.
    pub fn to(&self, depth: Depth) -> Result<Plan, Vec<Fault>> {
        self.remembering(|falls| self.plan_to(&self.case, depth, falls))
    }

    /// The plan for another party on the same trip.
    ///
    /// # Errors
    /// The party cannot go.
    pub fn plan_for(&self, party: &Party) -> Result<Plan, Vec<Fault>> {
        let job = Brief { party, ..self.case };
        self.remembering(|falls| self.plan_to(&job, Depth::Whole, falls))
    }

    /// What was asked of the model so far.
    fn known(&self) -> MutexGuard<'_, KnownFalls> {
        self.falls.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Lends out what was asked of the model so far, and keeps what was asked beside it.
    fn remembering<T>(&self, ask: impl FnOnce(&RefCell<KnownFalls>) -> T) -> T {
        let falls = RefCell::new(mem::take(&mut *self.known()));
        let answer = ask(&falls);
        *self.known() = falls.into_inner();
        answer
    }

    /// The plan of all that was worked out.
    fn plan_to(
        &self,
        job: &Brief<'_>,
        depth: Depth,
        falls: &RefCell<KnownFalls>,
    ) -> Result<Plan, Vec<Fault>> {
        self.worked_to(job, depth, falls, |worked| worked.plan(job, depth, falls))
    }

    /// The flow on one screen: every room once. The job is that of the planner but for who goes, with what.
    fn worked_to<T>(
        &self,
        job: &Brief<'_>,
        depth: Depth,
        falls: &RefCell<KnownFalls>,
        made: impl FnOnce(Worked<'_>) -> T,
    ) -> Result<T, Vec<Fault>> {
        let teams = teams_of(job.party)?;
        let pairs = job.route.stages.iter().zip(&self.met.stages);
        let stages: Vec<Sketch<'_>> = pairs
            .map(|(stage, met)| Sketch::of(job, &teams, stage, met, &self.memo))
            .collect();
        let legs = rope::legs::legs(job, &teams, &stages);
        let demands_m = demands_m(&legs, &teams);
        let answers = Answers::of(job, &legs, depth, falls);
        let trade = Trade::of(&legs, &answers);
        let ropes = trade::best(job, &legs, &trade, &demands_m);
        let settled = Settled {
            job,
            legs: &legs,
            ropes: &ropes,
            answers: &answers,
            cures: (depth >= Depth::Told).then_some(falls),
            promised: &Promised::default(),
        };
        let found = settled.untimed();
        let hours = hours(job, &legs, found.iter().map(|leg| leg.belays.as_ref()));
        Ok(made(Worked {
            planned: whole::legs::legs(&settled, found, &hours),
            teams: &teams,
            stages: &stages,
            legs: &legs,
            hours: &hours,
            demands_m: &demands_m,
            trade: &trade,
            ropes: &ropes,
        }))
    }

    /// Every way to split the party and to share the ropes out that no other beats in everything.
    ///
    /// # Errors
    /// The party cannot go, or a terrain file is broken where it is read.
    pub fn options(&self) -> Result<Options, Vec<Fault>> {
        teams_of(self.case.party)?;
        options::options(&self.case, &self.ice, &self.met, &self.memo, self.beside())
    }
}

fn teams_of(party: &Party) -> Result<Vec<RopeTeam>, Vec<Fault>> {
    if party.people.len() >= 2 {
        return Ok(party.rope_teams());
    }
    Err(vec![unmet::unplanned(InPlan::Alone(party.people.len()))])
}
