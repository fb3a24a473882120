//! Ways to split the party and to use the ropes: all are weighed, those that another beats in everything are left out.

mod closer;
mod front;
mod lines;
mod planned;
mod ropes;
mod splits;
mod told;
mod variants;
mod why;

use std::{
    cell::RefCell,
    collections::{BTreeMap, BTreeSet, btree_map::Entry},
};

use crate::{
    fault::Fault,
    ground::met::{Met, Prepared},
    legs::memo::Memo,
    plan::{
        Plan, SCHEMA_VERSION,
        change::Change,
        leg::Verdict,
        options::{Options, Remark, Way},
    },
    practice::Rules,
    rope::held::AskedSlopes,
    trip::{
        job::Brief,
        party::{ON_ONE_ROPE, RopeTeam},
    },
};
use closer::Split;
use lines::{SplitTrip, TeamKind, TripLegs};

/// Weighs every way and shows those that no other way beats in everything; those that somebody compares are planned.
///
/// # Errors
/// A terrain file is broken where it is read.
pub(crate) fn options(
    job: &Brief<'_>,
    ice: &Prepared<'_>,
    own: &Met,
    memo: &Memo,
    plan: impl Fn(Brief<'_>) -> Result<Plan, Vec<Fault>>,
) -> Result<Options, Vec<Fault>> {
    let sets = variants::bases(job.rules);
    let others =
        mets(job, ice, sets.iter().map(|(_, rules)| rules)).map_err(|fault| vec![fault])?;
    let asked = RefCell::default();
    let mut weighed = 0;
    let mut front = front::Front::default();
    for (base, rules) in &sets {
        let job = Brief { rules, ..*job };
        let met = others.get(&Met::rests_on(rules)).unwrap_or(own);
        let mut weigh = |way| {
            weighed += 1;
            front.add(way);
        };
        under(&job, base, met, memo, &asked, &mut weigh);
    }
    let mut ways = front.best_first();
    why::explain(&mut ways);
    told::tell(&mut ways, job);
    planned::plan(&mut ways, job, plan)?;
    Ok(Options {
        schema_version: SCHEMA_VERSION,
        people: job.party.people.len(),
        weighed,
        remarks: remarks(job, &ways),
        ways,
    })
}

/// Changes beside which walking closer is tried; more of them at once nobody remembers. Our judgement.
const BESIDE_CLOSER: usize = 1;

/// Every way under rules that these changes made.
fn under(
    job: &Brief<'_>,
    base: &[Change],
    met: &Met,
    memo: &Memo,
    asked: &RefCell<AskedSlopes>,
    weigh: &mut dyn FnMut(Way),
) {
    let splits: Vec<Vec<RopeTeam>> = splits::of(job.party.people.len())
        .iter()
        .map(|sizes| job.party.split_by(sizes))
        .collect();
    // Legs depend on nothing but the kinds of the teams.
    let kinds = |teams: &[RopeTeam]| lines::kinds(teams, job.rules);
    let mut trips: BTreeMap<BTreeSet<TeamKind>, SplitTrip<'_>> = BTreeMap::new();
    for teams in &splits {
        let trip = trips.entry(kinds(teams));
        trip.or_insert_with(|| SplitTrip::new(job, teams, met, memo));
    }
    let legs: BTreeMap<&BTreeSet<TeamKind>, TripLegs<'_>> = trips
        .iter()
        .map(|(kinds, t)| (kinds, t.legs(job, asked)))
        .collect();
    let split = |teams| Split {
        job,
        teams,
        met,
        memo,
        asked,
    };
    for teams in &splits {
        let Some(legs) = legs.get(&kinds(teams)) else {
            continue;
        };
        for variant in variants::of(job.rules, lines::ties_knots(teams)) {
            let draft = legs.draft(job, teams, &variant, base);
            let mut ways = ropes::given(job, &draft);
            if draft.lacks_rope(&ways) {
                ways.extend(ropes::joined(job, &draft));
                if job.ropes.len() >= teams.len() && !legs.undrawn() {
                    let (changes, rules) = variant;
                    let changes: Vec<Change> = base.iter().cloned().chain(changes).collect();
                    if changes.len() <= BESIDE_CLOSER {
                        ways.extend(split(teams).ways(&(changes, rules)));
                    }
                }
            }
            ways.into_iter().for_each(&mut *weigh);
        }
    }
}

/// The meetings of route and ice under those of these rules that cannot share the job's own, by what they rest on.
fn mets<'r>(
    job: &Brief<'_>,
    ice: &Prepared<'_>,
    all: impl Iterator<Item = &'r Rules>,
) -> Result<BTreeMap<Vec<u64>, Met>, Fault> {
    let mut mets = BTreeMap::new();
    let own = Met::rests_on(job.rules);
    for rules in all.filter(|rules| Met::rests_on(rules) != own) {
        if let Entry::Vacant(free) = mets.entry(Met::rests_on(rules)) {
            free.insert(Met::of(&Brief { rules, ..*job }, ice)?);
        }
    }
    Ok(mets)
}

fn remarks(job: &Brief<'_>, ways: &[Way]) -> Vec<Remark> {
    let mut remarks = vec![one_or_two(job, ways)];
    if ways.iter().all(|w| w.verdict >= Verdict::Outside) {
        remarks.push(Remark::NoneInside);
    } else if ways.iter().all(|w| !w.changes.is_empty()) {
        remarks.push(Remark::AllChanged);
    }
    if job.party.people.len() > splits::IN_EVERY_WAY {
        remarks.push(Remark::EvenSplits {
            beyond: splits::IN_EVERY_WAY,
        });
    }
    if job.ropes.is_empty() {
        remarks.push(Remark::NoRopeNamed);
    }
    remarks
}

/// What is taught about one team and two, whichever of them the ropes at hand allow.
fn one_or_two(job: &Brief<'_>, ways: &[Way]) -> Remark {
    let people = job.party.people.len();
    let (one, two) = (
        ways.iter().any(|w| !w.another_team),
        ways.iter().any(|w| w.another_team),
    );
    if people < 2 * ON_ONE_ROPE.start() {
        Remark::TooSmallForTwo
    } else if people > *ON_ONE_ROPE.end() {
        Remark::TooManyForOne {
            most: *ON_ONE_ROPE.end(),
        }
    } else {
        match (one, two) {
            (true, true) => Remark::OneAndTwo,
            (true, false) => Remark::OnlyOne,
            (false, _) => Remark::OnlyTwo,
        }
    }
}
