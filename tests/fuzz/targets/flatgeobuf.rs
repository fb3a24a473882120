//! Outlines in FlatGeobuf: any bytes. Read whole, near a line, by the index, as text; the text holds the same zones.
#![no_main]

use std::io::Cursor;

use libfuzzer_sys::fuzz_target;
use schrund::{
    example,
    fault::{Level, Noted},
    geometry::{Bounds, LonLat},
    limits::InputLimits,
    read::{
        as_text::{near_text, text_within, zones_text},
        geojson::{KnownShapes, zones},
        input::{Input, Seekable},
        lay::{self, Sources},
    },
    trip::route::Route,
};
use schrund_fuzz::{drawn::GIVEN, told};

const NAME: &str = "ice.fgb";

fuzz_target!(|bytes: &[u8]| {
    let whole = lay::zones(Input::text(NAME, bytes), GIVEN.gap_m);
    match &whole {
        Ok(Noted { notes, .. }) => told::all(notes, bytes),
        Err(faults) => {
            let wrong = faults.iter().any(|fault| fault.level() == Level::Error);
            assert!(wrong, "refused for nothing: {faults:?}");
            told::all(faults, bytes);
        }
    }
    if let (Ok(whole), Ok(Some(text))) = (&whole, zones_text(NAME, bytes, &InputLimits::default()))
    {
        let again = zones(NAME, text.as_bytes(), &GIVEN);
        let again = again.unwrap_or_else(|faults| panic!("{faults:?}: {text}"));
        assert_eq!(again.value, whole.value, "another text: {text}");
    }
    let line = gpx();
    near(bytes, &line);
    known(bytes);
});

fn gpx() -> Route {
    let read = lay::route(Input::text("line.gpx", example::ROUTE_GPX.as_bytes()));
    read.map(|read| read.value).unwrap_or_default()
}

fn file(bytes: &[u8]) -> Seekable {
    Box::new(Cursor::new(bytes.to_vec()))
}

/// What a plan asks of zones and of an inventory, and a map of an area.
fn near(bytes: &[u8], line: &Route) {
    if let Ok(read) = lay::zones_near(Input::new(NAME, file(bytes)), line, GIVEN.gap_m) {
        told::all(&read.notes, bytes);
    }
    match lay::glaciers_near(Input::new(NAME, file(bytes)), line) {
        Ok(read) => told::all(&read.notes, bytes),
        Err(faults) => told::all(&faults, bytes),
    }
    let _ = near_text(Input::new(NAME, file(bytes)), line);
    let corners = [LonLat::new(179.0, 60.0), LonLat::new(182.0, 70.0)];
    let boxes: Vec<Bounds> = Bounds::of(&corners).into_iter().collect();
    let _ = text_within(Input::new(NAME, file(bytes)), &boxes);
    // Read once from its beginning, as from a pipe.
    let zones = Input::text("zones", example::ZONES_GEOJSON.as_bytes());
    let route = Input::text("line.gpx", example::ROUTE_GPX.as_bytes());
    let mut sources = Sources::new(route, zones);
    sources.glaciers = Some(Input::text(NAME, bytes));
    let _ = sources.job();
}

/// By who has read it before.
fn known(bytes: &[u8]) {
    let known = KnownShapes::default();
    let job = || {
        let route = Input::text("line.gpx", example::ROUTE_GPX.as_bytes());
        let mut sources = Sources::new(route, Input::text(NAME, bytes));
        sources.known = Some(&known);
        sources.flags.gap_m = GIVEN.gap_m;
        sources.job().map_err(|faults| faults.len())
    };
    let (first, second) = (job().map(|job| job.zones), job().map(|job| job.zones));
    assert_eq!(first, second, "others the second time");
}
