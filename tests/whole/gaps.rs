//! Whether what a leg says of its gaps was given, or assumed.

use schrund::plan::leg::Leg;

use crate::fixture::trip::{SNOW, Trip};

const WIDE: &str = r#"{"gap_m":9,"snow_depth_m":2}"#;

/// Whether each roped leg rests on an assumed width, where the zone of this number gave none.
fn assumed(zones: &[&str], without: usize) -> Vec<bool> {
    let mut job = Trip::straight(zones).job();
    for zone in job.zones.iter_mut().filter(|z| z.number == without) {
        zone.gap.assumed = true;
    }
    let legs = schrund::plan(&job).expect("planned").legs;
    assert!(legs.iter().any(|leg| leg.roped), "a leg to ask");
    legs.iter()
        .filter(|leg| leg.roped)
        .map(|leg: &Leg| leg.gap_assumed)
        .collect()
}

#[test]
fn a_leg_says_whether_the_width_that_decides_was_assumed() {
    assert_eq!(assumed(&[SNOW, WIDE], 0), [false, false]);
    assert_eq!(assumed(&[SNOW, WIDE], 1), [true, false]);
    assert_eq!(assumed(&[SNOW, WIDE], 2), [false, true]);
}

#[test]
fn of_the_zones_of_one_leg_the_widest_decides_and_of_two_as_wide_an_assumed_one() {
    let joined = |first: &str, second: &str, without: usize| {
        let trip = Trip::along(&[(0.0, -400.0), (0.0, 900.0)])
            .zone((-800.0, 0.0), (800.0, 200.0), first)
            .zone((-800.0, 200.0), (800.0, 400.0), second);
        let mut job = trip.job();
        job.zones[without].gap.assumed = true;
        let legs = schrund::plan(&job).expect("planned").legs;
        let roped: Vec<&Leg> = legs.iter().filter(|leg| leg.roped).collect();
        assert_eq!(roped.len(), 1);
        roped[0].gap_assumed
    };
    assert!(!joined(SNOW, WIDE, 0), "9 m were given");
    assert!(joined(SNOW, WIDE, 1), "9 m were assumed");
    assert!(joined(SNOW, SNOW, 0) && joined(SNOW, SNOW, 1));
}
