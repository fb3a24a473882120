//! Two hours for one day: until when bridges are trusted, and by when to be back.

use schrund::{
    plan::{
        Plan,
        clock::{StartBy, TurnHour},
        fact::Fact,
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
    assert!(
        first(&plan).contains("start by 09:27, not 09:30"),
        "{}",
        first(&plan)
    );
    assert!(
        first(&plan).contains("; by 09:10 to be done by 10:00"),
        "{}",
        first(&plan)
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
    let plan = planned("start = \"00:10\"\nback_by = \"00:30\"");
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
    let (dark, said) = dark("back_by = \"05:30\"");
    assert_eq!(dark, [2], "{said}");
    assert!(
        said.contains("; by 04:40 to be done by 05:30; then dark: leg 2"),
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
    assert_eq!(hour, Some(TurnHour::BridgesUntil), "{said}");
    assert!(
        said.contains("off all snow bridges by 09:30") && !said.contains("08:00"),
        "{said}"
    );
    let (hour, said) = turn("start = \"09:00\"\nback_by = \"09:40\"");
    assert_eq!(hour, Some(TurnHour::BackBy), "{said}");
}

/// Who is past the last turn that is off the bridges in time is not sent back over them: neither for the bridges nor to be back.
#[test]
fn nobody_is_sent_back_over_bridges_that_are_trusted_no_more() {
    let two = |hours: &str| {
        let line = [(0.0, -900.0), (0.0, 2700.0)];
        let trip = Trip::along(&line).heights(|_, _| 2500.0).middle(SNOW);
        let trip = trip.zone((-300.0, 1500.0), (300.0, 1900.0), SNOW);
        let plan = trip.rules(hours).plan();
        let told = findings(&plan).filter(|found| {
            matches!(
                found.fact(),
                Some(Fact::BridgesLate { .. } | Fact::BackLate { .. })
            )
        });
        let hints = told.filter_map(|found| finding::hint(found, Voice::default()));
        hints.map(|hint| hint.to_string()).collect::<Vec<_>>()
    };
    // Behind the first bridges, which are trusted for five more minutes, with hours to be back.
    let told =
        two("start = \"08:55\"\nstart_at_km = 1.3\nbridges_until = \"09:00\"\nback_by = \"09:45\"");
    assert_eq!(told.len(), 2, "{told:?}");
    for hint in &told {
        assert!(hint.contains("stay where it is safe"), "{told:?}");
        assert!(!hint.contains("turn round in time"), "{told:?}");
    }
}
