//! Crossings against references made with other software (they lie beside the real data and say how).

use std::fs;

use serde_json::Value;

use crate::fixture::{
    program::{schrund, text},
    real::real_data,
};

/// The contract: crossings agree to 5 cm. What is seen is under a millimetre.
const TOLERANCE_M: f64 = 0.05;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or(f64::NAN)
}

/// By zone number: enter and exit chainages.
fn wanted(reference: &Value) -> Vec<(u64, f64, f64)> {
    let mut wanted = Vec::new();
    for crossing in reference["crossings"].as_array().into_iter().flatten() {
        let zone = crossing["feature_index"].as_u64().unwrap_or(0) + 1;
        for i in crossing["intervals"].as_array().into_iter().flatten() {
            wanted.push((
                zone,
                number(&i["chain_nogap_enter_m"]),
                number(&i["chain_nogap_exit_m"]),
            ));
        }
    }
    wanted.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    wanted
}

fn found(plan: &Value) -> Vec<(u64, f64, f64)> {
    let mut found = Vec::new();
    for zone in plan["zones"].as_array().into_iter().flatten() {
        for c in zone["crossings"].as_array().into_iter().flatten() {
            found.push((
                zone["zone"].as_u64().unwrap_or(0),
                number(&c["enter_m"]),
                number(&c["exit_m"]),
            ));
        }
    }
    found
}

#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn crossings_agree_with_references_made_with_other_software() {
    let data = real_data();
    let mut ran = 0;
    for entry in fs::read_dir(data.join("reference")).unwrap().flatten() {
        let name = entry.file_name().into_string().unwrap();
        if !name.contains("__") {
            continue;
        }
        let reference: Value =
            serde_json::from_str(&fs::read_to_string(entry.path()).unwrap()).unwrap();
        let path = |key: &str| reference[key].as_str().unwrap().to_owned();
        let output = schrund(
            &data,
            &[
                "plan",
                &path("track"),
                &path("outlines"),
                "--party",
                "3",
                "--gap",
                "6",
                "--format",
                "json",
            ],
        );
        let plan: Value = serde_json::from_str(&text(&output.stdout)).unwrap();
        let (want, got) = (wanted(&reference), found(&plan));
        assert_eq!(want.len(), got.len(), "{name}: {want:?} against {got:?}");
        for (w, g) in want.iter().zip(&got) {
            assert_eq!(w.0, g.0, "{name}: another zone");
            assert!(
                (w.1 - g.1).abs() <= TOLERANCE_M,
                "{name}: enters at {} instead of {}",
                g.1,
                w.1
            );
            assert!(
                (w.2 - g.2).abs() <= TOLERANCE_M,
                "{name}: leaves at {} instead of {}",
                g.2,
                w.2
            );
        }
        let length_m = number(&plan["route"]["length_m"]);
        assert!(
            (length_m - number(&reference["length_nogap_m"])).abs() < 0.001,
            "{name}: {length_m} m long"
        );
        ran += 1;
    }
    assert!(ran >= 7, "only {ran} references ran");
}
