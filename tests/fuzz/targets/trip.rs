//! Trip files: any bytes as TOML. What is read can be checked and laid over the figures, and is the same once it was written down
//! again, as TOML and as JSON.
#![no_main]

use libfuzzer_sys::{fuzz_mutator, fuzz_target};
use schrund::{
    fault::{Fault, Place},
    limits::InputLimits,
    practice::{Origin, Rules, set},
    read::{
        input::Input,
        trip::{self, Laid, Trip, check, toml_of_json},
    },
    write::page,
};
use schrund_fuzz::{spoil, told};

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    spoil::spoilt(data, size, max_size, seed)
});

fuzz_target!(|bytes: &[u8]| {
    let read = trip::file(Input::text("trip.toml", bytes)).source;
    match read {
        Ok(trip) => said(&trip, bytes),
        Err(faults) => told(&faults, bytes),
    }
});

fn told(faults: &[Fault], bytes: &[u8]) {
    assert!(!faults.is_empty(), "refused for nothing");
    told::all(faults, bytes);
}

fn said(trip: &Trip, bytes: &[u8]) {
    let place = Place::file("trip.toml");
    let checked = check(trip, &place, &InputLimits::default());
    if let Err(faults) = &checked {
        told(faults, bytes);
    }
    let first = set::Source::Named(set::EMBEDDED[0].0);
    let rules = Rules::with_practice(&first).unwrap_or_else(|faults| panic!("{faults:?}"));
    let mut laid = Laid::of(rules);
    let sound = trip.lay_over(&mut laid, &place, &Origin::Trip);
    assert!(sound.is_ok() || checked.is_err(), "{sound:?}");
    let party = trip.party(&place, &laid.rules, &InputLimits::default());
    assert!(party.is_ok() || checked.is_err(), "{party:?}");
    written(trip, &laid.rules, checked.is_ok());
}

/// Written down and read again. Of numbers that are none JSON has no word, and no trip that holds one can be gone on.
fn written(trip: &Trip, rules: &Rules, is_sound: bool) {
    let toml = trip.toml().unwrap_or_else(|why| panic!("{why}: {trip:?}"));
    same(&toml, trip);
    let json = trip.json().unwrap_or_else(|why| panic!("{why}: {trip:?}"));
    assert!(
        page::trip::json(&json, rules, Default::default()).is_ok(),
        "for a page"
    );
    let by_json = toml_of_json(&json.to_string());
    if is_sound {
        same(&by_json.unwrap_or_else(|why| panic!("{why}: {json}")), trip);
    }
    let over = trip.clone().over(Trip::default());
    assert_eq!(format!("{over:?}"), format!("{trip:?}"), "over nothing");
}

/// Figures that are no numbers are never equal: compared is what is seen of them.
fn same(text: &str, trip: &Trip) {
    let again =
        trip::trip("again.toml", text).unwrap_or_else(|faults| panic!("{faults:?}: {text}"));
    assert_eq!(format!("{again:?}"), format!("{trip:?}"), "{text}");
}
