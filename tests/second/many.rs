//! Many random trips, each planned twice.

use std::collections::BTreeMap;

use serde_json::Value;

use super::{
    case::{Case, Zone},
    compare::compare,
    files::Files,
    parts::{Difference, EXPLAINED, How, NOT_YET, PARTS, Part, is_on},
    plan::{Planned, plan},
    random::case,
    stretch::ropes,
};

/// What came of many trips.
#[derive(Default)]
struct Tally {
    planned: usize,
    refused: usize,
    /// Roped legs, and how many of them are of some kind.
    holds: BTreeMap<&'static str, usize>,
    /// Differences by part: explained ones and members that are not there yet apart.
    differ: BTreeMap<Part, usize>,
    not_yet: BTreeMap<Part, usize>,
    explained: BTreeMap<&'static str, usize>,
    /// Those that fail, by the seed that makes the trip again.
    failing: Vec<(u64, String)>,
}

fn alone(one: &Difference) -> Option<&'static str> {
    let known = EXPLAINED.iter().find(|e| match e.how {
        How::Alone(is) => is(one),
        How::Read(_) => false,
    });
    known.map(|e| e.name)
}

fn fails(one: &Difference) -> bool {
    is_on(one.part) && alone(one).is_none()
}

/// The differences of a trip, and the reading of the rules under which those that fail are gone.
fn differences(
    case: &Case,
    json: &Value,
    ours: &Planned,
) -> (Vec<Difference>, Option<&'static str>) {
    let found = compare(case, json, ours);
    if !found.iter().any(fails) {
        return (found, None);
    }
    for known in &EXPLAINED {
        if let How::Read(reading) = known.how {
            let case = Case {
                reading,
                ..case.clone()
            };
            let other = compare(&case, json, &plan(&case));
            if !other.iter().any(fails) {
                return (other, Some(known.name));
            }
        }
    }
    (found, None)
}

impl Tally {
    fn trip(&mut self, seed: u64) {
        let mut case = case(seed);
        if !is_on(Part::KnownIce) {
            case.inventory.clear();
        }
        let ours = plan(&case);
        let differences = match Files::of(&case).planned() {
            Ok(json) => {
                self.planned += 1;
                self.holds(&case, &ours);
                let (found, read) = differences(&case, &json, &ours);
                if let Some(name) = read {
                    *self.explained.entry(name).or_default() += 1;
                }
                found
            }
            Err(faults) if ours.meets_a_zone() => vec![Difference {
                part: Part::Crossings,
                says: format!("the library refuses: {faults:?}"),
                slight: None,
            }],
            Err(_) => {
                self.refused += 1;
                Vec::new()
            }
        };
        let mut failing = Vec::new();
        for one in &differences {
            if let Some(name) = alone(one) {
                *self.explained.entry(name).or_default() += 1;
                continue;
            }
            let counts = if one.says.ends_with(NOT_YET) {
                &mut self.not_yet
            } else {
                &mut self.differ
            };
            *counts.entry(one.part).or_default() += 1;
            if fails(one) {
                failing.push(format!("  {:?}: {}", one.part, one.says));
            }
        }
        if !failing.is_empty() {
            self.failing.push((seed, failing.join("\n")));
        }
    }

    /// Counts what a trip holds, so that nobody takes silence for agreement.
    fn holds(&mut self, case: &Case, ours: &Planned) {
        for (leg, setup) in ours.legs.iter().filter_map(|l| l.roped.as_ref()) {
            let strange = |z: &Zone| z.patches.len() > 1 || !z.patches[0].holes.is_empty();
            let zones: Vec<&Zone> = leg.zones.iter().map(|(z, _)| &case.zones[*z]).collect();
            let carried = setup.at_hand.as_ref().map(|(_, carried, _)| carried);
            let what = [
                ("roped legs", true),
                ("of several zones", zones.len() > 1),
                ("of odd zones", zones.iter().any(|z| strange(z))),
                (
                    "that hold ice by its word unroped",
                    zones.iter().any(|z| !ropes(case, z)),
                ),
                (
                    "along the crevasses",
                    leg.effective.is_some_and(|e| e.along),
                ),
                ("beyond the limits", setup.beyond_limits),
                ("with knots", setup.ledger.knots > 0),
                ("lengthened by knots", leg.lengthened),
                (
                    "with a height that stands alone",
                    setup.slopes.as_ref().is_some_and(|s| s.doubted),
                ),
                ("with rope in a bag", carried.is_some_and(|c| c.bag_m > 0.0)),
            ];
            for (name, is) in what {
                *self.holds.entry(name).or_default() += usize::from(is);
            }
        }
    }

    fn add(&mut self, other: Self) {
        self.planned += other.planned;
        self.refused += other.refused;
        for (what, count) in other.holds {
            *self.holds.entry(what).or_default() += count;
        }
        for (part, count) in other.differ {
            *self.differ.entry(part).or_default() += count;
        }
        for (part, count) in other.not_yet {
            *self.not_yet.entry(part).or_default() += count;
        }
        for (name, count) in other.explained {
            *self.explained.entry(name).or_default() += count;
        }
        self.failing.extend(other.failing);
        self.failing.sort();
    }

    fn report(&self) {
        println!(
            "{} trips planned, {} refused by both; {:?}",
            self.planned, self.refused, self.holds
        );
        for (part, on) in PARTS {
            let count = |of: &BTreeMap<Part, usize>| of.get(&part).copied().unwrap_or_default();
            println!(
                "{part:?} ({}): {} differ, {} {NOT_YET}",
                if on { "on" } else { "off" },
                count(&self.differ),
                count(&self.not_yet)
            );
        }
        for known in &EXPLAINED {
            let count = self.explained.get(known.name).copied().unwrap_or_default();
            println!("explained, {}: {count}; {}", known.name, known.why);
        }
    }

    #[track_caller]
    fn passed(&self) {
        self.report();
        let failing = self.failing.iter();
        let failing: Vec<String> = failing
            .map(|(s, says)| format!("seed {s}\n{says}"))
            .collect();
        assert!(
            failing.is_empty(),
            "{} trips differ\n{}",
            failing.len(),
            failing.join("\n")
        );
    }
}

/// How many trips are planned at a time.
const AT_A_TIME: u64 = 4;

#[track_caller]
fn many(seeds: std::ops::Range<u64>) -> Tally {
    let mut all = Tally::default();
    std::thread::scope(|scope| {
        let share = |first: u64| {
            let own = (seeds.start + first..seeds.end).step_by(AT_A_TIME as usize);
            scope.spawn(move || {
                let mut tally = Tally::default();
                own.for_each(|seed| tally.trip(seed));
                tally
            })
        };
        let shares: Vec<_> = (0..AT_A_TIME).map(share).collect();
        for one in shares {
            all.add(one.join().expect("no trip panics"));
        }
    });
    all.passed();
    all
}

/// A number that the environment names.
fn named(variable: &str) -> Option<u64> {
    std::env::var(variable).ok()?.parse().ok()
}

/// Trips in every run; `SCHRUND_TRIPS` asks for more.
const EVERY_RUN: u64 = 100;

#[test]
fn random_trips_are_planned_alike() {
    let all = many(0..named("SCHRUND_TRIPS").unwrap_or(0).max(EVERY_RUN));
    for (what, count) in all.holds {
        assert!(count > 0, "no roped leg {what}");
    }
}

/// Shows one trip; `SCHRUND_TRIP` names its seed.
#[test]
fn one_trip_can_be_shown() {
    let seed = named("SCHRUND_TRIP").unwrap_or(0);
    let case = case(seed);
    let files = Files::of(&case);
    println!("{:#?}\n{:#?}", case.zones, plan(&case).legs);
    println!("{}\n{}\n{}", files.route, files.zones, files.trip);
    println!("{}", files.inventory.unwrap_or_default());
    many(seed..seed + 1);
}
