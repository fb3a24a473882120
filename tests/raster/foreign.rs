//! Small files that GDAL wrote, one for each coding, frame and unit: tests/reference/terrain.py made them.

use std::{collections::BTreeMap, fs, path::Path};

use schrund::geometry::LonLat;

use super::{refusal, terrain_of};
use crate::fixture::close_if as close;

/// One millimetre: positions in the table are cut off at nine decimals of a degree.
const TOLERANCE_M: f64 = 1e-3;

fn folder() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/terrain")
}

fn table() -> BTreeMap<String, Vec<Vec<String>>> {
    let mut files: BTreeMap<String, Vec<Vec<String>>> = BTreeMap::new();
    for line in include_str!("../reference/terrain.csv").lines().skip(3) {
        let cells: Vec<String> = line.split(',').map(str::to_owned).collect();
        let (file, rest) = cells.split_first().expect("a file name");
        files.entry(file.clone()).or_default().push(rest.to_vec());
    }
    files
}

#[test]
fn every_file_reads_as_gdal_reads_it_or_is_refused() {
    let table = table();
    let on_disk = fs::read_dir(folder()).expect("folder").count();
    assert_eq!(table.len(), on_disk, "every file has its rows");
    let mut wrong = Vec::new();
    for (file, rows) in &table {
        if let Err(e) = std::panic::catch_unwind(|| check(file, rows)) {
            wrong.push(format!("{file}: {:?}", e.downcast_ref::<String>()));
        }
    }
    assert!(
        wrong.is_empty(),
        "{} of {}:\n{}",
        wrong.len(),
        table.len(),
        wrong.join("\n")
    );
}

fn check(file: &str, rows: &[Vec<String>]) {
    let bytes = fs::read(folder().join(file)).expect("the file is there");
    let result = terrain_of(file, bytes);
    if let Some([_, why]) = rows
        .iter()
        .find(|r| r.first().is_some_and(|w| w == "refused"))
        .map(Vec::as_slice)
    {
        let problem = refusal(file, result);
        assert!(
            schrund::say::fault::says(&problem, Default::default())
                .to_string()
                .contains(why.as_str()),
            "{file}: {problem}"
        );
        return;
    }
    let terrain = result.unwrap_or_else(|e| panic!("{e}"));
    for row in rows {
        let number = |i: usize| row.get(i).and_then(|c| c.parse::<f64>().ok());
        let at = LonLat::new(number(0).expect("lon"), number(1).expect("lat"));
        close(
            &format!("nearest {at:?}"),
            terrain.nearest_m(at).expect("readable"),
            number(2),
            TOLERANCE_M,
        );
        close(
            &format!("bilinear {at:?}"),
            terrain.height_m(at).expect("readable"),
            number(3),
            TOLERANCE_M,
        );
    }
}
