//! What a file is by its first bytes, so that a refusal can name it.

use std::io::{ErrorKind, Read, Seek, SeekFrom};

use crate::fault::{
    Fault,
    terrain::{Damage, NoRaster, UnreadFormat, Unusable},
};
use crate::limits::InputLimits;
use crate::raster::{
    chunks::RasterSource,
    geotiff, hgt,
    model::Opened,
    refusal::{broken, refused},
};

/// First bytes of other formats that hold heights. From memory.
const OTHERS: [(&[u8], UnreadFormat); 9] = [
    (b"PK\x03\x04", UnreadFormat::Zip),
    (b"\x1f\x8b", UnreadFormat::Gzip),
    (b"SQLite format 3", UnreadFormat::Sqlite),
    (b"\x89HDF", UnreadFormat::Hdf),
    (b"CDF", UnreadFormat::NetCdf),
    (b"EHFA_HEADER", UnreadFormat::Imagine),
    (b"\xff\x4f\xff\x51", UnreadFormat::Jpeg2000),
    (b"\x89PNG", UnreadFormat::Png),
    (b"\xff\xd8\xff", UnreadFormat::Jpeg),
];

/// First bytes of TIFF and BigTIFF files, little and big end first.
const TIFF: [&[u8]; 4] = [b"II*\0", b"MM\0*", b"II+\0", b"MM\0+"];

/// Whether a file that begins so is a TIFF.
#[must_use]
pub(crate) fn is_tiff(start: &[u8]) -> bool {
    TIFF.iter().any(|magic| start.starts_with(magic))
}

/// Opens whatever it is, or says what it is.
pub(crate) fn open(
    name: &str,
    mut source: RasterSource,
    limits: &InputLimits,
) -> Result<Opened, Fault> {
    let fails = |e: std::io::Error| broken(name, Damage::Unread(e.to_string()));
    let length = source.seek(SeekFrom::End(0)).map_err(fails)?;
    let head = head(&mut source).map_err(fails)?;
    if head.is_empty() {
        return Err(broken(name, Damage::Empty));
    }
    if is_tiff(&head) {
        return geotiff::open(name, source, (length, limits));
    }
    if let Some((_, what)) = OTHERS.iter().find(|(magic, _)| head.starts_with(magic)) {
        return Err(refused(name, Unusable::Is(*what)));
    }
    if name.to_ascii_lowercase().ends_with(".hgt") {
        return hgt::open(name, source, length);
    }
    if head.to_ascii_lowercase().starts_with(b"ncols") {
        return Err(refused(name, Unusable::Is(UnreadFormat::AsciiGrid)));
    }
    let text = text(&head).map(Unusable::NoRaster);
    Err(refused(name, text.unwrap_or(Unusable::Neither)))
}

/// What sort of text it is, if it is one that leaders have beside a terrain model.
fn text(head: &[u8]) -> Option<NoRaster> {
    let head = head.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(head);
    let holds = |tag: &[u8]| head.windows(tag.len()).any(|at| at == tag);
    match head.trim_ascii_start().first() {
        Some(b'<') if holds(b"<gpx") => Some(NoRaster::Gpx),
        Some(b'<') => Some(NoRaster::Xml),
        Some(b'{' | b'[') => Some(NoRaster::Json),
        _ => None,
    }
}

/// Bytes from the beginning that are looked at: a declaration and a remark before the root of an XML file find room.
const HEAD: u64 = 512;

fn head(source: &mut RasterSource) -> std::io::Result<Vec<u8>> {
    source.seek(SeekFrom::Start(0))?;
    let mut head = Vec::new();
    loop {
        match source.by_ref().take(HEAD).read_to_end(&mut head) {
            Err(e) if e.kind() == ErrorKind::Interrupted => {}
            other => return other.map(|_| head),
        }
    }
}
