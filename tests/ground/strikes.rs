//! Strikes proposed from the ground: exact on a plane, labelled, and never a relief.

use schrund::{
    plan::{Plan, leg::Leg},
    practice::{Origin, Rule, Rules},
};

use super::{Trip, close, made, roped, rules, said};

fn plan_on(aspect_deg: f64, line_m: &[(f64, f64)], zone: &str, rules: &Rules) -> Plan {
    let terrain = made::terrain(20.0, made::tilted(15.0, aspect_deg));
    let route = made::route(line_m, None);
    let zones = made::zones(&[made::rectangle((-200.0, -200.0), (200.0, 200.0), zone)]);
    Trip::of(&route, &zones, rules).on(&terrain).plan()
}

const WITHOUT: &str = "{\"gap_m\":6,\"snow_depth_m\":1.5}";
const EASTWARD: [(f64, f64); 2] = [(-900.0, 0.0), (900.0, 0.0)];

fn counting() -> Rules {
    let mut rules = rules();
    rules
        .choices
        .use_proposed_strike
        .set(Some(true), Origin::Trip);
    rules
}

#[test]
fn on_a_plane_the_strike_lies_across_the_fall_line() {
    for (aspect_deg, strike_deg) in [
        (180.0, 90.0),
        (0.0, 90.0),
        (200.0, 110.0),
        (300.0, 30.0),
        (90.0, 0.0),
    ] {
        let plan = plan_on(aspect_deg, &made::NORTHWARD, WITHOUT, &rules());
        let off = |got: Option<f64>| {
            let turn = (got.expect("a strike") - strike_deg).rem_euclid(180.0);
            Some(turn.min(180.0 - turn))
        };
        close("zone", off(plan.zones[0].strike_proposed_deg), 0.0, 0.02);
        close("leg", off(roped(&plan).strike_proposed_deg), 0.0, 0.02);
        assert_eq!(said(&roped(&plan).findings, "strike-proposed").len(), 1);
    }
}

#[test]
fn a_line_that_contours_is_marked_and_no_figure_changes() {
    let contour = plan_on(180.0, &EASTWARD, WITHOUT, &rules());
    let leg = roped(&contour);
    assert_eq!(leg.may_run_along.len(), 1, "{:?}", leg.may_run_along);
    let marked = leg.may_run_along[0].to_m - leg.may_run_along[0].from_m;
    // The zone of 400 m with its margins of 20 m.
    close("all of the crossing", Some(marked), 440.0, 1.0);
    assert_eq!(said(&leg.findings, "may-run-along").len(), 1);
    assert!(!leg.along, "only a hint");
    let bare = without_terrain(&EASTWARD, &rules());
    let sets = |leg: &Leg| {
        let of = |t: &schrund::plan::leg::TeamSetup| {
            (t.spacing_m, t.knots.count, t.ledger, t.covers_gap_m)
        };
        leg.teams.iter().map(of).collect::<Vec<_>>()
    };
    assert_eq!(
        sets(leg),
        sets(&bare),
        "the set-up is that of a square crossing"
    );
    let straight_down = plan_on(180.0, &made::NORTHWARD, WITHOUT, &rules());
    assert!(roped(&straight_down).may_run_along.is_empty());
}

fn without_terrain(line_m: &[(f64, f64)], rules: &Rules) -> Leg {
    let (route, zones) = (made::route(line_m, None), made::middle_zone());
    let trip = Trip::of(&route, &zones, rules);
    roped(&trip.plan()).clone()
}

#[test]
fn if_the_leader_lets_it_count_it_only_ever_adds() {
    let rules = counting();
    for line in [
        &EASTWARD[..],
        &made::NORTHWARD[..],
        &[(-900.0, -900.0), (900.0, 900.0)][..],
    ] {
        let bare = without_terrain(line, &rules);
        for aspect_deg in (0..360).step_by(30).map(f64::from) {
            let plan = plan_on(aspect_deg, line, WITHOUT, &rules);
            let leg = roped(&plan);
            assert!(
                leg.effective_gap_m >= bare.effective_gap_m,
                "aspect {aspect_deg}"
            );
            assert!(
                leg.teams[0].spacing_m >= bare.teams[0].spacing_m,
                "aspect {aspect_deg}"
            );
        }
    }
    let contour = plan_on(180.0, &EASTWARD, WITHOUT, &rules);
    assert!(roped(&contour).along, "now it counts");
    close("twice the gap", roped(&contour).effective_gap_m, 12.0, 1e-9);
    // Straight down, 90° less the 30° it may be off.
    let down = plan_on(180.0, &made::NORTHWARD, WITHOUT, &rules);
    let least_deg = 90.0 - rules[Rule::ProposedStrikeDeg];
    let want = 6.0 / least_deg.to_radians().sin();
    close("at 60°", roped(&down).effective_gap_m, want, 0.01);
}

#[test]
fn a_strike_that_is_given_wins_and_level_ground_proposes_none() {
    let given = "{\"gap_m\":6,\"snow_depth_m\":1.5,\"strike_deg\":90}";
    let plan = plan_on(90.0, &made::NORTHWARD, given, &counting());
    assert_eq!(plan.zones[0].strike_proposed_deg, None);
    close("square, as given", roped(&plan).effective_gap_m, 6.0, 1e-4);
    let terrain = made::terrain(20.0, made::tilted(1.0, 180.0));
    let (route, zones) = (made::route(&EASTWARD, None), made::middle_zone());
    let counting = counting();
    let level = Trip::of(&route, &zones, &counting).on(&terrain).plan();
    assert_eq!(roped(&level).strike_proposed_deg, None);
}
