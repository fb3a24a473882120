//! When brake knots count: by the depth of the snow, and by the worst zone of a leg.

use schrund::{legs::over::bite, plan::leg::Bite, practice::Rule, trip::zone::Zone};

use crate::fixture::{
    planned::{codes, roped, setup},
    trip::{BARE, SNOW, Trip, rules},
};

/// A zone with so much snow on it.
fn under(depth_m: f64) -> Zone {
    let properties = format!(r#"{{"gap_m":4,"snow_depth_m":{depth_m}}}"#);
    Trip::straight(&[&properties]).zones().remove(0)
}

#[test]
fn snow_as_deep_as_a_threshold_counts_as_the_thinner() {
    let rules = rules();
    let (none_m, full_m) = (rules[Rule::KnotsNoBiteM], rules[Rule::KnotsBiteM]);
    for (depth_m, want) in [
        (none_m - 0.01, Bite::No),
        (none_m, Bite::No),
        (none_m + 0.01, Bite::Doubtful),
        (full_m, Bite::Doubtful),
        (full_m + 0.01, Bite::Yes),
    ] {
        assert_eq!(bite([&under(depth_m)], &rules), want, "{depth_m} m");
    }
}

#[test]
fn the_worst_zone_of_a_leg_counts() {
    let unknown = r#"{"gap_m":4}"#;
    let doubtful = r#"{"gap_m":4,"snow_depth_m":0.5}"#;
    let worst = |zones: &[&str]| bite(&Trip::straight(zones).zones(), &rules());
    assert_eq!(worst(&[SNOW, SNOW]), Bite::Yes);
    assert_eq!(worst(&[SNOW, doubtful]), Bite::Doubtful);
    assert_eq!(worst(&[unknown, doubtful]), Bite::Unknown);
    assert_eq!(worst(&[unknown, BARE, SNOW]), Bite::No);
}

#[test]
fn a_pair_walks_as_far_apart_as_its_whole_layout_asks() {
    // Trade rules, common practice: 3 m / 2 m / three from each end leave a metre at 15 m; the closer one at 9 m.
    let pair = Trip::straight(&[SNOW]).party(&[80.0; 2]).ropes(&[80.0]);
    let tied = |rules: &str| {
        let plan = pair.clone().rules(rules).plan();
        let setup = setup(&plan);
        let fewer = codes(&roped(&plan).findings).contains(&"fewer-knots-than-a-layout");
        (setup.spacing_m, setup.knots.count, fewer)
    };
    assert_eq!(
        tied(""),
        (15.0, 6, false),
        "the default set asks for 14.4 m"
    );
    let tight = "[assume]\nspacing_2_m = 8\nknot_first_m = 2\nknot_step_m = 1";
    assert_eq!(tied(tight), (9.0, 6, false));
    assert_eq!(
        tied("[assume]\nknot_count = 2"),
        (14.5, 4, true),
        "by the leader's word"
    );
    assert_eq!(
        tied("[assume]\nspacing_cap_m = 14.5"),
        (14.5, 4, true),
        "no room under the cap"
    );
    assert_eq!(
        tied("knots = \"never\""),
        (14.5, 0, false),
        "no knots, no layout"
    );
}

/// Of three one set has a span to itself: 3 m + 2 × 2 m and a metre beyond are 8 m.
#[test]
fn three_on_a_steep_descent_walk_as_far_apart_as_their_layout_asks() {
    let three = Trip::straight(&[SNOW]).party(&[80.0; 3]).ropes(&[60.0]);
    let three = three.rules("[assume]\nspacing_3_m = 7");
    let tied = |share: f64| {
        let plan = three.clone().falling(share).plan();
        let setup = setup(&plan);
        (
            setup.spacing_m,
            setup.knots.count,
            setup.knots_count_from_snow_m,
        )
    };
    // From 20° on (our judgement); known to bear from a metre of snow on (common practice).
    assert_eq!(tied(0.5), (8.0, 6, Some(1.0)), "27° down");
    assert_eq!(tied(0.1), (7.0, 0, None), "6° down");
    assert_eq!(tied(-0.5), (7.0, 0, None), "27° up");
}
