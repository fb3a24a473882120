//! Our own map is a zones file: read back it plans the same, and what was assumed there is assumed again or asked for.

use schrund::{
    Job,
    fault::Fault,
    plan::leg::Leg,
    read::geojson::{Given, zones},
    trip::zone::Zone,
};

use crate::fixture::{
    planned::Planned,
    trip::{SNOW, Trip},
};

/// A zone that gives no width, and one that gives a lower end.
const SILENT: &str = r#"{"name":"Silent","snow_depth_m":2}"#;
const LOWER: &str = r#"{"name":"Lower","gap_min_m":8,"snow_depth_m":2}"#;

fn read(map: &str, gap_m: Option<f64>) -> Result<Vec<Zone>, Vec<Fault>> {
    zones("map.geojson", map.as_bytes(), &Given { gap_m }).map(|read| read.value)
}

/// A trip over zones of which some give no width, planned with that one assumed.
fn guessed(gap_m: f64) -> (Job, Planned) {
    let trip = Trip::straight(&[SNOW, SNOW, SNOW]).ropes(&[60.0]);
    let job = || {
        let drawn = trip.geojson();
        let mut pieces = drawn.splitn(3, SNOW);
        let mut silent = String::new();
        for with in [SILENT, LOWER, ""] {
            silent += pieces.next().unwrap_or_default();
            silent += with;
        }
        let mut job = trip.job();
        job.zones = read(&silent, Some(gap_m)).expect("zones");
        job
    };
    (job(), Planned::of(job()))
}

/// What a leg says of gaps and set-up.
fn told(leg: &Leg) -> (Option<f64>, bool, bool, Vec<f64>, &'static str) {
    let spacing = leg.teams.iter().map(|team| team.spacing_m).collect();
    let (gap_m, assumed) = (leg.gap_m, leg.gap_assumed);
    (gap_m, assumed, leg.gap_known, spacing, leg.verdict.as_str())
}

/// A map has seven decimals of a degree, about a centimetre.
fn same_legs(was: &Planned, is: &Planned) {
    let (was, is) = (&was.plan.legs, &is.plan.legs);
    assert_eq!(was.len(), is.len(), "as many legs");
    for (was, is) in was.iter().zip(is) {
        assert_eq!(told(was), told(is), "leg {}", was.leg);
        let off_m = [was.start_m - is.start_m, was.end_m - is.end_m];
        assert!(
            off_m.iter().all(|m| m.abs() < 0.03),
            "leg {}: {off_m:?}",
            was.leg
        );
    }
}

#[test]
fn widths_that_were_given_come_back_with_the_same_legs() {
    let planned = Trip::over_the_pass().people(3).sixty_each().planned();
    let mut job = Trip::over_the_pass().people(3).sixty_each().job();
    job.zones = read(&planned.written("geojson"), None).expect("all widths were given");
    assert!(job.zones.iter().all(|zone| !zone.gap.assumed));
    same_legs(&planned, &Planned::of(job));
}

#[test]
fn a_width_that_was_assumed_is_asked_for_again_or_assumed_anew() {
    let (mut job, planned) = guessed(6.0);
    let map = planned.written("geojson");
    let refused = read(&map, None).expect_err("two widths are guesses");
    let codes: Vec<&str> = refused
        .iter()
        .filter(|f| f.code() == "gap-not-given")
        .map(Fault::code)
        .collect();
    assert_eq!(codes.len(), 1, "{refused:?}");
    let gaps = |gap_m| {
        let zones = read(&map, Some(gap_m)).expect("assumed");
        let gaps = zones.iter().map(|zone| (zone.gap.max_m, zone.gap.assumed));
        gaps.collect::<Vec<_>>()
    };
    assert_eq!(
        gaps(9.0),
        [(9.0, true), (9.0, true), (4.0, false)],
        "anew with that number"
    );
    assert_eq!(
        gaps(6.0),
        [(6.0, true), (8.0, true), (4.0, false)],
        "and the lower end as drawn"
    );
    job.zones = read(&map, Some(6.0)).expect("assumed");
    same_legs(&planned, &Planned::of(job));
}

#[test]
fn ice_that_nobody_drew_is_no_zone_of_a_map() {
    let planned = Trip::northward()
        .inventory((-300.0, -1000.0), (300.0, 1000.0))
        .planned();
    assert!(
        planned.plan.legs.iter().any(|leg| !leg.gap_known),
        "the inventory has more ice"
    );
    let back = read(&planned.written("geojson"), None).expect("the drawn zone gives its width");
    assert_eq!(back.len(), planned.job.zones.len(), "no other polygon");
}

/// Who reads one output alone must see that the width is a guess.
#[test]
fn every_output_of_a_leg_says_that_its_width_was_assumed() {
    let (_, planned) = guessed(6.0);
    let map: serde_json::Value = serde_json::from_str(&planned.written("geojson")).expect("JSON");
    let features = map["features"].as_array().expect("features").iter();
    let of = |role: &str| {
        let role = role.to_owned();
        features
            .clone()
            .map(|f| &f["properties"])
            .filter(move |p| p["role"] == role)
    };
    let roped: Vec<_> = of("leg").filter(|p| p["roped"] == true).collect();
    let assumed: Vec<bool> = roped.iter().map(|p| p["gap_assumed"] == true).collect();
    assert_eq!(assumed, [true, true, false]);
    for (properties, assumed) in roped.iter().zip(assumed).chain(
        of("zone")
            .collect::<Vec<_>>()
            .iter()
            .zip([true, true, false]),
    ) {
        for text in ["title", "description"] {
            let said = properties[text].as_str().expect("text");
            assert_eq!(said.contains("assumed"), assumed, "{said}");
        }
    }
    let csv = planned.written("csv");
    let mut csv = ::csv::Reader::from_reader(csv.as_bytes());
    let at = csv
        .headers()
        .expect("a head")
        .iter()
        .position(|name| name == "gap_assumed");
    let cells: Vec<String> = csv
        .records()
        .map(|row| row.expect("a row")[at.expect("the column")].to_owned())
        .collect();
    assert_eq!(cells, ["", "true", "", "true", "", "false", ""]);
    let device = gpx::read(planned.written("gpx").as_bytes()).expect("GPX");
    let up = |w: &&gpx::Waypoint| w.type_.as_deref() == Some("rope up");
    let lines: Vec<bool> = device
        .waypoints
        .iter()
        .filter(up)
        .map(|w| {
            w.comment
                .as_deref()
                .is_some_and(|line| line.contains("(assumed)"))
        })
        .collect();
    assert_eq!(lines, [true, true, false]);
    let plan: serde_json::Value = serde_json::from_str(&planned.written("json")).expect("JSON");
    assert_eq!(
        (
            &plan["legs"][1]["gap_assumed"],
            &plan["legs"][5]["gap_assumed"]
        ),
        (&true.into(), &false.into())
    );
}
