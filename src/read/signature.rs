//! Kinds of files by the bytes they begin with.

use std::io::{Read, SeekFrom};

use crate::{
    fault::{Fault, Place, files::InFiles, instead::Instead},
    raster::ReadSeek,
};

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

/// Bytes that tell FlatGeobuf.
const FLATGEOBUF_BYTES: u64 = 4;

/// Whether a file begins as FlatGeobuf of some version does: a word, and a number that is no letter behind it.
pub(super) fn is_flatgeobuf(start: &[u8]) -> bool {
    matches!(start, [b'f', b'g', b'b', version, ..] if *version < b' ')
}

/// The same of a file, which is at its beginning again afterwards.
///
/// # Errors
/// It cannot be read.
pub(super) fn begins_flatgeobuf(name: &str, file: &mut dyn ReadSeek) -> Result<bool, Vec<Fault>> {
    let mut start = Vec::new();
    let read = (&mut *file).take(FLATGEOBUF_BYTES).read_to_end(&mut start);
    let begun = read.and_then(|_| file.seek(SeekFrom::Start(0)));
    begun.map_err(|why| {
        let stopped = InFiles::Stopped(why.to_string());
        vec![Fault::new(stopped, Place::file(name))]
    })?;
    Ok(is_flatgeobuf(&start))
}

/// So many signs between values make a line the row of a table. Our judgement.
const LEAST_COLUMNS: usize = 2;

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

/// The XML format that a text begins, as far as its beginning shows the root element.
pub(super) fn of_xml(start: &[u8]) -> Option<Instead> {
    let text = String::from_utf8_lossy(start);
    let text = text.trim_start_matches('\u{feff}').trim_start();
    let mut tags = text.strip_prefix('<')?.split('<');
    let root = tags.find(|tag| tag.starts_with(|c: char| c.is_alphabetic()))?;
    let end = root.find(|c: char| c.is_whitespace() || "/>".contains(c));
    of_root(root.get(..end?)?)
}

/// The kind of a text that is neither JSON nor XML, by the first line that says something.
pub(super) fn of_text(start: &[u8]) -> Option<Instead> {
    let text = String::from_utf8_lossy(start);
    let mut lines = text.trim_start_matches('\u{feff}').lines().map(str::trim);
    let line = lines.find(|line| !line.is_empty() && !line.starts_with('#'))?;
    if line.starts_with(['{', '<']) {
        return None;
    }
    let is_name = |c: char| c.is_ascii_alphanumeric() || "_-.\"".contains(c);
    let member = line.split_once('=').map(|(name, _)| name.trim());
    let member = member.is_some_and(|name| !name.is_empty() && name.chars().all(is_name));
    let table = line.trim_start_matches('[');
    let table = table.len() < line.len() && table.starts_with(|c: char| c.is_ascii_alphabetic());
    if member || table {
        return Some(Instead::Toml);
    }
    let columns = [',', ';', '\t'].map(|between| line.matches(between).count());
    let is_list = line.starts_with('[');
    (!is_list && columns.into_iter().any(|many| many >= LEAST_COLUMNS)).then_some(Instead::Table)
}

/// The format that the first four bytes tell of, if they do.
pub(super) fn of(first: &[u8]) -> Option<Instead> {
    let known = SIGNATURES
        .iter()
        .find(|(begin, _)| first.starts_with(begin));
    known.map(|(_, instead)| instead.clone())
}
