//! UTM against numbers made by PROJ.

use schrund::geometry::{LonLat, Utm};

use crate::fixture::close;

#[test]
fn zone_easting_and_northing_agree_with_proj() {
    let mut rows = 0;
    for line in include_str!("../reference/utm.csv").lines().skip(2) {
        let cells: Vec<&str> = line.split(',').collect();
        let number = |i: usize| cells[i].parse::<f64>().expect("a number");
        let got = Utm::of(LonLat::new(number(0), number(1))).expect("inside UTM");
        assert_eq!(f64::from(got.zone), number(2), "zone of {line}");
        assert_eq!(got.band < 'N', cells[3] == "true", "hemisphere of {line}");
        close(line, got.easting_m, number(4), 1e-3);
        close(line, got.northing_m, number(5), 1e-3);
        rows += 1;
    }
    assert!(rows > 60, "only {rows} rows");
}
