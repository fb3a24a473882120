//! Longitude and latitude swapped in one of two files: the one that is wrong is blamed.

use schrund::{
    geometry::LonLat,
    read::swapped::{FileNames, swapped},
    trip::zone::Zone,
};

use crate::fixture::any::{route, zone};

fn square(lon: f64, lat: f64) -> Zone {
    let corners = [(0.0, 0.0), (0.1, 0.0), (0.1, 0.1), (0.0, 0.1)];
    let ring = corners.map(|(x, y)| LonLat::new(lon + x, lat + y)).to_vec();
    zone(1, &[ring], 4.0)
}

/// Which file is blamed, where the ice lies here and the line there.
fn blamed(ice: (f64, f64), line: (f64, f64), known: Option<(f64, f64)>) -> Option<String> {
    let line = route(&[
        LonLat::new(line.0, line.1),
        LonLat::new(line.0 + 0.05, line.1 + 0.05),
    ]);
    let glaciers: Vec<Zone> = known.iter().map(|&(lon, lat)| square(lon, lat)).collect();
    let names = FileNames {
        route: "line.gpx",
        zones: "ice.geojson",
    };
    let fault = swapped(&line, &[square(ice.0, ice.1)], &glaciers, names)?;
    assert_eq!(fault.code(), "bad-position", "whichever is blamed");
    Some(fault.at.file.unwrap_or_else(|| "either".to_owned()))
}

#[test]
fn the_file_that_lies_where_no_ice_can_lie_is_blamed() {
    // Alps, Norway, Himalaya, Svalbard: swapped they lie in warm lands and oceans, or beyond the last land.
    for (lon, lat) in [(8.0, 46.5), (7.0, 61.6), (86.9, 28.0), (16.0, 78.0)] {
        assert_eq!(
            blamed((lon, lat), (lat, lon), None).as_deref(),
            Some("line.gpx"),
            "{lon} {lat}"
        );
        assert_eq!(
            blamed((lat, lon), (lon, lat), None).as_deref(),
            Some("ice.geojson"),
            "{lon} {lat}"
        );
    }
}

#[test]
fn where_ice_can_lie_both_ways_the_inventory_tells_and_else_both_are_named() {
    let (here, there) = ((35.8, 76.0), (76.0, 35.8));
    assert_eq!(blamed(here, there, None).as_deref(), Some("either"));
    assert_eq!(
        blamed(here, there, Some(there)).as_deref(),
        Some("ice.geojson")
    );
    assert_eq!(blamed(here, there, Some(here)).as_deref(), Some("line.gpx"));
}

#[test]
fn files_that_meet_or_would_not_meet_either_way_are_not_told() {
    assert_eq!(blamed((8.0, 46.5), (8.0, 46.5), None), None);
    assert_eq!(blamed((8.0, 46.5), (10.0, 46.5), None), None);
    assert_eq!(
        blamed((43.0, 43.0), (43.0, 43.0), None),
        None,
        "the same both ways"
    );
}
