//! Files from the field and files made to hurt: never a panic, always a code of the contract.

use std::path::Path;

use crate::fixture::{
    program::{root, schrund, text},
    real::{files_below, real_data},
};

/// Runs one plan and says what is wrong with how it ended.
fn fault(folder: &Path, route: &Path, zones: &Path) -> Option<String> {
    let (route, zones) = (route.display().to_string(), zones.display().to_string());
    let output = schrund(
        folder,
        &["plan", &route, &zones, "--party", "3", "--gap", "6"],
    );
    let stderr = text(&output.stderr);
    let code = output.status.code();
    let told = |code| match code {
        0 | 5 => !output.stdout.is_empty(),
        _ => stderr.contains("error[") && stderr.contains("\n  at: "),
    };
    let fine = matches!(code, Some(0 | 3 | 4 | 5))
        && code.is_some_and(told)
        && !stderr.contains("panicked");
    (!fine).then(|| format!("{route} {zones}: {code:?}\n{stderr}"))
}

#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn hostile_files_end_with_a_plan_or_an_error_that_names_its_place() {
    let data = real_data();
    let example = root().join("examples/vordalen");
    let mut faults = Vec::new();
    let files = files_below(&data.join("hostile"));
    for file in &files {
        if file.extension().is_some_and(|e| e == "gpx") {
            faults.extend(fault(&example, file, &example.join("zones.geojson")));
        } else {
            faults.extend(fault(&example, &example.join("route.gpx"), file));
        }
    }
    assert!(files.len() >= 165, "only {} files ran", files.len());
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn every_real_outline_is_read() {
    let data = real_data();
    for file in files_below(&data.join("outlines")) {
        let name = file.display().to_string();
        let output = schrund(&data, &["check", &name, "--gap", "6"]);
        assert_eq!(
            output.status.code(),
            Some(0),
            "{name}: {}",
            text(&output.stderr)
        );
    }
}
