//! Ways to split the party and to use the ropes: all are weighed, those that another beats in everything are left out.

mod front;
mod lines;
mod ropes;
mod splits;
mod variants;
mod why;

use std::collections::{BTreeMap, btree_map::Entry};

use crate::{
    SCHEMA_VERSION, ground::met::Met, legs::memo::Memo, say::cautions::CAUTIONS, trip::job::Case,
};
use crate::{
    fault::Fault,
    plan::{
        leg::Verdict,
        options::{Options, Way},
    },
    practice::Rules,
    trip::party::ON_ONE_ROPE,
};
use lines::Trip;

/// Weighs every way and shows those that no other way beats in everything.
///
/// # Errors
/// A terrain file is broken where it is read.
pub(crate) fn options(job: &Case<'_>, memo: &Memo) -> Result<Options, Fault> {
    let sets = variants::practices(job.rules);
    let mets = mets(job, sets.iter().map(|(_, rules)| rules))?;
    let mut weighed = 0;
    let mut front = front::Front::default();
    for (practice, rules) in &sets {
        let job = Case { rules, ..*job };
        let Some(met) = mets.get(&Met::rests_on(rules)) else {
            continue;
        };
        let mut trips: BTreeMap<Vec<usize>, Trip<'_>> = BTreeMap::new();
        for split in splits::of(job.party.people.len()) {
            let teams = job.party.split_by(&split);
            let trip = trips
                .entry(splits::sizes(&split))
                .or_insert_with(|| Trip::new(&job, &teams, met, memo));
            for variant in variants::of(rules, trip.ties_knots(&teams)) {
                let draft = trip.draft(&job, &teams, &variant, practice);
                for way in ropes::given(&job, draft) {
                    weighed += 1;
                    front.add(way);
                }
            }
        }
    }
    let mut ways = front.best_first();
    why::explain(&mut ways);
    Ok(Options {
        schema_version: SCHEMA_VERSION,
        people: job.party.people.len(),
        weighed,
        says: says(job, &ways),
        ways,
        cautions: CAUTIONS.iter().map(|&c| c.to_owned()).collect(),
    })
}

/// The meetings of route and ice under these rules, by what they rest on.
fn mets<'r>(
    job: &Case<'_>,
    all: impl Iterator<Item = &'r Rules>,
) -> Result<BTreeMap<Vec<u64>, Met>, Fault> {
    let mut mets = BTreeMap::new();
    for rules in all {
        if let Entry::Vacant(free) = mets.entry(Met::rests_on(rules)) {
            free.insert(Met::of(&Case { rules, ..*job })?);
        }
    }
    Ok(mets)
}

/// What is taught about one team and two, whichever of them the ropes at hand allow.
const ONE_OR_TWO: &str = "two rope teams beat one for help after a fall; one team of four holds better than two of two: both are taught";

fn says(job: &Case<'_>, ways: &[Way]) -> Vec<String> {
    let mut says = vec![one_or_two(job, ways)];
    if ways.iter().all(|w| w.verdict == Verdict::Outside) {
        says.push("no way is inside the limits; those shown come nearest".to_owned());
    } else if ways.iter().all(|w| !w.changes.is_empty()) {
        let changed =
            "as the rules stand no split fits the ropes at hand: every way shown changes something";
        says.push(changed.to_owned());
    }
    if job.ropes.is_empty() {
        says.push("no rope at hand was named: lengths sold are shown".to_owned());
    }
    says.push(
        "falls are not modelled here; `schrund plan` answers for the set-up you choose".to_owned(),
    );
    says
}

fn one_or_two(job: &Case<'_>, ways: &[Way]) -> String {
    let (one, two) = (
        ways.iter().any(|w| !w.another_team),
        ways.iter().any(|w| w.another_team),
    );
    let people = job.party.people.len();
    if people < 2 * ON_ONE_ROPE.start() {
        "the party is too small for two rope teams: nobody else is there to help".to_owned()
    } else if people > *ON_ONE_ROPE.end() {
        format!(
            "more than {} on one rope are not planned for",
            ON_ONE_ROPE.end()
        )
    } else if one && two {
        format!("{ONE_OR_TWO}, so both are shown")
    } else if one {
        format!("{ONE_OR_TWO}; the ropes and limits leave no way with two here")
    } else {
        format!("{ONE_OR_TWO}; the ropes and limits leave no way with one here")
    }
}
