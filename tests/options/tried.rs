//! The ways shown against all ways, tried one by one on one leg crossed squarely.

use std::collections::BTreeSet;

use proptest::{prelude::*, test_runner::Config};
use schrund::{
    legs::{
        knots::{self, Hardship},
        over::Over,
        spacing,
        worst::Meeting,
    },
    physics::{
        hold_dynamic::Followed,
        holding::{
            BrakeKnots, Team,
            limits::{HeldOn, HoldLimits},
        },
    },
    plan::{
        change::Change,
        leg::{Bite, KnotSet, Ledger, Verdict},
        options::Way,
    },
    practice::{Origin, Rule, Rules, set},
    rope::{
        carried::{Carried, RopeLoad},
        ledger, reserve, share,
    },
    trip::{party::RopeTeam, rope::Rope, zone::Zone},
};

use super::weighed;
use crate::fixture::trip::Trip;

/// What a way is weighed by, as whole numbers: verdict, metres missing, left to hold, mass, coil, set-up changes,
/// set of changes (a bit each), other team. Less is better in each; of changes, fewer of the same.
type Merits = [i64; 7];

fn milli(x: f64) -> i64 {
    (x * 1000.0).round() as i64
}

/// How far a way is from being walked; the first of its merits.
fn shortness(way: &Way) -> i64 {
    rank(way.verdict, way.short_m) * 1_000_000_000 + milli(way.short_m)
}

fn merits(way: &Way) -> Merits {
    [
        shortness(way),
        -i64::try_from(way.left_to_hold).unwrap(),
        milli(way.rope_mass_kg),
        milli(way.coil_m),
        i64::try_from(way.setup_changes).unwrap(),
        way.changes.iter().map(change_bit).sum(),
        i64::from(!way.another_team),
    ]
}

/// Without rope enough nothing can be walked at all.
fn rank(verdict: Verdict, short_m: f64) -> i64 {
    if short_m > 1e-9 { 9 } else { verdict as i64 }
}

/// A bit for each kind of change.
fn change_bit(change: &Change) -> i64 {
    let practice = |name: &str| set::EMBEDDED.iter().position(|(n, _)| *n == name);
    let kind = match change {
        Change::Butterflies => 0,
        Change::LongSling { .. } => 1,
        Change::TighterLayout { .. } => 2,
        Change::Closer { .. } | Change::JoinedRopes { .. } => unreachable!("left out"),
        Change::Practice { name } => 3 + practice(name).expect("an embedded set"),
    };
    1 << kind
}

/// Whether a way walks closer than is taught or joins ropes.
fn more_rope(way: &Way) -> bool {
    let more =
        |change: &Change| matches!(change, Change::Closer { .. } | Change::JoinedRopes { .. });
    way.changes.iter().any(more)
}

/// Every way to write `people` as sizes from 2 to 5, in any order, sorted and deduplicated.
fn splits(people: usize) -> BTreeSet<Vec<usize>> {
    let mut all = BTreeSet::new();
    for a in 2..=people.min(5) {
        if a == people {
            all.insert(vec![a]);
        }
        for mut rest in if people > a + 1 {
            splits(people - a)
        } else {
            BTreeSet::new()
        } {
            rest.push(a);
            rest.sort_unstable_by(|x, y| y.cmp(x));
            all.insert(rest);
        }
    }
    all
}

/// The rules with every mix of changes, and which.
fn variants(rules: &Rules) -> Vec<(Rules, i64)> {
    let mut all = Vec::new();
    for name in std::iter::once(&rules.practice).chain(&rules.beside) {
        let (base, other) = if *name == rules.practice {
            (rules.clone(), 0)
        } else {
            let other = rules.under_practice(name).unwrap();
            (other, change_bit(&Change::Practice { name: name.clone() }))
        };
        for butterfly in [false, true] {
            for tight in [false, true] {
                for sling in [false, true] {
                    let mut rules = base.clone();
                    let mut set = |rule, value| rules.set(rule, value, Origin::Flag).unwrap();
                    if butterfly {
                        set(Rule::KnotRopeM, base[Rule::ButterflyRopeM]);
                    }
                    let (first_m, step_m) = (base[Rule::TightFirstM], base[Rule::TightStepM]);
                    if tight {
                        set(Rule::KnotFirstM, first_m);
                        set(Rule::KnotStepM, step_m);
                    }
                    if sling {
                        set(Rule::SlingM, base[Rule::LongSlingM]);
                    }
                    let mut changes = 0;
                    let sling_m = base[Rule::LongSlingM];
                    for (made, change) in [
                        (butterfly, Change::Butterflies),
                        (sling, Change::LongSling { sling_m }),
                        (tight, Change::TighterLayout { first_m, step_m }),
                    ] {
                        changes += i64::from(made) * change_bit(&change);
                    }
                    all.push((rules, other + changes));
                }
            }
        }
    }
    all
}

/// What one team asks for, worked out from the rules: metres of rope, verdict without a rope, left, coil, spacing short.
struct Asked {
    demand_m: f64,
    verdict: Verdict,
    left: usize,
    coil_m: f64,
    short_m: f64,
    people: usize,
    spacing_m: f64,
    knots: bool,
    ledger: Ledger,
}

impl Asked {
    /// Whether this rope leaves somebody beyond every loop, or a rescue strand short.
    fn left_alone(&self, rope: &Rope, rules: &Rules) -> bool {
        let load = RopeLoad {
            length_m: rope.length_m,
            diameter_mm: rope.diameter_mm,
        };
        let coil_m = Carried::of(&self.ledger, load, rules).coil_m;
        let all = reserve::free(self.people, self.spacing_m, coil_m);
        let beyond = all.iter().any(|f| f.depth_m(self.spacing_m, rules) < -1e-9);
        let obliged_m = reserve::end_coil_m(self.people, self.spacing_m, rules);
        beyond || (self.knots && obliged_m > coil_m.max(self.coil_m) + 1e-9)
    }
}

/// How the falls of a team stand on the flat, on ice longer than a spacing: over the greatest gap, rounded up to half a metre,
/// and over every whole metre below it, each asked by itself. Between knots a narrower gap can be the worse.
fn falls(
    team: &RopeTeam,
    spacing_m: f64,
    gap_m: f64,
    knots: &KnotSet,
    rules: &Rules,
    followed: &mut Followed,
) -> Verdict {
    let tied = BrakeKnots {
        count_per_side: u32::try_from(knots.each_end).unwrap(),
        first_m: knots.first_m,
        step_m: knots.step_m,
    };
    let greatest_m = (gap_m * 2.0 - 1e-9).ceil() / 2.0;
    let narrower = (0..100).map(f64::from).take_while(|m| *m < greatest_m);
    let over = |gap_m: f64| Team {
        masses_kg: team.people.iter().map(|p| p.mass_kg).collect(),
        spacing_m,
        gap_m,
        knots: (knots.count > 0 && knots.bite == Bite::Yes).then_some(tied),
        snow: rules.choices.snow.value,
        on_skis: false,
        down_deg: [0.0; 2],
        rope_ea_n: rules.nature.gear.rope.usual.modulus_n().unwrap(),
    };
    let assumed = &rules.nature.assumed;
    let verdict = |gap_m: f64| {
        let lost = HoldLimits::default().over(&over(gap_m), &[gap_m], [0; 2], assumed, followed);
        match lost.unwrap().held_on() {
            HeldOn { in_none: true, .. } => Verdict::Stop,
            HeldOn {
                in_centre: false, ..
            } => Verdict::Look,
            _ => Verdict::Inside,
        }
    };
    let all = narrower.chain([greatest_m]).map(verdict);
    all.max().unwrap()
}

fn asked(team: &RopeTeam, zone: &Zone, rules: &Rules, followed: &mut Followed) -> Asked {
    let people = team.size();
    let gap_m = zone.gap.max_m;
    let knots_m = knots::least_m(team, Over::drawn(&[zone]), Hardship::default, rules);
    let least_m = spacing::base_m(people, false, rules).max(knots_m);
    let chosen = spacing::choose(people, least_m, rules, &|_| Meeting {
        effective_gap_m: gap_m,
        factor: 1.0,
        greatest_factor: 1.0,
        zone: Some(0),
        along: None,
    });
    let spacing_m = chosen.spacing_m;
    let knots = knots::choose(
        team,
        spacing_m,
        Over::drawn(&[zone]),
        Hardship::default(),
        rules,
    );
    let mut over = 1;
    while over < people
        && f64::from(u8::try_from(over).unwrap()) * spacing_m <= gap_m
        && spacing_m < gap_m
    {
        over += 1;
    }
    let look = over > 1
        || spacing_m > rules[Rule::SpacingCapM] - rules[Rule::NearCapM]
        || (people == 2 && knots.count == 0);
    Asked {
        people,
        spacing_m,
        knots: knots.count > 0,
        ledger: ledger::ledger(people, spacing_m, &knots, rules),
        demand_m: ledger::ledger(people, spacing_m, &knots, rules).total_m,
        verdict: falls(team, spacing_m, gap_m, &knots, rules, followed).max(
            match (chosen.enough, look) {
                (false, _) => Verdict::Outside,
                (true, true) => Verdict::Look,
                (true, false) => Verdict::Inside,
            },
        ),
        left: people - over,
        coil_m: reserve::coil_m(people, spacing_m, rules),
        short_m: if chosen.enough {
            0.0
        } else {
            chosen.need_m - spacing_m
        },
    }
}

/// Every way to hand out ropes: for each team an index or none, none twice.
fn handed(teams: usize, ropes: usize) -> Vec<Vec<Option<usize>>> {
    let mut all = vec![Vec::new()];
    for _ in 0..teams {
        all = all
            .into_iter()
            .flat_map(|given: Vec<Option<usize>>| {
                let choices = (0..ropes).map(Some).chain([None]);
                choices
                    .filter(|c| c.is_none() || !given.contains(c))
                    .map(|c| given.iter().copied().chain([c]).collect())
                    .collect::<Vec<_>>()
            })
            .collect();
    }
    all
}

fn all_ways(made: &Trip) -> Vec<Merits> {
    let mut all = Vec::new();
    let mut followed = Followed::default();
    let people = made.party.people.len();
    let zones = made.zones();
    for (rules, changes) in variants(&made.laid.rules) {
        for split in splits(people) {
            let teams = made.party.split_by(&split);
            let asked: Vec<Asked> = teams
                .iter()
                .map(|t| asked(t, &zones[0], &rules, &mut followed))
                .collect();
            let lengths = |given: &[Option<usize>]| -> Vec<f64> {
                given
                    .iter()
                    .map(|g| g.map_or(0.0, |i| made.ropes[i].length_m))
                    .collect()
            };
            for given in handed(teams.len(), made.ropes.len()) {
                let pairs = || asked.iter().zip(lengths(&given));
                let rope_short_m = pairs().map(|(a, m)| (a.demand_m - m).max(0.0)).sum::<f64>();
                let near = pairs().any(|(a, m)| m - a.demand_m < rules[Rule::NearRopeM] - 1e-9);
                let by_rope = match (rope_short_m > 1e-9, near) {
                    (true, _) => Verdict::Outside,
                    (false, true) => Verdict::Look,
                    (false, false) => Verdict::Inside,
                };
                let mut alone = asked.iter().zip(&given);
                let alone =
                    alone.any(|(a, g)| g.is_some_and(|i| a.left_alone(&made.ropes[i], &rules)));
                let by_reach = if alone {
                    Verdict::Look
                } else {
                    Verdict::Inside
                };
                let verdict = asked.iter().map(|a| a.verdict).max().unwrap();
                let verdict = verdict.max(by_rope).max(by_reach);
                let kg: f64 = given
                    .iter()
                    .flatten()
                    .map(|&i| {
                        share::mass_kg(made.ropes[i].length_m, made.ropes[i].diameter_mm, &rules)
                    })
                    .sum();
                let short_m = asked.iter().map(|a| a.short_m).fold(rope_short_m, f64::max);
                all.push([
                    rank(verdict, short_m) * 1_000_000_000 + milli(short_m),
                    -i64::try_from(asked.iter().map(|a| a.left).min().unwrap()).unwrap(),
                    milli(kg),
                    milli(asked.iter().map(|a| a.coil_m).fold(0.0, f64::max)),
                    0,
                    changes,
                    i64::from(teams.len() == 1),
                ]);
            }
        }
    }
    all
}

fn front(all: &[Merits]) -> BTreeSet<Merits> {
    let all: BTreeSet<&Merits> = all.iter().collect();
    let beats = |a: &Merits, b: &Merits| {
        let fewer = a[5] & b[5] == a[5];
        let rest = (0..7).filter(|&i| i != 5).all(|i| a[i] <= b[i]);
        a != b && fewer && rest
    };
    let unbeaten = all
        .iter()
        .filter(|way| !all.iter().any(|other| beats(other, way)));
    unbeaten.map(|way| **way).collect()
}

/// A rope is worth carrying only if it is long enough: of ways outside the limits those shown are the least short.
fn inside(all: &[Merits]) -> Vec<Merits> {
    let outside = Verdict::Outside as i64 * 1_000_000_000;
    all.iter().filter(|m| m[0] < outside).copied().collect()
}

proptest! {
    #![proptest_config(Config { cases: 30, failure_persistence: None, ..Config::default() })]
    #[test]
    fn the_ways_shown_are_those_that_no_other_way_beats(
        masses in prop::collection::vec(60.0..110.0_f64, 2..=6),
        lengths in prop::collection::vec(prop::sample::select(vec![25.0, 30.0, 40.0, 45.5, 50.0, 60.0, 70.0, 80.0]), 1..=4),
        thin: bool, gap_m in 1.0..28.0_f64,
    ) {
        let zone = format!("{{\"gap_m\":{gap_m:.2},\"snow_depth_m\":2}}");
        let mut made = Trip::straight(&[&zone]).party(&masses).ropes(&lengths);
        if let (true, Some(rope)) = (thin, made.ropes.first_mut()) {
            rope.diameter_mm = Some(7.0);
        }
        // Walking closer and joined ropes are tried where nothing else holds; `planned` holds those to the plan.
        let (more, ways): (Vec<Way>, Vec<Way>) = weighed(&made).ways.into_iter().partition(more_rope);
        let shown: BTreeSet<Merits> = ways.iter().map(merits).collect();
        let all = all_ways(&made);
        let within = inside(&all);
        if within.is_empty() && more.iter().any(|way| way.verdict < Verdict::Outside) {
            prop_assert!(shown.iter().all(|m| m[0] < Verdict::Outside as i64 * 1_000_000_000));
        } else if within.is_empty() {
            let least = all.iter().map(|m| m[0]).min().unwrap();
            // A way with joined ropes or a closer walk may be less short than all others, and is shown in their place.
            let shorter = more.iter().any(|way| shortness(way) < least);
            prop_assert!(shorter || shown.iter().any(|m| m[0] == least), "the least short is missing: {least}, {shown:?}");
        } else {
            prop_assert_eq!(shown, front(&within));
        }
    }
}
