//! `.hgt` tiles: a degree square of big-endian heights, placed by the name of the file.
//!
//! *Source:* the layout of the SRTM tiles, from memory: rows from north to south, nodes on the very edges, −32768 void,
//! heights above the EGM96 geoid.

use crate::fault::{
    Fault,
    terrain::{Damage, Told, Unusable},
};
use crate::raster::{
    chunks::{Layout, NumberFamily, Parts, Plain, RasterSource},
    grid::Grid,
    model::Opened,
    reading::{Nodata, Reading},
    refusal::{broken, note, refused},
    systems,
};

/// Columns and rows of the tiles in circulation: 1″ and 3″, and 1″ by 2″ near the poles.
const SIZES: [(u32, u32); 3] = [(1201, 1201), (3601, 3601), (1801, 3601)];

/// The model in a tile of `length` bytes whose file is called `name`.
pub(crate) fn open(name: &str, source: RasterSource, length: u64) -> Result<Opened, Fault> {
    let (west, south) = corner(name).ok_or_else(|| refused(name, Unusable::HgtName))?;
    let fits = |&&(columns, rows): &&(u32, u32)| 2 * u64::from(columns) * u64::from(rows) == length;
    let size = SIZES.iter().find(fits);
    let &(columns, rows) = size.ok_or_else(|| broken(name, Damage::HgtLength(length)))?;
    let system = systems::system(4326).ok_or_else(|| broken(name, Damage::NoWgs84))?;
    Ok(Opened {
        system,
        grid: grid(west, south, columns, rows),
        reading: Reading {
            nodata: Some(Nodata::whole(-32768)),
            ..Reading::default()
        },
        layout: Layout {
            columns,
            rows,
            part: (columns, 1),
            per_cell: 1,
            absent: Vec::new(),
        },
        parts: Parts::Rows {
            source,
            strips: vec![0],
            strip_rows: rows,
            plain: Plain {
                bytes: 2,
                kind: NumberFamily::Signed,
                big_endian: true,
            },
        },
        notes: vec![note(name, Told::Egm96)],
        tags: None,
        credit: None,
    })
}

/// Nodes on the edges: the cells reach half a step beyond the degree square.
fn grid(west: f64, south: f64, columns: u32, rows: u32) -> Grid {
    let (across, down) = (1.0 / f64::from(columns - 1), 1.0 / f64::from(rows - 1));
    Grid {
        origin: (west - across / 2.0, south + 1.0 + down / 2.0),
        column: (across, 0.0),
        row: (0.0, -down),
        columns,
        rows,
    }
}

/// South-west corner (longitude, latitude) out of a name such as `N46E007.SRTMGL1.hgt`.
fn corner(name: &str) -> Option<(f64, f64)> {
    let file = name.rsplit(['/', '\\']).next()?.to_ascii_uppercase();
    let signed = |letter: &str, digits: &str, minus: &str, plus: &str| -> Option<f64> {
        let degrees: f64 = digits
            .chars()
            .all(|c| c.is_ascii_digit())
            .then(|| digits.parse().ok())??;
        match letter {
            l if l == minus => Some(-degrees),
            l if l == plus => Some(degrees),
            _ => None,
        }
    };
    let lat = signed(file.get(0..1)?, file.get(1..3)?, "S", "N")?;
    let lon = signed(file.get(3..4)?, file.get(4..7)?, "W", "E")?;
    let ends = !file
        .chars()
        .nth(7)
        .is_some_and(|c| c.is_ascii_alphanumeric());
    (ends && (-90.0..90.0).contains(&lat) && (-180.0..180.0).contains(&lon)).then_some((lon, lat))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_say_the_corner() {
        for (name, want) in [
            ("S47W074.hgt", Some((-74.0, -47.0))),
            ("maps/n46e007.SRTMGL1.hgt", Some((7.0, 46.0))),
            ("N00E000.hgt", Some((0.0, 0.0))),
            ("N46E0077.hgt", None),
            ("dem.hgt", None),
            ("N4é6E007.hgt", None),
            ("N91E007.hgt", None),
        ] {
            assert_eq!(corner(name), want, "{name}");
        }
    }
}
