//! Outlines of a real inventory, in both formats under real lines.

use std::{fs, io::Cursor};

use schrund::{
    Job,
    read::{
        input::{Input, Seekable},
        lay::Sources,
        trip,
    },
};

use super::near::outputs;
use crate::fixture::{
    flatgeobuf::{Form, flatgeobuf},
    real::real_data,
};

/// Nobody drew a zone: all ice is that of the inventory.
fn job(line: &[u8], ice: Vec<u8>) -> Job {
    let none = br#"{"type":"FeatureCollection","features":[]}"#;
    let mut sources = Sources::new(
        Input::text("route.gpx", line),
        Input::text("zones.geojson", &none[..]),
    );
    sources.trip = Some(trip::file(Input::text("trip.toml", &b"party = 3"[..])));
    let file: Seekable = Box::new(Cursor::new(ice));
    sources.glaciers_near = Some(Input::new("ice", file));
    sources.job().expect("sound")
}

#[test]
#[ignore = "reads outlines and tracks from the field"]
fn a_real_inventory_makes_the_same_plan_in_both_formats() {
    let pairs = [
        ("rgi60_exploradores_47", "made_by_us_exploradores_dense"),
        (
            "rgi60_exploradores_47",
            "made_by_us_exploradores_bayo_traverse",
        ),
        ("rgi60_everest_86", "made_by_us_khumbu_line"),
    ];
    for (ice, line) in pairs {
        let ice = real_data().join(format!("outlines/{ice}.geojson"));
        let ice = fs::read_to_string(ice).expect("outlines");
        let line = real_data().join(format!("gpx/{line}.gpx"));
        let line = fs::read(line).expect("a line");
        let form = Form {
            index: false,
            ..Form::default()
        };
        let whole = job(&line, ice.clone().into_bytes());
        let packed = job(&line, flatgeobuf(&ice, form));
        let indexed = job(&line, flatgeobuf(&ice, Form::default()));
        let legs = |job: &Job| {
            let json = outputs(job).swap_remove(1);
            let plan: serde_json::Value = serde_json::from_str(&json).expect("JSON");
            (plan["legs"].clone(), plan["carry"].clone())
        };
        assert_eq!(legs(&packed), legs(&whole));
        assert_eq!(legs(&indexed), legs(&whole), "sorted otherwise");
        assert!(packed.glaciers.len() <= whole.glaciers.len());
    }
}
