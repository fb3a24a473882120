//! Faults, told to everybody whom they may be told to.

use schrund::{
    fault::Fault,
    say::{fault, interface::Interface, language::Language, plain, units::Units, voice::Voice},
    write::page::panel,
};

/// So many faults of a file are told: the others are of the same kinds.
const MOST: usize = 12;
/// What stands where a message or something said in it is missing.
const MISSING: [char; 2] = ['⟦', '⟧'];

/// Tells them in every language, and to a page; `of` is what was read.
///
/// # Panics
/// Something is missing in a message, or acts on where it is shown.
pub fn all(faults: &[Fault], of: &[u8]) {
    let quotes_a_gap = String::from_utf8_lossy(of).contains(MISSING);
    let faults = &faults[..faults.len().min(MOST)];
    for fault in faults {
        for voice in voices() {
            let told = fault::told(fault, voice);
            assert!(!told.is_empty(), "a fault without words");
            assert_eq!(plain::visible_lines(&told), told, "it acts on the terminal");
            assert!(quotes_a_gap || !told.contains(MISSING), "a gap: {told}");
        }
        assert!(!fault.explain().is_empty(), "nobody says what it means");
        assert!(serde_json::to_string(fault).is_ok(), "no JSON");
    }
    let voice = Voice {
        interface: Interface::Page,
        ..Voice::default()
    };
    assert!(panel::refused(faults, voice).is_ok(), "no JSON for a page");
}

fn voices() -> impl Iterator<Item = Voice> {
    let units = [Units::Metric, Units::Imperial];
    Language::ALL
        .iter()
        .zip(units)
        .map(|(language, units)| Voice {
            language: *language,
            units,
            interface: Interface::Flags,
        })
}
