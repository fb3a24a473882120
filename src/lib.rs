//! Plans the rope set-up of a team for every leg of a glacier route.
#![warn(clippy::print_stdout, clippy::print_stderr)]

pub mod fault;

pub mod geometry;
pub mod physics;
pub mod raster;

pub mod practice;

pub mod trip;

pub mod plan;

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

pub use trip::job::Job;

use fault::{Fault, Place, trip::InPlan};
use ground::{met::Met, profile::Profile};
use legs::{memo::Memo, sketch::Sketch};
use plan::{Plan, leg::Leg, options::Options};
use rope::answers;
use say::cautions::CAUTIONS;
use times::clock;
use trip::{
    job::Case,
    party::{Party, RopeTeam},
};
use whole::{account, keep};

/// Version of the plan's form; changes when a name or unit in it does.
pub const SCHEMA_VERSION: u32 = 1;

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
    case: Case<'j>,
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
    pub fn of(case: Case<'j>) -> Result<Self, Vec<Fault>> {
        let met = Met::of(&case).map_err(|fault| vec![fault])?;
        met_by(&case, &met)?;
        Ok(Self {
            case,
            met,
            memo: Memo::default(),
        })
    }

    /// Heights along each stage, in order, as the plan goes by them.
    pub fn profiles(&self) -> impl Iterator<Item = &Profile> {
        self.met.stages.iter().map(|stage| &stage.under.profile)
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
        let job = &Case { party, ..self.case };
        let teams = teams_of(party)?;
        let pairs = job.route.stages.iter().zip(&self.met.stages);
        let stages: Vec<Sketch<'_>> = pairs
            .map(|(stage, met)| Sketch::of(job, &teams, stage, met, &self.memo))
            .collect();
        let ropes = account::shared_ropes(job, &teams, &stages);
        let mut answers = answers::Answers::default();
        let mut legs: Vec<Leg> = Vec::new();
        for stage in &stages {
            for leg in &stage.legs {
                let number = legs.len() + 1;
                legs.push(judge::leg::leg(
                    job,
                    stage,
                    leg,
                    &ropes,
                    &mut answers,
                    number,
                ));
            }
        }
        answers.advise(job, &mut legs);
        let zones = account::zones(job, &stages);
        clock::set(job, &zones, &mut legs);
        Ok(Plan {
            schema_version: SCHEMA_VERSION,
            route: account::route(job, &stages, &legs),
            zones,
            carry: account::carry(job, &teams, &stages, &legs, &ropes),
            keep_setup: keep::keep(job, &stages, &ropes),
            findings: account::findings(job, &stages),
            assumptions: whole::assumptions::assumptions(job),
            cautions: CAUTIONS.iter().map(|&c| c.to_owned()).collect(),
            legs,
        })
    }

    /// Every way to split the party and to share the ropes out that no other beats in everything.
    ///
    /// # Errors
    /// The party cannot go, or a terrain file is broken where it is read.
    pub fn options(&self) -> Result<Options, Vec<Fault>> {
        teams_of(self.case.party)?;
        options::options(&self.case, &self.memo).map_err(|fault| vec![fault])
    }
}

fn teams_of(party: &Party) -> Result<Vec<RopeTeam>, Vec<Fault>> {
    if party.people.len() >= 2 {
        return Ok(party.rope_teams());
    }
    Err(vec![unplanned(InPlan::Alone(party.people.len()))])
}

/// A plan in which no zone is met would look like an all-clear.
fn met_by(job: &Case<'_>, met: &Met) -> Result<(), Vec<Fault>> {
    if met.stages.iter().any(|s| !s.contacts.is_empty()) {
        return Ok(());
    }
    Err(vec![unplanned(InPlan::NoZoneMet(job.zones.len()))])
}

fn unplanned(why: InPlan) -> Fault {
    let at = Place::item(why.item());
    Fault::new(why, at)
}
