//! Who goes: names and numbers.

use schrund::say::{name::position, voice::Voice};

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
