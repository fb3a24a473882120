//! Zones: any bytes as GeoJSON. What is read is read the same in small pieces, by who has read it before, and once it is written
//! down again; a file with one zone more holds the others as they were.
#![no_main]

use std::io::BufReader;

use libfuzzer_sys::{fuzz_mutator, fuzz_target};
use schrund::{
    fault::{Level, Noted},
    read::{
        geojson::{KnownShapes, zones, zones_again},
        input::Input,
        lay,
    },
};
use schrund_fuzz::{
    drawn::{self, GIVEN},
    spoil, told,
};

/// Bytes at a time.
const PIECE: usize = 13;

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    spoil::spoilt(data, size, max_size, seed)
});

fuzz_target!(|bytes: &[u8]| {
    let read = lay::zones(Input::text("ice.geojson", bytes), GIVEN.gap_m);
    let known = KnownShapes::default();
    let again = || zones_again("ice.geojson", bytes, &GIVEN, &known);
    let pieces = zones(
        "ice.geojson",
        BufReader::with_capacity(PIECE, bytes),
        &GIVEN,
    );
    for other in [again(), again(), pieces] {
        assert_eq!(read.is_ok(), other.is_ok(), "{read:?} and {other:?}");
        if let (Ok(a), Ok(b)) = (&read, &other) {
            assert_eq!(a.value, b.value, "other zones");
        }
    }
    match &read {
        Ok(Noted { value, notes }) => {
            told::all(notes, bytes);
            value.iter().for_each(drawn::sound);
            drawn::one_more(bytes, value);
        }
        Err(faults) => {
            let wrong = faults.iter().any(|fault| fault.level() == Level::Error);
            assert!(wrong, "refused for nothing: {faults:?}");
            told::all(faults, bytes);
        }
    }
});
