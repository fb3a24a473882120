//! Of an inventory only what lies near the route is read, and the plan is the same as from all of it.

use std::{
    io::{self, Cursor, Read, Seek, SeekFrom},
    sync::{
        Arc,
        atomic::{AtomicU64, Ordering},
    },
};

use schrund::{
    Job, Planner, example,
    fault::Fault,
    read::{
        input::{Input, Seekable},
        lay::Sources,
        trip,
    },
    write::{FORMATS, Sheet},
};
use serde_json::Value;

use crate::fixture::{
    flatgeobuf::{Form, flatgeobuf},
    texts::{collection, feature_of, polygon},
};

/// So many outlines from the line of the pair on, eastward and northward; the first one is that of the example.
pub(super) fn inventory(count: usize) -> String {
    let own: Value = serde_json::from_str(example::PAIR_GLACIERS_GEOJSON).expect("GeoJSON");
    let mut features = vec![own.to_string()];
    for i in 1..count {
        let step = |i: usize| f64::from(u16::try_from(i).expect("few"));
        let (lon, lat) = (2.0 + 0.3 * step(i % 100), 50.0 + 0.15 * step(i / 100));
        let ring = format!(
            "[[{lon},{lat}],[{},{lat}],[{},{}],[{lon},{lat}]]",
            lon + 0.1,
            lon + 0.1,
            lat + 0.1
        );
        let properties = format!(
            r#"{{"name": "Invented {i}", "date": "2003-0{}-01"}}"#,
            i % 9 + 1
        );
        features.push(feature_of(&properties, &polygon(&ring)));
    }
    collection(&features)
}

fn sources() -> Sources<'static> {
    let mut sources = Sources::new(
        Input::text("route.gpx", example::PAIR_ROUTE_GPX.as_bytes()),
        Input::text("zones.geojson", example::PAIR_ZONES_GEOJSON.as_bytes()),
    );
    let trip = "party = [70, 95]\nrope = [{ length_m = 80 }]\n";
    sources.trip = Some(trip::file(Input::text("trip.toml", trip.as_bytes())));
    sources
}

/// Every output of a job.
pub(super) fn outputs(job: &Job) -> Vec<String> {
    let planner = Planner::new(job).expect("a job");
    let plan = planner.plan().expect("a plan");
    let scene = planner.scene(&plan).expect("a scene");
    let written = FORMATS.iter().map(|format| {
        let mut bytes = Vec::new();
        let sheet = Sheet::of(job, &plan, &scene);
        format.write(&mut bytes, &sheet).expect("memory");
        String::from_utf8_lossy(&bytes).into_owned()
    });
    written.collect()
}

fn from_text(text: &str) -> Job {
    let mut sources = sources();
    sources.glaciers = Some(Input::text("ice", text.as_bytes()));
    sources.job().expect("sound")
}

fn from_file(bytes: Vec<u8>) -> Result<Job, Vec<Fault>> {
    let mut sources = sources();
    let file: Seekable = Box::new(Cursor::new(bytes));
    sources.glaciers_near = Some(Input::new("ice", file));
    sources.job()
}

#[test]
fn every_output_is_the_same_to_the_byte() {
    let text = inventory(300);
    let wanted = outputs(&from_text(&text));
    for index in [false, true] {
        let bytes = flatgeobuf(
            &text,
            Form {
                index,
                ..Form::default()
            },
        );
        let job = from_file(bytes.clone()).expect("sound");
        assert_eq!(job.glaciers.len(), 1, "the others lie far off");
        assert_eq!(outputs(&job), wanted, "with an index: {index}");
        // A pipe or an address gives no more than the bytes in a row.
        let mut once = sources();
        once.glaciers = Some(Input::text("ice", Cursor::new(bytes)));
        let once = once.job().expect("sound");
        assert_eq!(once.glaciers, job.glaciers);
    }
}

#[test]
fn an_inventory_of_which_nothing_is_near_is_no_missing_one() {
    let features: Value = serde_json::from_str(&inventory(30)).expect("GeoJSON");
    let far: Vec<String> = features["features"]
        .as_array()
        .expect("a list")
        .iter()
        .skip(1)
        .map(Value::to_string)
        .collect();
    let job = from_file(flatgeobuf(&collection(&far), Form::default())).expect("sound");
    assert!(job.glaciers.is_empty(), "all of it is far");
    let plan = schrund::plan(&job).expect("a plan");
    assert!(
        plan.findings
            .iter()
            .all(|finding| finding.code() != "no-inventory")
    );
}

#[test]
fn a_file_without_ice_is_the_wrong_one() {
    for index in [false, true] {
        let none = flatgeobuf(
            &collection(&[]),
            Form {
                index,
                ..Form::default()
            },
        );
        let faults = from_file(none).expect_err("nothing in it");
        assert_eq!(faults[0].code(), "no-zones", "{faults:?}");
    }
}

/// Counts what is read of it, and of how many places.
struct Counted(Cursor<Vec<u8>>, Arc<AtomicU64>);

impl Read for Counted {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let count = self.0.read(into)?;
        self.1.fetch_add(count as u64, Ordering::Relaxed);
        Ok(count)
    }
}

impl Seek for Counted {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        self.0.seek(to)
    }
}

#[test]
fn of_a_large_file_little_is_read() {
    let bytes = flatgeobuf(&inventory(10_000), Form::default());
    let whole = bytes.len();
    let read = Arc::new(AtomicU64::new(0));
    let mut sources = sources();
    let file: Seekable = Box::new(Counted(Cursor::new(bytes), Arc::clone(&read)));
    sources.glaciers_near = Some(Input::new("ice", file));
    let job = sources.job().expect("sound");
    assert_eq!(job.glaciers.len(), 1, "one lies near");
    let read = read.load(Ordering::Relaxed);
    // Header, a node with its sixteen children on each of four levels or a few, one feature.
    assert!(read < 16_000, "{read} of {whole} bytes");
    assert!(whole > 1_500_000, "{whole} bytes are no large file");
}

/// A line over the antimeridian, and the job that it makes with an inventory.
fn over_the_antimeridian(ice: Input<Seekable>) -> Job {
    let line = r#"<gpx><trk><trkseg><trkpt lat="66.5" lon="179.97"/><trkpt lat="66.5" lon="-179.97"/></trkseg></trk></gpx>"#;
    let mut sources = Sources::new(
        Input::text("route.gpx", line.as_bytes()),
        Input::text(
            "zones.geojson",
            &br#"{"type":"FeatureCollection","features":[]}"#[..],
        ),
    );
    sources.trip = Some(trip::file(Input::text("trip.toml", &b"party = 3"[..])));
    sources.glaciers_near = Some(ice);
    sources.job().expect("sound")
}

#[test]
fn over_the_antimeridian_the_ice_of_both_sides_is_near() {
    let square = |west: f64, east: f64| {
        feature_of(
            "{}",
            &polygon(&format!(
                "[[{west},66.4],[{east},66.4],[{east},66.6],[{west},66.6],[{west},66.4]]"
            )),
        )
    };
    let before = square(179.96, 179.98);
    let behind = square(-179.99, -179.98);
    // Beyond ±180 on one side, and a ring that jumps.
    let across = square(179.99, -179.995);
    let elsewhere = square(-170.0, -169.0);
    let all = collection(&[before, behind, across, elsewhere]);
    let file = || -> Seekable { Box::new(Cursor::new(flatgeobuf(&all, Form::default()))) };
    let job = over_the_antimeridian(Input::new("ice.fgb", file()));
    assert_eq!(job.glaciers.len(), 3, "{:?}", job.glaciers);
    let text: Seekable = Box::new(Cursor::new(all.into_bytes()));
    let whole = over_the_antimeridian(Input::new("ice.geojson", text));
    let planned = |job: &Job| outputs(job).swap_remove(1);
    assert_eq!(planned(&job), planned(&whole), "the plan in JSON");
}
