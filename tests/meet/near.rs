//! Who comes near ice without walking on it: long edges, the antimeridian, and a mere touch.

use schrund::{
    geometry::LonLat,
    meet::Ice,
    trip::{route::Stage, zone::Zone},
};

use crate::fixture::{
    any::{at, stage, zone},
    close,
};

/// A tip of ice that points west, so many metres east of a place.
fn tip(of: LonLat, away_m: f64) -> Vec<Zone> {
    let point = of.toward(90.0, away_m);
    let base = point.toward(90.0, 1400.0);
    let ring = [point, base.toward(180.0, 300.0), base.toward(0.0, 300.0)];
    vec![zone(1, &[ring.to_vec()], 5.0)]
}

/// One edge of 111 km, along a meridian.
fn meridian() -> Stage {
    stage(&[LonLat::new(8.0, 46.0), LonLat::new(8.0, 47.0)])
}

#[test]
fn beside_an_edge_of_a_hundred_kilometres_the_margin_is_a_circle_round_the_tip() {
    // A margin of 1000 m round a tip 600 m beside the line: √(1000² − 600²) = 800 m before and behind.
    let line = meridian();
    for lat in [46.03, 46.25, 46.5, 46.77, 46.97] {
        let abreast = LonLat::new(8.0, lat);
        let zones = tip(abreast, 600.0);
        let found = Ice::of(&zones).contacts(&line, 1000.0);
        let [contact] = &found[..] else {
            panic!("near it at {lat}")
        };
        let [touch] = contact.touches[..] else {
            panic!("one stretch at {lat}: {:?}", contact.touches)
        };
        let middle_m = LonLat::new(8.0, 46.0).distance_m(abreast);
        close("from", touch.from_m, middle_m - 800.0, 0.5);
        close("to", touch.to_m, middle_m + 800.0, 0.5);
        assert_eq!(contact.crossings, [], "never on it");
    }
}

#[test]
fn at_the_ends_of_a_long_edge_the_margin_is_as_true_as_in_its_middle() {
    // A degree of longitude is 1.4 % shorter at 47° than at 46°: one grid for the whole edge is off by half of that.
    let line = meridian();
    for lat in [46.02, 46.98] {
        let zones = tip(LonLat::new(8.0, lat), 1000.0);
        let meets = |margin_m: f64| !Ice::of(&zones).contacts(&line, margin_m).is_empty();
        assert!(meets(1001.0), "a metre within the margin at {lat}");
        assert!(!meets(999.0), "a metre outside at {lat}");
    }
}

#[test]
fn a_corner_that_the_line_touches_is_not_met_without_a_margin() {
    let corners = [
        at(500.0, 0.0),
        at(600.0, 100.0),
        at(500.0, 200.0),
        at(400.0, 100.0),
    ];
    let zones = [zone(1, &[corners.to_vec()], 5.0)];
    let line = stage(&[at(0.0, 0.0), at(1000.0, 0.0)]);
    let ice = Ice::of(&zones);
    assert_eq!(ice.contacts(&line, 0.0), [], "no metre of it is on the ice");
    assert_eq!(ice.contacts(&line, 1.0).len(), 1, "with a margin it counts");
}

#[test]
fn beyond_the_antimeridian_ice_is_met_by_its_own_longitude() {
    // The line goes on to 180.05° E, and the ice is drawn where that is called 179.98° W.
    let line = stage(&[LonLat::new(179.9, 46.5), LonLat::new(-179.95, 46.5)]);
    let (west, east) = (-179.99, -179.98);
    let ring = [(west, 46.4), (east, 46.4), (east, 46.6), (west, 46.6)];
    let ring = ring.map(|(lon, lat)| LonLat::new(lon, lat));
    let zones = [zone(1, &[ring.to_vec()], 5.0)];
    let found = Ice::of(&zones).contacts(&line, 0.0);
    let [contact] = &found[..] else {
        panic!("it crosses the ice: {found:?}")
    };
    // 0.01° of longitude: 1113.2 m · cos 46.5° = 766.3 m, and 1.8 ‰ more since the earth is flattened.
    close("across", contact.crossings[0].length_m(), 767.6, 0.5);
}
