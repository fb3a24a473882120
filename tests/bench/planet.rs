//! As many outlines as the world has glaciers, in one file with an index, under one line and under ten thousand:
//! `cargo bench --bench speed -- planet FOLDER [SHARE]`. What stands in the folder already is not written again.

use std::{
    fs::{self, File},
    io::{BufWriter, Error, Result},
    path::Path,
    time::Duration,
};

use flatgeobuf::{
    ColumnType, FgbWriter, GeometryType,
    geozero::{
        ColumnValue, GeomProcessor, GeozeroGeometry, PropertyProcessor, error::Result as Written,
    },
};

use crate::{run, some_runs, workload};

/// Columns, rows and vertices: 275,000 outlines, about a gigabyte.
const PLANET: (u32, u32, u32) = (550, 500, 220);
/// How many folders of tracks there are; one, two, four and all of them are held against the ice.
const FOLDERS: u32 = 8;
const TRACKS: u32 = 10_000;
const POINTS: u32 = 500;
const STEP_M: f64 = 10.0;

/// Prints what one plan takes, and then what more and more tracks take; `share` makes fewer outlines and tracks.
pub(crate) fn table(folder: &Path, share: f64) -> Result<()> {
    let grid = (
        workload::part(PLANET.0, share.sqrt()),
        workload::part(PLANET.1, share.sqrt()),
        PLANET.2,
    );
    let (ice, route) = (folder.join("planet.fgb"), folder.join("route.gpx"));
    let each = workload::part(TRACKS / FOLDERS, share);
    let tracks: Vec<_> = (0..FOLDERS)
        .map(|n| folder.join(format!("tracks-{n}")))
        .collect();
    if !tracks.iter().all(|folder| folder.is_dir()) {
        fs::create_dir_all(folder)?;
        outlines(&ice, grid)?;
        workload::walk(&route, 10_000, STEP_M)?;
        for (n, folder) in (0..).zip(&tracks) {
            workload::tracks(folder, n * each..(n + 1) * each, POINTS, grid)?;
        }
    }
    println!(
        "{} outlines, {:.0} MB",
        grid.0 * grid.1,
        fs::metadata(&ice)?.len() as f64 / 1e6
    );
    let name = |path: &Path| path.display().to_string();
    let drawn = folder.join("drawn.geojson");
    workload::zones(&drawn, workload::FEW)?;
    let (ice, route, drawn) = (name(&ice), name(&route), name(&drawn));
    plan("as zones", &[&route, &ice]);
    plan("as an inventory", &[&route, &drawn, "--glaciers", &ice]);
    for times in [1, 2, 4, FOLDERS] {
        let some = tracks.iter().zip(0..times);
        survey(
            &some.map(|(path, _)| name(path)).collect::<Vec<_>>(),
            &ice,
            times * each,
        );
    }
    Ok(())
}

/// One line, the median of some runs.
fn plan(how: &str, files: &[&str]) {
    let call = [
        &["plan"],
        files,
        &["--party", "3", "--format", "geojson", "-q"],
    ]
    .concat();
    told(&format!("plan, the outlines {how}"), some_runs(&call));
}

fn survey(folders: &[String], ice: &str, tracks: u32) {
    let folders: Vec<&str> = folders.iter().map(String::as_str).collect();
    let call = [
        &["survey"],
        &folders[..],
        &["--zones", ice, "--party", "3", "-q"],
    ]
    .concat();
    told(&format!("survey of {tracks} tracks"), run(&call));
}

fn told(what: &str, (took, peak_kb): (Duration, u64)) {
    let (seconds, peak_mb) = (took.as_secs_f64(), peak_kb as f64 / 1e3);
    println!("{what:<40}{seconds:>9.3} s{peak_mb:>9.1} MB");
}

/// Blobs of a grid as FlatGeobuf with an index.
fn outlines(path: &Path, grid: (u32, u32, u32)) -> Result<()> {
    let mut file = FgbWriter::create("planet", GeometryType::Polygon).map_err(Error::other)?;
    file.add_column("gap_m", ColumnType::Double, |_, _| {});
    for (ring, gap_m) in workload::blobs(grid) {
        let put = file.add_feature_geom(Blob(&ring), |into| {
            let gap = ColumnValue::Double((gap_m * 10.0).round() / 10.0);
            // The writer asks nothing of it.
            let _ = into.property(0, "gap_m", &gap);
        });
        put.map_err(Error::other)?;
    }
    file.write(BufWriter::new(File::create(path)?))
        .map_err(Error::other)
}

/// A ring without its last vertex, degrees.
struct Blob<'r>(&'r [(f64, f64)]);

impl GeozeroGeometry for Blob<'_> {
    fn process_geom<P: GeomProcessor>(&self, to: &mut P) -> Written<()> {
        to.polygon_begin(true, 1, 0)?;
        to.linestring_begin(false, self.0.len() + 1, 0)?;
        for (i, (lon, lat)) in self.0.iter().chain(self.0.first()).enumerate() {
            to.xy(*lon, *lat, i)?;
        }
        to.linestring_end(false, 0)?;
        to.polygon_end(true, 0)
    }
}
