//! Laws of the legs and their set-ups.

use proptest::prelude::*;
use schrund::{
    Planner,
    plan::{
        Plan,
        leg::{Leg, TeamSetup},
    },
    practice::{Origin, Rule, Rules},
    trip::{job::Case, party::Party, route::Route, zone::Zone},
};

use crate::fixture::{
    any::{any_line, any_zone, any_zones, route},
    trip::rules,
};

fn planned(route: &Route, zones: &[Zone], people: usize, rules: &Rules) -> Option<Plan> {
    let party = Party::of(people, rules);
    let case = Case {
        route,
        zones,
        party: &party,
        ropes: &[],
        rules,
        terrain: None,
        glaciers: &[],
        notices: &[],
    };
    Planner::of(case).and_then(|p| p.plan()).ok()
}

/// Where legs are told apart, metres.
const HAIR_M: f64 = 1e-6;

/// Every roped metre of `light` is roped in `heavy` too, with a set-up at least as heavy.
fn no_lighter(light: &Plan, heavy: &Plan) -> Result<(), TestCaseError> {
    for leg in light.legs.iter().filter(|l| l.roped) {
        let covering = |h: &&Leg| {
            h.roped && h.start_m <= leg.start_m + HAIR_M && h.end_m >= leg.end_m - HAIR_M
        };
        let Some(cover) = heavy.legs.iter().find(covering) else {
            return Err(TestCaseError::fail(format!(
                "{}..{} is no longer roped",
                leg.start_m, leg.end_m
            )));
        };
        for (a, b) in leg.teams.iter().zip(&cover.teams) {
            set_up_no_lighter(a, b)?;
        }
        prop_assert!(
            cover.gap_m >= leg.gap_m,
            "{:?} {:?}",
            cover.gap_m,
            leg.gap_m
        );
    }
    Ok(())
}

fn set_up_no_lighter(a: &TeamSetup, b: &TeamSetup) -> Result<(), TestCaseError> {
    prop_assert!(
        b.spacing_m >= a.spacing_m,
        "spacing {} after {}",
        b.spacing_m,
        a.spacing_m
    );
    prop_assert!(b.coil_m >= a.coil_m, "coil {} after {}", b.coil_m, a.coil_m);
    prop_assert!(
        b.knots.count >= a.knots.count,
        "knots {} after {}",
        b.knots.count,
        a.knots.count
    );
    prop_assert!(
        b.ledger.total_m >= a.ledger.total_m - HAIR_M,
        "rope {} after {}",
        b.ledger.total_m,
        a.ledger.total_m
    );
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn legs_tile_the_stage(line in any_line(), zones in any_zones(), people in 2..9_usize) {
        let route = route(&line);
        if let Some(plan) = planned(&route, &zones, people, &rules()) {
            let mut at_m = 0.0;
            for (i, leg) in plan.legs.iter().enumerate() {
                prop_assert_eq!(leg.leg, i + 1);
                prop_assert!((leg.start_m - at_m).abs() < HAIR_M, "gap or overlap at {at_m}");
                prop_assert!(leg.end_m > leg.start_m, "an empty leg at {at_m}");
                at_m = leg.end_m;
            }
            prop_assert!((at_m - route.length_m()).abs() < HAIR_M, "the end is missing");
        }
    }

    #[test]
    fn every_crossing_is_walked_on_the_rope_until_the_last_person_is_off(
        line in any_line(),
        zones in any_zones(),
        people in 2..6_usize,
    ) {
        let (route, rules) = (route(&line), rules());
        if let Some(plan) = planned(&route, &zones, people, &rules) {
            let margin_m = rules[Rule::MarginM];
            for crossing in plan.zones.iter().flat_map(|z| &z.crossings) {
                let leg = plan.legs.iter().find(|l| l.roped && l.start_m <= crossing.enter_m && crossing.exit_m <= l.end_m);
                let leg = leg.ok_or_else(|| TestCaseError::fail(format!("{crossing:?} is not roped")))?;
                let team_m = (people - 1) as f64 * leg.teams[0].spacing_m;
                let from_m = (crossing.enter_m - margin_m).max(0.0);
                let to_m = (crossing.exit_m + margin_m + team_m).min(route.length_m());
                prop_assert!(leg.start_m <= from_m + HAIR_M, "{leg:?}");
                prop_assert!(leg.end_m >= to_m - HAIR_M, "{leg:?}");
            }
        }
    }

    #[test]
    fn a_wider_gap_never_makes_a_leg_lighter_or_shorter(
        line in any_line(),
        zones in any_zones(),
        which in 0..3_usize,
        by_m in 0.0..20.0,
        people in 2..6_usize,
    ) {
        let (route, rules) = (route(&line), rules());
        let mut wider = zones.clone();
        wider[which].gap.max_m += by_m;
        if let (Some(light), Some(heavy)) =
            (planned(&route, &zones, people, &rules), planned(&route, &wider, people, &rules))
        {
            no_lighter(&light, &heavy)?;
        }
    }

    #[test]
    fn one_more_zone_never_makes_a_leg_lighter_or_shorter(
        line in any_line(),
        zones in any_zones(),
        more in any_zone(4),
        people in 2..6_usize,
    ) {
        let (route, rules) = (route(&line), rules());
        let all: Vec<Zone> = zones.iter().cloned().chain([more]).collect();
        if let (Some(light), Some(heavy)) =
            (planned(&route, &zones, people, &rules), planned(&route, &all, people, &rules))
        {
            no_lighter(&light, &heavy)?;
        }
    }

    #[test]
    fn a_larger_margin_never_makes_a_leg_lighter_or_shorter(
        line in any_line(),
        zones in any_zones(),
        margin_m in 0.0..100.0,
        by_m in 0.0..100.0,
        people in 2..6_usize,
    ) {
        let route = route(&line);
        let (mut small, mut large) = (rules(), rules());
        small.set(Rule::MarginM, margin_m, Origin::Flag).unwrap();
        large.set(Rule::MarginM, margin_m + by_m, Origin::Flag).unwrap();
        if let (Some(light), Some(heavy)) =
            (planned(&route, &zones, people, &small), planned(&route, &zones, people, &large))
        {
            no_lighter(&light, &heavy)?;
        }
    }

    #[test]
    fn marks_end_where_the_ledger_does(line in any_line(), zones in any_zones(), people in 2..6_usize) {
        if let Some(plan) = planned(&route(&line), &zones, people, &rules()) {
            for team in plan.legs.iter().flat_map(|l| &l.teams) {
                let end_m = team.marks.last().map_or(0.0, |m| m.at_m);
                prop_assert!((end_m - team.ledger.total_m).abs() < HAIR_M, "{team:?}");
                prop_assert!(team.marks.is_sorted_by(|a, b| a.at_m <= b.at_m), "{:?}", team.marks);
            }
        }
    }

    #[test]
    fn the_rope_covers_the_gap_it_was_chosen_for_and_little_more(
        line in any_line(),
        zones in any_zones(),
        people in 2..6_usize,
    ) {
        let rules = rules();
        if let Some(plan) = planned(&route(&line), &zones, people, &rules) {
            for leg in plan.legs.iter().filter(|l| l.roped && !l.along) {
                let team = &leg.teams[0];
                let needs = |n: usize, w: f64| schrund::legs::spacing::need_m(n, w, &rules);
                let fits = team.spacing_m + HAIR_M >= needs(people, leg.effective_gap_m.unwrap_or(0.0));
                if let (true, Some(covers_m), Some(_)) = (fits, team.covers_gap_m, team.sold_length_m) {
                    let factor = leg.effective_gap_m.unwrap_or(1.0) / leg.gap_m.unwrap_or(1.0);
                    // Where one zone decides both widths the promise can be checked against them.
                    if leg.zones.len() == 1 {
                        prop_assert!(covers_m * factor + 1e-6 >= leg.effective_gap_m.unwrap_or(0.0), "{leg:?}");
                    }
                }
            }
        }
    }
}
