//! Files with random damage: no panic, no hang, no wild memory, whatever the bytes.

use std::{fs, io::Cursor, path::Path, time::Instant};

use schrund::{geometry::LonLat, raster::Terrain};

use crate::fixture::raster::degrees;

/// A small generator of numbers (xorshift), so that the damage is the same every time.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % n as u64) as usize
    }
}

/// Opens and asks what can be asked; returns whether it opened.
fn ask(bytes: Vec<u8>) -> bool {
    let mut terrain = Terrain::new();
    if terrain
        .add("damaged.tif", Box::new(Cursor::new(bytes)))
        .is_err()
    {
        return false;
    }
    for i in 0..40 {
        let t = f64::from(i) / 40.0;
        let at = LonLat::new(7.5 + 0.02 * t, 46.2 - 0.01 * t);
        let _ = terrain.height_m(at);
        let _ = terrain.slope(at);
    }
    let (sw, ne) = (LonLat::new(7.4, 46.1), LonLat::new(7.6, 46.3));
    let _ = terrain.relief(sw, ne, 9, 9);
    true
}

fn subjects() -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/terrain");
    let read = |name: &str| fs::read(folder.join(name)).expect("the file is there");
    vec![
        degrees(37, 29).write(7, |x, y| 1000.0 * x - 100.0 * y),
        read("degrees.tif"),
        read("tiles_int16_p2.tif"),
        read("big_endian_p3.tif"),
        read("bigtiff_tiles.tif"),
        read("scaled.tif"),
    ]
}

#[test]
fn damage_never_panics_or_hangs() {
    let mut dice = Dice(0x9E37_79B9_7F4A_7C15);
    let started = Instant::now();
    let (mut opened, mut closed) = (0, 0);
    for whole in subjects() {
        for round in 0..400 {
            let mut bytes = whole.clone();
            for _ in 0..=dice.below(4) {
                let near_the_tables = if round % 2 == 0 {
                    bytes.len()
                } else {
                    bytes.len().min(700)
                };
                let at = dice.below(near_the_tables);
                bytes[at] = dice.below(256) as u8;
            }
            if round % 7 == 0 {
                bytes.truncate(dice.below(whole.len()));
            }
            if ask(bytes) { opened += 1 } else { closed += 1 }
        }
    }
    assert!(
        opened > 100 && closed > 100,
        "damage that decides: {opened} opened, {closed} refused"
    );
    assert!(
        started.elapsed().as_secs() < 120,
        "took {:?}",
        started.elapsed()
    );
}

#[test]
fn a_file_cut_inside_its_tables_says_where_it_ends() {
    let whole = fs::read("tests/reference/terrain/degrees.tif").expect("the file is there");
    let mut told = 0;
    for bytes in [8, 9, 60, 200] {
        let cut = Cursor::new(whole[..bytes].to_vec());
        let Err(fault) = Terrain::new().add("cut.tif", Box::new(cut)) else {
            panic!("{bytes} bytes are no model")
        };
        assert!(!fault.to_string().contains("buffer"), "{fault}");
        told += usize::from(fault.to_string().starts_with(&format!(
            "error[terrain-broken]: it is cut off: it ends after {bytes} bytes, before its tables do\n  at: cut.tif\n  do: fetch or copy the file again"
        )));
    }
    assert!(told > 0, "none of them ends inside the tables");
}
