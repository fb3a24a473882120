//! The legs alone against the whole plan: spreadsheet, maps, device and message show no more than the legs, and both say
//! the same of them.

use proptest::{prelude::*, test_runner::Config};
use schrund::{
    Planner,
    write::{FORMATS, Scene, Sheet},
};

use crate::fixture::trip::Trip;

/// What a trip over ice on a slope is made of: the width of its gaps and the snow on them, who goes, the ropes, how the line
/// falls, the snow and the knots asked for.
type Parts = (
    (f64, Option<f64>),
    Vec<f64>,
    Vec<f64>,
    f64,
    &'static str,
    &'static str,
);

fn any_parts() -> impl Strategy<Value = Parts> {
    let snow = prop_oneof![Just("settled"), Just("firm"), Just("soft")];
    (
        (0.0..24.0_f64, prop::option::of(0.0..2.0_f64)),
        prop::collection::vec(50.0..120.0_f64, 2..6),
        prop::collection::vec(prop_oneof![Just(30.0), Just(50.0), Just(60.0)], 0..3),
        -0.6..0.6_f64,
        snow,
        prop_oneof![Just("auto"), Just("always"), Just("never")],
    )
}

fn trip(((gap_m, depth_m), masses_kg, ropes, falls, snow, knots): &Parts) -> Trip {
    let depth = depth_m.map_or(String::new(), |m| format!(r#","snow_depth_m":{m}"#));
    let zone = format!(r#"{{"gap_m":{gap_m}{depth}}}"#);
    let trip = Trip::straight(&[&zone, &zone])
        .party(masses_kg)
        .ropes(ropes);
    let rules = format!("snow = \"{snow}\"\nknots = \"{knots}\"");
    trip.rules(&rules).falling(*falls)
}

proptest! {
    #![proptest_config(Config::with_cases(24))]
    #[test]
    fn what_shows_the_legs_is_the_same_from_the_legs_alone(parts in any_parts()) {
        let job = trip(&parts).job();
        let planner = Planner::new(&job).expect("it meets the ice");
        let plans = [planner.legs(), planner.plan()].map(|plan| plan.expect("a party"));
        let formats: Vec<_> = FORMATS.iter().filter(|format| format.is_of_legs()).collect();
        prop_assert_eq!(formats.len(), 5, "a spreadsheet, two maps, a device, a message");
        for format in formats {
            let [legs, whole] = plans.each_ref().map(|plan| {
                let mut bytes = Vec::new();
                format.write(&mut bytes, &Sheet::of(&job, plan, &Scene::default())).expect("memory");
                String::from_utf8(bytes).expect("text")
            });
            prop_assert_eq!(legs, whole, "{}", format.name());
        }
    }
}
