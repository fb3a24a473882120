//! KML for globes. `.ci/schemas` validates against the schema; these stand in where it is not at hand.

use quick_xml::{Reader, events::Event};
use schrund::write::parts::look::looks;

use crate::fixture::{planned::over_the_pass, trip::spot};

/// The texts of every element of that name.
pub(super) fn texts(xml: &str, name: &str) -> Vec<String> {
    let mut reader = Reader::from_str(xml);
    let (mut found, mut open) = (Vec::new(), false);
    loop {
        match reader.read_event().unwrap() {
            Event::Start(e) if e.name().as_ref() == name => {
                open = true;
                found.push(String::new());
            }
            Event::End(e) if e.name().as_ref() == name => open = false,
            Event::Text(t) if open => {
                let text: &str = &t;
                found.last_mut().unwrap().push_str(text);
            }
            Event::GeneralRef(r) if open => {
                let name: &str = &r;
                let text = quick_xml::escape::resolve_predefined_entity(name).unwrap();
                found.last_mut().unwrap().push_str(text);
            }
            Event::Eof => return found,
            _ => {}
        }
    }
}

#[test]
fn zones_legs_and_changes_are_all_there_with_their_text() {
    let trip = over_the_pass(3);
    let text = trip.written("kml");
    let roped = trip.plan.legs.iter().filter(|l| l.roped).count();
    let looks = looks(&trip.sheet()).len();
    let want = trip.job.zones.len() + trip.plan.legs.len() + 2 * roped + looks;
    assert_eq!(text.matches("<Placemark>").count(), want);
    let descriptions = texts(&text, "description");
    assert_eq!(descriptions.len(), 1 + want, "and the document's own");
    assert!(
        descriptions.iter().all(|d| !d.is_empty()),
        "every one says something"
    );
    assert!(
        descriptions[1].contains("seen in June"),
        "{}",
        descriptions[1]
    );
}

#[test]
fn every_style_that_is_asked_for_is_there() {
    let text = over_the_pass(3).written("kml");
    let asked = texts(&text, "styleUrl");
    assert!(!asked.is_empty(), "features are styled");
    for style in asked {
        let id = format!("<Style id=\"{}\">", style.trim_start_matches('#'));
        assert!(text.contains(&id), "{id}");
    }
}

#[test]
fn coordinates_are_longitude_first_and_rings_are_closed() {
    let text = over_the_pass(3).written("kml");
    for ring in texts(&text, "coordinates") {
        for pair in ring.split(' ') {
            let (lon, lat) = pair.split_once(',').unwrap();
            let (lon, lat): (f64, f64) = (lon.parse().unwrap(), lat.parse().unwrap());
            assert!(
                (lon - spot().lon_deg).abs() < 0.1 && (lat - spot().lat_deg).abs() < 0.1,
                "{pair}"
            );
        }
    }
    let after = text.split("<LinearRing>").nth(1).unwrap();
    let ring = &texts(after.split("</LinearRing>").next().unwrap(), "coordinates")[0];
    let ends = (ring.split(' ').next(), ring.split(' ').next_back());
    assert_eq!(ends.0, ends.1);
}
