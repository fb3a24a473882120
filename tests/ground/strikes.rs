//! Strikes proposed from the ground: exact on a plane, labelled, and never a relief.

use schrund::plan::{Plan, leg::Leg};
use schrund::practice::Rule;

use crate::fixture::{
    close_to as close,
    ground::tilted,
    planned::{only_roped, said},
    trip::{EASTWARD, NORTHWARD, Trip, rules},
};

fn trip_on(line_m: &[(f64, f64)], zone: &str) -> Trip {
    Trip::along(line_m).middle(zone)
}

fn plan_on(aspect_deg: f64, line_m: &[(f64, f64)], zone: &str) -> Plan {
    let ground = tilted(15.0, aspect_deg);
    trip_on(line_m, zone).model(20.0, ground).plan()
}

/// The same where the leader lets the proposed strike count.
fn plan_counting(aspect_deg: f64, line_m: &[(f64, f64)], zone: &str) -> Plan {
    let ground = tilted(15.0, aspect_deg);
    let trip = trip_on(line_m, zone).rules(COUNTING);
    trip.model(20.0, ground).plan()
}

const COUNTING: &str = "use_proposed_strike = true";
const WITHOUT: &str = "{\"gap_m\":6,\"snow_depth_m\":1.5}";

#[test]
fn on_a_plane_the_strike_lies_across_the_fall_line() {
    for (aspect_deg, strike_deg) in [
        (180.0, 90.0),
        (0.0, 90.0),
        (200.0, 110.0),
        (300.0, 30.0),
        (90.0, 0.0),
    ] {
        let plan = plan_on(aspect_deg, &NORTHWARD, WITHOUT);
        let off = |got: Option<f64>| {
            let turn = (got.expect("a strike") - strike_deg).rem_euclid(180.0);
            Some(turn.min(180.0 - turn))
        };
        close("zone", off(plan.zones[0].strike_proposed_deg), 0.0, 0.02);
        close("leg", off(only_roped(&plan).strike_proposed_deg), 0.0, 0.02);
        assert_eq!(
            said(&only_roped(&plan).findings, "strike-proposed").len(),
            1
        );
    }
}

#[test]
fn a_line_that_contours_is_marked_and_no_figure_changes() {
    let contour = plan_on(180.0, &EASTWARD, WITHOUT);
    let leg = only_roped(&contour);
    assert_eq!(leg.may_run_along.len(), 1, "{:?}", leg.may_run_along);
    let marked = leg.may_run_along[0].to_m - leg.may_run_along[0].from_m;
    // The zone of 400 m with its margins of 20 m.
    close("all of the crossing", Some(marked), 440.0, 1.0);
    assert_eq!(said(&leg.findings, "may-run-along").len(), 1);
    assert!(!leg.along, "only a hint");
    let bare = only_roped(&trip_on(&EASTWARD, WITHOUT).plan()).clone();
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
    let straight_down = plan_on(180.0, &NORTHWARD, WITHOUT);
    assert!(only_roped(&straight_down).may_run_along.is_empty());
}

#[test]
fn if_the_leader_lets_it_count_it_only_ever_adds() {
    for line in [
        &EASTWARD[..],
        &NORTHWARD[..],
        &[(-900.0, -900.0), (900.0, 900.0)][..],
    ] {
        let bare = trip_on(line, WITHOUT).rules(COUNTING).plan();
        let bare = only_roped(&bare);
        for aspect_deg in (0..360).step_by(30).map(f64::from) {
            let plan = plan_counting(aspect_deg, line, WITHOUT);
            let leg = only_roped(&plan);
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
    let contour = plan_counting(180.0, &EASTWARD, WITHOUT);
    assert!(only_roped(&contour).along, "now it counts");
    close(
        "twice the gap",
        only_roped(&contour).effective_gap_m,
        12.0,
        1e-9,
    );
    // Straight down, 90° less the 30° it may be off.
    let down = plan_counting(180.0, &NORTHWARD, WITHOUT);
    let least_deg = 90.0 - rules()[Rule::ProposedStrikeDeg];
    let want = 6.0 / least_deg.to_radians().sin();
    close("at 60°", only_roped(&down).effective_gap_m, want, 0.01);
}

#[test]
fn a_strike_that_is_given_wins_and_level_ground_proposes_none() {
    let given = "{\"gap_m\":6,\"snow_depth_m\":1.5,\"strike_deg\":90}";
    let plan = plan_counting(90.0, &NORTHWARD, given);
    assert_eq!(plan.zones[0].strike_proposed_deg, None);
    close(
        "square, as given",
        only_roped(&plan).effective_gap_m,
        6.0,
        1e-4,
    );
    let level = trip_on(&EASTWARD, WITHOUT).rules(COUNTING);
    let level = level.model(20.0, tilted(1.0, 180.0)).plan();
    assert_eq!(only_roped(&level).strike_proposed_deg, None);
}
