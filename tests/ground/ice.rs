//! Ice of the inventory on which no zone is drawn.

use schrund::plan::leg::Verdict;

use super::{Trip, close, made, rules, said};

#[test]
fn ice_without_a_zone_is_told_with_its_place() {
    let (rules, zones) = (rules(), made::middle_zone());
    // Ice from 800 m south to 850 m north of the spot; the zone covers 200 m on both sides of it.
    let glaciers = made::zones(&[made::rectangle((-300.0, -800.0), (300.0, 850.0), "{}")]);
    let route = made::route(&made::NORTHWARD, None);
    let mut trip = Trip {
        route: &route,
        zones: &zones,
        glaciers: &glaciers,
        terrain: None,
        rules: &rules,
        timetable: Default::default(),
    };
    let plan = trip.plan();
    let pieces: Vec<_> = plan.legs.iter().flat_map(|l| &l.ice_without_zone).collect();
    let length_m: f64 = pieces.iter().map(|p| p.to_m - p.from_m).sum();
    close("in all", Some(length_m), 600.0 + 650.0, 0.01);
    close("from", Some(pieces[0].from_m), 100.0, 0.01);
    let first = &plan.legs[0];
    let says = said(&first.findings, "glacier-without-zone");
    // The roped leg begins 20 m before the zone, at 680 m.
    assert_eq!(
        says,
        ["580 m on a glacier, 0.10–0.68 km: no gap width given"]
    );
    assert_eq!(first.verdict, Verdict::Look);
    trip.glaciers = &zones;
    let covered = trip.plan();
    assert!(covered.legs.iter().all(|l| l.ice_without_zone.is_empty()));
}
