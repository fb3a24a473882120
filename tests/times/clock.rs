//! Times of day along the legs, and bridges crossed too late.

use schrund::{
    fault::Level,
    plan::{Plan, finding::Finding, leg::Verdict},
    practice::Rule,
    trip::clock::Clock,
    write::parts::change,
};

use crate::fixture::{
    close_to as close,
    ground::tilted,
    planned::{codes, findings, said},
    trip::{NORTHWARD, Trip, rules},
};

fn trip(zone: &str) -> Trip {
    Trip::along(&NORTHWARD)
        .middle(zone)
        .heights(tilted(10.0, 180.0))
}

const SNOW: &str = r#"{"gap_m":6}"#;

fn clock(text: &str) -> Clock {
    Clock::parse(text).expect("a time")
}

#[test]
fn the_lines_of_time_add_up_and_the_clock_runs_through_the_legs() {
    let plan = trip(SNOW).rules("start = \"04:30\"").plan();
    let rules = rules();
    let time = plan.route.time;
    let rope_min = rules[Rule::RopeUpMin] + rules[Rule::ChangeMin];
    close("rope changes", Some(time.rope_min), rope_min, 1e-9);
    let breaks = time.walking_min / 60.0 * rules[Rule::BreakMinPerH];
    close("breaks", Some(time.break_min), breaks, 1e-9);
    let all = time.walking_min + time.rope_min + time.break_min;
    close("all", Some(time.total_min), all, 1e-9);
    assert_eq!(plan.legs[0].start_clock, Some(clock("04:30")));
    for pair in plan.legs.windows(2) {
        assert_eq!(pair[0].end_clock, pair[1].start_clock);
    }
    let end = clock("04:30").after(time.total_min);
    let last = plan.legs.last().and_then(|l| l.end_clock);
    assert_eq!(last.map(|c| c.to_string()), Some(end.to_string()));
}

#[test]
fn without_a_start_there_is_no_clock_and_over_midnight_it_is_marked() {
    let none = trip(SNOW).plan();
    assert!(
        none.legs
            .iter()
            .all(|l| l.start_clock.is_none() && l.end_clock.is_none())
    );
    let late = trip(SNOW).rules("start = \"23:30\"").plan();
    let end = late
        .legs
        .last()
        .and_then(|l| l.end_clock)
        .expect("an end")
        .to_string();
    assert!(end.ends_with(" +1"), "{end}");
}

#[test]
fn snow_bridges_after_the_leaders_hour_are_warned_of() {
    for (zone, start, warned) in [
        (SNOW, "09:30", true),
        (SNOW, "04:30", false),
        ("{\"gap_m\":6,\"surface\":\"bare\"}", "09:30", false),
    ] {
        let words = format!("start = \"{start}\"\nbridges_until = \"10:00\"");
        let plan = trip(zone).rules(&words).plan();
        let late: Vec<String> = plan
            .legs
            .iter()
            .flat_map(|l| said(&l.findings, "bridges-late"))
            .collect();
        assert_eq!(!late.is_empty(), warned, "{zone} from {start}: {late:?}");
    }
}

#[test]
fn every_change_is_given_in_the_grid_in_degrees_and_by_the_clock() {
    let trip = Trip::northward().rules("start = \"04:30\"").planned();
    let sheet = trip.sheet();
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
    assert_eq!(changes[0].clock, trip.plan.legs[1].start_clock);
    assert!(changes[0].clock > Some(clock("04:30")));
}

#[test]
fn ice_that_is_walked_onto_without_a_rope_is_a_place_of_its_own() {
    let never = r#"{"gap_m":4,"rope":"never"}"#;
    let told = |zones: &[&str]| -> Vec<(change::ChangeKind, f64)> {
        let trip = Trip::straight(zones).planned();
        let changes = change::changes(&trip.sheet());
        changes
            .iter()
            .map(|change| (change.kind, change.at_m.round()))
            .collect()
    };
    let (onto, up, off) = (
        change::ChangeKind::OntoIce,
        change::ChangeKind::RopeUp,
        change::ChangeKind::Unrope,
    );
    assert_eq!(told(&[never]), [(onto, 400.0)]);
    let after = told(&[SNOW, never]);
    assert_eq!(
        after.iter().map(|(kind, _)| *kind).collect::<Vec<_>>(),
        [up, off, onto]
    );
    assert!((after[2].1 - 1000.0).abs() < 1.5, "{after:?}");
}

/// The line is level, its gaps are left at 09:33 and a third slower at 09:44, it is done at 09:49 and 10:05.
#[test]
fn what_is_too_late_for_a_slower_party_alone_is_told() {
    let trip = Trip::along(&NORTHWARD).middle(SNOW).heights(|_, _| 2500.0);
    let told = |until: &str, by: &str| {
        let words = format!("start = \"09:00\"\nbridges_until = \"{until}\"\nback_by = \"{by}\"");
        let plan = trip.clone().rules(&words).plan();
        let late = ["slower-bridges-late", "slower-back-late", "back-late"];
        late.map(|code| said(&plan.findings, code).len())
    };
    assert_eq!(told("09:40", "09:55"), [1, 1, 0]);
    assert_eq!(told("09:45", "10:06"), [0, 0, 0]);
    assert_eq!(told("09:30", "09:45"), [0, 0, 1], "it is late as planned");
}

/// The line takes 49 minutes (see above), and more than an hour at 1.5 km/h.
#[test]
fn a_stage_on_which_nobody_stays_awake_is_told_with_its_time() {
    let trip = Trip::along(&NORTHWARD).middle(SNOW).heights(|_, _| 2500.0);
    let told = |rules: &str| {
        let plan = trip.clone().rules(rules).plan();
        said(&plan.findings, "very-long-stage")
    };
    let slow = |kmh: f64| format!("[assume]\nlongest_stage_h = 1\nwalk_kmh = {kmh}");
    assert!(told(&slow(4.0)).is_empty());
    let long = told(&slow(1.5));
    let [sentence] = &long[..] else {
        panic!("{long:?}")
    };
    assert!(
        sentence.ends_with(
            " on the way in one stage, halts and belays not counted: more than 1 h 00 without sleep"
        ),
        "{sentence}"
    );
    let night = "[[halt]]\nminutes = 1200\nat_km = 0.1\n";
    assert!(told(night).is_empty(), "they may sleep there");
}

/// The stretches that carry the word of bridges crossed late, and the place of each finding, from and to.
fn late_on(plan: &Plan) -> Vec<[f64; 2]> {
    let legs = plan.legs.iter();
    let late = legs.flat_map(|leg| &leg.stretches);
    let late = late.filter(|s| s.code == "bridges-late");
    late.map(|s| [s.from_m, s.to_m]).collect()
}

/// It was a place of no length, where the ice is left.
#[test]
fn late_bridges_are_those_crossed_after_the_hour() {
    let at = |until: &str| {
        let words = format!("start = \"09:00\"\nbridges_until = \"{until}\"");
        trip(SNOW).rules(&words).plan()
    };
    // The ice lies from 700 m to 1100 m; who is late from the start is late on all of it.
    let all = late_on(&at("09:05"));
    let [[from_m, to_m]] = all[..] else {
        panic!("{all:?}")
    };
    assert!(
        (from_m - 700.0).abs() < 1.0 && (to_m - 1100.0).abs() < 1.0,
        "{all:?}"
    );
    let until = at("09:55");
    let there = until
        .clock
        .as_ref()
        .expect("an hour is given")
        .first
        .as_planned;
    let there_m = there.at_bridges_until_m.expect("heights are known");
    let rest = late_on(&until);
    let [[from_m, to_m]] = rest[..] else {
        panic!("{rest:?}")
    };
    assert!(700.0 < there_m && there_m < 1100.0, "{there_m}");
    assert!(
        (from_m - there_m).abs() < 1e-6 && (to_m - 1100.0).abs() < 1.0,
        "{rest:?}"
    );
}

/// Who is not roped there by the leader's word is told no milder of being late.
#[test]
fn late_bridges_unroped_by_word_are_told_no_milder() {
    let hours = "start = \"09:00\"\nbridges_until = \"09:05\"";
    let late = |trip: Trip, word: &str| {
        let plan = trip
            .heights(tilted(10.0, 180.0))
            .rules(&format!("{hours}\n{word}"))
            .plan();
        let levels = findings(&plan).filter(|f| f.code() == "bridges-late");
        let levels: Vec<Level> = levels.map(Finding::level).collect();
        assert_eq!(levels.len(), 1, "{word}");
        (levels[0], plan.verdict())
    };
    let drawn = |rope: &str| {
        let zone = format!(r#"{{"gap_m":4,"snow_depth_m":2,"rope":"{rope}"}}"#);
        Trip::along(&NORTHWARD).middle(&zone)
    };
    let far = || {
        let trip = Trip::along(&NORTHWARD).zone((5000.0, 0.0), (5100.0, 100.0), SNOW);
        trip.inventory((-300.0, -200.0), (300.0, 200.0))
    };
    let roped = late(drawn("always"), "");
    for travel in ["foot", "ski"] {
        let travel = format!("travel = \"{travel}\"");
        let never = late(drawn("never"), &travel);
        let told = late(far(), &format!("{travel}\nundrawn_ice = \"tell\""));
        for unroped in [never, told] {
            assert!(
                unroped.0 <= roped.0 && unroped.1 >= Verdict::Look,
                "{unroped:?} {roped:?}"
            );
        }
    }
}

/// Whoever is under way says what time it is where: the team is there then, however wide the gaps behind and ahead are.
#[test]
fn an_hour_on_the_way_stays_where_it_was_said() {
    let said = "start = \"09:00\"\nstart_at_km = 1.5\nbridges_until = \"12:00\"";
    for gap in [r#"{"gap_m":6}"#, r#"{"gap_m":16}"#] {
        let plan = trip(gap).rules(said).plan();
        let walk = plan.legs.iter().flat_map(|leg| &leg.walk);
        let there: Vec<f64> = walk
            .filter(|place| close_by(place.at_m, 1_500.0))
            .map(|place| place.left.min())
            .collect();
        assert!(!there.is_empty());
        assert!(
            there.iter().all(|min| close_by(*min, clock("09:00").min())),
            "{there:?}"
        );
        // As if it had been started at the hour that comes of it.
        let first = plan
            .clock
            .as_ref()
            .map(|clock| &clock.first)
            .expect("hours");
        let start_min = first.start.expect("an hour").min();
        let mut job = trip(gap).rules(said).job();
        job.timetable.start_at_km.value = None;
        job.timetable.start.value = Some(Clock::of_min(start_min));
        let started = schrund::plan(&job).expect("a plan");
        // But that the place is told, which no step of the walk falls on.
        let mut legs = plan.legs.clone();
        for leg in &mut legs {
            leg.walk.retain(|place| !close_by(place.at_m, 1_500.0));
        }
        assert_eq!(started.legs, legs);
        // Who is slower is so from there on.
        let slower = first
            .slower
            .and_then(|slower| slower.arrival)
            .expect("hours")
            .min();
        let done = first.as_planned.arrival.expect("hours").min();
        let factor = rules()[Rule::SlowerFactor];
        let ahead_min = done - clock("09:00").min();
        close(
            "a slower party",
            Some(slower - clock("09:00").min()),
            factor * ahead_min,
            1e-6,
        );
    }
}

fn close_by(some: f64, other: f64) -> bool {
    (some - other).abs() < 1e-6
}

/// Of a line that is shorter the hour is that of its end.
#[test]
fn an_hour_beyond_the_end_is_that_of_the_end() {
    let plan = trip(SNOW)
        .rules("start = \"09:00\"\nstart_at_km = 900")
        .plan();
    let end = plan
        .legs
        .last()
        .and_then(|leg| leg.walk.last())
        .expect("places");
    assert!(close_by(end.left.min(), clock("09:00").min()), "{end:?}");
}

/// Whoever has the hidden gaps behind is late for nothing, whatever the hour: neither a start nor a place to be at is told.
#[test]
fn nobody_is_late_for_bridges_that_lie_behind() {
    let told = |km: f64| {
        let said = format!("start = \"13:00\"\nstart_at_km = {km}\nbridges_until = \"09:00\"");
        let plan = trip(SNOW).rules(&said).plan();
        let late = codes(findings(&plan)).contains(&"bridges-late");
        let first = plan.clock.expect("hours").first;
        (
            late,
            first.is_late(),
            first.as_planned.bridges_left.is_some(),
        )
    };
    assert_eq!(told(0.8), (true, true, true));
    assert_eq!(told(1.5), (false, false, false));
}

/// Whoever is far on the way soon after midnight was started on the day before, and is not late for that.
#[test]
fn a_start_that_comes_of_an_hour_may_lie_before_midnight() {
    let said = "start = \"00:05\"\nstart_at_km = 0.8\nbridges_until = \"12:00\"";
    let plan = trip(SNOW).rules(said).plan();
    let first = plan.clock.expect("hours").first;
    assert!(first.start.expect("an hour").min() < 0.0, "{first:?}");
    assert!(!first.is_late(), "{first:?}");
    // To less than a minute: as late as can be, and a little later.
    let latest = first.as_planned.latest_start.expect("there are bridges");
    let spare_min = latest.min() - first.start.expect("an hour").min();
    for (later_min, late) in [(spare_min - 0.01, false), (spare_min + 0.01, true)] {
        let mut job = trip(SNOW).rules(said).job();
        job.timetable.start.value = Some(clock("00:05").after(later_min));
        let plan = schrund::plan(&job).expect("a plan");
        assert_eq!(plan.clock.expect("hours").first.is_late(), late);
    }
}
