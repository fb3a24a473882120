//! Sentences and ready-made conversion commands for terrain files that cannot be used.

use crate::fault::{Code, Place, Problem};

/// A conversion that makes an unusable file usable.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Cure {
    /// Write band 1 again in a plain coding.
    Recode,
    /// It holds a picture: a conversion would turn grey into metres.
    NotHeights,
    /// Several bands: the first may be the heights.
    FirstBand,
    /// Project onto longitude/latitude.
    Warp,
    /// Say which coordinate system the file is in.
    AssignSystem,
    /// Say that heights are metres, after scaling from feet or the like.
    ScaleHeights,
    /// Unpack first.
    Unpack,
    /// Nothing but another copy helps.
    FetchAgain,
}

/// The file is understood but not usable as heights.
pub(crate) fn refused(name: &str, says: impl Into<String>, cure: Cure) -> Problem {
    problem(Code::TerrainRefused, name, says, cure)
}

/// The file is broken.
pub(crate) fn broken(name: &str, says: impl Into<String>) -> Problem {
    problem(Code::TerrainBroken, name, says, Cure::FetchAgain)
}

/// Something a reader of the heights ought to know.
pub(crate) fn note(name: &str, says: impl Into<String>) -> Problem {
    Problem::new(Code::TerrainNote, Place::file(name), says)
}

fn problem(code: Code, name: &str, says: impl Into<String>, cure: Cure) -> Problem {
    Problem::new(code, Place::file(name), says).hint(hint(name, cure))
}

fn hint(name: &str, cure: Cure) -> String {
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
        Cure::FetchAgain => {
            "fetch or copy the file again; `gdalinfo -checksum` on it shows whether it is whole"
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
        let p = refused("my maps/it's.tif", "coded as LERC", Cure::Recode);
        assert_eq!(
            p.hint.as_deref(),
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
