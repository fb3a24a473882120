//! Laws of the legs and their set-ups.

use proptest::prelude::*;
use schrund::{
    Job, Planner,
    geometry::Bounds,
    legs::spacing::need_m,
    meet::{Ice, undrawn::crossed},
    plan::{
        Plan,
        leg::{Leg, TeamSetup, Verdict},
        off::RopeOff,
    },
    practice::{Origin, Rule, Rules},
    trip::{
        job::Brief,
        party::Party,
        route::{Route, Stretch},
        timetable::Timetable,
        zone::Zone,
    },
    write::{Look, Scene},
};

use crate::fixture::{
    any::{any_line, any_zone, any_zones, route},
    planned::{Planned, setups},
    trip::rules,
};

fn planned(route: &Route, zones: &[Zone], people: usize, rules: &Rules) -> Option<Plan> {
    let party = Party::of(people, rules);
    let case = Brief {
        route,
        zones,
        party: &party,
        ropes: &[],
        rules,
        terrain: None,
        glaciers: &[],
        has_inventory: false,
        notices: &[],
        timetable: &Timetable::default(),
        burden: None,
        halts: &[],
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

/// The legs tile the stage.
fn tile(plan: &Plan, length_m: f64) -> Result<(), TestCaseError> {
    let mut at_m = 0.0;
    for (i, leg) in plan.legs.iter().enumerate() {
        prop_assert_eq!(leg.leg, i + 1);
        prop_assert!(
            (leg.start_m - at_m).abs() < HAIR_M,
            "gap or overlap at {at_m}"
        );
        prop_assert!(leg.end_m > leg.start_m, "an empty leg at {at_m}");
        at_m = leg.end_m;
    }
    prop_assert!((at_m - length_m).abs() < HAIR_M, "the end is missing");
    Ok(())
}

/// Every crossing is walked on the rope until the last person is off.
fn roped_to_the_last(plan: &Plan, length_m: f64, margin_m: f64) -> Result<(), TestCaseError> {
    for crossing in plan.zones.iter().flat_map(|z| &z.crossings) {
        let holds =
            |l: &&Leg| l.roped && l.start_m <= crossing.enter_m && crossing.exit_m <= l.end_m;
        let leg = plan.legs.iter().find(holds);
        let leg = leg.ok_or_else(|| TestCaseError::fail(format!("{crossing:?} is not roped")))?;
        let team = &leg.teams[0];
        let team_m = (team.people - 1) as f64 * team.spacing_m;
        let from_m = (crossing.enter_m - margin_m).max(0.0);
        let to_m = (crossing.exit_m + margin_m + team_m).min(length_m);
        prop_assert!(leg.start_m <= from_m + HAIR_M, "{leg:?}");
        prop_assert!(leg.end_m >= to_m - HAIR_M, "{leg:?}");
    }
    Ok(())
}

/// Marks end where the ledger and what is carried beyond it do.
fn marks_end_with_the_ledger(plan: &Plan) -> Result<(), TestCaseError> {
    for team in setups(plan) {
        let end_m = team.marks.last().map_or(0.0, |m| m.at_m);
        let carried_m = team.ledger.total_m + 2.0 * (team.coil_carried_m - team.coil_m);
        prop_assert!((end_m - carried_m).abs() < HAIR_M, "{team:?}");
        prop_assert!(
            team.marks.is_sorted_by(|a, b| a.at_m <= b.at_m),
            "{:?}",
            team.marks
        );
    }
    Ok(())
}

/// The rope covers the gap it was chosen for.
fn the_gap_is_covered(plan: &Plan, rules: &Rules) -> Result<(), TestCaseError> {
    for leg in plan.legs.iter().filter(|l| l.roped && !l.along) {
        let team = &leg.teams[0];
        let (gap_m, effective_m) = (leg.gap_m, leg.effective_gap_m.unwrap_or(0.0));
        let fits = team.spacing_m + HAIR_M >= need_m(team.people, effective_m, rules);
        // Where one zone decides both widths the promise can be checked against them.
        if let (true, Some(covers_m), Some(_), 1) =
            (fits, team.covers_gap_m, team.sold_length_m, leg.zones.len())
        {
            let factor = leg.effective_gap_m.unwrap_or(1.0) / gap_m.unwrap_or(1.0);
            prop_assert!(covers_m * factor + 1e-6 >= effective_m, "{leg:?}");
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn legs_tile_the_stage_and_hold_every_crossing_with_a_rope_that_covers_it(
        line in any_line(),
        zones in any_zones(),
        people in 2..9_usize,
    ) {
        let (route, rules) = (route(&line), rules());
        if let Some(plan) = planned(&route, &zones, people, &rules) {
            let length_m = route.length_m();
            tile(&plan, length_m)?;
            roped_to_the_last(&plan, length_m, rules[Rule::MarginM])?;
            marks_end_with_the_ledger(&plan)?;
            the_gap_is_covered(&plan, &rules)?;
        }
    }
}

fn has_a_hole_near(zone: &Zone, other: &Zone) -> bool {
    let reach = other.outline.bounds().expect("a zone has a ring");
    let holes = zone.outline.polygons.iter().flat_map(|p| &p.holes);
    let mut boxes = holes.filter_map(|hole| Bounds::of(hole));
    boxes.any(|hole| hole.meets(&reach))
}

proptest! {
    // A case is four plans, each with its falls: half as many cases take a fifth of all the time of the tests.
    #![proptest_config(ProptestConfig { cases: 20, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_wider_gap_one_more_zone_or_a_larger_margin_never_makes_a_leg_lighter_or_shorter(
        line in any_line(),
        zones in any_zones(),
        (which, wider_m) in (0..3_usize, 0.0..20.0),
        more in any_zone(4),
        (margin_m, farther_m) in (0.0..100.0, 0.0..100.0),
        people in 2..6_usize,
    ) {
        let route = route(&line);
        let (mut rules, mut larger) = (rules(), rules());
        rules.set(Rule::MarginM, margin_m, Origin::Flag).unwrap();
        larger.set(Rule::MarginM, margin_m + farther_m, Origin::Flag).unwrap();
        let mut wider = zones.clone();
        wider[which].gap.max_m += wider_m;
        let may_cover_a_hole = zones.iter().any(|zone| has_a_hole_near(zone, &more));
        let one_more: Vec<Zone> = zones.iter().cloned().chain([more]).collect();
        if let Some(light) = planned(&route, &zones, people, &rules) {
            let mut all = vec![(&wider, &rules), (&zones, &larger)];
            // A hole that another zone covers is no edge any more: what lies beyond it counts no longer.
            if !may_cover_a_hole {
                all.push((&one_more, &rules));
            }
            for (zones, rules) in all {
                let heavy = planned(&route, zones, people, rules);
                no_lighter(&light, &heavy.expect("still a plan"))?;
            }
        }
    }
}

/// No unroped metre on ice, and nobody told to unrope there.
fn nobody_unties_on_ice(job: &Job, plan: &Plan) -> Result<(), TestCaseError> {
    let stage = &job.route.stages[0];
    let drawn = Ice::of(&job.zones).contacts(stage, 0.0);
    let known = Ice::of(&job.glaciers).contacts(stage, 0.0);
    let ice = crossed(&[drawn, known].concat());
    for leg in plan.legs.iter().filter(|l| !l.roped) {
        let on_leg = |s: &Stretch| s.to_m.min(leg.end_m) - s.from_m.max(leg.start_m);
        let longest_m = ice.iter().map(on_leg).fold(0.0, f64::max);
        prop_assert!(longest_m < HAIR_M, "{longest_m} m of ice on {leg:?}");
    }
    let on_ice = |at_m: f64| ice.iter().any(|s| s.from_m <= at_m && at_m <= s.to_m);
    for leg in plan.legs.iter().filter(|l| l.roped) {
        let unrope = leg.rope_off == Some(RopeOff::Unrope);
        prop_assert_eq!(unrope, !on_ice(leg.end_m), "{:?}", leg.rope_off);
        prop_assert!(leg.rope_off != Some(RopeOff::ByWord), "nobody said so");
        let without = !leg.gap_known;
        prop_assert!(!without || leg.verdict >= Verdict::Look);
        prop_assert_eq!(leg.zones.is_empty(), leg.gap_m.is_none());
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn with_an_inventory_and_one_zone_nobody_unties_on_ice(
        line in any_line(),
        zone in any_zone(1),
        glaciers in any_zones(),
        people in 2..6_usize,
        margin_m in prop_oneof![Just(20.0), 0.0..100.0],
    ) {
        let mut rules = rules();
        rules.set(Rule::MarginM, margin_m, Origin::Flag).unwrap();
        let job = Job {
            route: route(&line),
            zones: vec![zone],
            glaciers,
            party: Party::of(people, &rules),
            ..Job::under(rules)
        };
        if let Ok(plan) = schrund::plan(&job) {
            nobody_unties_on_ice(&job, &plan)?;
            let planned = Planned { job, plan, scene: Scene::default(), look: Look::default() };
            let device = ::gpx::read(planned.written("gpx").as_bytes()).unwrap();
            let unrope = device.waypoints.iter().filter(|w| w.type_.as_deref() == Some("unrope"));
            let legs = planned.plan.legs.iter();
            prop_assert_eq!(unrope.count(), legs.filter(|l| l.rope_off == Some(RopeOff::Unrope)).count());
        }
    }
}
