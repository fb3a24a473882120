//! Rasters written in the test, and `.hgt` tiles.

use schrund::{geometry::LonLat, say::fault::says};

use super::{refusal, terrain_of};
use crate::fixture::{close_if as close, raster::degrees};

#[test]
fn a_big_bare_strip_is_read_in_pieces() {
    let raster = degrees(700, 1500);
    let value = |c: u32, r: u32| f64::from(c) + f64::from(r) / 2.0;
    let heights: Vec<f32> = (0..1500)
        .flat_map(|r| (0..700).map(move |c| value(c, r) as f32))
        .collect();
    for strip_rows in [1500, 750, 400] {
        let terrain = terrain_of("bare.tif", raster.encode(strip_rows, &heights)).expect("opens");
        for (c, r) in [
            (0, 0),
            (699, 1499),
            (350, 374),
            (350, 375),
            (12, 749),
            (12, 750),
            (699, 1199),
        ] {
            let got = terrain.nearest_m(raster.centre(c, r)).expect("readable");
            close(
                &format!("{strip_rows} rows, cell {c} {r}"),
                got,
                Some(value(c, r)),
                0.0,
            );
        }
    }
    let terrain = terrain_of("bare.tif", raster.encode(1500, &heights)).expect("opens");
    terrain.height_m(raster.centre(100, 100)).expect("readable");
    assert_eq!(
        terrain.parts_unpacked(),
        1,
        "one place costs one piece of four"
    );
}

#[test]
fn only_what_lies_under_the_places_is_unpacked() {
    let raster = degrees(64, 640);
    let terrain = terrain_of("strips.tif", raster.write(8, |_, _| 1.0)).expect("opens");
    assert_eq!(terrain.parts_unpacked(), 0, "opening unpacks nothing");
    for c in 0..60 {
        terrain.height_m(raster.centre(c, 84)).expect("readable");
    }
    assert_eq!(terrain.parts_unpacked(), 1, "one strip of eighty");
    terrain
        .height_m(raster.centre(5, 87).along_edge(raster.centre(5, 88), 0.5))
        .expect("readable");
    assert_eq!(
        terrain.parts_unpacked(),
        2,
        "between two strips both are needed"
    );
}

#[test]
fn a_model_that_is_void_everywhere_says_so() {
    let raster = degrees(20, 20);
    let terrain = terrain_of("void.tif", raster.write(20, |_, _| -9999.0)).expect("opens");
    assert!(terrain.notes().is_empty(), "nothing was asked yet");
    close(
        "void",
        terrain.height_m(raster.centre(9, 9)).expect("readable"),
        None,
        0.0,
    );
    let notes = terrain.notes();
    assert!(
        says(&notes[0], Default::default())
            .to_string()
            .contains("no height at any of the 1 places"),
        "{notes:?}"
    );
}

#[test]
fn undeclared_flags_are_void_and_told() {
    let raster = degrees(20, 20);
    let terrain = terrain_of("flag.tif", raster.write(20, |_, _| -32768.0)).expect("opens");
    close(
        "flag",
        terrain.nearest_m(raster.centre(9, 9)).expect("readable"),
        None,
        0.0,
    );
    let told = terrain.notes().iter().any(|n| {
        says(n, Default::default())
            .to_string()
            .contains("cannot be heights")
    });
    assert!(told, "{:?}", terrain.notes());
}

/// A tile of 1201 nodes whose height is columns from the west plus rows from the south.
fn tile() -> Vec<u8> {
    let node = |c: i16, r: i16| {
        if (c, r) == (600, 600) {
            -32768
        } else {
            c + 1200 - r
        }
    };
    (0..1201)
        .flat_map(|r| (0..1201).flat_map(move |c| node(c, r).to_be_bytes()))
        .collect()
}

#[test]
fn hgt_nodes_lie_on_whole_degrees() {
    let terrain = terrain_of("some/where/s47w074.hgt", tile()).expect("opens");
    for (lon, lat, want) in [
        (-74.0, -47.0, Some(0.0)),
        (-73.0, -46.0, Some(2400.0)),
        (-73.0, -47.0, Some(1200.0)),
        (-73.75, -46.75, Some(600.0)),
        (-73.75 - 1.0 / 2400.0, -46.75, Some(599.5)),
        (-73.5, -46.5, None),
        (-72.99, -46.5, None),
    ] {
        let got = terrain.height_m(LonLat::new(lon, lat)).expect("readable");
        close(&format!("{lon} {lat}"), got, want, 1e-6);
    }
    let east = terrain
        .height_m(LonLat::new(286.25, -46.75))
        .expect("readable");
    close("longitudes may be unrolled", east, Some(600.0), 1e-6);
}

#[test]
fn hgt_tiles_need_name_and_size() {
    let nameless = refusal("a tile without a place", terrain_of("dem.hgt", tile()));
    assert!(
        says(&nameless, Default::default())
            .to_string()
            .contains("N46E007.hgt"),
        "{nameless}"
    );
    let short = refusal(
        "a short tile",
        terrain_of("N46E007.hgt", tile()[..2_884_000].to_vec()),
    );
    assert!(
        says(&short, Default::default())
            .to_string()
            .contains("2884000"),
        "{short}"
    );
}

#[test]
fn other_formats_are_named() {
    for (bytes, word) in [
        (&b"PK\x03\x04 zip of tiles"[..], "ZIP"),
        (b"SQLite format 3\0 geopackage", "SQLite"),
        (b"ncols 5\nnrows 5\n", "ASCII grid"),
        (b"hello, world", "neither"),
        (b"", "0 bytes"),
        (b"II*\0", "ends after 4 bytes"),
    ] {
        let problem = refusal(word, terrain_of("given.file", bytes.to_vec()));
        assert!(
            says(&problem, Default::default())
                .to_string()
                .contains(word),
            "{problem}"
        );
    }
}
