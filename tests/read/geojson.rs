//! The zones reader: every rule of the contract, with the whole message a leader reads.

mod assumed;
mod hostile;
mod nesting;
mod positions;
mod properties;
mod reading;
mod rings;
mod structure;

use schrund::{
    fault::{Level, Noted},
    read::geojson::{Given, zones},
    trip::zone::Zone,
};

use crate::fixture::texts::{collection, feature_of, polygon};

const SQUARE: &str = "[[7,46],[7.1,46],[7.1,46.1],[7,46.1],[7,46]]";

fn feature(properties: &str) -> String {
    feature_of(properties, &polygon(SQUARE))
}

fn one(properties: &str) -> String {
    collection(&[feature(properties)])
}

fn ring(points: &str) -> String {
    collection(&[feature_of(r#"{"gap_m":3}"#, &polygon(points))])
}

#[track_caller]
fn good(text: &str) -> Noted<Vec<Zone>> {
    good_given(text, None)
}

#[track_caller]
fn good_given(text: &str, gap_m: Option<f64>) -> Noted<Vec<Zone>> {
    zones("z.geojson", text.as_bytes(), &Given { gap_m }).unwrap_or_else(|problems| {
        let shown: Vec<String> = problems.iter().map(ToString::to_string).collect();
        panic!("{text}\nshould be read, but:\n{}", shown.join("\n"))
    })
}

#[track_caller]
fn bad(text: &str) -> Vec<String> {
    let Err(problems) = zones("z.geojson", text.as_bytes(), &Given::default()) else {
        panic!("should be refused:\n{text}")
    };
    let any = problems.iter().any(|p| p.level() == Level::Error);
    assert!(any, "refused without an error");
    problems.iter().map(ToString::to_string).collect()
}

#[track_caller]
fn refused(text: &str, expected: &[&str]) {
    assert_eq!(bad(text), expected, "for\n{text}");
}

#[track_caller]
fn noted(text: &str, expected: &[&str]) -> Vec<Zone> {
    let read = good(text);
    let shown: Vec<String> = read.notes.iter().map(ToString::to_string).collect();
    assert_eq!(shown, expected, "for\n{text}");
    read.value
}

fn outer(zone: &Zone) -> Vec<(f64, f64)> {
    let ring = &zone.outline.polygons[0].outer;
    ring.iter().map(|p| (p.lon_deg, p.lat_deg)).collect()
}
