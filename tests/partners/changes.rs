//! The list of changes: where each is, without a doubt.

use schrund::write::{
    table::{self, FULL_WIDTH, Look},
    units::Units,
};

use crate::fixture::{Trip, route, zones};

#[test]
fn changes_name_the_stage_where_there_are_several() {
    let one = route("Over the pass");
    let two = one.replace("</trkseg><trkseg>", "</trkseg></trk><trk><trkseg>");
    let table = |route: &str| {
        let trip = Trip::of(route, &zones("Icefall", ""), 3);
        let look = Look {
            width: FULL_WIDTH,
            colour: false,
            units: Units::Metric,
        };
        let table = table::plan(&trip.sheet(), look);
        let changes = table
            .lines()
            .filter(|l| l.contains("rope up at ") || l.contains("unrope at "));
        let changes: Vec<String> = changes.map(str::to_owned).collect();
        assert!(changes.len() >= 4, "{changes:?}");
        changes
    };
    assert!(table(&one).iter().all(|c| !c.contains("stage")));
    let changes = table(&two);
    assert!(
        changes.iter().all(|c| c.contains(" at stage ")),
        "{changes:?}"
    );
    assert!(
        changes
            .iter()
            .any(|c| c.contains("rope up at stage 2, ") || c.contains("unrope at stage 2, ")),
        "{changes:?}"
    );
}
