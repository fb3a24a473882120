//! Which of the ropes at hand is given to whom.

use crate::fixture::trip::{SNOW, Trip};

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
