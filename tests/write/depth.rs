//! Formats that ask for less than a whole plan: what they show is the same from all of it.

use proptest::{prelude::*, test_runner::Config};
use schrund::{
    Planner,
    plan::depth::Depth,
    write::{FORMATS, Format, Look, Scene, Sheet},
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
    fn what_shows_less_is_the_same_from_less(parts in any_parts()) {
        let job = trip(&parts).job();
        let planner = Planner::new(&job).expect("it meets the ice");
        let plans = [Depth::Legs, Depth::Told, Depth::Frozen, Depth::Whole].map(|depth| planner.to(depth).expect("a party"));
        let depth = |format: &&dyn Format| format.depth(&Look::default());
        let shown = [Depth::Legs, Depth::Told, Depth::Frozen].map(|least| FORMATS.iter().filter(|f| depth(f) == least).count());
        prop_assert_eq!(shown, [1, 3, 2], "a spreadsheet; two maps, a device; a table, a message");
        for format in FORMATS {
            let asked = plans.iter().zip([Depth::Legs, Depth::Told, Depth::Frozen, Depth::Whole]);
            let enough = asked.filter(|(_, asked)| *asked >= depth(&format));
            let mut all = enough.map(|(plan, _)| {
                let mut bytes = Vec::new();
                format.write(&mut bytes, &Sheet::of(&job, plan, &Scene::default())).expect("memory");
                String::from_utf8(bytes).expect("text")
            });
            let least = all.next().expect("the whole is enough");
            for more in all {
                prop_assert_eq!(&least, &more, "{}", format.name());
            }
        }
    }
}
