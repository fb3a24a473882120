//! The message: short, whole, and in the signs that a short message has.

use schrund::{
    say::units::Units,
    write::{
        parts::row::Row,
        text::{MOST, leg, message},
    },
};

use crate::fixture::{Trip, route, trip, zones};

#[test]
fn every_leg_fits_a_short_message_however_many_teams_there_are() {
    for people in [2, 3, 4, 5, 6, 7, 10, 23, 60] {
        for units in [Units::Metric, Units::Imperial] {
            let trip = trip(people);
            for said in trip.plan.legs.iter().map(|l| leg(l, units)) {
                assert!(
                    said.is_ascii() && said.len() <= MOST,
                    "{people} people: {said}"
                );
                assert!(!said.is_empty(), "something is said");
            }
        }
    }
}

#[test]
fn a_leg_with_one_team_is_told_whole() {
    let trip = trip(3);
    let roped = trip.plan.legs.iter().find(|l| l.roped).unwrap();
    let row = Row::new(roped, Units::Metric);
    let said = leg(roped, Units::Metric);
    let team = &row.teams[0];
    let ascii = |text: &str| text.replace('×', "x").replace(['–', '−'], "-");
    for part in [
        &row.from_to,
        &team.spacing,
        &team.knots,
        &team.coils,
        &team.rope(),
        &row.gap,
    ] {
        assert!(said.contains(&ascii(part)), "{part} should be in {said}");
    }
    assert!(said.contains(roped.verdict.as_str()), "{said}");
}

#[test]
fn teams_with_one_set_up_are_told_once() {
    let trip = trip(6);
    let roped = trip.plan.legs.iter().find(|l| l.roped).unwrap();
    assert_eq!(roped.teams.len(), 2);
    assert!(
        leg(roped, Units::Metric).contains("T1 T2: 3 x "),
        "{}",
        leg(roped, Units::Metric)
    );
}

#[test]
fn a_long_name_does_not_make_a_long_message() {
    let name = "Überschreitung ".repeat(40);
    let trip = Trip::of(&route(name.trim()), &zones(&name, ""), 3);
    let said = message(&trip.sheet(), Units::Metric);
    let head = said.lines().next().unwrap();
    assert!(
        head.chars().count() <= 100 && head.starts_with("Überschreitung"),
        "{head}"
    );
    assert!(head.ends_with("legs"), "{head}");
}

#[test]
fn a_zone_that_the_leader_will_not_rope_is_told_as_such() {
    let zones = zones("Icefall", "").replace("\"gap_m\":40.0", "\"gap_m\":40.0,\"rope\":\"never\"");
    let trip = Trip::of(&route("Over the pass"), &zones, 3);
    let odd = |l: &&schrund::plan::leg::Leg| {
        !l.roped && l.verdict != schrund::plan::leg::Verdict::Unroped
    };
    let unroped = trip.plan.legs.iter().find(odd).unwrap();
    let said = leg(unroped, Units::Metric);
    assert!(said.contains("unroped, "), "{said}");
    assert!(said.contains(unroped.verdict.as_str()), "{said}");
}
