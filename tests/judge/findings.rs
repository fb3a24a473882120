//! What a leg's findings say, and when they say nothing: each shown beside a trip that is only a little better.

use schrund::plan::fact::Fact;

use crate::fixture::{
    planned::{codes, findings, roped, setup},
    trip::Trip,
};

/// Says it here, and not there.
#[track_caller]
fn only(code: &str, here: &Trip, there: &Trip) {
    let (here, there) = (here.plan(), there.plan());
    let (said, unsaid) = (codes(findings(&here)), codes(findings(&there)));
    assert!(said.contains(&code), "{code} is missing: {said:?}");
    assert!(
        !unsaid.contains(&code),
        "{code} should not be said: {unsaid:?}"
    );
}

fn zone(gap_m: f64, snow_m: f64) -> String {
    format!("{{\"gap_m\":{gap_m},\"snow_depth_m\":{snow_m}}}")
}

fn trip(people: usize, rope_m: f64, gap_m: f64, snow_m: f64) -> Trip {
    Trip::straight(&[&zone(gap_m, snow_m)])
        .party(&vec![80.0; people])
        .ropes(&[rope_m])
}

#[test]
fn limits_that_are_near_are_told() {
    // A pair needs the gap and 5 m more (our judgement); 30 m is the greatest spacing (common practice).
    only(
        "spacing-near-limit",
        &trip(2, 150.0, 24.5, 2.0),
        &trip(2, 150.0, 20.0, 2.0),
    );
    // Three at 13 m take 42 m: 26 between them, 3 in tie-ins, 13 in coils.
    only(
        "rope-near-limit",
        &trip(3, 42.5, 4.0, 2.0),
        &trip(3, 43.0, 4.0, 2.0),
    );
}

#[test]
fn snow_that_may_not_hold_knots_is_told() {
    let unknown = Trip::straight(&["{\"gap_m\":4}"])
        .party(&[80.0; 2])
        .ropes(&[80.0]);
    only("snow-depth-not-given", &unknown, &trip(2, 80.0, 4.0, 2.0));
    only(
        "knots-doubtful",
        &trip(2, 80.0, 4.0, 0.5),
        &trip(2, 80.0, 4.0, 2.0),
    );
    only(
        "pair-without-knots",
        &trip(2, 80.0, 4.0, 0.2),
        &trip(2, 80.0, 4.0, 2.0),
    );
    // One leg over two zones: knots for the first, none that bite in the second.
    let zones = [zone(4.0, 2.0), zone(4.0, 0.1)];
    let both = Trip::straight(&[&zones[0], &zones[1]])
        .party(&[80.0; 2])
        .ropes(&[80.0]);
    only(
        "knots-do-not-bite-everywhere",
        &both.clone().rules("[assume]\nleast_unroped_m = 1000"),
        &both,
    );
}

#[test]
fn a_coil_is_a_burden_by_its_length_or_by_its_weight() {
    // A pair carries coils of 22.5 m, 1.1025 kg of 9 mm rope (makers' figures).
    let pair = trip(2, 80.0, 4.0, 2.0);
    let most = |figure: &str| pair.clone().rules(&format!("[assume]\n{figure}"));
    let (light, heavy) = (most("coil_most_kg = 1.11"), most("coil_most_kg = 1.1"));
    only("coil-is-a-burden", &heavy, &light);
    let (short, long) = (most("coil_most_m = 22.5"), most("coil_most_m = 22.4"));
    only("coil-is-a-burden", &long, &short);
}

#[test]
fn steep_ground_and_skis_are_told() {
    let flat = trip(3, 60.0, 4.0, 2.0);
    // Slopes of 0.6 and 0.9 are 31° and 42°.
    only(
        "avalanche-terrain",
        &flat.clone().falling(0.6),
        &flat.clone().falling(0.5),
    );
    only(
        "too-steep-to-rope-without-anchors",
        &flat.clone().falling(0.9),
        &flat.clone().falling(0.8),
    );
    only("on-skis", &flat.clone().rules("travel = \"ski\""), &flat);
}

#[test]
fn a_zone_beside_the_line_is_told() {
    let zone = zone(4.0, 2.0);
    let zone = zone.as_str();
    let both = Trip::straight(&[zone; 3]).party(&[80.0; 3]).ropes(&[60.0]);
    let beside = both.clone().on_the_line_of(&Trip::straight(&[zone]));
    only("zone-not-met", &beside, &both);
}

#[test]
fn snow_on_ice_called_bare_is_told_and_counts_as_snow() {
    let zone = |more: &str| Trip::straight(&[&format!(r#"{{"gap_m":4{more}}}"#)]).party(&[80.0; 2]);
    let (bare, snow, both) = (
        zone(r#","surface":"bare""#),
        zone(r#","snow_depth_m":2"#),
        zone(r#","surface":"bare","snow_depth_m":2"#),
    );
    only("snow-on-bare-ice", &both, &bare);
    only("snow-on-bare-ice", &both, &snow);
    only(
        "snow-on-bare-ice",
        &both,
        &zone(r#","surface":"bare","snow_depth_m":0"#),
    );
    let [of_snow, of_both] = [&snow, &both].map(Trip::plan);
    let set = |plan| {
        (
            setup(plan).spacing_m,
            setup(plan).knots.count,
            setup(plan).arrest.clone(),
        )
    };
    assert_eq!(set(&of_snow), set(&of_both), "spacing, knots and falls");
    only(
        "never-on-hidden-gaps",
        &zone(r#","surface":"bare","snow_depth_m":2,"rope":"never""#),
        &bare,
    );
}

#[test]
fn knots_are_judged_zone_by_zone() {
    let (thin, doubtful) = (zone(4.0, 0.2), zone(4.0, 0.5));
    let all = [&thin, r#"{"gap_m":4}"#, &doubtful, &zone(4.0, 2.0)];
    let plan = Trip::straight(&all)
        .party(&[80.0; 2])
        .rules("[assume]\nleast_unroped_m = 1000")
        .plan();
    let leg = roped(&plan);
    for (code, zone) in [
        ("knots-do-not-bite-everywhere", 1),
        ("snow-depth-not-given", 2),
        ("knots-doubtful", 3),
    ] {
        let told = leg.findings.iter().find(|f| f.code() == code).expect(code);
        let zones = match told.fact() {
            Some(
                Fact::KnotsNoBite { zones }
                | Fact::SnowUnknown { zones }
                | Fact::KnotsDoubtful { zones },
            ) => zones,
            other => panic!("{other:?}"),
        };
        let numbers: Vec<usize> = zones.iter().map(|z| z.zone).collect();
        assert_eq!(numbers, [zone], "{code}");
    }
}

#[test]
fn knots_always_where_none_are_tied_is_told_with_the_reason() {
    let always =
        |people: usize, snow_m: f64| trip(people, 80.0, 4.0, snow_m).rules("knots = \"always\"");
    let code = "knots-always-and-none-tied";
    only(code, &always(4, 2.0), &trip(4, 80.0, 4.0, 2.0));
    only(code, &always(3, 0.2), &always(3, 2.0));
    only(code, &always(2, 0.2), &trip(2, 80.0, 4.0, 0.2));
}
