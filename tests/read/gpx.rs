//! What the GPX reader accepts, what it notes and what it refuses, with the whole of every message.

use schrund::fault::{Fault, Noted};
use schrund::read::gpx;
use schrund::trip::route::Route;

mod broken;
mod faults;
mod foreign;
mod real;
mod rules;
mod suspicions;

fn read(text: impl AsRef<[u8]>) -> Result<Noted<Route>, Vec<Fault>> {
    gpx::route("tour.gpx", text.as_ref())
}

/// What is read from a file that must be good.
#[track_caller]
fn good(text: impl AsRef<[u8]>) -> Noted<Route> {
    match read(text) {
        Ok(noted) => noted,
        Err(problems) => panic!("refused: {:#?}", shown(&problems)),
    }
}

/// Every complaint about a file that must be refused.
#[track_caller]
fn wrong(text: impl AsRef<[u8]>) -> Vec<String> {
    match read(text) {
        Ok(noted) => panic!("accepted: {noted:?}"),
        Err(problems) => shown(&problems),
    }
}

fn shown(problems: &[Fault]) -> Vec<String> {
    problems.iter().map(ToString::to_string).collect()
}

/// Longitude, latitude of every point, stage by stage.
fn points(route: &Route) -> Vec<Vec<(f64, f64)>> {
    let stage = |s: &schrund::trip::route::Stage| {
        s.points().iter().map(|p| (p.lon_deg, p.lat_deg)).collect()
    };
    route.stages.iter().map(stage).collect()
}

/// Two points that make a line.
const PAIR: &str = r#"<trkpt lat="46.5" lon="8.0"/><trkpt lat="46.501" lon="8.0"/>"#;

/// The text without its `¦`, and the place where that stood as complaints give it.
#[track_caller]
fn marked(text: &str) -> (String, String) {
    let (before, after) = text.split_once('¦').expect("a mark");
    let line = before.matches('\n').count() + 1;
    let column = before
        .rsplit('\n')
        .next()
        .unwrap_or_default()
        .chars()
        .count()
        + 1;
    (
        format!("{before}{after}"),
        format!("line {line} column {column}"),
    )
}
