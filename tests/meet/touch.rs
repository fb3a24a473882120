//! A zone that the line passes by within the margin of maps and receivers.

use crate::fixture::{
    planned::only_roped,
    trip::{NORTHWARD, Trip},
};

#[test]
fn a_zone_touched_by_its_margin_only_is_roped_and_has_no_crossing() {
    let beside = |metres: f64| {
        let zone = r#"{"gap_m":4,"snow_depth_m":2}"#;
        Trip::along(&NORTHWARD).zone((metres, -200.0), (metres + 300.0, 200.0), zone)
    };
    let plan = beside(12.0).plan();
    assert_eq!(only_roped(&plan).zones, [1]);
    assert_eq!(plan.zones[0].crossings, []);
    let far = schrund::plan(&beside(40.0).job()).unwrap_err();
    assert_eq!(far[0].code(), "no-zone-met", "beyond the margin");
}
