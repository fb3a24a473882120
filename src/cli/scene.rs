//! What the report shows beside the plan: heights, the ground under its map, and the trip with another party.

use schrund::{
    Job,
    fault::Problem,
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
    pub(crate) fn of(job: &Job<'_>, sheet: &Sheet<'_>) -> Result<Self, Vec<Problem>> {
        let stages = job.route.stages.iter();
        let profiles = stages.map(|stage| schrund::ground::underfoot::profile(stage, job.terrain));
        Ok(Self {
            profiles: profiles
                .collect::<Result<_, _>>()
                .map_err(|fault| vec![fault])?,
            relief: relief(job, sheet).map_err(|fault| vec![fault])?,
            variants: variants(job),
        })
    }
}

fn relief(job: &Job<'_>, sheet: &Sheet<'_>) -> Result<Option<Relief>, Problem> {
    match (job.terrain, report::window(sheet)) {
        (Some(terrain), Some((low, high))) => Relief::within(low, high, terrain),
        _ => Ok(None),
    }
}

/// Both other parties, each planned or refused. The last person named is the one who stays away; the one
/// who joins has the mass that the rules assume.
fn variants(job: &Job<'_>) -> Vec<Variant> {
    vec![
        variant(job, fewer(job), "One fewer"),
        variant(job, more(job), "One more"),
    ]
}

fn variant(job: &Job<'_>, party: Party, what: &str) -> Variant {
    let label = match party.people.len() {
        1 => format!("{what}: 1 person"),
        people => format!("{what}: {people} people"),
    };
    let other = Job {
        party: &party,
        ..*job
    };
    Variant {
        label,
        plan: schrund::plan(&other),
    }
}

fn fewer(job: &Job<'_>) -> Party {
    let mut party = job.party.clone();
    party.people.pop();
    party
}

fn more(job: &Job<'_>) -> Party {
    let mut party = job.party.clone();
    party.people.push(Person {
        name: (party.people.len() + 1).to_string(),
        mass_kg: job.rules[Rule::PersonKg],
        mass_given: false,
    });
    party
}
