//! Halts on hidden gaps: told with the nearest place off all ice.

use schrund::{
    plan::{fact::Fact, finding::At},
    trip::halt::Halt,
};

use crate::fixture::trip::{BARE, SNOW, Trip};

/// Ice from 400 m to 600 m and from 1000 m to 1200 m; the margin is 20 m.
fn told(trip: &Trip, at_m: f64, minutes: f64) -> Vec<(f64, Option<usize>, bool, Option<f64>)> {
    let mut job = trip.job();
    job.halts.push(Halt {
        stage: 1,
        at_m,
        minutes,
        name: None,
    });
    let plan = schrund::plan(&job).unwrap();
    let findings = plan.legs.iter().flat_map(|leg| &leg.findings);
    let told = findings.filter_map(|found| match (found.fact()?, &found.at) {
        (
            Fact::HaltOnHidden {
                zone,
                beside,
                rest_m,
                ..
            },
            At::Leg(place),
        ) => Some((
            place.from_m,
            zone.as_ref().map(|z| z.zone),
            *beside,
            rest_m.map(f64::round),
        )),
        _ => None,
    });
    told.collect()
}

#[test]
fn nobody_is_sent_over_a_jump_to_rest() {
    // 150 m on the ice, a jump of 400 m off it, and free ground right behind the jump.
    let mut trip = Trip::northward();
    trip.segments = vec![
        vec![(0.0, -900.0), (0.0, 190.0)],
        vec![(0.0, 1000.0), (0.0, 2000.0)],
    ];
    let [(at_m, .., rest_m)] = told(&trip, 1080.0, 20.0)[..] else {
        panic!("one halt");
    };
    let rest_m = rest_m.expect("before the ice");
    assert!(
        rest_m < at_m - 100.0,
        "the line was not walked from {at_m} m to {rest_m} m"
    );
}

#[test]
fn a_halt_on_hidden_gaps_is_told_with_the_nearest_place_off_the_ice() {
    let snow = Trip::straight(&[SNOW, SNOW]);
    assert_eq!(
        told(&snow, 450.0, 20.0),
        [(450.0, Some(1), false, Some(380.0))]
    );
    assert_eq!(
        told(&snow, 550.0, 20.0),
        [(550.0, Some(1), false, Some(620.0))]
    );
    assert_eq!(
        told(&snow, 1190.0, 1.0),
        [(1190.0, Some(2), false, Some(1220.0))]
    );
    assert_eq!(
        told(&snow, 610.0, 20.0),
        [(610.0, Some(1), true, Some(620.0))]
    );
    for (at_m, minutes) in [(300.0, 20.0), (700.0, 20.0), (450.0, 0.0)] {
        assert_eq!(told(&snow, at_m, minutes), [], "{at_m}, {minutes} min");
    }
}

#[test]
fn gaps_in_sight_are_no_hidden_ones_and_ice_that_nobody_drew_has_some() {
    let bare = Trip::straight(&[BARE]);
    assert_eq!(told(&bare, 500.0, 20.0), []);
    let known = Trip::straight(&[SNOW]).inventory((-500.0, 300.0), (500.0, 900.0));
    assert_eq!(
        told(&known, 700.0, 20.0),
        [(700.0, None, false, Some(920.0))]
    );
    assert_eq!(
        told(&known, 500.0, 20.0),
        [(500.0, Some(1), false, Some(280.0))]
    );
}

#[test]
fn where_all_the_way_is_ice_no_place_is_named() {
    let all =
        Trip::along(&[(0.0, -900.0), (0.0, 900.0)]).zone((-800.0, -1000.0), (800.0, 1000.0), SNOW);
    assert_eq!(told(&all, 500.0, 20.0), [(500.0, Some(1), false, None)]);
}
