//! Climbs over a real raster, where `SCHRUND_REAL_DATA` names their folder.

use serde_json::Value;

use crate::fixture::{
    program::{schrund, text},
    real::real_data,
};

/// The plan of one of our lines over Glaciar Exploradores with the raw stereo model of 30 m cells.
fn over_exploradores(line: &str, more: &[&str]) -> Value {
    let data = real_data();
    let line = format!("gpx/made_by_us_exploradores_{line}.gpx");
    let words = "outlines/rgi60_exploradores_47.geojson --party 3 --gap 5 --format json --terrain \
                 dem/exploradores_aster_utm18s_float32.tif";
    let args: Vec<&str> = ["plan", &line]
        .into_iter()
        .chain(words.split_whitespace())
        .collect();
    let out = schrund(&data, &[&args[..], more].concat());
    serde_json::from_slice(&out.stdout).unwrap_or_else(|_| panic!("{}", text(&out.stderr)))
}

/// Nearly the same line has 1845 m by the heights in its file; asked every 15 m the raw model makes 3058 m of it.
#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn a_dense_line_climbs_no_noise_of_its_raster() {
    let plan = over_exploradores("dense", &[]);
    let up_m = plan["route"]["ascent_m"].as_f64().expect("heights");
    assert!((1845.0..2300.0).contains(&up_m), "{up_m}");
    let raw = over_exploradores("dense", &["--assume", "climb_cells=0"]);
    let raw_m = raw["route"]["ascent_m"].as_f64().expect("heights");
    assert!(raw_m > 2800.0, "{raw_m}");
    let slopes = |plan: &Value| -> Vec<Value> {
        let legs = plan["legs"].as_array().expect("legs");
        let slopes = [
            "steepest_deg",
            "lip_slope_deg",
            "ground_steepest_deg",
            "verdict",
        ];
        legs.iter()
            .flat_map(|l| slopes.map(|s| l[s].clone()))
            .collect()
    };
    assert_eq!(slopes(&plan), slopes(&raw), "smoothing relaxes nothing");
}

#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn both_ascents_of_a_line_with_heights_over_a_noisy_raster_are_told() {
    let plan = over_exploradores("bayo_traverse", &[]);
    let findings = plan["findings"].as_array().expect("findings");
    let told = findings
        .iter()
        .find(|f| f["code"] == "ascents-apart")
        .expect("told");
    let figure = |name: &str| told["values"][name].as_f64().expect("a figure").round();
    assert_eq!(figure("file_m"), 1845.0);
    assert!((1845.0..2300.0).contains(&figure("model_m")), "{told}");
}
