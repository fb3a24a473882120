//! Invented workloads: walks over zones of irregular outline, the same bytes in every run.

use std::{
    f64::consts::TAU,
    fs::{self, File},
    io::{BufWriter, Result, Write},
    ops::Range,
    path::Path,
};

/// A cell of the grid of zones, degrees east and north; no zone leaves its own.
const CELL_DEG: (f64, f64) = (0.05, 0.036);
/// The south-west corner of the grid, degrees.
const CORNER_DEG: (f64, f64) = (6.0, 45.0);
/// Metres in a degree east and north near that corner; they shape the walks, nothing is measured with them.
const DEGREE_M: (f64, f64) = (78_700.0, 111_132.0);
/// Where the walks of W1 to W3 turn about, metres from the corner.
const HOME_M: (f64, f64) = (9000.0, 7000.0);

/// The grid of W1 and W2, and that of W3 and W4: columns, rows, vertices of a zone.
pub(crate) const FEW: (u32, u32, u32) = (5, 4, 200);
pub(crate) const MANY: (u32, u32, u32) = (200, 100, 205);

/// A small generator of numbers in 0..1 (xorshift).
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// W1 to W4 into a folder; `scale` makes points, tracks and the large grid smaller (1 is the whole).
pub(crate) fn all(folder: &Path, scale: f64) -> Result<()> {
    fs::create_dir_all(folder)?;
    let many = (
        part(MANY.0, scale.sqrt()),
        part(MANY.1, scale.sqrt()),
        MANY.2,
    );
    zones(&folder.join("few.geojson"), FEW)?;
    zones(&folder.join("many.geojson"), many)?;
    walk(&folder.join("short.gpx"), part(10_000, scale), 10.0)?;
    walk(&folder.join("long.gpx"), part(1_000_000, scale), 1.0)?;
    let count = part(2000, scale);
    tracks(
        &folder.join("tracks"),
        0..count,
        part(5000, scale.sqrt()),
        many,
    )
}

/// Walks anywhere over a grid, each into a file of its own with its number for a name.
pub(crate) fn tracks(
    folder: &Path,
    numbers: Range<u32>,
    points: u32,
    (columns, rows, _): (u32, u32, u32),
) -> Result<()> {
    fs::create_dir_all(folder)?;
    let mut dice = Dice(13 + u64::from(numbers.start));
    for n in numbers {
        let east = dice.roll() * f64::from(columns) * CELL_DEG.0 * DEGREE_M.0;
        let north = dice.roll() * f64::from(rows) * CELL_DEG.1 * DEGREE_M.1;
        let path = walked(u64::from(n) + 17, points, 10.0, (east, north));
        gpx(&folder.join(format!("{n:04}.gpx")), &[path])?;
    }
    Ok(())
}

/// A share of a number, never less than two.
pub(crate) fn part(of: u32, scale: f64) -> u32 {
    let wanted = f64::from(of) * scale;
    (2..=of)
        .rev()
        .find(|n| f64::from(*n) <= wanted)
        .unwrap_or(2)
}

/// The blobs of a grid, into a file.
pub(crate) fn zones(path: &Path, grid: (u32, u32, u32)) -> Result<()> {
    geojson(path, blobs(grid))
}

/// Irregular blobs, one in each cell of a grid of columns and rows, with so many vertices each; and the gap in each.
pub(crate) fn blobs(
    (columns, rows, corners): (u32, u32, u32),
) -> impl Iterator<Item = (Vec<(f64, f64)>, f64)> {
    let mut dice = Dice(7);
    (0..columns * rows).map(move |cell| {
        let (x, y) = (f64::from(cell % columns), f64::from(cell / columns));
        let lon = CORNER_DEG.0 + (x + 0.5) * CELL_DEG.0;
        let lat = CORNER_DEG.1 + (y + 0.5) * CELL_DEG.1;
        let corner = |k| {
            let (sin, cos) = (TAU * f64::from(k) / f64::from(corners)).sin_cos();
            let reach = 0.012 + 0.004 * dice.roll();
            (lon + 1.4 * reach * cos, lat + reach * sin)
        };
        let ring: Vec<_> = (0..corners).map(corner).collect();
        (ring, 1.0 + 9.0 * dice.roll())
    })
}

/// Rings (without their last vertex, degrees) and the widest gap in each, metres.
pub(crate) fn geojson(
    path: &Path,
    rings: impl Iterator<Item = (Vec<(f64, f64)>, f64)>,
) -> Result<()> {
    let mut out = BufWriter::new(File::create(path)?);
    write!(out, "{{\"type\":\"FeatureCollection\",\"features\":[")?;
    for (n, (ring, gap_m)) in rings.enumerate() {
        let vertex = |(lon, lat): &(f64, f64)| format!("[{lon:.7},{lat:.7}]");
        let closed: Vec<String> = ring.iter().chain(ring.first()).map(vertex).collect();
        let comma = if n == 0 { "" } else { "," };
        write!(
            out,
            "{comma}\n{{\"type\":\"Feature\",\"properties\":{{\"name\":\"zone {n}\",\"gap_m\":{gap_m:.1}}},\
             \"geometry\":{{\"type\":\"Polygon\",\"coordinates\":[[{}]]}}}}",
            closed.join(",")
        )?;
    }
    writeln!(out, "\n]}}")?;
    out.flush()
}

/// A walk that wanders over the south-west of the grid, into a file.
pub(crate) fn walk(path: &Path, points: u32, step_m: f64) -> Result<()> {
    gpx(path, &[walked(11, points, step_m, HOME_M)])
}

/// The points of a walk about a home (metres east and north of the corner), degrees.
pub(crate) fn walked(seed: u64, points: u32, step_m: f64, home_m: (f64, f64)) -> Vec<(f64, f64)> {
    let (mut dice, (mut x, mut y), mut heading) = (Dice(seed), home_m, 0.0_f64);
    let step = |_| {
        let home = (home_m.1 - y).atan2(home_m.0 - x);
        let away = ((x - home_m.0) / 8000.0).hypot((y - home_m.1) / 6500.0);
        let turn = (home - heading).sin();
        heading += 0.7 * (dice.roll() - 0.5) + if away > 1.0 { 0.3 * turn } else { 0.0 };
        x += step_m * heading.cos();
        y += step_m * heading.sin();
        degrees(x, y)
    };
    (0..points).map(step).collect()
}

/// A place so many metres east and north of the corner, degrees.
pub(crate) fn degrees(east_m: f64, north_m: f64) -> (f64, f64) {
    (
        CORNER_DEG.0 + east_m / DEGREE_M.0,
        CORNER_DEG.1 + north_m / DEGREE_M.1,
    )
}

/// Lines (degrees) as tracks of one file, with invented heights.
pub(crate) fn gpx(path: &Path, lines: &[Vec<(f64, f64)>]) -> Result<()> {
    let mut out = BufWriter::new(File::create(path)?);
    writeln!(
        out,
        "<gpx version=\"1.1\" creator=\"invented\" xmlns=\"http://www.topografix.com/GPX/1/1\">"
    )?;
    for line in lines {
        writeln!(out, "<trk><trkseg>")?;
        for (i, (lon, lat)) in (0_u32..).zip(line) {
            let height = 2800.0 + 400.0 * (f64::from(i) / 1500.0).sin();
            writeln!(
                out,
                "<trkpt lat=\"{lat:.7}\" lon=\"{lon:.7}\"><ele>{height:.1}</ele><time>2026-07-01T08:00:00Z</time></trkpt>"
            )?;
        }
        writeln!(out, "</trkseg></trk>")?;
    }
    writeln!(out, "</gpx>")?;
    out.flush()
}
