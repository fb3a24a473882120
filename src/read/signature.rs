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
