//! When brake knots count: by the depth of the snow, and by the worst zone of a leg.

use schrund::{plan::leg::Bite, practice::Rule, rope::knots::bite, trip::zone::Zone};

use crate::fixture::trip::{BARE, SNOW, Trip, rules};

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
