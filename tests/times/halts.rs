//! Halts of the trip file, and turns of the line.

use schrund::{
    fault::{Fault, Wrong, trip::InTrip},
    meet::turns::turns,
    read::{gpx, input::Input, lay::Sources, trip},
};

use crate::fixture::{
    close_to as close,
    ground::at,
    planned::codes,
    real::real_data,
    texts::gpx_of,
    trip::{SNOW, Trip},
};

fn out_and_back() -> Trip {
    Trip::along(&[(0.0, -1000.0), (0.0, 1000.0), (0.0, -1000.0)])
        .middle(SNOW)
        .heights(|_, north| 2500.0 + 0.2 * north)
}

fn sources<'a>(gpx: &'a str, zones: &'a str, halts: &'a str) -> Sources<'a> {
    let mut sources = Sources::new(
        Input::text("route.gpx", gpx.as_bytes()),
        Input::text("zones.geojson", zones.as_bytes()),
    );
    let text = Box::leak(format!("party = 3\n{halts}").into_boxed_str());
    sources.trip = Some(trip::file(Input::text("trip.toml", text.as_bytes())));
    sources
}

/// The route file with waypoints.
fn with_waypoints(trip: &Trip) -> String {
    let wpt = |name: &str, east, north| {
        let place = at(east, north);
        let (lat, lon) = (place.lat_deg, place.lon_deg);
        format!("<wpt lat=\"{lat}\" lon=\"{lon}\"><name>{name}</name></wpt>")
    };
    let points = [
        wpt("Upper hut", 15.0, 500.0),
        wpt("Peak", 0.0, 1003.0),
        wpt("Far hut", 90.0, 0.0),
    ];
    let gpx = trip.gpx();
    let begin = gpx.find("<trk>").expect("a track");
    let end = gpx.rfind("</gpx>").expect("an end");
    gpx_of(&format!("{}{}", points.concat(), &gpx[begin..end]))
}

fn faults(gpx: &str, zones: &str, halts: &str) -> Vec<InTrip> {
    let told = sources(gpx, zones, halts).job().expect_err("faults");
    let what = |fault: Fault| match fault.what {
        Wrong::Trip(what) => what,
        other => panic!("{other:?}"),
    };
    told.into_iter().map(what).collect()
}

#[test]
fn a_halt_is_named_by_a_waypoint_near_the_line() {
    let trip = out_and_back();
    let (gpx, zones) = (with_waypoints(&trip), trip.geojson());
    let halts =
        "[[halt]]\nname = \"Upper hut\"\nminutes = 20\n[[halt]]\nname = \"Peak\"\nminutes = 30";
    let job = sources(&gpx, &zones, halts).job().expect("good files");
    close(
        "passed twice, the first time",
        Some(job.halts[0].at_m),
        1500.0,
        0.5,
    );
    close("the summit", Some(job.halts[1].at_m), 2000.0, 0.5);
    let plan = schrund::plan(&job).expect("a plan");
    let parts: Vec<_> = plan.legs.iter().flat_map(|leg| &leg.parts).collect();
    let names: Vec<_> = parts
        .iter()
        .map(|part| (part.name.as_deref(), part.turns))
        .collect();
    assert_eq!(
        names,
        [
            (Some("Upper hut"), false),
            (Some("Peak"), true),
            (None, false)
        ]
    );
    assert_eq!(plan.route.time.halt_min, 50.0);
}

#[test]
fn halts_that_cannot_be_are_told_with_what_would_mend_them() {
    let trip = out_and_back();
    let (gpx, zones) = (with_waypoints(&trip), trip.geojson());
    let halt = |text: &str| {
        let told = faults(&gpx, &zones, &format!("[[halt]]\n{text}"));
        let [what] = &told[..] else {
            panic!("{told:?}")
        };
        what.clone()
    };
    let near = Some("Upper hut".to_owned());
    let name = "Uper hut".to_owned();
    let no_waypoint = InTrip::NoWaypoint { name, near, has: 3 };
    assert_eq!(halt("name = \"Uper hut\"\nminutes = 5"), no_waypoint);
    let InTrip::WaypointAway {
        away_m, margin_m, ..
    } = halt("name = \"Far hut\"\nminutes = 5")
    else {
        panic!("it is 90 m off")
    };
    assert!((away_m - 90.0).abs() < 0.5 && margin_m == 20.0, "{away_m}");
    let minutes = InTrip::HaltMinutes {
        minutes: -5.0,
        within: [0.0, 1440.0],
    };
    assert_eq!(halt("at_km = 1\nminutes = -5"), minutes);
    assert_eq!(
        halt("at_km = -1\nminutes = 5"),
        InTrip::HaltBefore { at_km: -1.0 }
    );
    assert_eq!(halt("minutes = 5"), InTrip::HaltNowhere);
    let InTrip::HaltBeyond { length_m, .. } = halt("at_km = 4.1\nminutes = 5") else {
        panic!("the line has 4 km")
    };
    assert!((length_m - 4000.0).abs() < 1.0, "{length_m}");
    assert!(
        matches!(
            halt("at_km = 1\nstage = 3\nminutes = 5"),
            InTrip::NoStage { .. }
        ),
        "one stage"
    );
}

#[test]
fn where_there_are_several_stages_a_halt_says_on_which() {
    let trip = out_and_back().then(&[(0.0, -1000.0), (0.0, -3000.0)]);
    let (gpx, zones) = (trip.gpx(), trip.geojson());
    let which = faults(&gpx, &zones, "[[halt]]\nat_km = 1\nminutes = 5");
    assert!(
        matches!(which[..], [InTrip::HaltOnWhichStage { .. }]),
        "{which:?}"
    );
    for halt in [
        "[[halt]]\nat_km = 1\nstage = 2\nminutes = 5",
        "stage = 2\n[[halt]]\nat_km = 1\nminutes = 5",
    ] {
        let job = sources(&gpx, &zones, halt).job().expect("it is said");
        assert_eq!(
            (job.halts[0].stage, job.halts[0].at_m),
            (2, 1000.0),
            "{halt}"
        );
    }
}

/// Two recorded walks out and back, with receivers that wander and a loop at the far end; and a round with a common end,
/// which turns nowhere.
#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn recorded_walks_turn_where_they_turn() {
    let turns_km = |name: &str| {
        let text = std::fs::read(real_data().join("gpx").join(name)).expect("a track");
        let route = gpx::route(name, &text[..]).expect("a good file").value;
        let found = turns(&route.stages[0], 20.0, 300.0);
        let km = |m: f64| (m / 100.0).round() / 10.0;
        let each = found.iter().map(|turn| (km(turn.at_m), km(turn.back_m)));
        each.collect::<Vec<_>>()
    };
    assert_eq!(turns_km("ca_plain_of_six_glaciers.gpx"), [(7.0, 6.9)]);
    assert_eq!(turns_km("nz_fox_glacier_walk.gpx"), [(3.5, 3.1)]);
    assert_eq!(turns_km("es_gpx10_no_ele.gpx"), []);
}

/// Up takes longer than down, so the summit is reached later than half way through a leg that holds it.
#[test]
fn a_turn_parts_its_leg_and_changes_when_it_is_where_not_how_long_it_takes() {
    let steep = Trip::along(&[(0.0, -1000.0), (0.0, 1000.0), (0.0, -1000.0)])
        .zone((-200.0, 700.0), (200.0, 1200.0), SNOW)
        .heights(|_, north| 2500.0 + 0.4 * north)
        .rules("start = \"05:00\"\n[assume]\nbelay_min = 0\nbelay_each_min = 0");
    let plan = steep.clone().plan();
    let leg = plan
        .legs
        .iter()
        .find(|leg| leg.roped)
        .expect("the summit is ice");
    let [up, down] = &leg.parts[..] else {
        panic!("{:?}", leg.parts)
    };
    assert!(
        up.turns && up.ascent_m > Some(100.0) && up.descent_m == Some(0.0),
        "{up:?}"
    );
    assert!(
        down.descent_m > Some(100.0) && down.ascent_m == Some(0.0),
        "{down:?}"
    );
    let [out, back] =
        [up, down].map(|p| p.arrive.expect("a clock").min() - p.depart.expect("a clock").min());
    assert!(out > 1.2 * back, "{out} {back}");
    let alone = steep
        .rules("[assume]\nturn_back_m = 5000\nbelay_min = 0\nbelay_each_min = 0")
        .plan();
    let whole = alone.legs.iter().find(|leg| leg.roped).expect("roped");
    assert!(
        whole.parts.is_empty() && whole.teams == leg.teams,
        "one set-up either way"
    );
    close("as long", Some(leg.time_min), whole.time_min, 1e-9);
    assert!(
        !codes(&whole.findings).contains(&"line-turns-back"),
        "too short to count"
    );
}
