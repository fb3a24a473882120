//! What files, addresses and calls bring along is text wherever it is shown: nothing of it moves a cursor, breaks a line or turns
//! what stands beside it about.

use std::{fs, path::Path};

use crate::fixture::program::{folder_of_example, schrund};

/// A name of controls (C0, DEL, C1), marks and overrides of direction (UAX 9), separators of lines, and a line break with
/// a line behind it that nobody is to take for one of the program's.
const EVIL: &str =
    "a\u{1b}[2J\u{7f}\u{9b}31m\u{85}\u{202E}b\u{2066}\u{200F}\u{61C}\u{2028}\rerror\nforged: c";

/// Characters that act, but for the break of a line that the program made and for what ends records of CSV.
fn acts(c: char) -> bool {
    let turns = "\u{200E}\u{200F}\u{61C}\u{202A}\u{202B}\u{202C}\u{202D}\u{202E}\u{2066}\u{2067}\u{2068}\u{2069}\u{2028}\u{2029}";
    (c.is_control() && c != '\n') || turns.contains(c)
}

/// What is printed on both streams does nothing; `\r\n` ends records of CSV (RFC 4180). In the call `EVIL` is the name.
#[track_caller]
fn is_harmless(folder: &Path, call: &str) {
    let args: Vec<String> = call
        .split(' ')
        .map(|word| word.replace("EVIL", EVIL))
        .collect();
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    let out = schrund(folder, &args);
    let code = out.status.code();
    assert!(code.is_some_and(|code| code <= 6), "{call}: {code:?}");
    for stream in [out.stdout, out.stderr] {
        let text = String::from_utf8(stream).unwrap().replace("\r\n", "\n");
        let found = text.char_indices().find(|(_, c)| acts(*c));
        assert_eq!(found, None, "{call} prints {text:?}");
        let forged = text.lines().find(|line| line.starts_with("forged"));
        assert_eq!(forged, None, "{call}");
    }
}

/// The trip of the documentation with every word of the leader replaced, a zones file at fault, and a trip file at fault.
fn evil_folder() -> tempfile::TempDir {
    let folder = folder_of_example();
    let write = |name: &str, text: &str| fs::write(folder.path().join(name), text).unwrap();
    let quoted = serde_json::to_string(EVIL).unwrap();
    let xml: String = EVIL.chars().filter(|c| !c.is_ascii_control()).collect();
    let line = fs::read_to_string(folder.path().join("route.gpx")).unwrap();
    write("line.gpx", &line.replace("Invented glacier", &xml));
    write(
        "broken.gpx",
        &line.replacen("lat=\"", &format!("lat=\"{xml}"), 1),
    );
    let ice = fs::read_to_string(folder.path().join("zones.geojson")).unwrap();
    let ice = ice.replace(
        "\"Middle icefall\"",
        &format!("{quoted}, \"note\": {quoted}, \"source\": {quoted}, \"observed_on\": {quoted}"),
    );
    write("ice.geojson", &ice);
    write(
        "broken.geojson",
        &ice.replace("15", &quoted)
            .replace("\"snow_depth_m\"", &quoted),
    );
    let toml = toml_text(EVIL);
    write(
        "trip.toml",
        &format!(
            "name = {toml}\nparty = [{{ name = {toml}, mass_kg = 80 }}, {{ name = {toml}, mass_kg = 75 }}]\nrope = [{{ name = {toml}, length_m = 60 }}]\n"
        ),
    );
    write(
        "broken.toml",
        &format!("party = [{{ name = {toml}, mass_kg = 1e9 }}]\n{toml} = 1\nsnow = {toml}\n"),
    );
    write("practice.toml", &format!("name = {toml}\nsays = {toml}\n"));
    folder
}

/// A basic string of TOML.
fn toml_text(text: &str) -> String {
    let escaped: String = text
        .chars()
        .map(|c| {
            if c.is_ascii_control() || acts(c) {
                format!("\\u{:04X}", u32::from(c))
            } else {
                c.into()
            }
        })
        .collect();
    format!("\"{escaped}\"")
}

const PLAN: &str = "plan line.gpx ice.geojson --trip trip.toml";

#[test]
fn whatever_a_plan_is_written_as_names_in_it_do_nothing() {
    let folder = evil_folder();
    let at = folder.path();
    for format in schrund::write::FORMATS.map(|format| format.name()) {
        is_harmless(at, &format!("{PLAN} --format {format}"));
    }
    is_harmless(at, &format!("{PLAN} --detail --lang de"));
    for format in ["table", "json"] {
        is_harmless(
            at,
            &format!("options line.gpx ice.geojson --trip trip.toml --format {format}"),
        );
    }
    for format in ["csv", "jsonl"] {
        is_harmless(
            at,
            &format!("survey EVIL line.gpx --zones ice.geojson --format {format}"),
        );
    }
    is_harmless(
        at,
        "survey line.gpx route.gpx --zones ice.geojson --compare",
    );
    is_harmless(at, "practice practice.toml");
}

#[test]
fn whatever_is_wrong_with_a_file_what_is_quoted_does_nothing() {
    let folder = evil_folder();
    let at = folder.path();
    for trip in ["trip.toml", "broken.toml"] {
        is_harmless(at, &format!("plan broken.gpx broken.geojson --trip {trip}"));
        is_harmless(
            at,
            &format!("check broken.gpx broken.geojson {trip} line.gpx ice.geojson"),
        );
    }
    is_harmless(at, "survey broken.gpx --zones ice.geojson");
    is_harmless(at, "practice broken.toml");
}

#[test]
fn whatever_a_call_says_what_is_quoted_does_nothing() {
    let folder = evil_folder();
    let at = folder.path();
    let calls = [
        "EVIL",
        "help EVIL",
        "plan EVIL ice.geojson --party 3",
        "plan line.gpx EVIL --party 3",
        "plan line.gpx ice.geojson --EVIL",
        "plan http://127.0.0.1:1/EVIL ice.geojson --party 3",
        "check --explain EVIL",
        "practice EVIL",
        "height EVIL --terrain line.gpx",
        "zone line.gpx EVIL --gap 4 --into new.geojson",
        "zone line.gpx 0.5-1 --gap 4 --name EVIL --into new.geojson",
    ];
    for call in calls {
        is_harmless(at, call);
    }
    let flags = "party rope trip terrain glaciers practice assume start date lang gap format snow";
    for flag in flags.split(' ') {
        is_harmless(at, &format!("{PLAN} --{flag} EVIL"));
    }
    is_harmless(at, &format!("{PLAN} --assume EVIL=3"));
}

/// Names of files may hold all but a slash and a nought.
#[cfg(unix)]
#[test]
fn whatever_is_written_is_told_under_a_name_that_does_nothing() {
    let folder = evil_folder();
    let at = folder.path();
    fs::copy(at.join("trip.toml"), at.join(format!("{EVIL}.toml"))).unwrap();
    // The second time it is there already.
    for _ in 0..2 {
        is_harmless(at, &format!("{PLAN} -o EVIL.txt"));
        is_harmless(at, &format!("{PLAN} -o EVIL.zzz"));
        is_harmless(at, &format!("{PLAN} --out EVIL"));
        is_harmless(at, "new EVILd");
        is_harmless(
            at,
            "draw line.gpx ice.geojson --trip trip.toml -o EVIL.html",
        );
        is_harmless(
            at,
            "plan line.gpx ice.geojson --trip EVIL.toml -o EVIL.toml --force",
        );
    }
    assert!(at.join(format!("{EVIL}.txt")).exists() && at.join(EVIL).is_dir());
}
