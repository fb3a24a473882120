//! Heights that leave off, ice beside which a crossed zone goes on, halts at the end of the ice.

use schrund::plan::clock::Backwards;

use crate::fixture::{
    planned::{codes, said},
    trip::{NORTHWARD, SNOW, Trip},
};

/// 2 km over hidden gaps, roped from the begin.
fn north(zone: ((f64, f64), (f64, f64))) -> Trip {
    let line = [(0.0, -1000.0), (0.0, 0.0), (0.0, 1000.0)];
    let (a, b) = zone;
    Trip::along(&line).zone(a, b, SNOW).heights(|_, _| 2500.0)
}

fn latest(trip: Trip, more: &str) -> Option<String> {
    let words = format!("start = \"04:00\"\nbridges_until = \"08:00\"\n{more}");
    let clock = trip.rules(&words).plan().clock;
    let latest = clock.and_then(|clock| clock.first.as_planned.latest_start);
    latest.map(|at| at.to_string())
}

#[test]
fn no_hour_is_worked_backwards_where_heights_leave_off() {
    let words = "start = \"04:00\"\nbridges_until = \"08:00\"";
    let line = [
        (0.0, -900.0),
        (0.0, -500.0),
        (0.0, 0.0),
        (0.0, 500.0),
        (0.0, 900.0),
    ];
    let trip = |known: f64| {
        let trip = Trip::along(&line).middle(SNOW);
        trip.heights(move |_, north| if north < known { 2500.0 } else { f64::NAN })
    };
    let plan = trip(100.0).rules(words).plan();
    let told = said(&plan.findings, "climb-partly-unknown");
    assert!(
        told[0].contains("no height is known on 900 m of the line, first from 0.90 km"),
        "{told:?}"
    );
    let worked = plan.clock.expect("hours are given").first.as_planned;
    assert_eq!(worked, Backwards::default());
    let whole = trip(1000.0).rules(words).plan();
    assert!(whole.clock.is_some() && !codes(&whole.findings).contains(&"climb-partly-unknown"));
    let none = Trip::along(&NORTHWARD).middle(SNOW).rules(words).plan();
    assert!(
        !codes(&none.findings).contains(&"climb-partly-unknown"),
        "no heights at all is told as such"
    );
}

/// Ice that the line crosses for 100 m and then runs beside for a kilometre, 10 m off.
#[test]
fn ice_that_is_crossed_and_then_runs_beside_the_line_is_left_where_it_ends() {
    let beside = north(((10.0, -600.0), (100.0, 600.0)));
    let both = beside.clone().zone((-50.0, -600.0), (100.0, -500.0), SNOW);
    let apart = latest(both, "");
    assert_eq!(latest(beside, ""), apart, "two zones");
    let line = [
        (0.0, -1000.0),
        (0.0, -550.0),
        (10.0, -500.0),
        (0.0, -450.0),
        (0.0, 1000.0),
    ];
    let one = Trip::along(&line)
        .zone((8.0, -600.0), (100.0, 600.0), SNOW)
        .heights(|_, _| 2500.0);
    let crossed = latest(one, "").expect("hidden gaps");
    let apart = apart.expect("hidden gaps");
    assert!(crossed <= apart, "{crossed} {apart}");
}

#[test]
fn a_halt_at_the_very_end_of_the_ice_is_spent_on_it() {
    let ends_on_ice = || north(((-200.0, -200.0), (200.0, 1500.0)));
    let halt = |km: f64| format!("[[halt]]\nat_km = {km}\nminutes = 120");
    let inside = latest(ends_on_ice(), &halt(1.99));
    let length_km = ends_on_ice().plan().route.length_m / 1000.0;
    let at_end = latest(ends_on_ice(), &halt((length_km * 1e6).floor() / 1e6));
    assert_eq!(inside, at_end);
}

#[test]
fn halts_at_one_place_are_one() {
    let words =
        "start = \"04:00\"\n[[halt]]\nat_km = 1\nminutes = 30\n[[halt]]\nat_km = 1\nminutes = 31";
    let plan = north(((-200.0, -200.0), (200.0, 200.0)))
        .rules(words)
        .plan();
    let halts: Vec<f64> = plan
        .legs
        .iter()
        .flat_map(|l| &l.parts)
        .map(|p| p.halt_min)
        .collect();
    assert_eq!(halts, [61.0, 0.0]);
}
