//! Which of the ropes at hand is given to whom.

use schrund::plan::why::CarryWhy;

use crate::fixture::{
    planned::codes,
    trip::{SNOW, Trip},
};

/// Numbers of the ropes carried, team by team.
fn carried(trip: &Trip) -> Vec<usize> {
    let carry = trip.plan().carry;
    carry
        .iter()
        .map(|c| c.rope.as_ref().unwrap().rope)
        .collect()
}

#[test]
fn the_lightest_rope_that_holds_the_set_up_is_carried() {
    // Three at 13 m take 42 m (see the findings).
    let mut trip = Trip::straight(&[SNOW]).ropes(&[80.0, 50.0, 60.0, 40.0]);
    assert_eq!(carried(&trip), [2], "50 m");
    trip.ropes[0].diameter_mm = Some(6.0);
    assert_eq!(carried(&trip), [1], "80 m of thin rope weigh less");
}

#[test]
fn who_needs_most_gets_enough_and_nobody_more_than_enough() {
    // Seven are a team of four and one of three.
    let trip = Trip::straight(&[SNOW])
        .people(7)
        .ropes(&[80.0, 45.0, 70.0, 50.0]);
    let plan = trip.plan();
    for carry in &plan.carry {
        let given_m = carry.rope.as_ref().unwrap().length_m;
        assert!(given_m >= carry.needed_m, "{carry:?}");
        assert!(given_m < 70.0, "a shorter one holds: {carry:?}");
    }
    assert_eq!(plan.carry.len(), 2);
}

#[test]
fn where_ropes_do_not_hold_everything_the_fewest_legs_stay_outside_and_the_trade_is_told() {
    // With chest coils three ask for more rope than four where gaps are narrow (49.6 and 48.4 m), and for less where
    // they are wide (69.6 and 72.4 m): whoever carries the longer rope decides how many legs are outside.
    let (narrow, wide) = (SNOW, r#"{"gap_m":20,"snow_depth_m":2}"#);
    let trip = Trip::straight(&[narrow, wide, narrow])
        .people(7)
        .ropes(&[70.0, 49.0]);
    let trip = trip.rules(
        "reserve = \"chest-coils\"\n[assume]\nspacing_3_m = 8\nspacing_4_m = 8\n\
         chest_coils_3 = 9\nchest_coils_4 = 6\nchest_coil_m = 1.7",
    );
    let plan = trip.plan();
    assert_eq!(carried(&trip), [2, 1], "the three carry 70 m");
    let outside = |leg: &&schrund::plan::leg::Leg| codes(&leg.findings).contains(&"no-rope-fits");
    assert_eq!(
        plan.legs.iter().filter(outside).count(),
        1,
        "the wide gaps alone"
    );
    let why = CarryWhy::LeftToAnother {
        other_team: 2,
        graver_falls: false,
        legs_outside: 1,
        legs_exchanged: 3,
    };
    let told = plan.carry.iter().map(|carry| carry.why).collect::<Vec<_>>();
    assert_eq!(told, [why, CarryWhy::LongestSetUp]);
}
