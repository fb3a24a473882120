//! Files that are no GPX, told by what they begin with.

use crate::fault::{Code, Place, Problem};

use super::fix::quoted;

/// First bytes of other formats, what they are and the cure. \[memory\]
const SIGNATURES: &[(&[u8], &str, &str)] = &[
    (
        b"PK\x03\x04",
        "a zip archive (perhaps KMZ)",
        "unpack it and give the GPX file inside",
    ),
    (b"\x1f\x8b", "packed with gzip", "unpack it first"),
    (b"%PDF", "a PDF document", EXPORT),
    (b"SQLite format 3", "a database", EXPORT),
    (b"{", "JSON", GEOJSON),
    (b"[", "JSON", GEOJSON),
];

/// Root elements of other formats, in lower case, what they are and the cure. \[memory\]
const ROOTS: &[(&str, &str, &str)] = &[
    ("kml", "KML", EXPORT),
    ("trainingcenterdatabase", "TCX", EXPORT),
    (
        "html",
        "a web page",
        "the download gave a page in its place: fetch the GPX file itself",
    ),
    ("osm", "OpenStreetMap data", EXPORT),
    ("svg", "a drawing", EXPORT),
];

const EXPORT: &str = "export the line as GPX from the program it was made with";
const GEOJSON: &str = "the route has to be GPX; zones are given after it";

/// Complains where the first bytes of a file show that it is no XML.
pub(super) fn by_first_bytes(file: &str, first: &[u8]) -> Option<Problem> {
    let text = first.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(first);
    let text = text.trim_ascii_start();
    if let Some((_, what, cure)) = SIGNATURES.iter().find(|(s, ..)| text.starts_with(s)) {
        return Some(problem(file, format!("this is {what}, not GPX"), cure));
    }
    // ".FIT" at offset 8: header of the sports-watch format. [memory]
    if first.get(8..12) == Some(b".FIT".as_slice()) {
        return Some(problem(file, "this is FIT, not GPX", EXPORT));
    }
    if text.is_empty() {
        return Some(problem(file, "the file is empty", "export the route again"));
    }
    // "<" in UTF-8, or in UTF-16 with or without its mark.
    let begins_like_xml = text.starts_with(b"<")
        || [b"\xFE\xFF", b"\xFF\xFE", b"\0<"]
            .iter()
            .any(|wide| text.starts_with(*wide));
    if begins_like_xml {
        return None;
    }
    let start = String::from_utf8_lossy(text.get(..text.len().min(20)).unwrap_or_default());
    let says = format!("this is not GPX: it begins with {}", quoted(&start));
    Some(problem(file, says, EXPORT))
}

/// The complaint about a root element that is not `gpx`.
pub(super) fn by_root(file: &str, root: &str) -> Problem {
    let lower = root.to_lowercase();
    match ROOTS.iter().find(|(name, ..)| *name == lower) {
        Some((_, what, cure)) => problem(file, format!("this is {what}, not GPX"), cure),
        None => {
            let says = format!("this is not GPX: its root element is {}", quoted(root));
            problem(file, says, EXPORT)
        }
    }
}

/// The complaint about a file with no element at all.
pub(super) fn without_root(file: &str) -> Problem {
    problem(
        file,
        "the file holds no element at all",
        "export the route again",
    )
}

fn problem(file: &str, says: impl Into<String>, cure: &str) -> Problem {
    Problem::new(Code::WrongKind, Place::file(file), says).hint(cure)
}
