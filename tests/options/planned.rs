//! Each way against the plan made with what it chooses.

use proptest::{prelude::*, test_runner::Config};
use schrund::{
    plan::{change::Change, leg::Verdict, options::Way},
    practice::{Origin, Rule, Rules},
    trip::rope::Rope,
};

use super::weighed;
use crate::fixture::trip::{Trip, rope};

fn changed(rules: &Rules, change: &Change) -> Rules {
    let mut changed = rules.clone();
    let mut set = |rule, value| changed.set(rule, value, Origin::Trip).unwrap();
    match change {
        Change::Practice { name } => return rules.under_practice(name).unwrap(),
        Change::Butterflies => set(Rule::KnotRopeM, rules[Rule::ButterflyRopeM]),
        Change::TighterLayout { first_m, step_m } => {
            set(Rule::KnotFirstM, *first_m);
            set(Rule::KnotStepM, *step_m);
        }
        Change::LongSling { sling_m } => set(Rule::SlingM, *sling_m),
        Change::Closer { spacing_m } => {
            for habit in (2..=5).map(Rule::base_spacing) {
                set(habit, rules[habit].min(*spacing_m));
            }
        }
        Change::JoinedRopes { .. } => {}
    }
    changed
}

/// The rope that a team carries by a way.
fn carried(way: &Way, number: usize, at_hand: &[Rope]) -> Rope {
    let own = at_hand[number - 1].clone();
    let joined = way.changes.iter().find_map(|change| match change {
        Change::JoinedRopes { ropes, length_m } if ropes[0].rope == number => Some(*length_m),
        _ => None,
    });
    joined.map_or(own.clone(), |length_m| Rope {
        length_m,
        joined: true,
        ..own
    })
}

/// The trip with what a way chooses.
fn with(made: &Trip, way: &Way) -> Trip {
    let mut chosen = made.clone();
    chosen.party.teams = way.teams.iter().map(|team| team.people).collect();
    for change in &way.changes {
        chosen.laid.rules = changed(&chosen.laid.rules, change);
    }
    let bought = way.teams.iter().filter(|team| team.rope.is_none());
    let bought = bought
        .map(|team| rope(team.rope_m))
        .filter(|r| r.length_m > 0.0);
    let numbers = way.teams.iter().filter_map(|team| team.rope);
    let carried = numbers.map(|n| carried(way, n, &made.ropes));
    chosen.ropes = carried.chain(bought).collect();
    if made.ropes.is_empty() {
        // Nobody makes do with a length that is bought.
        let near = chosen.laid.rules.set(Rule::NearRopeM, 0.0, Origin::Trip);
        near.expect("a rope may have nothing to spare");
    }
    chosen
}

/// The same out of what the way says that a trip file says; `None` where none can say it.
fn told(made: &Trip, way: &Way) -> Option<Trip> {
    let said = way.trip.as_ref()?;
    let mut told = made.clone();
    if !said.teams.is_empty() {
        told.party.teams = said.teams.clone();
    }
    if let Some(name) = &said.practice {
        told.laid.rules = told.laid.rules.under_practice(name).unwrap();
    }
    for (name, value) in &said.assume {
        let set = told
            .laid
            .rules
            .set(Rule::named(name).unwrap(), *value, Origin::Trip);
        set.unwrap();
    }
    if !said.ropes.is_empty() {
        let carried = said.ropes.iter().map(|carried| Rope {
            length_m: carried.length_m,
            diameter_mm: carried.diameter_mm,
            joined: carried.joined_to.is_some(),
            ..made.ropes[carried.rope - 1].clone()
        });
        told.ropes = carried.collect();
    }
    Some(told)
}

/// Gap, snow and strike of a zone, as JSON.
fn zone() -> impl Strategy<Value = String> {
    let snow = prop::sample::select(vec!["", ",\"snow_depth_m\":0.2", ",\"snow_depth_m\":2"]);
    let strike = prop::option::of(0.0..180.0_f64);
    (1.0..26.0_f64, snow, strike, any::<bool>()).prop_map(|(gap_m, snow, strike, bare)| {
        let strike = strike.map_or(String::new(), |deg| {
            format!(",\"strike_deg\":{deg:.1},\"strike_uncertainty_deg\":10")
        });
        let (snow, bare) = if bare {
            ("", ",\"surface\":\"bare\"")
        } else {
            (snow, "")
        };
        format!("{{\"gap_m\":{gap_m:.1}{snow}{strike}{bare}}}")
    })
}

/// Four at 11 m need 37 m and three at 13 m need 42 m, so both ropes hold either. On 50 m a loop ends short of the lip for
/// the middle one of three; four reach theirs.
#[test]
fn who_reaches_least_carries_the_longer_rope() {
    let zone = r#"{"gap_m":1,"snow_depth_m":2}"#;
    let plan = Trip::straight(&[zone])
        .party(&[80.0; 7])
        .ropes(&[50.0, 60.0])
        .plan();
    let carried = plan
        .carry
        .iter()
        .map(|carry| (carry.people, carry.length_m));
    assert_eq!(carried.collect::<Vec<_>>(), [(4, 50.0), (3, 60.0)]);
    let reached = plan.legs[1].teams.iter().flat_map(|team| &team.reach);
    assert!(reached.clone().count() == 7 && reached.clone().all(|reach| reach.depth_m >= -1e-9));
}

/// Teams of the same sizes need not be set up alike: a team that holds somebody clearly heavier is one of its own kind.
#[test]
fn no_team_of_a_great_party_is_left_without_a_set_up() {
    let masses = [&[130.0; 2][..], &[70.0; 8]].concat();
    let trip = Trip::straight(&[r#"{"gap_m":4,"snow_depth_m":2}"#]);
    let made = trip.party(&masses).ropes(&[40.0, 28.0, 28.0]);
    for way in weighed(&made).ways {
        assert!(way.teams.iter().all(|team| team.needed_m > 0.0), "{way:#?}");
        let verdict = with(&made, &way).plan().verdict();
        assert_eq!(way.verdict, verdict, "{way:#?}");
    }
}

proptest! {
    #![proptest_config(Config { cases: 24, failure_persistence: None, ..Config::default() })]
    #[test]
    fn the_plan_with_what_a_way_chooses_has_its_verdict(
        masses in prop::collection::vec(55.0..110.0_f64, 2..=7),
        lengths in prop::collection::vec(prop::sample::select(vec![20.0, 25.0, 30.0, 40.0, 45.5, 50.0, 60.0, 80.0]), 0..=4),
        zones in prop::collection::vec(zone(), 1..=3),
        fall in prop::sample::select(vec![-0.4, -0.1, 0.0, 0.05, 0.2, 0.5]),
        known_ice: bool,
    ) {
        let zones: Vec<&str> = zones.iter().map(String::as_str).collect();
        let mut made = Trip::straight(&zones).party(&masses).ropes(&lengths).falling(fall);
        if known_ice {
            made = made.inventory((-500.0, 200.0), (500.0, 500.0));
        }
        for way in weighed(&made).ways {
            let verdict = with(&made, &way).plan().verdict();
            prop_assert_eq!(way.verdict, verdict, "{:?} on {:?} over {:?}: {:#?}", masses, lengths, zones, way);
            prop_assert!(way.trip.is_some(), "every way can be planned with");
            let compared = way.way <= Way::COMPARED && !lengths.is_empty();
            prop_assert_eq!(way.plan.is_some(), compared, "{:#?}", way);
            // Where lengths are sold, or none is left for somebody, the plan says so of its own accord.
            let own = !lengths.is_empty() && way.short_m <= 0.0;
            if let Some(told) = told(&made, &way).filter(|_| own) {
                let plan = told.plan();
                prop_assert_eq!(plan.verdict(), verdict, "told of {:#?}", way);
                if let Some(known) = &way.plan {
                    prop_assert_eq!(&known.clock, &plan.clock, "{:#?}", way);
                    let asked = plan.legs.iter().filter(|leg| leg.verdict >= Verdict::Look);
                    let asked: Vec<_> = asked.map(|leg| (leg.leg, leg.verdict)).collect();
                    let legs: Vec<_> = known.legs.iter().map(|leg| (leg.leg, leg.verdict)).collect();
                    prop_assert_eq!(legs, asked, "{:#?}", way);
                    let belays = plan.legs.iter().flat_map(|leg| &leg.belays).map(|asked| asked.belays);
                    prop_assert_eq!(known.belays, belays.sum::<usize>(), "{:#?}", way);
                }
                let sorted = |mut lengths: Vec<f64>| { lengths.sort_by(f64::total_cmp); lengths };
                let carried = plan.carry.iter().map(|carry| carry.length_m).collect();
                let by_way = way.teams.iter().map(|team| team.rope_m).collect();
                prop_assert_eq!(sorted(carried), sorted(by_way), "carried by {:#?}", way);
            }
        }
    }
}
