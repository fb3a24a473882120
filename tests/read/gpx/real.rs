//! Files from the field, where `SCHRUND_REAL_DATA` names the folder that holds them.

use std::fs::{self, File};
use std::io::BufReader;
use std::path::Path;

use schrund::fault::{Code, Fault, Noted};
use schrund::read::gpx;
use schrund::trip::route::{Route, Stage};
use serde_json::Value;

use crate::fixture::real::{files_ending, real_data};

/// Lengths agree with the reference to this, metres: the reference prints 0.1 mm. \[ours\]
const LENGTH_TOLERANCE_M: f64 = 1e-3;

fn json(path: &Path) -> Value {
    serde_json::from_reader(File::open(path).expect("json")).expect("json")
}

fn noted(path: &Path) -> Result<Noted<Route>, Vec<Fault>> {
    gpx::route("real.gpx", BufReader::new(File::open(path).expect("gpx")))
}

fn read(path: &Path) -> Result<Route, Vec<Fault>> {
    noted(path).map(|noted| noted.value)
}

fn count(oracle: &Value, what: &str) -> u64 {
    oracle[what].as_u64().expect("count")
}

/// The counts come from another XML parser; points that repeat their predecessor or stand alone in their
/// segment are not part of a stage, so ours may be fewer, never more.
#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn every_file_of_other_projects_is_read_or_lacks_a_line() {
    let data = real_data();
    let oracle = json(&data.join("reference/hostile_oracle.json"));
    let mut ran = 0;
    for path in ["gpx_georust", "gpx_gpxpy"]
        .iter()
        .flat_map(|f| files_ending(&data.join("hostile").join(f), ".gpx"))
    {
        let key = path
            .strip_prefix(&data)
            .expect("inside")
            .to_string_lossy()
            .replace('\\', "/");
        let expected = &oracle[&key];
        match read(&path) {
            Ok(route) => {
                let points: usize = route.stages.iter().map(|s| s.points().len()).sum();
                let held = count(expected, "trkpt").max(count(expected, "rtept"));
                assert!(points as u64 <= held, "{key}: {points} of {held}");
            }
            Err(problems) => {
                let codes: Vec<_> = problems.iter().map(|p| p.code()).collect();
                assert_eq!(codes, ["no-line"], "{key}");
            }
        }
        ran += 1;
    }
    assert!(ran >= 41, "only {ran} files read");
}

fn segment_lengths_m(stage: &Stage) -> Vec<f64> {
    let at = |i: usize| stage.chainage_m()[i];
    stage
        .segments()
        .map(|s| at(s.end - 1) - at(s.start))
        .collect()
}

/// Points of the file that do not repeat their predecessor, counted without an XML parser.
fn points_in_a_row(text: &str) -> usize {
    let mut last = "";
    let mut points = 0;
    for tag in text
        .split('<')
        .filter(|t| t.starts_with("trkpt") || t.starts_with("rtept") || t.starts_with("trkseg"))
    {
        let tag = tag
            .split('>')
            .next()
            .unwrap_or_default()
            .trim_end_matches('/')
            .trim();
        points += usize::from(tag != last && !tag.starts_with("trkseg"));
        last = tag;
    }
    points
}

#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn lengths_and_points_agree_with_the_reference() {
    let data = real_data();
    let mut ran = 0;
    for path in files_ending(&data.join("reference"), ".json")
        .iter()
        .filter(|p| p.to_string_lossy().contains("__"))
    {
        let reference = json(path);
        let track = data.join(reference["track"].as_str().expect("track"));
        let route = read(&track).expect("usable");
        let points: usize = route.stages.iter().map(|s| s.points().len()).sum();
        let text = fs::read_to_string(&track).expect("gpx");
        assert_eq!(points, points_in_a_row(&text), "{}", track.display());
        assert!(
            points as u64 <= count(&reference, "points"),
            "{}",
            track.display()
        );

        let ours: Vec<f64> = route.stages.iter().flat_map(segment_lengths_m).collect();
        let theirs: Vec<f64> = reference["segments"]
            .as_array()
            .expect("segments")
            .iter()
            .filter_map(|s| s["length_m"].as_f64())
            .collect();
        assert_eq!(ours.len(), theirs.len(), "{}", track.display());
        let total = (
            route.length_m(),
            reference["length_nogap_m"].as_f64().expect("length"),
        );
        for (ours, theirs) in ours.into_iter().zip(theirs).chain([total]) {
            assert!(
                (ours - theirs).abs() <= LENGTH_TOLERANCE_M,
                "{}: {ours} m, {theirs} m",
                track.display()
            );
        }
        ran += 1;
    }
    assert!(ran >= 7, "only {ran} references compared");
}

/// The extremes of one file were put into it by whoever made it, and the other was cut down to three points of a day.
#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn real_tracks_are_suspected_only_of_what_is_in_them() {
    let data = real_data();
    let (mut ran, mut suspected) = (0, Vec::new());
    let folders = ["gpx", "hostile/gpx_georust", "hostile/gpx_gpxpy"].iter();
    for path in folders.flat_map(|f| files_ending(&data.join(f), ".gpx")) {
        let Ok(noted) = noted(&path) else { continue };
        ran += 1;
        let name = path.file_stem().expect("a name").to_string_lossy();
        let codes = noted.notes.iter().map(Fault::kind);
        let suspicions = [
            Code::LonePoint,
            Code::LoneHeight,
            Code::ZeroPoint,
            Code::LongEdge,
        ];
        let found = codes.filter(|c| suspicions.contains(c));
        suspected.extend(found.map(|code| format!("{name}: {}", code.as_str())));
    }
    assert!(ran >= 36, "only {ran} tracks read");
    let want = [
        "caltopo-export: long-edge",
        "track-with-extremes: lone-point",
        "track-with-extremes: lone-point",
    ];
    assert_eq!(suspected, want);
}
