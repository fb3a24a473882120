//! What a file is by its first bytes, so that a refusal can name it.

use std::io::{ErrorKind, Read, Seek, SeekFrom};

use crate::fault::Problem;
use crate::raster::{
    chunks::Source,
    geotiff, hgt,
    model::Opened,
    refusal::{Cure, broken, refused},
};

/// First bytes of other formats that hold heights, and how they are called. From memory.
const OTHERS: [(&[u8], &str, Cure); 9] = [
    (b"PK\x03\x04", "a ZIP archive", Cure::Unpack),
    (b"\x1f\x8b", "a gzip archive", Cure::Unpack),
    (
        b"SQLite format 3",
        "a GeoPackage or other SQLite database",
        Cure::Recode,
    ),
    (b"\x89HDF", "an HDF5 or NetCDF file", Cure::Recode),
    (b"CDF", "a NetCDF file", Cure::Recode),
    (b"EHFA_HEADER", "an Erdas Imagine file", Cure::Recode),
    (b"\xff\x4f\xff\x51", "a JPEG 2000 picture", Cure::Recode),
    (b"\x89PNG", "a PNG picture", Cure::Recode),
    (b"\xff\xd8\xff", "a JPEG picture", Cure::Recode),
];

/// Opens whatever it is, or says what it is.
pub(crate) fn open(name: &str, mut source: Source) -> Result<Opened, Problem> {
    let fails = |e: std::io::Error| broken(name, format!("it cannot be read: {e}"));
    let length = source.seek(SeekFrom::End(0)).map_err(fails)?;
    let head = head(&mut source).map_err(fails)?;
    if head.is_empty() {
        return Err(broken(name, "it is empty (0 bytes)"));
    }
    let is_tiff = head.starts_with(b"II*\0")
        || head.starts_with(b"MM\0*")
        || head.starts_with(b"II+\0")
        || head.starts_with(b"MM\0+");
    if is_tiff {
        return geotiff::open(name, source, length);
    }
    if let Some((_, what, cure)) = OTHERS.iter().find(|(magic, ..)| head.starts_with(magic)) {
        return Err(refused(
            name,
            format!("it is {what}, not a GeoTIFF or .hgt tile"),
            *cure,
        ));
    }
    if name.to_ascii_lowercase().ends_with(".hgt") {
        return hgt::open(name, source, length);
    }
    if head.to_ascii_lowercase().starts_with(b"ncols") {
        return Err(refused(
            name,
            "it is an ASCII grid, which does not say its coordinate system",
            Cure::AssignSystem,
        ));
    }
    Err(refused(
        name,
        "it is neither a GeoTIFF nor a .hgt tile",
        Cure::Recode,
    ))
}

fn head(source: &mut Source) -> std::io::Result<Vec<u8>> {
    source.seek(SeekFrom::Start(0))?;
    let mut head = Vec::new();
    loop {
        match source.by_ref().take(16).read_to_end(&mut head) {
            Err(e) if e.kind() == ErrorKind::Interrupted => {}
            other => return other.map(|_| head),
        }
    }
}
