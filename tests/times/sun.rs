//! Sunrise and sunset against what others printed.

use schrund::{
    geometry::LonLat,
    plan::fact::Fact,
    say::voice::Voice,
    times::sun::SunDay,
    trip::day::{Day, UtcOffset},
    write::parts::clock,
};

use crate::fixture::{
    planned::{findings, said},
    trip::{SNOW, Trip},
};

fn sun(lon_deg: f64, lat_deg: f64, day: &str, offset: &str) -> [f64; 2] {
    let (day, offset) = (Day::parse(day).unwrap(), UtcOffset::parse(offset).unwrap());
    let sun = SunDay::at(LonLat::new(lon_deg, lat_deg), day, offset).expect("an answer");
    let min = |clock: Option<schrund::trip::clock::Clock>| clock.expect("it does").min();
    [min(sun.rises), min(sun.sets)]
}

#[track_caller]
fn near(what: &str, got: [f64; 2], want: [f64; 2], tolerance_min: f64) {
    for (got, want) in got.into_iter().zip(want) {
        assert!(
            (got - want).abs() <= tolerance_min,
            "{what}: {got} min, printed {want}"
        );
    }
}

fn at(hours: f64, minutes: f64, seconds: f64) -> f64 {
    60.0 * hours + minutes + seconds / 60.0
}

/// The worked example of `[spa2004]`: 39.742476 N 105.1786 W, 17 October 2003, seven hours behind UTC: rises 06:12:43, sets
/// 17:20:19, from memory. Its day is that of UTC, so its sunset is that of the evening before; it interpolates, so it is off
/// by a second or two itself.
#[test]
fn the_printed_example_of_the_algorithm() {
    let on = |day: &str| sun(-105.1786, 39.742_476, day, "-07:00");
    let got = [on("2003-10-17")[0], on("2003-10-16")[1]];
    let printed = [at(6.0, 12.0, 43.0), at(17.0, 20.0, 19.0)];
    near("the example", got, printed, 3.0 / 60.0);
}

/// Times that almanacs print for Greenwich in minutes, from memory: midsummer 2024 at London 04:43 to 21:21 by summer
/// time, and the equinox of March 2024 06:03 to 18:13.
#[test]
fn days_that_almanacs_print() {
    let midsummer = sun(-0.1278, 51.5074, "2024-06-20", "+01:00");
    near(
        "midsummer",
        midsummer,
        [at(4.0, 43.0, 0.0), at(21.0, 21.0, 0.0)],
        1.5,
    );
    let equinox = sun(-0.1278, 51.5074, "2024-03-20", "+00:00");
    near(
        "equinox",
        equinox,
        [at(6.0, 3.0, 0.0), at(18.0, 13.0, 0.0)],
        1.5,
    );
}

/// Other clocks show the same moments, and going west by fifteen degrees they come an hour later.
#[test]
fn moments_do_not_hang_on_the_clock() {
    let here = sun(8.0, 46.5, "2027-07-14", "+02:00");
    let utc = sun(8.0, 46.5, "2027-07-14", "+00:00");
    near("by another clock", here, utc.map(|min| min + 120.0), 1e-3);
    let west = sun(-7.0, 46.5, "2027-07-14", "+02:00");
    near("an hour west", west, here.map(|min| min + 60.0), 0.1);
}

#[test]
fn a_day_without_an_offset_is_told_in_utc_and_says_so() {
    let trip = Trip::northward().rules("date = \"2027-07-14\"");
    let plan = trip.plan();
    let clock = plan.clock.expect("a day is given").first;
    assert_eq!(clock.utc_offset, Some(UtcOffset::default()));
    assert!(
        clock.as_planned.arrival.is_none(),
        "nobody said when to start"
    );
    assert!(
        plan.findings.iter().any(|f| f.code() == "sun-in-utc"),
        "{:?}",
        plan.findings
    );
    let told = trip.rules("utc_offset = \"+02:00\"").plan();
    assert!(
        told.findings.iter().all(|f| f.code() != "sun-in-utc"),
        "an offset is given"
    );
    let clock = told.clock.expect("a day is given").first;
    assert_eq!(
        clock.sunrise.map(|c| c.to_string()).as_deref(),
        Some("05:45")
    );
}

/// Where the sun never rises nobody was told that all of the rope is walked without it.
#[test]
fn polar_night_is_told_of_the_rope() {
    const NORTH_M: f64 = 3_600_000.0;
    let line = [(0.0, NORTH_M - 900.0), (0.0, NORTH_M + 900.0)];
    let trip = Trip::along(&line)
        .zone((-300.0, NORTH_M - 200.0), (300.0, NORTH_M + 200.0), SNOW)
        .rules("start = \"10:00\"\nutc_offset = \"+01:00\"");
    let told = |day: &str| {
        let plan = trip.clone().rules(&format!("date = \"{day}\"")).plan();
        said(findings(&plan), "dark-on-the-rope")
    };
    let winter = told("2027-12-21");
    assert_eq!(winter.len(), 1, "{winter:?}");
    assert!(
        winter[0].starts_with("no sun all day at a level horizon"),
        "{winter:?}"
    );
    assert!(told("2027-06-21").is_empty(), "the sun does not set");
    assert!(told("2027-03-21").is_empty(), "by day");
}

/// A start that is early enough may lead onto the rope before sunrise: which legs is told beside it.
#[test]
fn legs_that_the_latest_start_puts_into_the_dark_are_told() {
    let dark = |rules: &str| {
        // Near the equator on the day of the equinox, some degrees east: the sun rises before half past five.
        let day = "date = \"2027-03-20\"\nutc_offset = \"+00:00\"";
        let trip = Trip::straight(&[SNOW]).party(&[80.0; 3]).falling(0.05);
        let clock = trip.rules(&format!("{day}\n{rules}")).plan().clock;
        clock.expect("a day is given").first.dark_if_latest
    };
    assert_eq!(dark("start = \"07:00\"\nbridges_until = \"05:35\""), [2]);
    assert!(
        dark("start = \"07:00\"\nbridges_until = \"07:00\"").is_empty(),
        "late, and light all the same"
    );
    assert!(
        dark("start = \"05:00\"\nbridges_until = \"09:00\"").is_empty(),
        "early enough"
    );
    assert_eq!(
        dark("start = \"04:00\"\nbridges_until = \"04:10\""),
        [2],
        "dark as planned too"
    );
}

/// Who starts as early as is asked is told what that costs: an anchor is to be found and belays are made in the dark.
#[test]
fn belays_in_the_dark_are_told_with_a_start_that_is_early_enough() {
    let told = |start: &str, falling: f64| {
        let day = "date = \"2027-03-20\"\nutc_offset = \"+00:00\"\nbridges_until = \"12:00\"";
        let trip = Trip::straight(&[SNOW]).party(&[80.0; 3]).falling(falling);
        let plan = trip.rules(&format!("{day}\nstart = \"{start}\"")).plan();
        let first = clock::lines(&plan, Voice::default())[0].to_string();
        let clock = plan.clock.expect("a day is given").first;
        (
            clock.dark_belays,
            first.contains("; as planned belays on leg 2 are in the dark"),
        )
    };
    assert_eq!(told("04:00", STEEP), (vec![2], true));
    assert_eq!(told("08:00", STEEP), (vec![], false), "by day");
    assert_eq!(told("04:00", 0.0), (vec![], false), "nothing is belayed");
}

/// Down this the middle case holds nobody.
const STEEP: f64 = 0.3;

/// The latest start may lie before midnight: it is dark then too, from sunset on. Of who is under way only what lies ahead is told.
#[test]
fn the_dark_before_midnight_counts_with_the_latest_start() {
    let planned = |rules: &str| {
        let day = "date = \"2027-03-20\"\nutc_offset = \"+00:00\"";
        let trip = Trip::straight(&[SNOW]).party(&[80.0; 3]).falling(0.05);
        trip.rules(&format!("{day}\n{rules}")).plan()
    };
    let dark = |rules: &str| {
        let clock = planned(rules).clock.expect("a day is given").first;
        let latest = clock.as_planned.latest_start;
        (
            latest.is_some_and(|latest| latest.min() < 0.0),
            clock.dark_if_latest,
        )
    };
    // By midnight the gaps are left: nearly all of the leg is walked on the evening before.
    let at =
        |km: f64| format!("start = \"04:00\"\nstart_at_km = {km:?}\nbridges_until = \"00:00\"");
    assert_eq!(dark(&at(0.1)), (true, vec![2]));
    assert_eq!(
        dark(&at(2.5)).1,
        Vec::<usize>::new(),
        "that leg lies behind"
    );
    let minutes = |km: f64| {
        let plan = planned(&format!("start = \"03:00\"\nstart_at_km = {km:?}"));
        findings(&plan).find_map(|found| match found.fact()? {
            Fact::DarkOnRope { minutes, .. } => Some(*minutes),
            _ => None,
        })
    };
    assert!(minutes(0.1).is_some_and(|minutes| minutes > 1.0));
    assert_eq!(minutes(2.5), None, "that leg lies behind");
}
