//! Lines: any bytes as a GPX file. What is read has a length, is read the same in small pieces and as the text that it is, and
//! what is refused is told.
#![no_main]

use std::io::BufReader;

use libfuzzer_sys::{fuzz_mutator, fuzz_target};
use schrund::{
    fault::{Fault, Level, Noted},
    read::gpx,
    trip::route::{Route, Stage},
};
use schrund_fuzz::{spoil, told};

type Read = Result<Noted<Route>, Vec<Fault>>;

/// Bytes at a time.
const PIECE: usize = 13;

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    spoil::spoilt(data, size, max_size, seed)
});

fuzz_target!(|bytes: &[u8]| {
    let read = gpx::route("line.gpx", bytes);
    match &read {
        Ok(Noted { value, notes }) => {
            told::all(notes, bytes);
            sound(value);
        }
        Err(faults) => {
            let wrong = faults.iter().any(|fault| fault.level() == Level::Error);
            assert!(wrong, "refused for nothing: {faults:?}");
            told::all(faults, bytes);
        }
    }
    alike(
        &read,
        &gpx::route("line.gpx", BufReader::with_capacity(PIECE, bytes)),
    );
    if let (Ok(_), Ok(text)) = (&read, gpx::text(bytes)) {
        alike(&read, &gpx::route("line.gpx", text.as_bytes()));
    }
});

fn alike(a: &Read, b: &Read) {
    match (a, b) {
        (Ok(a), Ok(b)) => assert_eq!(a.value, b.value, "another line"),
        (Err(_), Err(_)) => {}
        (a, b) => panic!("{a:?} and {b:?}"),
    }
}

fn sound(route: &Route) {
    assert!(!route.stages.is_empty(), "no stage");
    for stage in &route.stages {
        walked(stage);
    }
    assert!(
        route.length_m() > 0.0 && route.length_m().is_finite(),
        "a length"
    );
    for place in &route.waypoints {
        assert!(
            place.at.lat_deg.abs() <= 90.0 && !place.name.is_empty(),
            "{place:?}"
        );
    }
}

fn walked(stage: &Stage) {
    let (points, at_m) = (stage.points(), stage.chainage_m());
    assert!(points.len() >= 2 && points.len() == at_m.len(), "points");
    assert!(at_m.is_sorted(), "the line goes on: {at_m:?}");
    assert_eq!(at_m.last(), Some(&stage.length_m()), "its length");
    assert!(
        points
            .iter()
            .all(|at| at.lat_deg.abs() <= 90.0 && at.lon_deg.is_finite()),
        "places"
    );
    assert!(stage.heights_m().flatten().all(f32::is_finite), "heights");
    for run in stage.segments() {
        let run: Vec<_> = points.part(run).collect();
        let near =
            |pair: &[schrund::geometry::LonLat]| (pair[0].lon_deg - pair[1].lon_deg).abs() <= 180.0;
        assert!(run.windows(2).all(near), "unrolled");
    }
    let middle = stage.at(stage.length_m() / 2.0);
    assert!(middle.is_some(), "a place half way");
}
