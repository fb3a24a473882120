//! What is handed out of ice that nobody drew.

use schrund::read::{geojson, geojson::Given};

use crate::fixture::{planned::Planned, trip::Trip};

/// The line begins and ends on the ice of the inventory; one zone is drawn in its middle.
fn all_ice(word: &str) -> Planned {
    let trip = Trip::northward().inventory((-300.0, -1000.0), (300.0, 1000.0));
    trip.rules(&format!("undrawn_ice = \"{word}\"")).planned()
}

#[test]
fn no_output_says_to_unrope_on_ice() {
    for (word, says) in [
        ("tell", "ope off by your word"),
        ("rope", "oute ends on ice"),
    ] {
        let planned = all_ice(word);
        for format in ["table", "gpx", "kml", "geojson", "html", "text"] {
            let text = planned.written(format);
            assert!(
                text.contains(says) || format == "text",
                "{word} {format}: {text}"
            );
            // The report lists how many minutes that takes; it says no place.
            let told = text.to_lowercase().replace("or to unrope", "");
            let mut words = told.split(|c: char| !c.is_alphabetic());
            assert!(words.all(|w| w != "unrope"), "{word} {format}: {text}");
        }
    }
}

#[test]
fn a_device_gets_names_of_its_own_for_the_ends_on_ice() {
    let name = |word: &str| {
        let read = ::gpx::read(all_ice(word).written("gpx").as_bytes()).unwrap();
        read.waypoints.last().and_then(|w| w.name.clone()).unwrap()
    };
    assert_eq!([name("tell"), name("rope")], ["C OFF! 2", "B ICE 1"]);
}

#[test]
fn our_own_map_read_back_makes_no_zone_of_it() {
    let planned = all_ice("rope");
    let map = planned.written("geojson");
    let given = Given { gap_m: Some(9.0) };
    let again = geojson::zones("map.geojson", map.as_bytes(), &given).unwrap();
    assert_eq!(again.value.len(), planned.job.zones.len());
    assert_eq!(again.value[0].gap.max_m, 6.0);
}

#[test]
fn the_gap_of_such_a_leg_is_a_question() {
    let table = all_ice("rope").written("table");
    assert!(table.contains(" 6 ?"), "{table}");
    let csv = all_ice("rope").written("csv");
    assert!(csv.contains("ice-without-a-gap-width"), "{csv}");
}
