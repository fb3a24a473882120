//! Several models as one, and windows for drawing.

use std::io::Cursor;

use schrund::{geometry::LonLat, raster::Terrain};

use crate::fixture::{
    close_if as close,
    raster::{Raster, degrees},
};

fn add(terrain: &mut Terrain, name: &str, bytes: Vec<u8>) {
    terrain
        .add(name, Box::new(Cursor::new(bytes)))
        .unwrap_or_else(|e| panic!("{e}"));
}

/// Fine in the west half with a void, coarse everywhere.
fn two() -> Terrain {
    let fine = Raster {
        columns: 100,
        rows: 100,
        corner: (7.5, 46.2),
        cell: (0.0001, 0.0001),
        epsg: 4326,
    };
    let coarse = Raster {
        columns: 40,
        rows: 20,
        corner: (7.5, 46.2),
        cell: (0.0005, 0.0005),
        epsg: 4326,
    };
    let hole = |x: f64, y: f64| (x - 7.505).abs() < 0.001 && (y - 46.195).abs() < 0.001;
    let mut terrain = Terrain::new();
    add(&mut terrain, "coarse", coarse.write(20, |_, _| 1000.0));
    add(
        &mut terrain,
        "fine",
        fine.write(100, |x, y| if hole(x, y) { -9999.0 } else { 2000.0 }),
    );
    terrain
}

#[test]
fn the_finest_answers_and_voids_fall_through() {
    let terrain = two();
    let names: Vec<_> = terrain.models().map(|m| m.0).collect();
    assert_eq!(
        names,
        ["fine", "coarse"],
        "finest first, whatever the order of adding"
    );
    for (lon, lat, want) in [
        (7.502, 46.192, Some(("fine", 2000.0))),
        (7.505, 46.195, Some(("coarse", 1000.0))),
        (7.515, 46.195, Some(("coarse", 1000.0))),
        (7.6, 46.195, None),
    ] {
        let got = terrain.sample(LonLat::new(lon, lat)).expect("readable");
        assert_eq!(got.map(|s| (s.model, s.height_m)), want, "{lon} {lat}");
    }
    let fine_m = terrain
        .resolution_m(LonLat::new(7.502, 46.192))
        .expect("readable");
    close("cell of 0.0001° at 46° N", fine_m, Some(9.27), 0.1);
}

#[test]
fn sheets_of_one_lattice_join_without_a_seam() {
    let sheet = |x: f64| Raster {
        columns: 50,
        rows: 50,
        corner: (x, 1_150_000.0),
        cell: (2.0, 2.0),
        epsg: 2056,
    };
    let plane = |x: f64, y: f64| 1500.0 + (x - 2_640_000.0) / 4.0 + (y - 1_150_000.0) / 8.0;
    let mut terrain = Terrain::new();
    for west in [2_640_000.0, 2_640_100.0] {
        let raster = sheet(west);
        add(
            &mut terrain,
            &format!("sheet {west}"),
            raster.write(50, plane),
        );
    }
    let map = schrund::geometry::projection::Projection::parse(
        "+proj=somerc +lat_0=46.9524055555556 +lon_0=7.43958333333333 +k_0=1 +x_0=2600000 +y_0=1200000 +ellps=bessel +units=m +towgs84=674.374,15.056,405.346",
    )
    .expect("LV95");
    for x in [2_640_099.2, 2_640_099.9, 2_640_100.3, 2_640_100.9] {
        let at = map.inverse(x, 1_149_950.0).expect("inside");
        let got = terrain.height_m(at).expect("readable");
        close(&format!("at {x}"), got, Some(plane(x, 1_149_950.0)), 1e-3);
        assert!(
            terrain.slope(at).expect("readable").is_some(),
            "slope across the seam at {x}"
        );
    }
}

#[test]
fn a_window_is_what_single_places_say() {
    let terrain = two();
    let (sw, ne) = (LonLat::new(7.499, 46.189), LonLat::new(7.519, 46.199));
    let (columns, rows) = (41, 21);
    let window = terrain.relief(sw, ne, columns, rows).expect("readable");
    assert_eq!(window.len(), columns * rows, "one height a place");
    let mut known = 0;
    for (i, got) in window.iter().enumerate() {
        let (c, r) = ((i % columns) as f64, (i / columns) as f64);
        let at = LonLat::new(sw.lon_deg + c / 40.0 * 0.02, ne.lat_deg - r / 20.0 * 0.01);
        let want = terrain.height_m(at).expect("readable");
        close(
            &format!("column {c}, row {r}"),
            got.map(f64::from),
            want,
            1e-3,
        );
        known += usize::from(want.is_some());
    }
    assert!(
        known > 400 && known < columns * rows,
        "{known} known of {}",
        columns * rows
    );
    assert!(
        terrain.relief(sw, ne, usize::MAX, 2).is_err(),
        "too large a window"
    );
    assert!(terrain.relief(sw, ne, 0, 2).is_err(), "an empty window");
}

#[test]
fn models_far_away_do_not_answer() {
    let raster = Raster {
        columns: 400,
        rows: 400,
        corner: (300_000.0, 5_200_000.0),
        cell: (1000.0, 1000.0),
        epsg: 32632,
    };
    let mut terrain = Terrain::new();
    add(&mut terrain, "zone 32", raster.write(400, |_, _| 5.0));
    for lon in -179..180 {
        for lat in [-89.0, -46.0, 0.0, 46.0, 89.0] {
            let got = terrain
                .height_m(LonLat::new(f64::from(lon), lat))
                .expect("readable");
            let inside = lat == 46.0 && (7..12).contains(&lon);
            assert_eq!(got.is_some(), inside, "{lon} {lat}");
        }
    }
}

#[test]
fn positions_that_are_none_have_no_height() {
    let mut terrain = Terrain::new();
    add(&mut terrain, "a", degrees(20, 20).write(20, |_, _| 5.0));
    for at in [
        LonLat::new(f64::NAN, 46.0),
        LonLat::new(7.5, f64::INFINITY),
        LonLat::new(1e300, 46.0),
    ] {
        close(
            "no position",
            terrain.height_m(at).expect("readable"),
            None,
            0.0,
        );
        assert_eq!(terrain.slope(at).expect("readable"), None, "{at:?}");
    }
}

#[test]
fn threads_can_share_a_terrain() {
    let terrain = two();
    let ask = || {
        terrain
            .height_m(LonLat::new(7.502, 46.192))
            .expect("readable")
    };
    std::thread::scope(|s| {
        let (one, two) = (s.spawn(ask), s.spawn(ask));
        assert_eq!(
            one.join().expect("ends"),
            two.join().expect("ends"),
            "same answer"
        );
    });
}
