//! A limit that is exactly met is not passed.

use schrund::plan::{
    Plan,
    fact::{Fact, Slope},
    finding::Finding,
};

use crate::fixture::{
    ground::tilted,
    planned::{codes, findings, roped},
    trip::{SNOW, Trip},
};

/// How steep these say that it is.
fn steep<'f>(found: impl Iterator<Item = &'f Finding>) -> Vec<(&'static str, Slope, f64)> {
    let told = found.filter_map(|found| {
        let (of, deg) = match *found.fact()? {
            Fact::TooSteep { slope_deg, of, .. } | Fact::AvalancheTerrain { slope_deg, of } => {
                (of, slope_deg)
            }
            Fact::SteepBareUnroped { slope_deg, .. } => (Slope::Line, slope_deg),
            _ => return None,
        };
        Some((found.code(), of, deg))
    });
    told.collect()
}

/// With one figure of the leader's, to its last digit.
fn with(trip: &Trip, figure: &str, value: f64) -> Plan {
    trip.clone()
        .rules(&format!("[assume]\n{figure} = {value:?}"))
        .plan()
}

#[test]
fn ground_as_steep_as_a_limit_and_no_steeper_is_within_it() {
    const NEVER: &str = r#"{"gap_m":1,"surface":"bare","rope":"never"}"#;
    for (zone, share, figure, code) in [
        (
            SNOW,
            0.9,
            "anchors_deg",
            "too-steep-to-rope-without-anchors",
        ),
        (NEVER, 0.49, "bare_slip_deg", "unroped-on-steep-bare-ice"),
    ] {
        let trip = Trip::straight(&[zone]).ropes(&[60.0]).falling(share);
        let told = steep(findings(&trip.plan()));
        let deg = told.iter().find(|told| told.0 == code).expect(code).2;
        let says = |value: f64| codes(findings(&with(&trip, figure, value))).contains(&code);
        assert!(!says(deg) && says(deg - 1e-6), "{code}: {deg}");
    }
}

/// The ground is told where the line itself is not as steep as avalanche terrain begins.
#[test]
fn ground_is_not_told_beside_a_line_on_which_avalanche_terrain_just_begins() {
    // 40° toward the north-east: a line to the north falls by 31°.
    let trip = Trip::straight(&[SNOW])
        .ropes(&[60.0])
        .model(20.0, tilted(40.0, 45.0));
    let told = |plan: &Plan| -> Vec<(Slope, f64)> {
        let all = steep(roped(plan).findings.iter()).into_iter();
        let all = all.filter(|told| told.0 == "avalanche-terrain");
        all.map(|(_, of, deg)| (of, deg)).collect()
    };
    let line = told(&trip.plan());
    let [(Slope::Line, deg)] = line[..] else {
        panic!("{line:?}")
    };
    assert!((30.0..32.0).contains(&deg), "{deg}");
    assert_eq!(told(&with(&trip, "avalanche_deg", deg)), line);
    let above = told(&with(&trip, "avalanche_deg", deg + 1e-6));
    assert!(
        matches!(above[..], [(Slope::Ground, 39.0..41.0)]),
        "{above:?}"
    );
}

#[test]
fn a_spacing_that_is_as_far_from_the_greatest_as_is_near_is_not_near() {
    // A pair walks the gap and 5 m apart, up to 30 m; a metre less is not near it (our judgement).
    let near = |gap_m: f64| {
        let zone = format!(r#"{{"gap_m":{gap_m},"snow_depth_m":2}}"#);
        let plan = Trip::straight(&[&zone]).people(2).ropes(&[150.0]).plan();
        codes(findings(&plan)).contains(&"spacing-near-limit")
    };
    assert!(!near(24.0) && near(24.1));
}
