//! From a job to a plan: the sole place where the stages of the flow meet.

mod account;
mod answers;
mod cautions;
mod clock;
mod falls;
mod footing;
mod frame;
mod judge;
mod keep;
mod memo;
mod of_team;
mod options;
mod sketch;
mod underfoot;

use crate::{fault::{Code, Place, Problem}, plan::{Plan, leg::Leg}, practice::Rules, raster::Terrain, trip::{party::{Party, Rope, RopeTeam}, route::Route, zone::Zone}};
pub use cautions::CAUTIONS;
pub use options::options;
pub use underfoot::profile;

/// Version of the plan's form; changes when a name or unit in it does.
pub const SCHEMA_VERSION: u32 = 1;

/// Everything a plan is made from.
#[derive(Clone, Copy, Debug)]
pub struct Job<'a> {
    /// The stages to plan.
    pub route: &'a Route,
    /// The ice.
    pub zones: &'a [Zone],
    /// Who goes.
    pub party: &'a Party,
    /// The ropes at hand; without one the plan says what to take.
    pub ropes: &'a [Rope],
    /// The figures and words in force.
    pub rules: &'a Rules,
    /// Heights of the ground, if the leader has them.
    pub terrain: Option<&'a Terrain>,
    /// Ice of a glacier inventory, gap widths meaning nothing: where no zone is drawn on it, the plan says so.
    pub glaciers: &'a [Zone],
    /// Notices from reading the inputs; they go into the plan, since a leader reads the paper.
    pub notices: &'a [Problem],
}

/// Plans every leg of the job.
///
/// # Errors
/// The party cannot go, no zone is met by the route, or a terrain file is broken where it is read.
pub fn plan(job: &Job<'_>) -> Result<Plan, Vec<Problem>> {
    let teams = teams_of(job.party)?;
    let memo = memo::Memo::default();
    let stages: Vec<sketch::Sketch<'_>> = job
        .route
        .stages
        .iter()
        .map(|stage| sketch::Sketch::of(job, &teams, stage, &memo))
        .collect::<Result<_, Problem>>()
        .map_err(|fault| vec![fault])?;
    met_by(job, stages.iter().any(|s| !s.contacts.is_empty()))?;
    let ropes = account::shared_ropes(job, &teams, &stages);
    let mut answers = answers::Answers::default();
    let mut legs: Vec<Leg> = Vec::new();
    for stage in &stages {
        for leg in &stage.legs {
            let number = legs.len() + 1;
            legs.push(judge::leg(job, stage, leg, &ropes, &mut answers, number));
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
        assumptions: account::assumptions(job),
        cautions: CAUTIONS.iter().map(|&c| c.to_owned()).collect(),
        legs,
    })
}

fn teams_of(party: &Party) -> Result<Vec<RopeTeam>, Vec<Problem>> {
    if party.people.len() >= 2 {
        return Ok(party.rope_teams());
    }
    let says = format!(
        "a party of {} cannot rope up: nobody goes alone",
        party.people.len()
    );
    Err(vec![
        Problem::new(Code::Alone, Place::item("party"), says)
            .hint("take at least one partner: `--party 2`"),
    ])
}

/// A plan in which no zone is met would look like an all-clear.
fn met_by(job: &Job<'_>, any: bool) -> Result<(), Vec<Problem>> {
    if any {
        return Ok(());
    }
    let says = match job.zones.len() {
        0 => "the zones file holds no zone".to_owned(),
        1 => "the one zone is not met by the route".to_owned(),
        n => format!("none of the {n} zones is met by the route"),
    };
    Err(vec![Problem::new(Code::NoZoneMet, Place::item("zones"), says).hint(
        "check that both files belong to the same place and that coordinates are longitude, latitude",
    )])
}
