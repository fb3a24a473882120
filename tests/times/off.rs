//! What is told to who is under way and late: where to go off the ice, and whether the way back is reckoned with belays.

use schrund::{
    plan::{Plan, fact::Fact, finding::Finding, in_time::TurnInTime, place::RouteEnd},
    say::{finding, voice::Voice},
    write::parts::clock,
};

use crate::fixture::{
    planned::findings,
    trip::{NORTHWARD, SNOW, Trip},
};

/// Hidden gaps from 700 to 1100 m, and from 2405 to 2805 m of a line of 7 km on the level.
fn two(people: usize, hours: &str) -> Plan {
    let trip = Trip::along(&[(0.0, -900.0), (0.0, 6100.0)]);
    let trip = trip.heights(|_, _| 2500.0).middle(SNOW);
    let trip = trip.zone((-300.0, 1505.0), (300.0, 1905.0), SNOW);
    trip.party(&vec![80.0; people]).rules(hours).plan()
}

/// What is found of late bridges, and what to do about it.
fn late(plan: &Plan) -> Vec<(TurnInTime, String)> {
    let turns = |found: &Finding| match found.fact()? {
        Fact::BridgesLate { turns, .. } => Some(*turns),
        _ => None,
    };
    let told = findings(plan).filter_map(|found| {
        let hint = finding::hint(found, Voice::default())?;
        Some((turns(found)?, hint.to_string()))
    });
    told.collect()
}

fn hints(plan: &Plan) -> Vec<String> {
    late(plan).into_iter().map(|(_, hint)| hint).collect()
}

#[test]
fn who_stands_on_ice_is_told_the_shorter_way_off_it_and_who_does_not_stays_off() {
    let at = |km: &str| {
        let hours = format!("start = \"09:00\"\nstart_at_km = {km}\nbridges_until = \"09:01\"");
        hints(&two(3, &hours))
    };
    let never = |what: &str| format!("no turn from here is off them in time either: {what}");
    assert_eq!(at("1.5"), [never("stay off that ice")]);
    assert_eq!(
        at("2.5"),
        [never("go back to 2.40 km, the shorter way off that ice")]
    );
    assert_eq!(
        at("2.7"),
        [never("go on to 2.81 km, the shorter way off that ice")]
    );
    // On the first ice, the second one ahead.
    assert_eq!(
        at("0.8"),
        [
            never("go back to 0.69 km, the shorter way off that ice"),
            never("stay off that ice")
        ]
    );
}

/// A line that begins on the ice is not left where it begins.
#[test]
fn nobody_is_sent_to_an_end_of_the_line_that_lies_on_the_ice() {
    let trip = Trip::along(&NORTHWARD).heights(|_, _| 2500.0);
    let trip = trip.zone((-300.0, -1200.0), (300.0, 300.0), SNOW);
    let hours = "start = \"09:00\"\nstart_at_km = 0.2\nbridges_until = \"09:01\"";
    let told = hints(&trip.rules(hours).plan());
    assert!(
        told[0].contains("go on to 1.20 km"),
        "1000 m off, not 200 m: {told:?}"
    );
}

/// A pair is belayed over hidden gaps. Behind both, what is in time with belays on the way back is without, and for so many minutes
/// more only without.
#[test]
fn a_turn_that_only_belays_make_late_is_told_so() {
    let turns = |min: usize| {
        let until = format!("{:02}:{:02}", 9 + min / 60, min % 60);
        let hours = format!(
            "snow = \"refrozen\"\nstart = \"09:00\"\nstart_at_km = 1.5\nbridges_until = \"{until}\""
        );
        let plan = two(2, &hours);
        (late(&plan), plan)
    };
    let mut seen: Vec<TurnInTime> = Vec::new();
    for min in (0..300).step_by(5) {
        let (told, plan) = turns(min);
        let Some((turn, hint)) = told.first() else {
            continue;
        };
        let says = match turn {
            TurnInTime::Yes => "turn round in time",
            TurnInTime::Unbelayed => "turn round if the way back needs no belays",
            TurnInTime::No => "no turn from here",
        };
        assert!(hint.starts_with(says), "{hint}");
        let lines = clock::lines(&plan, Voice::default());
        let never = lines.iter().map(ToString::to_string);
        let never: Vec<String> = never.filter(|line| line.starts_with("no turn")).collect();
        let belayed = ", as long as the way back takes as many belays as the way out";
        for line in &never {
            assert_eq!(
                line.ends_with(belayed),
                *turn == TurnInTime::Unbelayed,
                "{line}"
            );
        }
        seen.push(*turn);
    }
    let count = |turn: TurnInTime| seen.iter().filter(|seen| **seen == turn).count();
    assert!(
        count(TurnInTime::No) > 0 && count(TurnInTime::Yes) > 0,
        "{seen:?}"
    );
    assert!(count(TurnInTime::Unbelayed) > 3, "{seen:?}");
    let order = seen.windows(2).all(|pair| match pair {
        [a, b] => *a as u8 >= *b as u8,
        _ => true,
    });
    assert!(order, "later hours are no worse: {seen:?}");
}

#[test]
fn hours_of_a_line_that_ends_on_hidden_gaps_are_no_hours_off_them() {
    let told = |south: f64, north: f64| {
        let trip = Trip::along(&NORTHWARD).heights(|_, _| 2500.0);
        let trip = trip.zone((-300.0, south), (300.0, north), SNOW);
        let hours = "start = \"06:00\"\nbridges_until = \"06:30\"";
        let plan = trip.rules(hours).plan();
        let ends = plan
            .clock
            .as_ref()
            .expect("hours")
            .first
            .ends_on_hidden
            .clone();
        let lines = clock::lines(&plan, Voice::default());
        let lines: Vec<String> = lines.iter().map(ToString::to_string).collect();
        (ends, lines.join("\n"))
    };
    let (ends, said) = told(-200.0, 200.0);
    assert_eq!(ends, []);
    assert!(
        !said.contains("the line ends") && !said.contains("the line begins"),
        "{said}"
    );
    let (ends, said) = told(-200.0, 1200.0);
    assert_eq!(ends, [RouteEnd::End]);
    assert!(
        said.contains("; the line ends on them: what comes after is not counted"),
        "{said}"
    );
    let (ends, said) = told(-1200.0, 200.0);
    assert_eq!(ends, [RouteEnd::Begin]);
    assert!(
        said.contains("; the line begins on them, so the way back"),
        "{said}"
    );
}

/// On the day of the equinox: roped from 11 min after the start on, the sun sets about six.
#[test]
fn a_later_start_that_leads_into_the_dark_is_told() {
    let day = "date = \"2027-03-20\"\nutc_offset = \"+00:00\"\nstart = \"09:00\"";
    let plan = two(3, &format!("{day}\nbridges_until = \"23:00\""));
    let clock = plan.clock.as_ref().expect("hours").first.clone();
    assert!(clock.late_for_all_min().is_none(), "early enough");
    assert_eq!(clock.dark_if_latest, [2, 4], "{clock:?}");
    let said = clock::lines(&plan, Voice::default())[0].to_string();
    assert!(said.contains("; then dark: legs 2, 4"), "{said}");
    let light = two(3, &format!("{day}\nbridges_until = \"12:00\""));
    let light = light.clock.as_ref().expect("hours").first.clone();
    assert_eq!(light.dark_if_latest, Vec::<usize>::new());
}
