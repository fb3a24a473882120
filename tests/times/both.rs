//! Two hours for one day: until when bridges are trusted, and by when to be back.

use schrund::{
    plan::{
        Plan,
        fact::Fact,
        finding::Finding,
        in_time::{StartBy, TripHour},
    },
    say::{finding, voice::Voice},
    write::parts::clock,
};

use crate::fixture::{
    planned::findings,
    trip::{NORTHWARD, SNOW, Trip},
};

/// 1800 m on the level, gaps under snow from 700 to 1100 m: the last one is left after 32.875 min, all is done after 49.25 min
/// (worked by hand in `backwards.rs`).
fn planned(hours: &str) -> Plan {
    let trip = Trip::along(&NORTHWARD).heights(|_, _| 2500.0);
    trip.middle(SNOW).rules(hours).plan()
}

fn first(plan: &Plan) -> String {
    clock::lines(plan, Voice::default())[0].to_string()
}

/// What is told to do about being back late.
fn back_late(plan: &Plan) -> (StartBy, String) {
    let mut found = findings(plan);
    let late = found.find_map(|found| match found.fact()? {
        Fact::BackLate { start_by, .. } => {
            Some((*start_by, finding::hint(found, Voice::default())))
        }
        _ => None,
    });
    let (start_by, hint) = late.expect("it is late");
    (start_by, hint.expect("something can be done").to_string())
}

fn latest_back(plan: &Plan) -> Option<String> {
    let clock = plan.clock.as_ref().expect("hours");
    let latest = clock.first.as_planned.latest_start_back_by;
    latest.map(|start| start.to_string())
}

/// The hour to be back asks for the earlier start, or the bridges do: what is told behind each finding does for both.
#[test]
fn the_start_that_is_told_does_for_both_hours() {
    let plan = planned("start = \"09:30\"\nbridges_until = \"10:00\"\nback_by = \"10:00\"");
    assert_eq!(latest_back(&plan).as_deref(), Some("09:10"));
    assert_eq!(
        first(&plan),
        "start by 09:10, not 09:30 (20 min too late), to be done by 10:00; a slower party 08:54; for the bridges by 09:27, off all by 10:00"
    );
    let early = planned("start = \"09:00\"\nbridges_until = \"10:00\"\nback_by = \"10:00\"");
    assert_eq!(
        first(&early),
        "latest start 09:10, done by 10:00; a slower party 08:54; for the bridges by 09:27, off all by 10:00"
    );
    assert!(back_late(&plan).1.contains("start by 09:10"));
    let plan = planned("start = \"09:30\"\nbridges_until = \"09:20\"\nback_by = \"10:00\"");
    assert_eq!(latest_back(&plan).as_deref(), Some("09:10"));
    let (start_by, hint) = back_late(&plan);
    assert!(
        matches!(start_by, StartBy::At(start) if start.to_string() == "08:47"),
        "{hint}"
    );
    // Two starts on one page would be one too many.
    let under_way = planned("start = \"09:30\"\nstart_at_km = 0.1\nback_by = \"10:00\"");
    assert_eq!(latest_back(&under_way), None);
}

/// No start of the day does for bridges that are trusted until a quarter past midnight, so none is told for the hour to be back.
#[test]
fn no_start_is_told_that_is_too_late_for_the_bridges() {
    let plan = planned("start = \"04:00\"\nbridges_until = \"00:15\"\nback_by = \"04:30\"");
    let (start_by, hint) = back_late(&plan);
    assert_eq!(start_by, StartBy::NoneOfTheDay);
    assert!(
        hint.starts_with("no start of the day is early enough"),
        "{hint}"
    );
    let plan = planned("start = \"00:10\"\nbridges_until = \"09:00\"\nback_by = \"00:30\"");
    assert_eq!(
        first(&plan),
        "latest start 08:27, off all bridges by 09:00; a slower party 08:16; with no start of the day done by 00:30"
    );
    assert_eq!(
        back_late(&plan).0,
        StartBy::NoneOfTheDay,
        "not on the day before"
    );
}

/// What is dark is that with the start told last before it.
#[test]
fn the_dark_is_that_of_the_start_for_both_hours() {
    let dark = |back_by: &str| {
        let day = "date = \"2027-03-20\"\nutc_offset = \"+00:00\"\nstart = \"09:00\"\nbridges_until = \"07:00\"";
        let plan = planned(&format!("{day}\n{back_by}"));
        let dark = plan
            .clock
            .as_ref()
            .expect("hours")
            .first
            .dark_if_latest
            .clone();
        (dark, first(&plan))
    };
    let (light, said) = dark("");
    assert_eq!(light, Vec::<usize>::new(), "{said}");
    let day =
        "date = \"2027-03-20\"\nutc_offset = \"+00:00\"\nstart = \"09:00\"\nback_by = \"05:30\"";
    let alone = planned(day);
    assert_eq!(
        first(&alone),
        "start by 04:40, not 09:00 (4 h 20 too late), to be done by 05:30; then dark: leg 2; a slower party 04:24"
    );
    let (dark, said) = dark("back_by = \"05:30\"");
    assert_eq!(dark, [2], "{said}");
    assert!(
        said.contains(
            "to be done by 05:30; then dark: leg 2; a slower party 04:24; for the bridges by"
        ),
        "{said}"
    );
}

/// An hour to be back that lies before the start is no hour of a turn: the one told is that for the bridges.
#[test]
fn a_turn_is_told_for_the_hour_that_it_is_for() {
    let turn = |hours: &str| {
        let plan = planned(hours);
        let clock = plan.clock.as_ref().expect("hours").first.clone();
        let lines = clock::lines(&plan, Voice::default());
        let turns = lines.iter().map(ToString::to_string);
        let turns: Vec<String> = turns.filter(|line| line.contains("turn")).collect();
        (
            clock.as_planned.turn_round.map(|turn| turn.hour),
            turns.join("\n"),
        )
    };
    let (hour, said) = turn("start = \"09:00\"\nbridges_until = \"09:30\"\nback_by = \"08:00\"");
    assert_eq!(hour, Some(TripHour::BridgesUntil), "{said}");
    assert!(
        said.contains("off all snow bridges by 09:30") && !said.contains("08:00"),
        "{said}"
    );
    let (hour, said) = turn("start = \"09:00\"\nback_by = \"09:40\"");
    assert_eq!(hour, Some(TripHour::BackBy), "{said}");
}

/// Hidden gaps from 700 to 1100 m, from 2400 to 2800 m and from 6000 to 6400 m of a line of 7 km on the level.
fn three(hours: &str) -> Plan {
    let line = [(0.0, -900.0), (0.0, 6100.0)];
    let mut trip = Trip::along(&line).heights(|_, _| 2500.0).middle(SNOW);
    for south_m in [1500.0, 5100.0] {
        trip = trip.zone((-300.0, south_m), (300.0, south_m + 400.0), SNOW);
    }
    trip.rules(hours).plan()
}

/// What is told to do about being late on bridges and back.
fn hints(plan: &Plan) -> Vec<String> {
    let late = |found: &&Finding| {
        matches!(
            found.fact(),
            Some(Fact::BridgesLate { .. } | Fact::BackLate { .. })
        )
    };
    let hints = findings(plan).filter(late);
    let hints = hints.filter_map(|found| finding::hint(found, Voice::default()));
    hints.map(|hint| hint.to_string()).collect()
}

/// Who is past the last turn that is off the bridges in time is not sent back over them: neither for the bridges nor to be back.
#[test]
fn nobody_is_sent_back_over_bridges_that_are_trusted_no_more() {
    // Behind the first bridges, which are trusted for five more minutes, with time to be back.
    let told = hints(&three(
        "start = \"08:55\"\nstart_at_km = 1.3\nbridges_until = \"09:00\"\nback_by = \"09:45\"",
    ));
    assert_eq!(told.len(), 3, "{told:?}");
    for hint in &told {
        let stays = ["stay off that ice", "stay where it is safe"];
        assert!(stays.iter().any(|stay| hint.contains(stay)), "{told:?}");
        assert!(!hint.contains("turn round in time"), "{told:?}");
    }
    // Who has crossed none turns where they are, be it too late to be back.
    for back_by in ["09:45", "08:50"] {
        let told = hints(&three(&format!(
            "start = \"08:55\"\nstart_at_km = 0.3\nbridges_until = \"09:00\"\nback_by = \"{back_by}\""
        )));
        assert_eq!(told.len(), 4, "{told:?}");
        let (back, bridges) = told.split_last().expect("some");
        assert_eq!(back, "turn round in time");
        assert!(
            bridges
                .iter()
                .all(|hint| hint.starts_with("stay off that ice")),
            "{told:?}"
        );
    }
}

/// Who stands among hidden gaps is sent back where turning there is off them in time, though the leg begins behind.
#[test]
fn who_stands_on_bridges_can_turn_there() {
    let plan = |until: &str| {
        three(&format!(
            "start = \"09:00\"\nstart_at_km = 2.5\nbridges_until = \"{until}\""
        ))
    };
    // By what the plan itself says of the place.
    let legs = plan("09:20").legs;
    let mut places = legs.iter().flat_map(|leg| &leg.walk);
    let here = places.find(|place| (place.at_m - 2500.0).abs() < 1e-6);
    let off = here.and_then(|place| place.back_off_bridges);
    let off = off.expect("it is beyond the first");
    for (spare_min, turns) in [(2.0, true), (-2.0, false)] {
        let told = hints(&plan(&off.after(spare_min).to_string()));
        assert_eq!(told.len(), 1, "{told:?}");
        assert_eq!(told[0] == "turn round in time", turns, "{off:?}: {told:?}");
    }
}

/// So many minutes after ten.
fn clock_of(min: usize) -> String {
    format!("{}:{:02}", 10 + min / 60, min % 60)
}

/// The ground is firm where a leg begins off all ice with hidden gaps, and is called so only where the turn was moved there.
#[test]
fn firm_ground_is_off_all_ice_with_hidden_gaps() {
    let turn = |until: &str| {
        let plan = three(&format!("start = \"09:00\"\nbridges_until = \"{until}\""));
        let clock = plan.clock.as_ref().expect("hours");
        let turn = clock.first.as_planned.turn_round?;
        let beyond_m = turn.at_m - plan.legs[3].start_m;
        Some((turn.on_firm_ground, turn.leg, beyond_m))
    };
    let mut seen = [false; 2];
    for min in (0..120).step_by(2) {
        let Some((firm, leg, beyond_m)) = turn(&clock_of(min)) else {
            continue;
        };
        assert!(
            !firm || (leg == 4 && beyond_m == 0.0),
            "{min}: leg {leg}, {beyond_m}"
        );
        seen[usize::from(firm)] = true;
    }
    assert_eq!(seen, [true; 2], "of both");
    // Ice that the leader goes unroped by their word is none.
    for min in (0..120).step_by(2) {
        let line = [(0.0, -900.0), (0.0, 2100.0)];
        let trip = Trip::along(&line).heights(|_, _| 2500.0).middle(SNOW);
        let trip = trip.zone((-300.0, 900.0), (300.0, 1300.0), SNOW);
        let trip = trip.inventory((-400.0, -1000.0), (400.0, 2200.0));
        let hours = format!(
            "start = \"09:00\"\nbridges_until = \"{}\"\nundrawn_ice = \"tell\"",
            clock_of(min)
        );
        let clock = trip.rules(&hours).plan().clock.expect("hours");
        let turn = clock.first.as_planned.turn_round;
        assert!(turn.is_none_or(|turn| !turn.on_firm_ground), "{turn:?}");
    }
}
