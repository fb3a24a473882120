//! Kinds of files by the bytes they begin with.

use crate::fault::instead::Instead;

/// First bytes of formats that are neither XML nor text. \[memory\]
const SIGNATURES: [(&[u8], Instead); 10] = [
    (b"PK\x03\x04", Instead::Zip),
    (b"\x1f\x8b", Instead::Gzip),
    (b"%PDF", Instead::Pdf),
    (b"SQLi", Instead::Database),
    (b"\0\0\x27\x0a", Instead::Shapefile),
    (b"II*\0", Instead::Tiff),
    (b"MM\0*", Instead::Tiff),
    (b"\x89PNG", Instead::Picture),
    (b"\xff\xd8\xff", Instead::Picture),
    (b"fgb\x03", Instead::FlatGeobuf),
];

/// The format that the first four bytes tell of, if they do.
pub(super) fn of(first: &[u8]) -> Option<Instead> {
    let known = SIGNATURES
        .iter()
        .find(|(begin, _)| first.starts_with(begin));
    known.map(|(_, instead)| instead.clone())
}

/// Root elements of XML formats, in lower case. \[memory\]
const ROOTS: [(&str, Instead); 6] = [
    ("gpx", Instead::Gpx),
    ("kml", Instead::Kml),
    ("trainingcenterdatabase", Instead::Tcx),
    ("html", Instead::WebPage),
    ("osm", Instead::Osm),
    ("svg", Instead::Drawing),
];

/// The format that has this root element.
pub(super) fn of_root(root: &str) -> Option<Instead> {
    let lower = root.to_lowercase();
    let known = ROOTS.iter().find(|(name, _)| *name == lower);
    known.map(|(_, instead)| instead.clone())
}

/// The XML format that a text begins, where the root element stands in its first bytes: the first tag with a name.
pub(super) fn of_xml(first: &[u8]) -> Option<Instead> {
    let text = String::from_utf8_lossy(first);
    let named = |tag: &&str| tag.starts_with(|c: char| c.is_alphabetic());
    let root = text.split('<').skip(1).find(named)?;
    let end = root.find(|c: char| c.is_whitespace() || "/>".contains(c))?;
    of_root(root.get(..end)?)
}
