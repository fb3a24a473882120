//! Plans that follow others are those that stand alone, whatever was planned before.

use schrund::{
    Job, Memory, Planner, example,
    geometry::LonLat,
    practice::{Origin, Rule},
    read::geojson::{Given, KnownShapes, zones, zones_again},
    trip::{party::Party, route::Stage},
};

type Edit = Box<dyn Fn(&mut Job)>;

/// What somebody changes of a trip, one after the other.
fn edits() -> Vec<Edit> {
    let gap = |gap_m: f64| {
        move |job: &mut Job| {
            job.zones[0].gap.max_m = gap_m;
            job.zones[0].gap.assumed = false;
        }
    };
    vec![
        Box::new(|_| {}),
        Box::new(gap(9.0)),
        Box::new(gap(3.0)),
        Box::new(|job| job.zones.truncate(1)),
        Box::new(|job| job.party = Party::weighing(&[95.0, 60.0, 70.0])),
        Box::new(|job| lay(job, Rule::MarginM, 45.0)),
        Box::new(|job| lay(job, Rule::ConvexDeg, 1.0)),
        Box::new(|job| lay(job, Rule::ConvexOverM, 400.0)),
        Box::new(|job| lay(job, Rule::SteepOverM, 120.0)),
        Box::new(|job| lay(job, Rule::AlongDeg, 60.0)),
        Box::new(|job| job.glaciers.clear()),
        Box::new(|job| {
            let mut other = Stage::new(Some("another line".to_owned()));
            for at in job.route.stages[0].points().iter() {
                other.push(LonLat::new(at.lon_deg + 0.002, at.lat_deg), None);
            }
            job.route.stages = vec![other];
        }),
        Box::new(|job| job.terrain = schrund::raster::Terrain::default()),
        Box::new(|_| {}),
    ]
}

fn lay(job: &mut Job, rule: Rule, value: f64) {
    job.rules
        .set(rule, value, Origin::Flag)
        .expect("inside its bounds");
}

#[test]
fn a_plan_after_others_is_the_plan_alone() {
    let terrain = example::pair().expect("a trip").terrain;
    let memory = Memory::default();
    let mut legs = std::collections::BTreeSet::new();
    for (i, edit) in edits().iter().enumerate() {
        let mut alone = example::pair().expect("a trip");
        edit(&mut alone);
        let mut after = example::pair().expect("a trip");
        after.terrain = terrain.clone().afresh();
        edit(&mut after);
        let plan = Planner::new(&alone).and_then(|planner| planner.plan());
        let planner = Planner::after(&after, &memory);
        let (again, scene) = planner.map_or_else(
            |faults| (Err(faults), None),
            |planner| {
                let (plan, profiles) = (planner.plan(), planner.profiles());
                planner.leave();
                (plan, Some(profiles))
            },
        );
        assert_eq!(again, plan, "edit {i}");
        assert_eq!(after.terrain.notes(), alone.terrain.notes(), "edit {i}");
        let profiles = Planner::new(&alone).map(|planner| planner.profiles()).ok();
        assert_eq!(
            scene.map(|s| s.profiles),
            profiles.map(|s| s.profiles),
            "edit {i}"
        );
        legs.insert(format!("{:?}", plan.map(|plan| plan.legs)));
    }
    assert!(legs.len() > 8, "the edits change something: {}", legs.len());
}

#[test]
fn a_file_that_is_read_again_is_read_the_same() {
    let ring = |lon: f64| format!("[[[{lon},46],[{lon}5,46],[{lon}5,46.01],[{lon},46]]]");
    let feature = |rings: &str| {
        format!(
            r#"{{"type":"Feature","properties":{{"gap_m":4}},"geometry":{{"type":"Polygon","coordinates":{rings}}}}}"#
        )
    };
    let file = |features: &[String]| {
        format!(
            r#"{{"type":"FeatureCollection","features":[{}]}}"#,
            features.join(",")
        )
    };
    let open = "[[[8.1,46],[8.15,46],[8.15,46.01]]]".to_owned();
    let bow = "[[[8.2,46],[8.25,46.01],[8.25,46],[8.2,46.01],[8.2,46]]]".to_owned();
    let wrong = "[[[8.3,46],[8.35,146],[8.35,46.01],[8.3,46]]]".to_owned();
    let texts = [
        file(&[feature(&ring(7.1)), feature(&open), feature(&bow)]),
        file(&[feature(&ring(7.1)), feature(&open), feature(&bow)]),
        file(&[feature(&open), feature(&ring(7.1)), feature(&open)]),
        file(&[feature(&open), feature(&wrong), feature(&bow)]),
        file(&[feature(&bow), feature(&bow), feature(&ring(7.3))]),
        file(&[feature("[]"), feature(&bow)]),
    ];
    let known = KnownShapes::default();
    let mut told = 0;
    for text in &texts {
        let (given, name) = (Given::default(), "zones.geojson");
        let alone = zones(name, text.as_bytes(), &given);
        told += alone
            .as_ref()
            .map_or_else(Vec::len, |read| read.notes.len());
        let again = zones_again(name, text.as_bytes(), &given, &known);
        assert_eq!(again, alone, "{text}");
    }
    assert!(told > 5, "rings that are open or cross themselves are told");
    assert_eq!(known.len(), 2, "of the last reading alone");
}
