//! Terrain files in words, with ready-made commands that convert what cannot be used.

use super::{
    phrase::{Phrase, PhraseArgs, figure, name, number},
    tiff,
};
use crate::{
    fault::terrain::{
        Coding, Cure, Damage, InTerrain, NoRaster, Picture, Told, Unpacking, UnreadFormat, Unusable,
    },
    say::arg::Arg,
};

/// How far two systems of height can lie apart, metres: see `data/words`. From memory, as geoid undulations.
const APART_M: f64 = 100.0;

/// `file` is where it stands.
pub(super) fn phrase(what: &InTerrain, file: &str) -> Phrase {
    match what {
        InTerrain::Broken(damage) => broken(damage),
        InTerrain::Refused(unusable) => refused(unusable).and(cure(file, unusable.cure())),
        InTerrain::Note(told) => note(told),
    }
}

fn broken(damage: &Damage) -> Phrase {
    match damage {
        Damage::Unread(words) => Phrase::of("terrain-unread", [("words", name(words))]),
        Damage::Empty => Phrase::plain("terrain-empty"),
        Damage::HgtLength(bytes) => Phrase::of("terrain-hgt-length", [("bytes", number(bytes))]),
        Damage::NoWgs84 => Phrase::plain("terrain-no-wgs84"),
        Damage::Ends(bytes) => Phrase::of("terrain-ends", [("bytes", number(bytes))]),
        Damage::NotWhole(words) => Phrase::of("terrain-not-whole", [("words", name(words))]),
        Damage::Metadata(words) => Phrase::of("terrain-metadata", [("words", name(words))]),
        Damage::Scale(found) => Phrase::of("terrain-scale", [("found", escaped(found))]),
        Damage::Offset(found) => Phrase::of("terrain-offset", [("found", escaped(found))]),
        Damage::NoPartSize => Phrase::plain("terrain-no-part-size"),
        Damage::FewParts { listed, needed } => Phrase::of(
            "terrain-few-parts",
            [("listed", number(listed)), ("needed", number(needed))],
        ),
        Damage::CutOff { bytes, reach } => Phrase::of(
            "terrain-cut-off",
            [("bytes", number(bytes)), ("reach", number(reach))],
        ),
        Damage::NoTable => Phrase::plain("terrain-no-table"),
        Damage::ShortStrip { bytes, rows } => Phrase::of(
            "terrain-short-strip",
            [("bytes", number(bytes)), ("rows", number(rows))],
        ),
        Damage::Unpack { column, row, why } => Phrase::of(
            "terrain-unpack",
            [("column", number(column)), ("row", number(row))],
        )
        .and(unpacking(why)),
    }
}

/// Quotes and control characters made visible.
fn escaped(text: &str) -> Arg<'static> {
    name(text.escape_debug().to_string())
}

fn unpacking(why: &Unpacking) -> PhraseArgs {
    let (why, part, words) = match why {
        Unpacking::Short(part) => ("short", u64::from(*part), ""),
        Unpacking::Absent(part) => ("absent", u64::from(*part), ""),
        Unpacking::Decoder(words) => ("decoder", 0, words.as_str()),
        Unpacking::Reading(byte, words) => ("reading", *byte, words.as_str()),
    };
    vec![
        ("why", Arg::Word(why)),
        ("part", number(part)),
        ("words", name(words)),
    ]
}

fn refused(unusable: &Unusable) -> Phrase {
    match unusable {
        Unusable::Is(UnreadFormat::AsciiGrid) => Phrase::plain("terrain-ascii-grid"),
        Unusable::Is(other) => Phrase::of("terrain-is", [("format", Arg::Word(format(*other)))]),
        Unusable::NoRaster(what) => no_raster(*what),
        Unusable::Neither => Phrase::plain("terrain-neither"),
        Unusable::HgtName => Phrase::plain("terrain-hgt-name"),
        Unusable::Tiff(words) => Phrase::of("terrain-tiff", [("words", name(words))]),
        Unusable::BigTables => Phrase::plain("terrain-big-tables"),
        Unusable::Coding(how) => coding(*how),
        Unusable::Picture(what) => picture(*what),
        Unusable::Bands(bands) => Phrase::of("terrain-bands", [("bands", number(bands))]),
        Unusable::Numbers { bits, format } => Phrase::of(
            "terrain-numbers",
            [("bits", number(bits)), ("format", number(format))],
        ),
        Unusable::Mask => Phrase::plain("terrain-mask"),
        Unusable::BigParts(mb) => Phrase::of("terrain-big-parts", [("mb", number(mb))]),
        Unusable::System(why) => tiff::no_system(why),
        Unusable::Placing(why) => tiff::no_placing(*why),
        Unusable::Heights(why) => tiff::no_heights(why),
    }
}

fn no_raster(what: NoRaster) -> Phrase {
    let what = Arg::Word(match what {
        NoRaster::Gpx => "gpx",
        NoRaster::Xml => "xml",
        NoRaster::Json => "json",
    });
    Phrase::of("terrain-no-raster", [("what", what)])
}

fn format(other: UnreadFormat) -> &'static str {
    match other {
        UnreadFormat::Zip => "zip",
        UnreadFormat::Gzip => "gzip",
        UnreadFormat::Sqlite => "sqlite",
        UnreadFormat::Hdf => "hdf",
        UnreadFormat::NetCdf => "netcdf",
        UnreadFormat::Imagine => "imagine",
        UnreadFormat::Jpeg2000 => "jpeg2000",
        UnreadFormat::Png => "png",
        UnreadFormat::Jpeg => "jpeg",
        UnreadFormat::AsciiGrid => "ascii-grid",
    }
}

fn coding(how: Coding) -> Phrase {
    let (word, other) = match how {
        Coding::Jpeg => ("jpeg", 0),
        Coding::Lerc => ("lerc", 0),
        Coding::Zstandard => ("zstandard", 0),
        Coding::WebP => ("webp", 0),
        Coding::Lzma => ("lzma", 0),
        Coding::Other(other) => ("other", other),
    };
    let args = [("coding", Arg::Word(word)), ("number", number(other))];
    Phrase::of("terrain-coding", args)
}

fn picture(what: Picture) -> Phrase {
    let (word, bits) = match what {
        Picture::Palette => ("palette", 0),
        Picture::InvertedGrey => ("inverted", 0),
        Picture::Colour => ("colour", 0),
        Picture::Bits(bits) => ("bits", bits),
    };
    let args = [("picture", Arg::Word(word)), ("bits", number(bits))];
    Phrase::of("terrain-picture", args)
}

fn note(told: &Told) -> Phrase {
    match told {
        Told::Shifted { system, shift } => Phrase::of(
            "terrain-shifted",
            [("system", name(system)), ("shift", name(shift))],
        ),
        Told::NothingHere(places) => {
            Phrase::of("terrain-nothing-here", [("places", number(places))])
        }
        Told::Unbelievable(cells) => Phrase::of("terrain-unbelievable", [("cells", number(cells))]),
        Told::Egm96 => Phrase::plain("terrain-egm96"),
        Told::Heights { name: called, epsg } => Phrase::of(
            "terrain-heights",
            [("name", name(*called)), ("epsg", number(epsg))],
        ),
        Told::Ellipsoid => Phrase::of("terrain-ellipsoid", [("most", Arg::Whole(APART_M))]),
        Told::Taken(epsg) => Phrase::of("terrain-taken", [("epsg", number(epsg))]),
        Told::Unsaid => Phrase::of("terrain-unsaid", [("most", Arg::Whole(APART_M))]),
        Told::Turned(unit_m) => Phrase::of("terrain-turned", [("unit", figure(unit_m, "m"))]),
        Told::NoVoid(from_m, to_m) => Phrase::of(
            "terrain-no-void",
            [("from", number(from_m)), ("to", figure(to_m, "m"))],
        ),
    }
}

fn cure(file: &str, cure: Cure) -> PhraseArgs {
    let (from, to) = (quoted(file), quoted(&converted(file)));
    let plain = "-of GTiff -co TILED=YES -co COMPRESS=DEFLATE";
    let recoded = format!("gdal_translate -b 1 -ot Float32 {plain} {from} {to}");
    let (word, command) = match cure {
        Cure::Recode => ("convert", recoded),
        Cure::NotHeights => ("not-heights", recoded),
        Cure::FirstBand => (
            "first-band",
            format!("gdal_translate -b 1 {plain} {from} {to}"),
        ),
        Cure::Warp => (
            "convert",
            format!(
                "gdalwarp -t_srs EPSG:4326 -r bilinear -ot Float32 -dstnodata -9999 {plain} {from} {to}"
            ),
        ),
        Cure::AssignSystem => (
            "assign-system",
            format!("gdal_translate -a_srs EPSG:NNNN {plain} {from} {to}"),
        ),
        Cure::ScaleHeights => (
            "scale-heights",
            format!("gdal_calc.py -A {from} --calc \"A*0.3048\" --type Float32 --outfile {to}"),
        ),
        Cure::Unpack => ("unpack", String::new()),
        Cure::Rename => ("rename", String::new()),
        Cure::Another => ("another", String::new()),
    };
    vec![
        ("cure", Arg::Word(word)),
        ("command", name(command)),
        ("file", name(from)),
    ]
}

fn quoted(file: &str) -> String {
    let plain = |c: char| c.is_ascii_alphanumeric() || "-_./".contains(c);
    if !file.is_empty() && file.chars().all(plain) {
        return file.to_owned();
    }
    format!("'{}'", file.replace('\'', "'\\''"))
}

fn converted(file: &str) -> String {
    let folder = file.rfind(['/', '\\']).map_or(0, |i| i + 1);
    let stem = match file.rfind('.') {
        Some(dot) if dot > folder => file.get(..dot),
        _ => None,
    };
    format!("{}_plain.tif", stem.unwrap_or(file))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::say::voice::Voice;

    #[test]
    fn commands_can_be_pasted() {
        let refused = InTerrain::Refused(Unusable::Coding(Coding::Lerc));
        let hint = phrase(&refused, "my maps/it's.tif").hint(Voice::default());
        assert_eq!(
            hint.map(|hint| hint.to_string()).as_deref(),
            Some(
                "convert it: gdal_translate -b 1 -ot Float32 -of GTiff -co TILED=YES -co COMPRESS=DEFLATE 'my maps/it'\\''s.tif' 'my maps/it'\\''s_plain.tif'"
            ),
            "blanks and quotes survive a shell"
        );
        assert_eq!(
            converted("./a.b/dem"),
            "./a.b/dem_plain.tif",
            "dots of folders stay"
        );
    }
}
