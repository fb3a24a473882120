//! Who goes: names and numbers.

use schrund::{
    plan::name::PersonOnRope,
    say::{name::position, voice::Voice},
    trip::party::Called,
};

use crate::fixture::{
    planned::roped,
    trip::{SNOW, Trip},
};

#[test]
fn people_without_a_name_keep_the_number_of_the_party() {
    let trip = Trip::straight(&[SNOW]).party(&[80.0; 7]);
    let plan = trip.ropes(&[70.0, 70.0]).plan();
    let called = |(persons, place)| position(persons, place, Voice::default()).to_string();
    let teams = roped(&plan).teams.iter();
    let mut ties: Vec<String> = teams
        .flat_map(|t| (1..=t.people).map(|place| (t.persons.as_slice(), place)))
        .map(called)
        .collect();
    ties.sort();
    let want: Vec<String> = (1..=7).map(|n| format!("person {n}")).collect();
    assert_eq!(ties, want);
}

#[test]
fn a_name_that_is_a_number_stays_a_name() {
    let persons = [PersonOnRope {
        called: Called {
            number: 1,
            name: Some("7".to_owned()),
        },
        mass_kg: 80.0,
    }];
    assert_eq!(position(&persons, 1, Voice::default()).to_string(), "7");
    assert_eq!(
        position(&persons, 2, Voice::default()).to_string(),
        "person 2"
    );
}
