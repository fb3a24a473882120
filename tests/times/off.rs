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
fn who_stands_on_ice_is_told_where_they_are_off_it_and_who_does_not_stays_off() {
    let at = |km: &str| {
        let hours = format!("start = \"09:00\"\nstart_at_km = {km}\nbridges_until = \"09:01\"");
        hints(&two(3, &hours))
    };
    let never = |what: &str| format!("{what}: no turn from here is off all of them in time");
    let stay = || never("stay off that ice");
    // Before the first ice, and between both.
    assert_eq!(at("0.5"), [stay(), stay()]);
    assert_eq!(at("1.5"), [stay()]);
    // 10 m before its end, which is in time, and the second one is not.
    let on = never("go on to 1.10 km, off the bridges at 09:00, and wait there (more lie beyond)");
    assert_eq!(at("1.09"), [on]);
    // On the second one, the first behind: the sooner way where neither is in time.
    let back =
        never("go back to 2.40 km, off the bridges at 09:02, and wait there (more lie beyond)");
    assert_eq!(at("2.5"), [back]);
    assert_eq!(
        at("2.7"),
        [never("go on to 2.81 km, off the bridges at 09:02")]
    );
}

/// Out and back: firm ground that is reached in time on the far side is where to wait, else the sooner side.
#[test]
fn who_is_late_out_and_back_leaves_the_ice_where_it_is_sooner() {
    let told = |km: &str, halt: &str| {
        let trip = Trip::along(&[(0.0, -900.0), (0.0, 900.0), (0.0, -900.0)]);
        let trip = trip.heights(|_, _| 2500.0).middle(SNOW);
        let hours =
            format!("start = \"09:00\"\nstart_at_km = {km}\nbridges_until = \"09:01\"{halt}");
        let told = hints(&trip.rules(&hours).plan());
        assert!(
            told.windows(2).all(|pair| pair[0] == pair[1]),
            "one order: {told:?}"
        );
        told.into_iter().next().expect("it comes back late")
    };
    let wait = "and wait there (more lie beyond)";
    assert!(told("1.08", "").starts_with(&format!(
        "go on to 1.10 km, off the bridges at 09:00, {wait}"
    )));
    assert!(told("0.85", "").starts_with("go back to 0.69 km, off the bridges at 09:02:"));
    assert!(told("1.0", "").starts_with(&format!(
        "go on to 1.10 km, off the bridges at 09:02, {wait}"
    )));
    // Nobody rests on the way off.
    let halt = "\n[[halt]]\nat_km = 1.05\nminutes = 60";
    assert_eq!(told("1.0", halt), told("1.0", ""));
}

/// Nobody is sent over what stops, unless they stand on it: there both ways lead over it.
#[test]
fn nobody_goes_on_over_what_is_barred() {
    let told = |km: &str, gap_m: f64| {
        let wide = format!(r#"{{"gap_m":{gap_m},"snow_depth_m":2,"rope":"never"}}"#);
        let never = if gap_m > 0.0 { wide } else { SNOW.to_owned() };
        let trip = Trip::along(&NORTHWARD).heights(|_, _| 2500.0);
        let trip = trip.zone((-300.0, -200.0), (300.0, 150.0), SNOW);
        let trip = trip.zone((-300.0, 150.0), (300.0, 400.0), &never);
        let hours = format!("start = \"09:00\"\nstart_at_km = {km}\nbridges_until = \"09:00\"");
        hints(&trip.rules(&hours).plan()).remove(0)
    };
    for (km, gap_m, want) in [
        ("1.2", 0.0, "go on to 1.3"),
        ("1.0", 4.0, "go back to 0.69 km"),
        ("1.29", 4.0, "go on to 1.3"),
    ] {
        assert!(
            told(km, gap_m).starts_with(want),
            "{km}: {}",
            told(km, gap_m)
        );
    }
}

/// Where the line begins on the ice that is no way off it, but who is near goes back there.
#[test]
fn a_line_that_begins_on_the_ice_is_followed_back_only_where_that_is_sooner() {
    let told = |km: &str| {
        let trip = Trip::along(&NORTHWARD).heights(|_, _| 2500.0);
        let trip = trip.zone((-300.0, -1200.0), (300.0, 300.0), SNOW);
        let hours = format!("start = \"09:00\"\nstart_at_km = {km}\nbridges_until = \"09:01\"");
        hints(&trip.rules(&hours).plan()).remove(0)
    };
    assert!(
        told("0.2").starts_with("go back to where the line begins, there at 09:0"),
        "{}",
        told("0.2")
    );
    assert!(told("1.0").starts_with("go on to 1.2"), "{}", told("1.0"));
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
            TurnInTime::Unbelayed => "turn round now if the way back needs no belays",
            TurnInTime::No => "stay off that ice: no turn from here is off all",
        };
        assert!(hint.starts_with(says), "{hint}");
        let lines = clock::lines(&plan, Voice::default());
        let never = lines.iter().map(ToString::to_string);
        let never: Vec<String> = never.filter(|line| line.starts_with("no turn")).collect();
        assert_eq!(never.is_empty(), *turn == TurnInTime::Yes, "{lines:?}");
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
        said.contains("; the line begins on them: what lies before it is not counted"),
        "{said}"
    );
}

/// Three over gaps under which two of them stand at once: each belayed across.
fn wide(line: &[(f64, f64)], hours: &str) -> Plan {
    let zone = r#"{"gap_m":15,"snow_depth_m":2}"#;
    let trip = Trip::along(line).heights(|_, _| 2500.0).middle(zone);
    let trip = trip.zone((-300.0, 1505.0), (300.0, 1905.0), zone);
    let plan = trip.ropes(&[70.0]).rules(hours).plan();
    assert!(plan.legs.iter().any(|leg| leg.belays.is_some()), "belayed");
    plan
}

/// Who turns by the hour that is told, at the place that is told, is off the bridges in time by a plan of that way out and back, belays
/// counted there one by one.
#[test]
fn a_turn_over_belays_holds_by_a_plan_of_the_way_back() {
    let mut held = 0;
    for min in (30..300).step_by(15) {
        let until = format!("{:02}:{:02}", 9 + min / 60, min % 60);
        let hours = format!("start = \"09:00\"\nbridges_until = \"{until}\"");
        let plan = wide(&[(0.0, -900.0), (0.0, 6100.0)], &hours);
        let clock = &plan.clock.as_ref().expect("hours").first;
        // At the edge of the ice, which is at 700 m, nobody crosses it.
        let turn = clock.as_planned.turn_round;
        let Some(turn) = turn.filter(|turn| turn.at_m > 700.5) else {
            continue;
        };
        let lines = clock::lines(&plan, Voice::default());
        let mut lines = lines.iter().map(ToString::to_string);
        let caveat = "; the last leads back, belays as on the way out";
        assert!(lines.any(|line| line.contains(caveat)), "{turn:?}");
        let line = [(0.0, -900.0), (0.0, turn.at_m - 900.0), (0.0, -900.0)];
        let at = format!(
            "start = \"{}\"\nstart_at_km = {}",
            turn.by,
            turn.at_m / 1000.0
        );
        let back = wide(&line, &format!("{at}\nbridges_until = \"{until}\""));
        let left = back.clock.expect("hours").first.as_planned.bridges_left;
        let left = left.expect("on the way back").to_string();
        assert!(left <= until, "{until}: {turn:?}, off at {left}");
        held += 1;
    }
    assert!(held > 5, "{held}");
}

/// One belay of twelve minutes after sunset is dark, and one by daylight before a halt into the night is not.
#[test]
fn belays_are_dark_where_they_are_made() {
    let dark = |metres: f64, start: &str, halt: bool| {
        let trip = Trip::along(&NORTHWARD).heights(|_, _| 2500.0);
        let trip = trip.zone((-300.0, -190.0), (300.0, metres - 190.0), SNOW);
        let day = "snow = \"refrozen\"\ndate = \"2027-03-20\"\nutc_offset = \"+00:00\"";
        let halts = if halt {
            "\n[[halt]]\nat_km = 0.909\nminutes = 120"
        } else {
            ""
        };
        let trip = trip
            .party(&[80.0; 2])
            .rules(&format!("{day}\nstart = \"{start}\"{halts}"));
        let plan = trip.plan();
        assert!(plan.legs[1].belays.is_some(), "belayed");
        plan.clock.expect("a day").first.dark_belays
    };
    assert_eq!(dark(2.0, "20:00", false), [2]);
    assert_eq!(dark(200.0, "14:30", true), [0; 0]);
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
    // In the night after the next day, and with the start as planned nothing of it is told here.
    let after = two(3, &format!("{day}\nbridges_until = \"23:00 +1\""));
    assert_eq!(
        after.clock.as_ref().expect("hours").first.dark_if_latest,
        [2, 4]
    );
    let start = light.as_planned.latest_start.expect("there is one");
    let same = day.replace("09:00", &start.to_string());
    let same = two(3, &format!("{same}\nbridges_until = \"12:00\""));
    assert_eq!(
        same.clock.as_ref().expect("hours").first.dark_if_latest,
        Vec::<usize>::new()
    );
}
