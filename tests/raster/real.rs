//! Real files, where the environment variable `SCHRUND_REAL_DATA` names the folder that holds them.

use std::fs::File;

use schrund::{fault::Fault, geometry::LonLat, raster::Terrain};

use super::refusal;
use crate::fixture::{close_if as close, real::real_data};

fn open(path: &std::path::Path) -> Result<Terrain, Fault> {
    let mut terrain = Terrain::new();
    let file = File::open(path).expect("the file is there");
    terrain.add(&path.to_string_lossy(), Box::new(file))?;
    Ok(terrain)
}

/// What the file must be refused for, if it must.
const REFUSED: [(&str, &str); 6] = [
    ("2band", "2 bands"),
    ("empty", "0 bytes"),
    ("lerc", "LERC"),
    ("zstd", "Zstandard"),
    ("no_crs", "coordinate system"),
    ("truncated", "cut off"),
];

#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn heights_agree_with_gdal_on_every_variant() {
    let folder = real_data();
    let text = std::fs::read_to_string(folder.join("reference/dem_samples_exploradores.json"))
        .expect("samples");
    let samples: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    let (mut read, mut refused) = (0, 0);
    for (file, entry) in samples["files"].as_object().expect("files") {
        let result = open(&folder.join(file));
        if let Some((_, why)) = REFUSED.iter().find(|(part, _)| file.contains(part)) {
            let problem = refusal(file, result);
            assert!(
                schrund::say::fault::says(&problem, Default::default())
                    .to_string()
                    .contains(why),
                "{file}: {problem}"
            );
            refused += 1;
        } else {
            agrees(
                file,
                &result.unwrap_or_else(|e| panic!("{file}: {e}")),
                entry,
            );
            read += 1;
        }
    }
    assert!(
        read >= 18 && refused == REFUSED.len(),
        "{read} read, {refused} refused"
    );
}

/// Whole numbers exactly; floats and interpolated values to the 4 decimals printed, which is inside 1 cm.
fn agrees(file: &str, terrain: &Terrain, entry: &serde_json::Value) {
    for row in entry["samples"].as_array().expect("samples") {
        let at = LonLat::new(row[0].as_f64().expect("lon"), row[1].as_f64().expect("lat"));
        let nearest = terrain.nearest_m(at).expect("readable");
        let bilinear = terrain.height_m(at).expect("readable");
        let exact = file.contains("i16") || file.contains("u16") || file.contains("i32");
        let tolerance = if exact { 1e-9 } else { 1e-4 };
        close(
            &format!("{file} nearest {at:?}"),
            nearest,
            row[2].as_f64(),
            tolerance,
        );
        close(
            &format!("{file} bilinear {at:?}"),
            bilinear,
            row[3].as_f64(),
            1e-3,
        );
    }
}

#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn other_peoples_files_open_or_say_why_not() {
    let folder = real_data();
    for file in [
        "dem/usgs_3dep_10m_-110.81_43.70.tif",
        "dem/usgs_3dep_10m_-120.95_48.76.tif",
    ] {
        let terrain = open(&folder.join(file)).unwrap_or_else(|e| panic!("{file}: {e}"));
        assert_eq!(terrain.models().count(), 1, "{file}");
    }
    for entry in std::fs::read_dir(folder.join("dem/georust_geotiff")).expect("folder") {
        let path = entry.expect("entry").path();
        let problem = refusal(&path.to_string_lossy(), open(&path));
        eprintln!("{problem}\n");
    }
}
