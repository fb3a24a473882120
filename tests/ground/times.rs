//! Times of day along the legs, and bridges crossed too late.

use schrund::{
    plan::Plan,
    practice::{Origin, Rule},
    trip::{clock::Clock, timetable::Timetable},
    write::{Sheet, change},
};

use super::{Trip, close, made, rules, said};

fn plan(zone: &str, times: &Timetable) -> Plan {
    let route = made::route(&made::NORTHWARD, Some(&made::tilted(10.0, 180.0)));
    let zones = made::zones(&[made::rectangle((-200.0, -200.0), (200.0, 200.0), zone)]);
    let rules = rules();
    let mut trip = Trip::of(&route, &zones, &rules);
    trip.timetable = times.clone();
    trip.plan()
}

const SNOW: &str = "{\"gap_m\":6}";

fn starting(start: &str, until: Option<&str>) -> Timetable {
    let mut times = Timetable::default();
    let clock = |text: &str| Some(Some(Clock::parse(text).expect("a time")));
    times.start.set(clock(start), Origin::Flag);
    if let Some(until) = until {
        times.bridges_until.set(clock(until), Origin::Flag);
    }
    times
}

#[test]
fn the_lines_of_time_add_up_and_the_clock_runs_through_the_legs() {
    let rules = rules();
    let plan = plan(SNOW, &starting("04:30", None));
    let time = plan.route.time;
    let rope_min = rules[Rule::RopeUpMin] + rules[Rule::ChangeMin];
    close("rope changes", Some(time.rope_min), rope_min, 1e-9);
    let breaks = time.walking_min / 60.0 * rules[Rule::BreakMinPerH];
    close("breaks", Some(time.break_min), breaks, 1e-9);
    let all = time.walking_min + time.rope_min + time.break_min;
    close("all", Some(time.total_min), all, 1e-9);
    assert_eq!(plan.legs[0].start_clock.as_deref(), Some("04:30"));
    for pair in plan.legs.windows(2) {
        assert_eq!(pair[0].end_clock, pair[1].start_clock);
    }
    let end = Clock::parse("04:30").expect("a time").after(time.total_min);
    let last = plan.legs.last().and_then(|l| l.end_clock.clone());
    assert_eq!(last, Some(end.to_string()));
}

#[test]
fn without_a_start_there_is_no_clock_and_over_midnight_it_is_marked() {
    let none = plan(SNOW, &Timetable::default());
    assert!(
        none.legs
            .iter()
            .all(|l| l.start_clock.is_none() && l.end_clock.is_none())
    );
    let late = plan(SNOW, &starting("23:30", None));
    let end = late
        .legs
        .last()
        .and_then(|l| l.end_clock.clone())
        .expect("an end");
    assert!(end.ends_with(" +1"), "{end}");
}

#[test]
fn snow_bridges_after_the_leaders_hour_are_warned_of() {
    for (zone, start, warned) in [
        (SNOW, "09:30", true),
        (SNOW, "04:30", false),
        ("{\"gap_m\":6,\"surface\":\"bare\"}", "09:30", false),
    ] {
        let plan = plan(zone, &starting(start, Some("10:00")));
        let late: Vec<&str> = plan
            .legs
            .iter()
            .flat_map(|l| said(&l.findings, "bridges-late"))
            .collect();
        assert_eq!(!late.is_empty(), warned, "{zone} from {start}: {late:?}");
    }
}

#[test]
fn every_change_is_given_in_the_grid_in_degrees_and_by_the_clock() {
    let rules = rules();
    let route = made::route(&made::NORTHWARD, None);
    let zones = made::middle_zone();
    let mut trip = Trip::of(&route, &zones, &rules);
    trip.timetable = starting("04:30", None);
    let plan = trip.plan();
    let sheet = Sheet {
        plan: &plan,
        route: &route,
        zones: &zones,
    };
    let changes = change::changes(&sheet);
    assert_eq!(changes.len(), 2);
    // 9° E is the middle of zone 32: easting 500 000 m, cut off to the metre.
    let utm = changes[0].utm.as_deref().expect("a grid position");
    assert!(
        utm.starts_with("32T 500000 ") || utm.starts_with("32T 499999 "),
        "{utm}"
    );
    assert!(
        changes[0].degrees.ends_with("° N 9.00000° E"),
        "{}",
        changes[0].degrees
    );
    assert_eq!(changes[0].clock, plan.legs[1].start_clock.as_deref());
    assert!(changes[0].clock.is_some_and(|c| c > "04:30"));
}
