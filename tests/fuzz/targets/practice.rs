//! Practice files: any bytes as TOML. Every figure that is taken lies within its bounds, and the set says the same once it was
//! written down again.
#![no_main]

use libfuzzer_sys::{fuzz_mutator, fuzz_target};
use schrund::{
    practice::{Rules, set::Source},
    read::input::Input,
};
use schrund_fuzz::{spoil, told};

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    spoil::spoilt(data, size, max_size, seed)
});

fuzz_target!(|bytes: &[u8]| {
    let text = match Input::text("mine.toml", bytes).whole() {
        Ok(text) => text,
        Err(faults) => return told::all(&faults, bytes),
    };
    let source = Source::File {
        name: "mine.toml",
        text: &text,
    };
    match Rules::with_practice(&source) {
        Ok(rules) => said(&source, &rules),
        Err(faults) => {
            assert!(!faults.is_empty(), "refused for nothing");
            told::all(&faults, bytes);
        }
    }
});

fn said(source: &Source<'_>, rules: &Rules) {
    for figure in rules.figures() {
        let within = (figure.min..=figure.max).contains(&figure.value);
        assert!(within, "{figure:?}");
    }
    let text = source
        .written()
        .unwrap_or_else(|faults| panic!("{faults:?}"));
    let again = Source::File {
        name: "mine.toml",
        text: &text,
    };
    let told = Rules::with_practice(&again).unwrap_or_else(|faults| panic!("{faults:?}: {text}"));
    assert_eq!(format!("{told:?}"), format!("{rules:?}"), "{text}");
    assert_eq!(again.written().as_ref(), Ok(&text), "written once more");
}
