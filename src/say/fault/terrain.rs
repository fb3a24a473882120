//! Terrain files in words, with ready-made commands that convert what cannot be used.

use super::tiff;
use crate::fault::terrain::{
    Coding, Cure, Damage, Format, InTerrain, Picture, Told, Unpacking, Unusable,
};

pub(super) fn says(what: &InTerrain) -> String {
    match what {
        InTerrain::Broken(damage) => broken(damage),
        InTerrain::Refused(unusable) => refused(unusable),
        InTerrain::Note(told) => note(told),
    }
}

/// How to mend it; `file` is where it stands.
pub(super) fn hint(what: &InTerrain, file: &str) -> Option<String> {
    match what {
        InTerrain::Broken(_) => Some(
            "fetch or copy the file again; `gdalinfo -checksum` on it shows whether it is whole"
                .to_owned(),
        ),
        InTerrain::Refused(unusable) => Some(cure(file, unusable.cure())),
        InTerrain::Note(_) => None,
    }
}

fn broken(damage: &Damage) -> String {
    match damage {
        Damage::Unread(why) => format!("it cannot be read: {why}"),
        Damage::Empty => "it is empty (0 bytes)".to_owned(),
        Damage::HgtLength(bytes) => format!(
            "a .hgt tile has 1201 or 3601 rows, 2884802 or 25934402 bytes; this file has {bytes}"
        ),
        Damage::NoWgs84 => "the table of coordinate systems lacks EPSG:4326".to_owned(),
        Damage::NotWhole(why) => format!("it is not a whole TIFF ({why})"),
        Damage::Metadata(why) => format!("its GDAL metadata do not parse ({why})"),
        Damage::Scale(text) => format!("the scale of its heights is no number ({text:?})"),
        Damage::Offset(text) => format!("the offset of its heights is no number ({text:?})"),
        Damage::NoPartSize => "its parts have no size".to_owned(),
        Damage::FewParts { listed, needed } => {
            format!("it lists {listed} parts where {needed} are needed")
        }
        Damage::CutOff { bytes, reach } => {
            format!("it is cut off: it has {bytes} bytes but its parts reach to byte {reach}")
        }
        Damage::NoTable => "the table of its parts cannot be read".to_owned(),
        Damage::ShortStrip { bytes, rows } => {
            format!("a strip of {bytes} bytes is too short for its {rows} rows")
        }
        Damage::Unpack { column, row, why } => format!(
            "its heights cannot be unpacked at column {column}, row {row}: {}",
            unpacking(why)
        ),
    }
}

fn unpacking(why: &Unpacking) -> String {
    match why {
        Unpacking::Short(part) => format!("part {part} is shorter than it should be"),
        Unpacking::Absent(part) => format!("part {part} does not exist"),
        Unpacking::Decoder(words) => words.clone(),
        Unpacking::Reading(byte, words) => format!("reading at byte {byte}: {words}"),
    }
}

fn refused(unusable: &Unusable) -> String {
    match unusable {
        Unusable::Is(Format::AsciiGrid) => {
            "it is an ASCII grid, which does not say its coordinate system".to_owned()
        }
        Unusable::Is(other) => format!("it is {}, not a GeoTIFF or .hgt tile", format(*other)),
        Unusable::Neither => "it is neither a GeoTIFF nor a .hgt tile".to_owned(),
        Unusable::HgtName => {
            "its name does not say where it lies (such as N46E007.hgt or S47W074.hgt)".to_owned()
        }
        Unusable::Tiff(words) => format!("it is a TIFF of a kind that is not read ({words})"),
        Unusable::BigTables => "its inner tables are too big".to_owned(),
        Unusable::Coding(how) => coding(*how),
        Unusable::Picture(what) => picture(*what),
        Unusable::Bands(bands) => {
            format!("it has {bands} bands and does not say which one is the height")
        }
        Unusable::Numbers { bits, format } => format!(
            "its numbers are of a kind that is not read ({bits} bits, TIFF sample format {format})"
        ),
        Unusable::Mask => {
            "its void cells are kept in a mask of their own, which is not read".to_owned()
        }
        Unusable::BigParts(mb) => format!(
            "it is packed in parts of {mb} MB, each of which would have to be unpacked whole"
        ),
        Unusable::System(why) => tiff::no_system(why),
        Unusable::Placing(why) => tiff::no_placing(*why),
        Unusable::Heights(why) => tiff::no_heights(why),
    }
}

fn format(other: Format) -> &'static str {
    match other {
        Format::Zip => "a ZIP archive",
        Format::Gzip => "a gzip archive",
        Format::Sqlite => "a GeoPackage or other SQLite database",
        Format::Hdf => "an HDF5 or NetCDF file",
        Format::NetCdf => "a NetCDF file",
        Format::Imagine => "an Erdas Imagine file",
        Format::Jpeg2000 => "a JPEG 2000 picture",
        Format::Png => "a PNG picture",
        Format::Jpeg => "a JPEG picture",
        Format::AsciiGrid => "an ASCII grid",
    }
}

fn coding(how: Coding) -> String {
    let how = match how {
        Coding::Jpeg => {
            return "its heights are coded as a JPEG photograph, which changes them".to_owned();
        }
        Coding::Other(number) => {
            return format!(
                "its heights are coded in a way that is not read (TIFF compression {number})"
            );
        }
        Coding::Lerc => "LERC",
        Coding::Zstandard => "Zstandard",
        Coding::WebP => "WebP",
        Coding::Lzma => "LZMA",
    };
    format!("its heights are coded as {how}, which is not read")
}

fn picture(what: Picture) -> String {
    match what {
        Picture::Palette => "it is a picture with a palette, not heights".to_owned(),
        Picture::InvertedGrey => "it is a picture with inverted grey, not heights".to_owned(),
        Picture::Colour => "it is a colour picture, not heights".to_owned(),
        Picture::Bits(bits) => {
            format!("its cells have {bits} bits: a picture or a mask, not heights")
        }
    }
}

fn note(told: &Told) -> String {
    match told {
        Told::Shifted { system, shift } => format!("drawn in {system}, shifted to WGS 84 by {shift}"),
        Told::NothingHere(places) => {
            format!("it has no height at any of the {places} places asked that lie on it")
        }
        Told::Unbelievable(cells) => format!(
            "{cells} cell readings gave numbers that cannot be heights and were taken as void"
        ),
        Told::Egm96 => {
            "heights are EGM96 heights in whole metres, as all .hgt tiles are said to be".to_owned()
        }
        Told::Heights { name, epsg } => format!("heights are {name} (EPSG:{epsg})"),
        Told::Ellipsoid => "heights are above the ellipsoid, not above the sea: up to 100 m off the map's, the slopes are right".to_owned(),
        Told::Taken(epsg) => {
            format!("heights are in the system EPSG:{epsg}, taken as metres upwards")
        }
        Told::Unsaid => "it does not say whether its heights are above the sea or above the ellipsoid: up to 100 m may lie between them, the slopes are the same".to_owned(),
        Told::Turned(unit_m) => {
            format!("its heights are turned into metres, one unit being {unit_m} m")
        }
        Told::NoVoid(from_m, to_m) => format!(
            "it declares no value for void cells: heights outside {from_m} to {to_m} m are taken as void"
        ),
    }
}

fn cure(name: &str, cure: Cure) -> String {
    let (from, to) = (quoted(name), quoted(&converted(name)));
    let plain = "-of GTiff -co TILED=YES -co COMPRESS=DEFLATE";
    match cure {
        Cure::Recode => format!("convert it: gdal_translate -b 1 -ot Float32 {plain} {from} {to}"),
        Cure::NotHeights => format!(
            "take the elevation file itself; only if the numbers in here are metres all the same: gdal_translate -b 1 -ot Float32 {plain} {from} {to}"
        ),
        Cure::FirstBand => format!(
            "if the first band holds heights in metres, take it out: gdal_translate -b 1 {plain} {from} {to}"
        ),
        Cure::Warp => format!(
            "convert it: gdalwarp -t_srs EPSG:4326 -r bilinear -ot Float32 -dstnodata -9999 {plain} {from} {to}"
        ),
        Cure::AssignSystem => format!(
            "find out the EPSG number of its coordinate system (where it was fetched says so) and put it in place of NNNN: gdal_translate -a_srs EPSG:NNNN {plain} {from} {to}"
        ),
        Cure::ScaleHeights => format!(
            "say how many metres one unit is (here 0.3048 for a foot) and convert it: gdal_calc.py -A {from} --calc \"A*0.3048\" --type Float32 --outfile {to}"
        ),
        Cure::Unpack => format!("unpack it (unzip or gunzip {from}) and give the file inside"),
        Cure::Rename => {
            "give the file its original name: latitude and longitude of the south-west corner"
                .to_owned()
        }
    }
}

fn quoted(name: &str) -> String {
    let plain = |c: char| c.is_ascii_alphanumeric() || "-_./".contains(c);
    if !name.is_empty() && name.chars().all(plain) {
        return name.to_owned();
    }
    format!("'{}'", name.replace('\'', "'\\''"))
}

fn converted(name: &str) -> String {
    let folder = name.rfind(['/', '\\']).map_or(0, |i| i + 1);
    let stem = match name.rfind('.') {
        Some(dot) if dot > folder => name.get(..dot),
        _ => None,
    };
    format!("{}_plain.tif", stem.unwrap_or(name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn commands_can_be_pasted() {
        assert_eq!(
            cure("my maps/it's.tif", Cure::Recode),
            "convert it: gdal_translate -b 1 -ot Float32 -of GTiff -co TILED=YES -co COMPRESS=DEFLATE 'my maps/it'\\''s.tif' 'my maps/it'\\''s_plain.tif'",
            "blanks and quotes survive a shell"
        );
        assert_eq!(
            converted("./a.b/dem"),
            "./a.b/dem_plain.tif",
            "dots of folders stay"
        );
    }
}
