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

use fault::{Code, Place, Problem};
use ground::{
    met::{Met, Prepared},
    relief::Relief,
};
use legs::{memo::Memo, sketch::Sketch};
use plan::{Plan, SCHEMA_VERSION, options::Options};
use practice::Rule;
use rope::{
    answers::{Answers, Depth},
    legs::demands_m,
    share,
};
use times::hours::hours;
use trip::{
    job::Case,
    party::{Party, Person, RopeTeam},
};
use whole::legs::Settled;
use write::{
    Scene,
    sheet::{Other, OtherParty},
};

/// Plans every leg of the job.
///
/// # Errors
/// The party cannot go, no zone is met by the route, or a terrain file is broken where it is read.
pub fn plan(job: &Job) -> Result<Plan, Vec<Problem>> {
    Planner::new(job)?.plan()
}

/// A job whose route has met its ice: plans, options and the same trip with another party share that meeting and
/// everything that was asked of it.
#[derive(Debug)]
pub struct Planner<'j> {
    case: Case<'j>,
    ice: Prepared<'j>,
    met: Met,
    memo: Memo,
}

impl<'j> Planner<'j> {
    /// Lets the route meet the ice and reads the ground under it.
    ///
    /// # Errors
    /// No zone is met by the route, or a terrain file is broken where it is read.
    pub fn new(job: &'j Job) -> Result<Self, Vec<Problem>> {
        Self::of(job.case())
    }

    /// The same for what belongs to somebody else.
    ///
    /// # Errors
    /// See [`Planner::new`].
    pub fn of(case: Case<'j>) -> Result<Self, Vec<Problem>> {
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
    pub fn plan(&self) -> Result<Plan, Vec<Problem>> {
        self.plan_for(self.case.party)
    }

    /// The plan for another party on the same trip.
    ///
    /// # Errors
    /// The party cannot go.
    pub fn plan_for(&self, party: &Party) -> Result<Plan, Vec<Problem>> {
        self.plan_to(party, Depth::Whole)
    }

    fn plan_to(&self, party: &Party, depth: Depth) -> Result<Plan, Vec<Problem>> {
        let job = &Case { party, ..self.case };
        let teams = teams_of(party)?;
        let pairs = job.route.stages.iter().zip(&self.met.stages);
        let stages: Vec<Sketch<'_>> = pairs
            .map(|(stage, met)| Sketch::of(job, &teams, stage, met, &self.memo))
            .collect();
        let legs = rope::legs::legs(job, &teams, &stages);
        let hours = hours(&legs, job.rules);
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

    /// What the report shows beside a plan: heights, the ground under its map, and the trip with one person fewer and
    /// with one more, each planned or refused.
    ///
    /// # Errors
    /// A terrain file is broken where it is read.
    pub fn scene(&self, plan: &Plan) -> Result<Scene, Vec<Problem>> {
        let window = write::report::window(plan, self.case.route);
        let relief = match (self.case.terrain, window) {
            (Some(terrain), Some((low, high))) => {
                Relief::within(low, high, terrain).map_err(|fault| vec![fault])?
            }
            _ => None,
        };
        let stages = self.met.stages.iter();
        Ok(Scene {
            profiles: stages.map(|s| s.under.profile.clone()).collect(),
            relief,
            others: vec![
                self.other(OtherParty::OneFewer),
                self.other(OtherParty::OneMore),
            ],
        })
    }

    /// The last person named is the one who stays away; the one who joins has the mass that the rules assume.
    fn other(&self, other: OtherParty) -> Other {
        let mut party = self.case.party.clone();
        match other {
            OtherParty::OneFewer => {
                party.people.pop();
            }
            OtherParty::OneMore => party.people.push(Person {
                name: (party.people.len() + 1).to_string(),
                mass_kg: self.case.rules[Rule::PersonKg],
                mass_given: false,
            }),
        }
        Other {
            party: other,
            people: party.people.len(),
            plan: self.plan_to(&party, Depth::Verdicts),
        }
    }

    /// Every way to split the party and to share the ropes out that no other beats in everything.
    ///
    /// # Errors
    /// The party cannot go, or a terrain file is broken where it is read.
    pub fn options(&self) -> Result<Options, Vec<Problem>> {
        teams_of(self.case.party)?;
        options::options(&self.case, &self.ice, &self.memo).map_err(|fault| vec![fault])
    }
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
fn met_by(job: &Case<'_>, met: &Met) -> Result<(), Vec<Problem>> {
    if met.stages.iter().any(|s| !s.contacts.is_empty()) {
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
