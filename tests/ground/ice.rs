//! Ice of the inventory on which no zone is drawn.

use schrund::plan::leg::Verdict;

use crate::fixture::{close_to as close, planned::said, trip::Trip};

#[test]
fn ice_without_a_zone_is_told_with_its_place() {
    // Ice from 800 m south to 850 m north of the spot; the zone covers 200 m on both sides of it.
    // Only told, so that the legs are those of the zone alone.
    let trip = Trip::northward().rules("undrawn_ice = \"tell\"");
    let plan = trip
        .clone()
        .inventory((-300.0, -800.0), (300.0, 850.0))
        .plan();
    let pieces: Vec<_> = plan.legs.iter().flat_map(|l| &l.ice_without_zone).collect();
    let length_m: f64 = pieces.iter().map(|p| p.to_m - p.from_m).sum();
    close("in all", Some(length_m), 600.0 + 650.0, 0.01);
    close("from", Some(pieces[0].from_m), 100.0, 0.01);
    let first = &plan.legs[0];
    // The roped leg begins 20 m before the zone, at 680 m; the finding tells all of the stage.
    close("to", Some(pieces[0].to_m), 680.0, 0.01);
    assert_eq!(
        said(&first.findings, "ice-without-a-gap-width"),
        ["ice without a gap width, 0.10–0.70 km, 1.10–1.75 km: only told, by your word"]
    );
    assert_eq!(first.verdict, Verdict::Look);
    let covered = trip.inventory((-200.0, -200.0), (200.0, 200.0)).plan();
    assert!(covered.legs.iter().all(|l| l.ice_without_zone.is_empty()));
}

/// Maps are off by the margin, 20 m (our judgement): a piece of ice no longer than that is not told, a longer one is.
#[test]
fn ice_beyond_a_zone_is_told_from_where_it_is_longer_than_the_margin() {
    let pieces = |beyond_m: f64| {
        let edge = (300.0, 200.0 + beyond_m);
        let plan = Trip::northward().inventory((-300.0, -200.0), edge).plan();
        plan.legs.iter().map(|l| l.ice_without_zone.len()).sum()
    };
    let told: Vec<usize> = [5.0, 19.0, 21.0, 60.0].map(pieces).to_vec();
    assert_eq!(told[..2], [0, 0], "shorter than the margin");
    assert!(told[2..].iter().all(|n| *n > 0), "longer: {told:?}");
    let trip = Trip::northward().inventory((-300.0, -200.0), (300.0, 221.0));
    let told = |trip: Trip| -> Vec<f64> {
        let plan = trip.plan();
        let pieces = plan.legs.iter().flat_map(|l| &l.ice_without_zone);
        pieces.map(|p| p.to_m - p.from_m).collect()
    };
    let [length_m] = told(trip.clone())[..] else {
        panic!("one piece")
    };
    let margin = format!("[assume]\nmargin_m = {length_m:?}");
    assert_eq!(told(trip.rules(&margin)), [0.0; 0], "as long as the margin");
}
