//! The worked examples of the rules: the second implementation is held to them before it holds anybody else to anything.

use crate::fixture::{close, close_to};

use super::{
    case::{Case, KnotsWord, Patch, Reading, Rope, Spot, Word, Zone},
    figures::{COIL_MOST_KG, COIL_MOST_M, LAYOUTS, LEAST_UNROPED_M, MARGIN_M, PRACTICES},
    line::degree_m,
    plan::{Leg, Planned, Setup, plan},
    rope::{Reach, carried, ledger, reaches, sold_m},
    stretch::Roped,
};

/// Places are whole millionths of a degree, a tenth of a metre.
const GRID_M: f64 = 0.2;
const LAT: i64 = 46_000_000;

/// So many metres along a parallel, and north of it.
fn spot(east_m: f64, north_m: f64) -> Spot {
    let (east, north) = degree_m(46.0);
    let micro = |m: f64, degree: f64| (m / degree * 1e6).round() as i64;
    (micro(east_m, east), LAT + micro(north_m, north))
}

fn box_of(from_m: f64, to_m: f64) -> Patch {
    Patch {
        outer: vec![
            spot(from_m, -500.0),
            spot(to_m, -500.0),
            spot(to_m, 500.0),
            spot(from_m, 500.0),
        ],
        holes: Vec::new(),
    }
}

fn zone(from_m: f64, to_m: f64, gap_m: f64) -> Zone {
    Zone {
        patches: vec![box_of(from_m, to_m)],
        gap_m,
        strike: None,
        snow_m: Some(2.0),
        bare: false,
        word: Word::Auto,
    }
}

/// Three kilometres to the east under the set that asks 15, 12, 10 and 8 m.
fn trip(people: usize, zones: Vec<Zone>) -> Case {
    Case {
        seed: 0,
        segments: vec![vec![spot(0.0, 0.0), spot(3000.0, 0.0)]],
        fall_deg: None,
        off_m: Vec::new(),
        zones,
        inventory: Vec::new(),
        only_tell: false,
        people,
        masses_kg: None,
        ropes: Vec::new(),
        practice: &PRACTICES[1],
        knots: None,
        cover_anyone: false,
        rope_on_bare: true,
        margin_m: MARGIN_M,
        least_unroped_m: LEAST_UNROPED_M,
        layout: LAYOUTS[0],
        tie_in_m: None,
        sling_m: 0.0,
        coil_most_m: COIL_MOST_M,
        coil_most_kg: COIL_MOST_KG,
        reading: Reading::default(),
    }
}

fn roped(plan: &Planned) -> Vec<&(Roped, Setup)> {
    plan.legs.iter().filter_map(|l| l.roped.as_ref()).collect()
}

fn ends(leg: &Leg) -> (f64, f64) {
    (leg.stretch.from_m, leg.stretch.to_m)
}

#[test]
fn a_crossing_is_left_when_the_last_one_has_left() {
    let plan = plan(&trip(3, vec![zone(1000.0, 1400.0, 3.0)]));
    let (from_m, to_m) = ends(&plan.legs[1]);
    close("roped from", from_m, 980.0, GRID_M);
    close("roped until", to_m, 1444.0, GRID_M);
    assert_eq!(plan.legs.len(), 3);
}

#[test]
fn two_crossings_near_each_other_are_one_leg() {
    let two = |second_m: f64| {
        let zones = vec![
            zone(1000.0, 1400.0, 3.0),
            zone(second_m, second_m + 100.0, 3.0),
        ];
        roped(&plan(&trip(3, zones))).len()
    };
    assert_eq!(two(1560.0), 1, "96 m between them");
    assert_eq!(two(1610.0), 1, "146 m between them");
    assert_eq!(two(1618.0), 2, "154 m between them");
}

fn only(case: &Case) -> (Roped, Setup) {
    let plan = plan(case);
    let leg = plan.legs.into_iter().find_map(|l| l.roped);
    leg.expect("a roped leg")
}

#[test]
fn the_ledgers_of_the_rules() {
    let total = |people: usize, gap_m: f64, knots: KnotsWord| {
        let mut case = trip(people, vec![zone(1000.0, 1400.0, gap_m)]);
        case.knots = Some(knots);
        let (leg, setup) = only(&case);
        (leg.spacing_m, setup.ledger.total_m())
    };
    let cases = [
        (2, 3.0, KnotsWord::Auto, 15.0, 69.2, 70.0),
        (3, 3.0, KnotsWord::Always, 12.0, 46.2, 50.0),
        (4, 25.0, KnotsWord::Auto, 20.0, 64.0, 70.0),
    ];
    for (people, gap_m, knots, spacing_m, want_m, sold) in cases {
        let (got_m, total_m) = total(people, gap_m, knots);
        close(&format!("spacing of {people}"), got_m, spacing_m, 1e-9);
        close(&format!("rope of {people}"), total_m, want_m, 1e-9);
        close_to("sold", sold_m(total_m), sold, 1e-9);
    }
}

#[test]
fn knots_are_never_dropped_to_save_half_a_metre() {
    let mut case = trip(2, vec![zone(1000.0, 1400.0, 3.0)]);
    case.practice = &PRACTICES[0];
    let (leg, setup) = only(&case);
    close("whole layout", leg.spacing_m, 15.0, 1e-9);
    assert!(leg.lengthened && setup.ledger.knots == 6);
    case.layout = LAYOUTS[1];
    let (leg, setup) = only(&case);
    close("the tighter one fits", leg.spacing_m, 14.5, 1e-9);
    assert!(!leg.lengthened && setup.ledger.knots == 6);
}

fn depth(reaches: &[Reach], person: usize) -> f64 {
    reaches[person - 1].depth_m
}

#[test]
fn how_deep_a_loop_reaches() {
    let none = || trip(2, Vec::new());
    let pair = reaches(&none(), 15.0, 22.5);
    close("a pair at 15 m", depth(&pair, 1), 5.0, 1e-9);
    assert!(!pair[0].needs_untied);
    let three = |coil_m: f64| {
        let mut case = none();
        case.people = 3;
        reaches(&case, 13.0, coil_m)
    };
    close("needed, end", depth(&three(6.5), 1), 4.0, 1e-9);
    close("needed, middle", depth(&three(6.5), 2), -9.0, 1e-9);
    close("carried, end", depth(&three(15.5), 1), 10.0, 1e-9);
    close("carried, middle", depth(&three(15.5), 2), 0.0, 1e-9);
    let mut case = none();
    case.people = 3;
    close(
        "three at 12 m",
        depth(&reaches(&case, 12.0, 6.0), 2),
        -8.5,
        1e-9,
    );
    case.people = 4;
    close(
        "four at 20 m",
        depth(&reaches(&case, 20.0, 0.0), 2),
        -2.5,
        1e-9,
    );
}

#[test]
fn nobody_drags_a_tail() {
    let case = trip(3, Vec::new());
    let of = |spacing_m: f64, length_m: f64| {
        let rope = Rope {
            length_m,
            diameter_mm: None,
        };
        carried(&case, &ledger(&case, spacing_m, false), &rope)
    };
    let long = of(7.0, 80.0);
    close("at each end", long.coil_m, 30.0, 1e-9);
    close("in a bag", long.bag_m, 3.0, 1e-9);
    let usual = of(13.0, 60.0);
    close("at each end", usual.coil_m, 15.5, 1e-9);
    close("in a bag", usual.bag_m, 0.0, 1e-9);
}

#[test]
fn nobody_unties_on_known_ice() {
    let mut case = trip(3, vec![zone(1000.0, 1400.0, 20.0)]);
    // Ten metres beyond the zone belong to it; a tongue of its own does not.
    case.inventory = vec![box_of(1000.0, 1410.0), box_of(2000.0, 2300.0)];
    let both = plan(&case);
    let legs = roped(&both);
    assert!(!legs[0].0.undrawn, "a sliver is its neighbour's");
    close("of the zone", legs[0].0.spacing_m, 18.0, 1e-9);
    assert!(legs[1].0.undrawn && legs[1].0.effective.is_none());
    close("base", legs[1].0.spacing_m, 12.0, 1e-9);
    let (from_m, to_m) = ends(&both.legs[3]);
    close("roped from", from_m, 1980.0, GRID_M);
    close("roped until", to_m, 2344.0, GRID_M);

    // Thirty metres are ice of their own, and part of the leg.
    case.inventory = vec![box_of(1000.0, 1430.0)];
    let longer = plan(&case);
    let (_, to_m) = ends(&longer.legs[1]);
    close("until the ice is left", to_m, 1486.0, GRID_M);
    assert!(longer.legs[1].undrawn);

    case.inventory = vec![box_of(1000.0, 1500.0)];
    case.only_tell = true;
    let told = plan(&case);
    let (_, to_m) = ends(&told.legs[1]);
    close("until the zone is left", to_m, 1456.0, GRID_M);
    assert!(told.legs[2].undrawn, "unroped on ice by the leader's word");
}
