//! Zones: any bytes as GeoJSON. What is read is read the same in small pieces, by who has read it before, and once it is written
//! down again; a file with one zone more holds the others as they were.
#![no_main]
#![forbid(unsafe_code)]

use std::io::BufReader;

use libfuzzer_sys::{fuzz_mutator, fuzz_target};
use schrund::{
    fault::{Fault, Level, Noted},
    geometry::LonLat,
    read::{
        geojson::{Given, KnownShapes, zones, zones_again},
        input::Input,
        lay,
    },
    strip::{LineStrip, append},
    trip::{route::Stretch, zone::Zone},
};
use schrund_fuzz::{spoil, told};

/// A width for those that give none.
const GIVEN: Given = Given { gap_m: Some(4.0) };
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
            value.iter().for_each(sound);
            appended(bytes, value);
        }
        Err(faults) => {
            let wrong = faults.iter().any(|fault| fault.level() == Level::Error);
            assert!(wrong, "refused for nothing: {faults:?}");
            told::all(faults, bytes);
        }
    }
});

fn sound(zone: &Zone) {
    assert!(
        zone.gap.max_m > 0.0 && zone.gap.max_m.is_finite(),
        "{:?}",
        zone.gap
    );
    assert!(
        zone.gap.min_m.is_none_or(|min_m| min_m <= zone.gap.max_m),
        "{:?}",
        zone.gap
    );
    assert!(
        zone.strike.is_none_or(|s| (0.0..180.0).contains(&s.deg)),
        "{:?}",
        zone.strike
    );
    let mut rings = zone
        .outline
        .polygons
        .iter()
        .flat_map(|polygon| polygon.rings());
    assert!(
        rings.all(|ring| ring.len() >= 4 && ring.iter().all(on_earth)),
        "rings"
    );
    let feature = strip(zone).feature();
    let again = zones("again.geojson", feature.as_bytes(), &GIVEN);
    let again = again.unwrap_or_else(|faults| panic!("{faults:?}: {feature}"));
    let again = Zone {
        number: zone.number,
        feature: zone.feature,
        other: zone.other.clone(),
        ..again.value[0].clone()
    };
    assert_eq!(&again, zone, "written down again as {feature}");
}

fn on_earth(at: &LonLat) -> bool {
    at.lat_deg.abs() <= 90.0 && at.lon_deg.is_finite()
}

fn strip(zone: &Zone) -> LineStrip {
    LineStrip {
        stretch: Stretch {
            from_m: 0.0,
            to_m: 1.0,
        },
        half_width_m: 1.0,
        area_m2: 1.0,
        again: Vec::new(),
        zone: zone.clone(),
    }
}

/// The file with its first zone behind it once more.
fn appended(bytes: &[u8], all: &[Zone]) {
    let strips: Vec<LineStrip> = all.iter().take(1).map(strip).collect();
    let file: Result<append::Appended, Vec<Fault>> =
        append::to("ice.geojson", Some(bytes.to_vec()), &strips);
    let Ok(file) = file else { return };
    assert_eq!(file.zones, Some(all.len() + strips.len()), "{}", file.text);
    let again = zones("ice.geojson", file.text.as_bytes(), &GIVEN);
    let again = again.map(|read| read.value).unwrap_or_default();
    assert_eq!(&again[..all.len()], all, "the others are as they were");
}
