//! Nobody unties on known ice: the ice of an inventory on which no zone is drawn.

use schrund::{
    plan::{
        Plan,
        leg::{Bite, Leg, Verdict},
        off::RopeOff,
    },
    say::{setup::held, voice::Voice},
};

use crate::fixture::{
    close_to as close,
    planned::{codes, findings, only_roped, roped, said, setup},
    trip::{BARE, NORTHWARD, SNOW, Trip},
};

const CODE: &str = "ice-without-a-gap-width";
const BY_WORD: &str = "unroped-on-ice-by-your-word";
const TELL: &str = "undrawn_ice = \"tell\"";

/// Ice from one chainage to another of the line that begins 900 m south of the spot.
fn ice(trip: Trip, from_m: f64, to_m: f64) -> Trip {
    trip.inventory((-300.0, from_m - 900.0), (300.0, to_m - 900.0))
}

fn ends_m(plan: &Plan) -> Vec<(f64, f64)> {
    let ends = |l: &Leg| (l.start_m.round(), l.end_m.round());
    plan.legs.iter().filter(|l| l.roped).map(ends).collect()
}

#[test]
fn ice_on_which_no_zone_is_drawn_is_roped_with_the_margin_and_the_team() {
    let plan = ice(Trip::northward(), 100.0, 1700.0).plan();
    let leg = only_roped(&plan);
    // 20 m of margin (our judgement) at both ends and two spans of 13 m behind.
    assert_eq!(ends_m(&plan), [(80.0, 1746.0)]);
    assert_eq!((leg.verdict, leg.gap_known), (Verdict::Look, false));
    assert_eq!(
        (leg.gap_m, leg.rope_off),
        (Some(6.0), Some(RopeOff::Unrope))
    );
    assert!(
        plan.legs
            .iter()
            .all(|l| l.roped == (l.leg == 2) && l.gap_known != l.roped)
    );
}

#[test]
fn it_is_one_finding_that_lists_the_stretches_of_the_stage() {
    let trip = ice(ice(Trip::northward(), 100.0, 200.0), 1150.0, 1400.0);
    let plan = ice(trip, 1500.0, 1700.0).plan();
    assert_eq!(
        ends_m(&plan).len(),
        2,
        "drawn and known ice on the second leg"
    );
    let told = said(findings(&plan), CODE);
    assert_eq!(told.len(), 2, "the legs that hold some");
    assert_eq!(told[0], told[1], "so that a reader is told once");
    assert_eq!(
        told[0],
        "ice without a gap width, 0.10–0.20 km, 1.15–1.40 km, 1.50–1.70 km: roped, at least with the base spacing, \
         its gaps and its snow unknown; falls there are judged as if the gaps had no width"
    );
}

/// The base spacing of three is (10 − 3) arm spans, 12.6 m (common practice), rounded up.
#[test]
fn where_no_zone_is_met_the_set_up_is_what_is_taught_and_claims_no_gap() {
    let far = Trip::along(&NORTHWARD).zone((5000.0, -200.0), (5400.0, 200.0), SNOW);
    let plan = ice(far, 500.0, 900.0).sixty_each().plan();
    let leg = only_roped(&plan);
    assert_eq!(
        (leg.gap_m, leg.effective_gap_m, leg.gap_known),
        (None, None, false)
    );
    assert_eq!(leg.verdict, Verdict::Look);
    let team = &leg.teams[0];
    close("spacing", Some(team.spacing_m), 13.0, 1e-9);
    assert_eq!(
        (
            team.covers_gap_m,
            team.covers_at_spacing_m,
            team.as_tied_gap_m
        ),
        (None, None, None)
    );
    assert!(team.arrest.is_none(), "held or not hangs on the gap");
    assert!(!codes(&leg.findings).contains(&"two-over-one-gap"));
    assert_eq!(said(&plan.findings, "zone-not-met").len(), 1);
}

/// A fall that is not held even over a gap of no width is told: three on a frozen crust of 35°.
#[test]
fn a_fall_that_no_gap_makes_worse_is_told() {
    let steep = Trip::along(&NORTHWARD)
        .zone((5000.0, -200.0), (5400.0, 200.0), SNOW)
        .falling(0.7)
        .rules("snow = \"refrozen\"");
    let leg = ice(steep, 500.0, 900.0).plan();
    assert!(codes(&roped(&leg).findings).contains(&"fall-held-in-none"));
}

#[test]
fn bare_ice_beside_it_does_not_bring_people_closer_than_is_taught() {
    let bare = Trip::along(&NORTHWARD).middle(BARE);
    let alone_m = roped(&bare.plan()).teams[0].spacing_m;
    let beside_m = roped(&ice(bare, 600.0, 1300.0).plan()).teams[0].spacing_m;
    assert_eq!((alone_m, beside_m), (7.0, 13.0));
}

#[test]
fn a_pair_ties_its_whole_layout_and_does_not_count_on_it() {
    let pair = Trip::along(&NORTHWARD).middle(SNOW).people(2);
    let far = Trip::along(&NORTHWARD).zone((5000.0, -200.0), (5400.0, 200.0), SNOW);
    for trip in [pair, far.people(2)] {
        let plan = ice(trip, 300.0, 1300.0).plan();
        let leg = only_roped(&plan);
        let team = &leg.teams[0];
        assert_eq!((team.knots.count, team.knots.bite), (6, Bite::Unknown));
        close("room for both sets", Some(team.spacing_m), 15.0, 1e-9);
        assert!(
            !codes(&leg.findings).contains(&"snow-depth-not-given"),
            "said with the ice"
        );
    }
}

#[test]
fn a_sliver_beside_a_zone_belongs_to_its_leg() {
    let drawn = Trip::northward().plan();
    let plan = ice(Trip::northward(), 690.0, 1115.0).plan();
    let leg = only_roped(&plan);
    assert!(leg.gap_known && leg.ice_without_zone.is_empty());
    assert_eq!(ends_m(&plan), ends_m(&drawn));
    assert!(said(findings(&plan), CODE).is_empty());
}

#[test]
fn told_only_it_leaves_the_legs_of_the_zones_and_names_the_word() {
    let trip = ice(Trip::northward(), 100.0, 1700.0).rules(TELL);
    let plan = trip.plan();
    let drawn = Trip::northward().plan();
    assert_eq!(ends_m(&plan), ends_m(&drawn));
    let tied = |plan: &Plan| {
        let team = &roped(plan).teams[0];
        (
            team.spacing_m,
            team.knots.clone(),
            team.ledger,
            team.marks.clone(),
        )
    };
    assert_eq!(tied(&plan), tied(&drawn), "the old set-up");
    for leg in &plan.legs {
        assert_eq!(
            (leg.verdict, leg.gap_known),
            (Verdict::Look, false),
            "leg {}",
            leg.leg
        );
        assert_eq!(codes(&leg.findings).contains(&BY_WORD), !leg.roped);
    }
    assert_eq!(roped(&plan).rope_off, Some(RopeOff::ByWord));
    assert_eq!(
        said(&plan.legs[0].findings, CODE),
        ["ice without a gap width, 0.10–0.70 km, 1.10–1.70 km: only told, by your word"]
    );
}

#[test]
fn a_zone_never_roped_is_unroped_by_the_leaders_word() {
    let never = r#"{"gap_m":4,"surface":"bare","rope":"never"}"#;
    let trip = Trip::along(&NORTHWARD).middle(never);
    let plan = trip
        .clone()
        .zone((-300.0, 150.0), (300.0, 250.0), SNOW)
        .plan();
    let leg = &plan.legs[0];
    assert_eq!((leg.roped, leg.verdict), (false, Verdict::Look));
    assert_eq!(
        said(&leg.findings, BY_WORD),
        ["unroped on ice by your word: zone 1"]
    );
    let south = trip.zone((-300.0, -500.0), (300.0, -400.0), SNOW);
    let plan = ice(south, 400.0, 510.0).plan();
    assert_eq!(roped(&plan).rope_off, Some(RopeOff::Unrope), "off the ice");
}

#[test]
fn a_line_that_ends_on_ice_is_not_told_to_unrope() {
    let plan = ice(Trip::northward(), 100.0, 2000.0).plan();
    assert_eq!(only_roped(&plan).rope_off, Some(RopeOff::EndsOnIce));
    let by_word = ice(Trip::northward(), 100.0, 2000.0).rules(TELL).plan();
    assert_eq!(roped(&by_word).rope_off, Some(RopeOff::ByWord));
}

#[test]
fn without_an_inventory_the_plan_says_once_that_it_knows_no_other_ice() {
    let note = |trip: Trip| said(findings(&trip.plan()), "no-inventory").len();
    assert_eq!(note(Trip::northward()), 1);
    assert_eq!(note(ice(Trip::northward(), 700.0, 1100.0)), 0);
}

#[test]
fn bridges_on_it_are_not_trusted_later_than_others() {
    let times = "start = \"09:00\"\nbridges_until = \"09:10\"";
    let plan = ice(Trip::northward(), 100.0, 600.0).rules(times).plan();
    let told = said(findings(&plan), "bridges-late");
    let known = told
        .iter()
        .filter(|says| says.starts_with("ice on which no zone is drawn is left at"));
    assert_eq!(known.count(), 1, "{told:?}");
}

/// Where nobody gave a gap, the fall was judged as over one of no width, and nobody was told.
#[test]
fn that_no_width_is_given_is_said_with_the_fall() {
    let steep = |trip: Trip| {
        trip.falling(0.6)
            .sixty_each()
            .rules("snow = \"refrozen\"")
            .plan()
    };
    let far = Trip::along(&NORTHWARD).zone((5000.0, -200.0), (5400.0, 200.0), SNOW);
    let told = |plan: &Plan| said(findings(plan), "fall-held-in-none");
    let known = steep(ice(far, 500.0, 900.0));
    let says = "; judged as if the gap had no width: no width is given";
    let all = told(&known);
    assert!(
        !all.is_empty() && all.iter().all(|one| one.ends_with(says)),
        "{all:?}"
    );
    let arrest = setup(&known).arrest.as_ref().expect("not held");
    assert!(
        arrest.runs.iter().all(|run| !run.gap_given),
        "{:?}",
        arrest.runs
    );
    let held = held(arrest, Voice::default()).to_string();
    assert!(
        held.ends_with("judged as if the gap had no width: no width is given"),
        "{held}"
    );
    let drawn = told(&steep(Trip::northward()));
    assert!(
        !drawn.is_empty() && drawn.iter().all(|one| !one.contains("width")),
        "{drawn:?}"
    );
}
