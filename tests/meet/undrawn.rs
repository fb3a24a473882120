//! Ice of the inventory on which no zone is drawn.

use schrund::{
    meet::{Ice, contact::Of, undrawn::undrawn},
    trip::route::Stretch,
};

use crate::fixture::trip::{NORTHWARD, Trip};

/// Chainages from south to north of ice that nobody drew, to the metre.
fn pieces(trip: &Trip) -> Vec<(f64, f64)> {
    let job = trip.job();
    let stage = &job.route.stages[0];
    let drawn = Ice::of(&job.zones).contacts(stage, 20.0);
    let inventory = Ice::of(&job.glaciers).contacts(stage, 0.0);
    let known = undrawn(stage, &drawn, &inventory, 20.0);
    let crossings = known.map(|contact| {
        assert_eq!(contact.of, Of::KnownIce, "no zone");
        contact.crossings
    });
    let ends = |s: &Stretch| (s.from_m.round(), s.to_m.round());
    crossings.unwrap_or_default().iter().map(ends).collect()
}

/// The line begins 900 m south of the spot.
fn ice(trip: Trip, from_m: f64, to_m: f64) -> Trip {
    trip.inventory((-300.0, from_m - 900.0), (300.0, to_m - 900.0))
}

#[test]
fn what_no_zone_covers_is_left_of_the_inventory() {
    let trip = ice(Trip::northward(), 100.0, 1750.0); // drawn from 700 m to 1100 m
    assert_eq!(pieces(&trip), [(100.0, 700.0), (1100.0, 1750.0)]);
    assert_eq!(pieces(&ice(Trip::northward(), 750.0, 1000.0)), []);
}

/// Glaciers of an inventory share their divides: two that meet are one piece of ice.
#[test]
fn glaciers_that_share_a_border_are_one_piece() {
    let trip = ice(ice(Trip::northward(), 100.0, 690.0), 690.0, 800.0);
    assert_eq!(pieces(&trip), [(100.0, 700.0)]);
}

#[test]
fn a_piece_no_longer_than_the_margin_belongs_to_the_zone_it_adjoins() {
    let beyond = |m: f64| pieces(&ice(Trip::northward(), 700.0, 1100.0 + m));
    assert_eq!(beyond(19.0), []);
    assert_eq!(beyond(30.0), [(1100.0, 1130.0)]);
    let apart = ice(Trip::northward(), 1300.0, 1310.0);
    assert_eq!(pieces(&apart), [(1300.0, 1310.0)], "no zone to belong to");
}

#[test]
fn without_a_zone_all_of_it_is_left() {
    let trip = ice(Trip::along(&NORTHWARD), 500.0, 600.0);
    assert_eq!(pieces(&trip), [(500.0, 600.0)]);
}
