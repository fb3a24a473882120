//! The message: short, whole, and in the signs that a short message has.

use schrund::{
    plan::leg::{Leg, Verdict},
    say::{
        finding::{brief, briefest},
        round::Round,
        units::Units,
        voice::Voice,
    },
    write::{
        parts::row::LegRow,
        text::{MOST, leg},
    },
};

use crate::fixture::{
    planned::{over_the_pass, roped, setups},
    trip::{SNOW, Trip},
};

#[test]
fn every_leg_fits_a_short_message_however_many_teams_there_are() {
    for people in [2, 3, 4, 5, 6, 7, 10, 23, 60] {
        for units in [Units::Metric, Units::Imperial] {
            let voice = Voice {
                units,
                ..Voice::default()
            };
            let trip = over_the_pass(people);
            for said in trip
                .plan
                .legs
                .iter()
                .map(|l| leg(l, &trip.plan.zones, voice))
            {
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
    let trip = over_the_pass(3);
    let roped = roped(&trip.plan);
    let row = LegRow::new(roped, Voice::default());
    let said = leg(roped, &trip.plan.zones, Voice::default());
    let setup = row.teams[0].setup;
    let there = |m| Units::Metric.length(m, Round::Down);
    let needed = |m| Units::Metric.length(m, Round::Up);
    for part in [
        row.from_to.replace('–', "-"),
        format!("{} people {}", setup.people, needed(setup.spacing_m)),
        "no knots".to_owned(),
        format!("coil {}", there(setup.coil_carried_m)),
        needed(setup.ledger.total_m),
        there(60.0),
        needed(roped.gap_m.unwrap()),
        needed(roped.effective_gap_m.unwrap()),
        "N ".to_owned(),
        roped.verdict.as_str().to_owned(),
    ] {
        assert!(said.contains(&part), "{part} should be in {said}");
    }
}

/// What a leader needs on the spot is told, whatever is found of the leg.
#[test]
fn the_gravest_leg_keeps_its_gap_and_its_place() {
    let zone = r#"{"gap_m":20,"surface":"bare","snow_depth_m":0.4,"strike_deg":60}"#;
    let plan = Trip::straight(&[zone]).people(3).ropes(&[60.0]).plan();
    for leg_of in [over_the_pass(3).plan.legs.clone(), plan.legs].concat() {
        let said = leg(&leg_of, &[], Voice::default());
        if leg_of.roped {
            let setup = &leg_of.teams[0];
            let number = |m: f64| Units::Metric.number(m, Round::Up);
            let [gap, along] = [leg_of.gap_m, leg_of.effective_gap_m].map(|m| number(m.unwrap()));
            let (apart, needs) = (number(setup.spacing_m), number(setup.ledger.total_m));
            // Where there is little room a unit stands once: `rope 42 of 60 m`.
            for ways in [
                [format!("gap {gap} m"), format!("gap {gap} along {along} m")],
                [format!("gap {along} m"), format!("along {along} m")],
                [format!("people {apart} m"), format!(" at {apart} m")],
                [format!("needs {needs} m"), format!("rope {needs} of 60 m")],
            ] {
                let told = ways.iter().any(|way| said.contains(way));
                assert!(told, "{ways:?} should be in {said}");
            }
            assert!(said.contains("up "), "{said}");
            let knots = setup.knots.count;
            assert!(knots > 0 || said.contains("no knots"), "{said}");
        }
    }
}

/// The gravest legs gave no reason at all, because their figures left no room for it.
#[test]
fn the_gravest_leg_says_why() {
    let steep = Trip::straight(&[SNOW]).ropes(&[60.0]).falling(0.9).plan();
    let said = leg(roped(&steep), &steep.zones, Voice::default());
    assert!(
        said.contains("STOP") && said.contains("\n! too steep without anchors"),
        "{said}"
    );
}

/// Trips on which legs stop or are outside for every sort of reason, some with so many figures that they fill a message.
fn grave_trips() -> impl Iterator<Item = Trip> {
    const LONG: &str = r#""name":"The long name of the upper icefall""#;
    let zones = [
        format!(r#"{{"gap_m":14.5,"snow_depth_m":0.8,"strike_deg":50,{LONG}}}"#),
        format!(r#"{{"gap_m":40,{LONG}}}"#),
        format!(r#"{{"gap_m":9,"surface":"bare","rope":"always",{LONG}}}"#),
        format!(r#"{{"gap_m":9,"snow_depth_m":0.8,"rope":"never",{LONG}}}"#),
    ];
    let ropes = [33.3, 60.0].into_iter();
    ropes.flat_map(move |rope_m| {
        let zones = zones.clone().into_iter();
        zones.flat_map(move |zone| {
            [2, 3, 6, 7].into_iter().flat_map(move |people| {
                let bare = Trip::straight(&[&zone]).people(people);
                let teams = bare.party.rope_teams().len();
                let trip = bare.ropes(&[rope_m, 31.7][..teams.min(2)]);
                [0.3, 0.9].map(|share| trip.clone().falling(share))
            })
        })
    })
}

/// Where 160 characters were full a leg said STOP and not why.
#[test]
fn every_leg_that_stops_or_is_outside_says_why_and_keeps_its_figures() {
    let mut told = 0;
    for trip in grave_trips() {
        let plan = trip.plan();
        let grave = |leg: &&Leg| leg.verdict >= Verdict::Outside;
        for leg_of in plan.legs.iter().filter(grave) {
            for units in [Units::Metric, Units::Imperial] {
                let voice = Voice {
                    units,
                    ..Voice::default()
                };
                says_why(leg_of, &leg(leg_of, &plan.zones, voice), voice);
                told += 1;
            }
        }
    }
    assert!(told > 50, "{told} legs");
}

#[track_caller]
fn says_why(leg: &Leg, said: &str, voice: Voice) {
    assert!(said.is_ascii() && said.len() <= MOST, "{said}");
    let gravest = leg.findings.iter().min_by_key(|f| f.level()).unwrap();
    let reasons = [brief(gravest, voice), briefest(gravest, voice)].map(|said| said.to_string());
    let why = said.lines().find_map(|line| line.strip_prefix("! "));
    let why = why.unwrap_or_default();
    let named = reasons.iter().any(|reason| why.contains(reason.as_str()));
    assert!(named, "one of {reasons:?} should be in\n{said}");
    if said.contains("each its own set-up") {
        return;
    }
    for setup in &leg.teams {
        let needed = [setup.spacing_m, setup.ledger.total_m];
        let needed = needed.map(|m| voice.units.number(m, Round::Up));
        let rope_m = setup.rope.as_ref().map(|rope| rope.length_m);
        let there = [Some(setup.coil_carried_m).filter(|m| *m > 0.0), rope_m];
        let there = there.into_iter().flatten();
        let there = there.map(|m| voice.units.number(m, Round::Down));
        for figure in needed.into_iter().chain(there) {
            assert!(said.contains(&figure), "{figure} should be in\n{said}");
        }
    }
}

/// The leg that wanted most looking at said "look" and not at what, and two teams lost their figures with room to spare.
#[test]
fn what_wants_a_look_says_at_what_and_two_teams_keep_their_figures() {
    let mut told = 0;
    for people in [2, 3, 4, 6, 7] {
        let trip = over_the_pass(people);
        let legs = trip.plan.legs.iter();
        for leg_of in legs.filter(|leg| leg.verdict >= Verdict::Look) {
            let said = leg(leg_of, &trip.plan.zones, Voice::default());
            assert!(said.contains("\n! "), "{said}");
            assert!(!said.contains("each its own set-up"), "{said}");
            told += 1;
        }
    }
    assert!(told > 4, "{told} legs");
}

/// Half a coordinate is another place.
#[test]
fn a_place_says_which_half_of_the_earth_it_is_on() {
    let mut south = roped(&Trip::straight(&[SNOW]).ropes(&[60.0]).plan()).clone();
    south.start = [-2.0, -66.5044];
    let said = leg(&south, &[], Voice::default());
    assert!(said.contains("66.50440S 2.00000W"), "{said}");
}

#[test]
fn teams_with_one_set_up_are_told_once() {
    let trip = over_the_pass(6);
    let roped = roped(&trip.plan);
    assert_eq!(roped.teams.len(), 2);
    let said = leg(roped, &trip.plan.zones, Voice::default());
    assert!(said.contains("teams 1, 2: 3 people "), "{said}");
}

#[test]
fn many_different_teams_are_counted_with_their_longest_rope() {
    // Twenty are five teams; each has a rope of its own length, so no two are told together.
    let ropes = [60.0, 61.0, 62.0, 63.0, 64.0];
    let plan = Trip::straight(&[SNOW]).people(20).ropes(&ropes).plan();
    let told = leg(roped(&plan), &plan.zones, Voice::default());
    let needed = setups(&plan).map(|t| t.ledger.total_m).fold(0.0, f64::max);
    let rope = Units::Metric.length(needed, Round::Up);
    let want = format!("5 teams, each its own set-up: see the report. Rope up to {rope}");
    assert!(told.contains(&want), "{want} should be in {told}");
}

#[test]
fn a_long_name_does_not_make_a_long_message() {
    let name = "Überschreitung ".repeat(40);
    let trip = Trip::over_the_pass_of(name.trim(), &name, "").planned();
    let said = trip.written("text");
    let head = said.lines().next().unwrap();
    assert!(
        head.chars().count() <= MOST && head.starts_with("Überschreitung"),
        "{head}"
    );
    assert!(
        head.contains("…: 4.81 km, 7 legs; stop on leg 6; look at leg 4"),
        "{head}"
    );
}

#[test]
fn a_zone_that_the_leader_will_not_rope_is_told_as_such() {
    let never = r#"{"gap_m":40,"snow_depth_m":0.8,"rope":"never"}"#;
    let trip = Trip::straight(&[never]).ropes(&[60.0]).planned();
    let odd = |l: &&Leg| !l.roped && l.verdict != Verdict::Unroped;
    let unroped = trip.plan.legs.iter().find(odd).unwrap();
    let said = leg(unroped, &trip.plan.zones, Voice::default());
    assert!(said.contains("unroped, "), "{said}");
    assert!(said.contains("STOP"), "{said}");
}
