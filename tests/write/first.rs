//! What stands first, whatever is printed: which legs stop, where the bulletin decides, what those left cannot do.

use schrund::plan::{
    Plan,
    fact::Fact,
    fall::HaulAnswer,
    finding::{At, LegPlace},
    leg::Verdict,
};

use crate::fixture::{
    planned::Planned,
    trip::{Spot, Trip},
};

/// A zone of hidden gaps that says `never`, one that is crossed with room, and one that no rope is long enough for.
fn trips() -> [Planned; 3] {
    let stops = Trip::straight(&[
        r#"{"gap_m":3,"rope":"never"}"#,
        r#"{"gap_m":4,"snow_depth_m":2}"#,
        r#"{"gap_m":24,"snow_depth_m":2}"#,
    ]);
    let quiet = Trip::straight(&[r#"{"gap_m":1,"snow_depth_m":3}"#]).people(5);
    let pair = Trip::straight(&[r#"{"gap_m":15,"snow_depth_m":2}"#]).people(2);
    [
        stops.people(3).ropes(&[50.0]).planned().first_page(),
        quiet.ropes(&[60.0]).planned().first_page(),
        pair.ropes(&[80.0]).planned().first_page(),
    ]
}

/// The legs of one word as a first line lists them.
fn listed(plan: &Plan, word: Verdict) -> Vec<String> {
    let of_word = plan.legs.iter().filter(|leg| leg.verdict == word);
    of_word.map(|leg| leg.leg.to_string()).collect()
}

#[test]
fn the_first_line_of_page_and_message_names_the_legs_that_stop() {
    let words = [
        (Verdict::Stop, "stop on leg"),
        (Verdict::Outside, "outside the limits on leg"),
        (Verdict::Look, "look at leg"),
    ];
    let mut seen = 0;
    for planned in trips() {
        for format in ["table", "text"] {
            let text = planned.written(format);
            let first = text.lines().next().expect("a line").replace("legs", "leg");
            for (word, says) in words {
                let legs = listed(&planned.plan, word);
                let told = format!("{says} {}", legs.join(", "));
                assert_eq!(first.contains(says), !legs.is_empty(), "{says}: {first}");
                assert!(legs.is_empty() || first.contains(&told), "{told}: {first}");
                seen += usize::from(!legs.is_empty());
            }
        }
    }
    assert!(
        seen >= 6,
        "{seen}: stop, outside and look, on the page and in the message"
    );
}

/// A line north down a face of so many degrees, over 400 m of ice in the middle.
fn down(deg: f64) -> Planned {
    let line: Vec<Spot> = (-60..=60).map(|i| (0.0, 20.0 * f64::from(i))).collect();
    let trip = Trip::along(&line).middle(r#"{"gap_m":3,"snow_depth_m":2}"#);
    trip.falling(deg.to_radians().tan()).planned().first_page()
}

fn avalanche(plan: &Plan) -> Vec<&LegPlace> {
    let found = plan.legs.iter().flat_map(|leg| &leg.findings);
    let steep = found.filter(|f| matches!(f.fact(), Some(Fact::AvalancheTerrain { .. })));
    let places = steep.filter_map(|f| match &f.at {
        At::Leg(place) => Some(place),
        _ => None,
    });
    places.collect()
}

/// From 30° the bulletin decides (trade: our threshold `avalanche_deg`), on the rope and off it.
#[test]
fn avalanche_ground_is_told_first_of_every_leg() {
    let steep = down(33.0);
    let legs: Vec<usize> = avalanche(&steep.plan)
        .iter()
        .map(|place| place.leg)
        .collect();
    assert_eq!(legs, [1, 2, 3], "unroped legs too");
    for format in ["table", "text", "sheet"] {
        let text = steep.written(format);
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        let told = text.contains("on legs 1, 2, 3") || text.contains("1, 2, 3");
        assert!(
            text.contains("Avalanche ground") && told,
            "{format}: {text}"
        );
        assert!(text.contains("The bulletin decides there"), "{format}");
    }
    let mild = down(27.0);
    assert!(
        avalanche(&mild.plan).is_empty(),
        "{:?}",
        avalanche(&mild.plan)
    );
    assert!(!mild.written("table").contains("Avalanche"), "not below it");
}

/// Whom those left cannot haul out is not covered, and nobody else is named there.
#[test]
fn what_those_left_cannot_haul_is_not_covered() {
    let mut seen = [0, 0];
    for planned in trips() {
        let text = planned.written("table");
        let flowing = text.split_whitespace().collect::<Vec<_>>().join(" ");
        let open = flowing
            .split("Not covered: ")
            .nth(1)
            .expect("it is always told");
        let setups = planned.plan.legs.iter().flat_map(|leg| &leg.teams);
        let tables = setups.filter_map(|setup| setup.haul.as_ref());
        let answers: Vec<&HaulAnswer> = tables.map(|table| &table.answer).collect();
        let hard = answers.iter().any(|answer| !answer.is_possible());
        assert_eq!(open.contains("a haul of "), hard, "{answers:?}: {open}");
        seen[usize::from(hard)] += 1;
    }
    assert!(seen.iter().all(|n| *n > 0), "{seen:?}: both are met");
}

/// Where each stage ends stands in a row of its own, with its hour and its height.
#[test]
fn the_page_ends_where_the_stages_end() {
    let line: Vec<Spot> = (0..=60).map(|i| (0.0, 20.0 * f64::from(i))).collect();
    let next: Vec<Spot> = (0..=40).map(|i| (20.0 * f64::from(i), 1200.0)).collect();
    let trip = Trip::along(&line)
        .then(&next)
        .middle(r#"{"gap_m":3,"snow_depth_m":2}"#);
    let trip = trip.falling(0.1).rules("start = \"06:00\"");
    let planned = trip.planned().first_page();
    let ends = planned.plan.legs.iter().filter(|leg| leg.ends_stage);
    let mut told = 0;
    for leg in ends {
        let clock = leg.end_clock.expect("a start is given").to_string();
        let high = format!("{:.0}", leg.end_height_m.expect("the file has heights"));
        let text = planned.written("table");
        let row = text
            .lines()
            .find(|line| line.trim_end().ends_with("end of the stage") && line.contains(&clock));
        let row = row.unwrap_or_else(|| panic!("no end at {clock} in\n{text}"));
        assert!(
            row.split_whitespace().any(|cell| cell == high),
            "{high}: {row}"
        );
        told += 1;
    }
    assert_eq!(told, 2, "one for each stage");
}
