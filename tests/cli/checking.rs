//! `check` of several files: what one says of another is heeded, in whatever order they stand.

use std::fs;

use tempfile::tempdir;

use crate::fixture::program::{root, schrund, text};

#[test]
fn zones_without_a_width_are_checked_with_what_the_trip_file_assumes() {
    let folder = tempdir().unwrap();
    let outlines = root().join("tests/mistakes/outlines.geojson");
    fs::copy(outlines, folder.path().join("ice.geojson")).unwrap();
    fs::write(folder.path().join("trip.toml"), "party = 3\ngap_m = 6\n").unwrap();
    for files in [["ice.geojson", "trip.toml"], ["trip.toml", "ice.geojson"]] {
        let ran = schrund(folder.path(), &[&["check"], &files[..]].concat());
        let told = text(&ran.stderr);
        assert_eq!(ran.status.code(), Some(0), "{told}");
        assert!(
            told.contains("gap-assumed") && !told.contains("gap-not-given"),
            "{told}"
        );
    }
    let alone = schrund(folder.path(), &["check", "ice.geojson"]);
    assert_eq!(alone.status.code(), Some(4), "{}", text(&alone.stderr));
}
