//! Plans the rope set-up of a team for every leg of a glacier route.
//!
//! Facts, then words: planning makes numbers, names and enums; the last rooms make sentences and files of them, and
//! nothing reads a number back from a sentence. Each arrow is a room, in the order of the modules below:
//!
//! ```text
//! GPX, GeoJSON, TOML, GeoTIFF ─read▶ Job (trip/) ─meet▶ Contacts ─ground▶ Met ─legs▶ stretches, spacings
//!    ─rope▶ drafts, falls, ropes ─times▶ Hours ─judge▶ Findings, Verdicts ─whole▶ Plan (plan/)
//!    ─say▶ words ─write▶ table, JSON, GeoJSON, GPX, KML, CSV, report, message
//!
//! geometry, physics (nature), raster (heights) and practice (what is taught) stand under all of them;
//! options asks the same rooms for many teams over one meeting of route and ice.
//! ```
//!
//! # From bytes to bytes
//!
//! The library touches no file, socket, thread or clock. Text comes in, a plan is made, and any of
//! [`write::FORMATS`] goes out:
//!
//! ```
//! use schrund::{Planner, read::{input::Input, lay::Sources, trip}, say, write::{FORMATS, Look, Scene, Sheet}};
//!
//! let line = br#"<gpx><trk><trkseg><trkpt lat="66.50" lon="2.0"/><trkpt lat="66.52" lon="2.0"/></trkseg></trk></gpx>"#;
//! let ice = br#"{"type": "Feature", "properties": {"name": "Icefall", "gap_m": 15}, "geometry": {"type": "Polygon",
//!     "coordinates": [[[1.9, 66.505], [2.1, 66.505], [2.1, 66.51], [1.9, 66.51], [1.9, 66.505]]]}}"#;
//! let trip = br#"party = [82, 75, 90]
//!     rope = [{ length_m = 60, name = "blue" }]"#;
//! let mut sources = Sources::new(Input::text("line.gpx", &line[..]), Input::text("ice.geojson", &ice[..]));
//! sources.trip = Some(trip::file(Input::text("trip.toml", &trip[..])));
//! let job = sources.job().expect("no fault in any of them");
//!
//! let planner = Planner::new(&job).expect("the line meets the ice");
//! let plan = planner.plan().expect("three can rope up");
//! let roped = &plan.legs[1].teams[0];
//! assert_eq!((roped.people, roped.spacing_m), (3, 13.5), "0.9 of the gap, rounded up to half a metre");
//! let found = say::finding::says(&plan.legs[1].findings[0], say::voice::Voice::default());
//! assert_eq!(found.to_string(), "2 people can stand over one gap of 15 m at once with 13.5 m between them; 1 left to hold");
//!
//! let scene = Scene::default();
//! let sheet = Sheet {
//!     plan: &plan, route: &job.route, zones: &job.zones, trip: None, emergency: &[], scene: &scene, look: Look::default(),
//! };
//! for format in FORMATS {
//!     let mut bytes = Vec::new();
//!     format.write(&mut bytes, &sheet).expect("memory takes everything");
//!     assert!(!bytes.is_empty(), "{}", format.name());
//! }
//! ```
#![warn(clippy::print_stdout, clippy::print_stderr)]

pub mod fault;

pub mod geometry;
pub mod physics;
pub mod raster;

pub mod practice;

pub mod trip;

pub mod plan;

mod schema;

pub mod read;

pub mod meet;

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

pub use trip::job::Job;

use fault::{Fault, Place, trip::InPlan};
use ground::met::{Met, Prepared};
use legs::{memo::Memo, sketch::Sketch};
use plan::{Plan, SCHEMA_VERSION, options::Options};
use rope::{
    answers::{Answers, Depth},
    legs::demands_m,
    share,
};
use times::hours::hours;
use trip::{
    job::Brief,
    party::{Party, RopeTeam},
};
use whole::legs::Settled;

/// Plans every leg of the job.
///
/// # Errors
/// The party cannot go, no zone is met by the route, or a terrain file is broken where it is read.
pub fn plan(job: &Job) -> Result<Plan, Vec<Fault>> {
    Planner::new(job)?.plan()
}

/// A job whose route has met its ice: plans, options and the same trip with another party share that meeting and
/// everything that was asked of it.
#[derive(Debug)]
pub struct Planner<'j> {
    case: Brief<'j>,
    ice: Prepared<'j>,
    met: Met,
    memo: Memo,
}

impl<'j> Planner<'j> {
    /// Lets the route meet the ice and reads the ground under it.
    ///
    /// # Errors
    /// No zone is met by the route, or a terrain file is broken where it is read.
    pub fn new(job: &'j Job) -> Result<Self, Vec<Fault>> {
        Self::of(job.case())
    }

    /// The same for what belongs to somebody else.
    ///
    /// # Errors
    /// See [`Planner::new`].
    pub fn of(case: Brief<'j>) -> Result<Self, Vec<Fault>> {
        let ice = Prepared::of(&case);
        let met = Met::of(&case, &ice).map_err(|fault| vec![fault])?;
        met_by(&case, &met)?;
        Ok(Self {
            case,
            ice,
            met,
            memo: Memo::default(),
        })
    }

    /// The plan for the party of the job.
    ///
    /// # Errors
    /// The party cannot go.
    pub fn plan(&self) -> Result<Plan, Vec<Fault>> {
        self.plan_for(self.case.party)
    }

    /// The plan for another party on the same trip.
    ///
    /// # Errors
    /// The party cannot go.
    pub fn plan_for(&self, party: &Party) -> Result<Plan, Vec<Fault>> {
        self.plan_to(party, Depth::Whole)
    }

    /// The flow on one screen: every room once.
    fn plan_to(&self, party: &Party, depth: Depth) -> Result<Plan, Vec<Fault>> {
        let job = &Brief { party, ..self.case };
        let teams = teams_of(party)?;
        let pairs = job.route.stages.iter().zip(&self.met.stages);
        let stages: Vec<Sketch<'_>> = pairs
            .map(|(stage, met)| Sketch::of(job, &teams, stage, met, &self.memo))
            .collect();
        let legs = rope::legs::legs(job, &teams, &stages);
        let hours = hours(job, &legs);
        let demands_m = demands_m(&legs, &teams);
        let ropes = share::best(&demands_m, job.ropes, job.rules);
        let answers = Answers::of(&legs, depth, job.rules);
        let settled = Settled {
            job,
            legs: &legs,
            hours: &hours,
            ropes: &ropes,
            answers: &answers,
        };
        Ok(Plan {
            schema_version: SCHEMA_VERSION,
            route: whole::route::route(job, &stages, &hours),
            zones: whole::zones::zones(job, &stages),
            legs: whole::legs::legs(&settled),
            carry: whole::carry::carry(job, &teams, &legs, &demands_m, &ropes),
            keep_setup: whole::keep::keep(job, &legs, &ropes),
            findings: whole::findings::findings(job, &stages, &legs),
            assumptions: whole::assumptions::assumptions(job),
        })
    }

    /// Every way to split the party and to share the ropes out that no other beats in everything.
    ///
    /// # Errors
    /// The party cannot go, or a terrain file is broken where it is read.
    pub fn options(&self) -> Result<Options, Vec<Fault>> {
        teams_of(self.case.party)?;
        options::options(&self.case, &self.ice, &self.met, &self.memo).map_err(|fault| vec![fault])
    }
}

fn teams_of(party: &Party) -> Result<Vec<RopeTeam>, Vec<Fault>> {
    if party.people.len() >= 2 {
        return Ok(party.rope_teams());
    }
    Err(vec![unplanned(InPlan::Alone(party.people.len()))])
}

/// A plan in which no zone is met would look like an all-clear.
fn met_by(case: &Brief<'_>, met: &Met) -> Result<(), Vec<Fault>> {
    if met.stages.iter().any(|s| !s.contacts.is_empty()) {
        return Ok(());
    }
    Err(vec![unplanned(InPlan::NoZoneMet(case.zones.len()))])
}

fn unplanned(why: InPlan) -> Fault {
    let at = Place::item(why.item());
    Fault::new(why, at)
}
