//! The library in thirty lines: text in, a plan out, no file touched by the library itself.
//!
//!     cargo run --example by_hand

use schrund::{
    Job, plan,
    practice::{Rules, set::Source},
    read,
    trip::party::Party,
};

const ROUTE: &str = r#"<gpx version="1.1" creator="invented"><trk><trkseg>
    <trkpt lat="66.50" lon="2.00"/><trkpt lat="66.52" lon="2.03"/></trkseg></trk></gpx>"#;
const ZONES: &str = r#"{"type": "Feature", "properties": {"name": "Invented ice", "gap_m": 4, "snow_depth_m": 1.5},
    "geometry": {"type": "Polygon", "coordinates": [[[2.0, 66.505], [2.05, 66.505], [2.05, 66.51], [2.0, 66.51], [2.0, 66.505]]]}}"#;

fn main() {
    let rules = Rules::with_practice(&Source::Named("arm-span")).expect("an embedded set");
    let route = read::gpx::route("route", ROUTE.as_bytes()).expect("a good route");
    let zones =
        read::geojson::zones("zones", ZONES.as_bytes(), &Default::default()).expect("good zones");
    let job = Job {
        route: route.value,
        zones: zones.value,
        party: Party::of(3, &rules),
        ..Job::under(rules)
    };
    let plan = plan(&job).expect("a plan");
    for leg in &plan.legs {
        let how = leg
            .teams
            .first()
            .map_or("unroped".to_owned(), |t| format!("{} m apart", t.spacing_m));
        println!(
            "leg {}: {:.0} to {:.0} m, {how}",
            leg.leg, leg.start_m, leg.end_m
        );
    }
    assert_eq!(plan.legs.len(), 3, "before the ice, on it, behind it");
    assert!(
        (plan.carry[0].length_m - 50.0).abs() < 1e-9,
        "three people at 13 m take a 50 m rope"
    );
}
