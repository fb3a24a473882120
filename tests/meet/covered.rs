//! Holes that other drawn ice covers are no edge of the ice: they get no margin.

use schrund::{
    Planner,
    geometry::LonLat,
    meet::{Contact, Ice, contact::Of},
    trip::{
        job::Brief,
        party::Party,
        timetable::Timetable,
        zone::{RopeWord, Strike, Surface, Zone},
    },
};

use crate::fixture::{
    any::{at, route, stage, zone},
    close,
    trip::rules,
};

const MARGIN_M: f64 = 20.0;

fn square(x0: f64, y0: f64, x1: f64, y1: f64) -> Vec<LonLat> {
    vec![at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)]
}

/// A kilometre of ice with a hole of 200 m in its middle.
fn ring_of_ice() -> Zone {
    let rings = [
        square(0.0, 0.0, 1000.0, 1000.0),
        square(400.0, 400.0, 600.0, 600.0),
    ];
    zone(1, &rings, 15.0)
}

fn plug(x0: f64, x1: f64) -> Zone {
    zone(2, &[square(x0, 400.0, x1, 600.0)], 2.0)
}

fn contact(zones: &[Zone], line: &[LonLat]) -> Option<Contact> {
    let contacts = Ice::of(zones).contacts(&stage(line), MARGIN_M);
    contacts.into_iter().find(|c| c.of == Of::Zone(0))
}

/// Where the first zone is touched on the way through its middle, metres from its border.
fn touches(zones: &[Zone]) -> Vec<(f64, f64)> {
    let through = [at(-100.0, 500.0), at(1100.0, 500.0)];
    let contact = contact(zones, &through).expect("the line crosses it");
    assert_eq!(contact.crossings.len(), 2, "the hole is none of its ice");
    let stretches = contact.touches.iter();
    stretches
        .map(|t| (t.from_m - 100.0, t.to_m - 100.0))
        .collect()
}

#[track_caller]
fn are(got: &[(f64, f64)], want: [(f64, f64); 2]) {
    assert_eq!(got.len(), 2, "{got:?}");
    for (got, want) in got.iter().zip(want) {
        // The grid of metres is good to a few centimetres over a kilometre.
        close("from", got.0, want.0, 0.1);
        close("to", got.1, want.1, 0.1);
    }
}

const WITH_MARGIN: [(f64, f64); 2] = [(-20.0, 420.0), (580.0, 1020.0)];
const WITHOUT: [(f64, f64); 2] = [(-20.0, 400.0), (600.0, 1020.0)];

#[test]
fn only_a_hole_wholly_on_other_roped_ice_has_no_margin() {
    let ice = ring_of_ice();
    are(&touches(std::slice::from_ref(&ice)), WITH_MARGIN);
    are(&touches(&[ice.clone(), plug(400.0, 600.0)]), WITHOUT);
    are(&touches(&[ice.clone(), plug(350.0, 700.0)]), WITHOUT);
    // Two zones cover it together.
    let (west, east) = (plug(400.0, 500.0), plug(490.0, 650.0));
    are(&touches(&[ice.clone(), west.clone(), east]), WITHOUT);
    are(&touches(&[ice.clone(), west]), WITH_MARGIN);
    // A strip in the middle is left: all corners of the hole lie on ice, and not all of the hole.
    let (west, east) = (plug(390.0, 495.0), plug(505.0, 610.0));
    are(&touches(&[ice.clone(), west, east]), WITH_MARGIN);
    // Where the rope may come off the border stays one.
    for (rope, surface) in [
        (RopeWord::Never, Surface::Snow),
        (RopeWord::Auto, Surface::Bare),
    ] {
        let unroped = Zone {
            rope,
            surface,
            snow_depth_m: None,
            ..plug(400.0, 600.0)
        };
        are(&touches(&[ice.clone(), unroped]), WITH_MARGIN);
    }
}

#[test]
fn an_outer_border_that_meets_the_hole_keeps_its_margin() {
    // The hole reaches the east border of its ring, and so does what covers it.
    let rings = [
        square(0.0, 0.0, 1000.0, 1000.0),
        square(400.0, 400.0, 1000.0, 600.0),
    ];
    let ice = zone(1, &rings, 15.0);
    let from_outside = [at(1300.0, 500.0), at(1010.0, 500.0)];
    let plug = plug(400.0, 1000.0);
    assert!(
        contact(&[ice, plug], &from_outside).is_some(),
        "10 m from the border"
    );
}

#[test]
fn who_stays_in_the_hole_is_set_up_for_what_lies_in_it() {
    let mut ice = ring_of_ice();
    ice.strike = Some(Strike {
        deg: 90.0,
        uncertainty_deg: None,
    });
    let line = route(&[at(420.0, 410.0), at(580.0, 410.0)]);
    let rules = rules();
    let party = Party::of(3, &rules);
    let zones_of_legs = |zones: &[Zone]| {
        let case = Brief {
            route: &line,
            zones,
            party: &party,
            ropes: &[],
            rules: &rules,
            terrain: None,
            glaciers: &[],
            has_inventory: false,
            notices: &[],
            timetable: &Timetable::default(),
            burden: None,
            halts: &[],
        };
        let plan = Planner::of(case).and_then(|p| p.plan()).expect("a plan");
        let legs = plan.legs.iter();
        legs.map(|leg| (leg.zones.clone(), leg.gap_m, leg.along))
            .collect::<Vec<_>>()
    };
    assert_eq!(zones_of_legs(&[ice.clone()]), [(vec![1], Some(15.0), true)]);
    assert_eq!(
        zones_of_legs(&[ice, plug(400.0, 600.0)]),
        [(vec![2], Some(2.0), false)]
    );
}

#[test]
fn who_starts_in_the_hole_meets_its_ice_at_the_border() {
    // 100 m through what covers the hole, then 400 m of ice and its margin beyond.
    let zones = [ring_of_ice(), plug(400.0, 600.0)];
    let line = [at(500.0, 500.0), at(1100.0, 500.0)];
    let contact = contact(&zones, &line).expect("it crosses the ice");
    assert_eq!(contact.touches.len(), 1, "{contact:?}");
    close("no margin inside", contact.touches[0].from_m, 100.0, 0.1);
    close("one outside", contact.touches[0].to_m, 520.0, 0.1);
}
