//! What the report shows beside the plan: heights, the ground under its map, and the trip with another party.

use schrund::{
    Job, Planner,
    fault::Fault,
    ground::{profile::Profile, relief::Relief},
    practice::Rule,
    trip::party::{Party, Person},
    write::{
        Sheet,
        report::{self, Variant},
    },
};

/// All of it.
#[derive(Default)]
pub(crate) struct Scene {
    pub(crate) profiles: Vec<Profile>,
    pub(crate) relief: Option<Relief>,
    pub(crate) variants: Vec<Variant>,
}

impl Scene {
    /// Reads the terrain once more, in a window, and plans the other parties.
    pub(crate) fn of(
        job: &Job,
        planner: &Planner<'_>,
        sheet: &Sheet<'_>,
    ) -> Result<Self, Vec<Fault>> {
        Ok(Self {
            profiles: planner.profiles().cloned().collect(),
            relief: relief(job, sheet).map_err(|fault| vec![fault])?,
            variants: variants(job, planner),
        })
    }
}

fn relief(job: &Job, sheet: &Sheet<'_>) -> Result<Option<Relief>, Fault> {
    match report::window(sheet) {
        Some((low, high)) if !job.terrain.is_empty() => Relief::within(low, high, &job.terrain),
        _ => Ok(None),
    }
}

/// Both other parties, each planned or refused. The last person named is the one who stays away; the one
/// who joins has the mass that the rules assume.
fn variants(job: &Job, planner: &Planner<'_>) -> Vec<Variant> {
    vec![
        variant(planner, fewer(job), "One fewer"),
        variant(planner, more(job), "One more"),
    ]
}

fn variant(planner: &Planner<'_>, party: Party, what: &str) -> Variant {
    let label = match party.people.len() {
        1 => format!("{what}: 1 person"),
        people => format!("{what}: {people} people"),
    };
    Variant {
        label,
        plan: planner.plan_for(&party),
    }
}

fn fewer(job: &Job) -> Party {
    let mut party = job.party.clone();
    party.people.pop();
    party
}

fn more(job: &Job) -> Party {
    let mut party = job.party.clone();
    party.people.push(Person {
        name: (party.people.len() + 1).to_string(),
        mass_kg: job.rules[Rule::PersonKg],
        mass_given: false,
    });
    party
}
