//! The page that a leader sees first: nothing graver than a note is left out, and the places of the rope stand in its rows.

use schrund::{
    fault::Level,
    say::{finding::short, voice::Voice},
    write::{page::panel, parts::change::changes},
};
use unicode_width::UnicodeWidthStr;

use crate::fixture::{
    planned::{Planned, findings},
    trip::Trip,
};

const ZONES: [&str; 3] = [
    "{\"gap_m\":4,\"snow_depth_m\":2}",
    "{\"gap_m\":17,\"snow_depth_m\":0.6}",
    "{\"gap_m\":3,\"rope\":\"never\"}",
];

/// Trips with a stop, ropes too short, pairs, several teams.
fn trips() -> Vec<Planned> {
    let trip = |people, rope_m| {
        Trip::straight(&ZONES)
            .party(&vec![80.0; people])
            .ropes(&[rope_m])
            .rules("start = \"06:00\"\nbridges_until = \"06:30\"")
            .planned()
    };
    let with_none = Trip::straight(&ZONES).people(7).planned();
    vec![trip(2, 50.0), trip(3, 60.0), trip(4, 40.0), with_none]
}

fn page(planned: &mut Planned, width: usize) -> String {
    planned.look.detail = false;
    planned.look.width = width;
    planned.written("table")
}

fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn whatever_is_graver_than_a_note_is_told_at_every_width() {
    for mut planned in trips() {
        for width in [40, 80, 100, 120] {
            let text = page(&mut planned, width);
            let grave = findings(&planned.plan).filter(|f| f.level() < Level::Note);
            for finding in grave {
                let told = short(finding, Voice::default()).to_string();
                assert!(flowing(&text).contains(&told), "no \"{told}\" in\n{text}");
            }
            for line in text.lines() {
                assert!(line.width() <= width, "{} wide: {line}", line.width());
            }
        }
    }
}

#[test]
fn what_stops_stands_before_all_legs() {
    for mut planned in trips() {
        let text = page(&mut planned, 100);
        let stop = text.find("■ Stop: leg ").expect("the leader's word");
        let look = text.find("\n? Look at this").expect("something to look at");
        let legs = text.find("\nleg").expect("the legs");
        assert!(stop < look && look < legs, "{text}");
        if let Some(outside) = text.find("\n✕ Outside: ") {
            assert!(stop < outside && outside < look, "{text}");
        }
    }
}

/// Letter, clock, kilometre, and the grid whose zone stands above all of them.
#[test]
fn each_change_of_the_rope_is_the_beginning_of_a_row() {
    for mut planned in trips() {
        let text = page(&mut planned, 100);
        let sheet = planned.sheet();
        let changes = changes(&sheet);
        assert!(changes.len() > 3, "{changes:?}");
        for change in changes {
            let utm = change.utm.as_deref().expect("far from the poles");
            let (zone, place) = utm.split_once(' ').expect("a zone");
            let row = text.lines().find(|line| line.contains(place)).expect(place);
            let cells: Vec<&str> = row.split_whitespace().collect();
            assert!(cells.contains(&change.letter().as_str()), "{row}");
            if let Some(clock) = change.clock {
                assert!(cells.contains(&clock.to_string().as_str()), "{row}");
            }
            assert!(text.contains(&format!("grid {zone}")), "{text}");
        }
    }
}

/// Of many legs that say something else the first are told and the others named, so that a long day stays short.
#[test]
fn many_legs_of_one_kind_are_named_together() {
    let zones: Vec<String> = (0..12)
        .map(|i| {
            format!(
                "{{\"gap_m\":{},\"snow_depth_m\":2,\"surface\":\"bare\"}}",
                3 + i
            )
        })
        .collect();
    let zones: Vec<&str> = zones.iter().map(String::as_str).collect();
    let mut planned = Trip::straight(&zones).people(3).ropes(&[60.0]).planned();
    let text = page(&mut planned, 100);
    let bare = text.matches("is called bare").count();
    assert!((1..=3).contains(&bare), "{bare} lines in\n{text}");
    assert!(
        flowing(&text).contains("here too: bare or under snow?"),
        "{text}"
    );
}

#[test]
fn a_spacing_says_why_it_is_what_it_is() {
    let why = |people: usize, zone: &str, rules: &str| {
        let trip = Trip::straight(&[zone]).party(&vec![80.0; people]);
        page(&mut trip.ropes(&[80.0]).rules(rules).planned(), 100)
    };
    for (people, zone, rules, words) in [
        (3, "{\"gap_m\":4,\"snow_depth_m\":2}", "", "13 habit"),
        (3, "{\"gap_m\":4,\"surface\":\"bare\"}", "", " least"),
        (3, "{\"gap_m\":20,\"snow_depth_m\":2}", "", "18 gap"),
        (2, "{\"gap_m\":4,\"snow_depth_m\":2}", "", "15 knots"),
        (2, "{\"gap_m\":40,\"snow_depth_m\":2}", "", "30 cap"),
    ] {
        let text = why(people, zone, rules);
        assert!(text.contains(words), "no \"{words}\" in\n{text}");
    }
}

/// Roped over hidden gaps in snow that the leader calls soft, and roped on bare ice beside it.
#[test]
fn a_page_knows_on_which_legs_bridges_are_weak() {
    let bare = "{\"gap_m\":1,\"surface\":\"bare\"}";
    let weak = |snow: &str| -> Vec<bool> {
        let trip = Trip::straight(&[ZONES[0], bare]).ropes(&[60.0]);
        let planned = trip.rules(&format!("snow = \"{snow}\"")).planned();
        let json = panel::planned(&planned.sheet(), &[], &[]).expect("JSON");
        let page: serde_json::Value = serde_json::from_str(&json).expect("JSON");
        let legs = page["legs"].as_array().expect("legs").iter();
        let roped = legs.filter(|leg| leg["roped"] == true);
        roped.map(|leg| leg["weak_bridges"] == true).collect()
    };
    assert_eq!(weak("soft"), [true, false]);
    assert_eq!(weak("settled"), [false, false]);
}
