//! What a page asks of the program that it holds, without its files: `schrund page ground`, `panel`, `ways`, `trip` and `toml`, of a
//! parcel like that of a plan. Every answer is JSON, and who asks a second time, with all that is remembered, gets the same.
#![no_main]

use libfuzzer_sys::{fuzz_mutator, fuzz_target};
use schrund_fuzz::{
    asked::{Asked, PARTS},
    parcel::Parcel,
    spoil, told,
};
use serde_json::{Value, from_str};

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    spoil::spoilt(data, size, max_size, seed)
});

fuzz_target!(|bytes: &[u8]| {
    let parcel = Parcel::of(bytes);
    let says = |word: &str| parcel.says("ask", word);
    let open: Vec<String> = PARTS
        .iter()
        .filter(|id| says(id))
        .map(|id| (*id).to_owned())
        .collect();
    let page = Asked::of(&parcel);
    let ask = || match () {
        () if says("ground") => page.ground(),
        () if says("ways") => page.ways(),
        () if says("trip") => page.trip(),
        () if says("toml") => Ok(page.toml()),
        () => page.panel(&open),
    };
    let first = ask();
    match &first {
        Ok(_) if says("toml") => {}
        Ok(json) => assert!(from_str::<Value>(json).is_ok(), "{json}"),
        Err(faults) => told::all(faults, bytes),
    }
    // A number that is none is never equal: compared is what is seen.
    let seen = |answer| format!("{answer:?}");
    assert_eq!(seen(first), seen(ask()), "another answer the second time");
});
