//! The legs for a spreadsheet: where each begins, on which rope, and where its word holds.

use std::collections::BTreeMap;

use schrund::{say::place, write::parts::change::changes};

use crate::fixture::{
    planned::Planned,
    trip::{SNOW, Trip},
};

fn rows(planned: &Planned) -> Vec<BTreeMap<String, String>> {
    let text = planned.written("csv");
    let mut reader = ::csv::Reader::from_reader(text.as_bytes());
    let rows = reader.deserialize().map(|row| row.expect("a row"));
    rows.collect()
}

#[test]
fn a_row_says_where_its_leg_begins_and_where_its_word_holds() {
    let planned = Trip::straight(&[SNOW, r#"{"gap_m":9,"snow_depth_m":2}"#])
        .ropes(&[60.0])
        .heights(|_, north| {
            if (500.0..560.0).contains(&north) {
                3000.0 - north
            } else {
                2500.0
            }
        })
        .planned();
    let (rows, changes) = (rows(&planned), changes(&planned.sheet()));
    assert_eq!(rows.len(), planned.plan.legs.len());
    let letters: Vec<&str> = rows.iter().map(|row| row["change"].as_str()).collect();
    assert_eq!(letters, ["", "A", "B", "C", "D"]);
    for (row, leg) in rows.iter().zip(&planned.plan.legs) {
        let number = |name: &str| row[name].parse::<f64>().expect("a plain number");
        assert!((number("start_lon") - leg.start[0]).abs() < 1e-6);
        assert!((number("start_lat") - leg.start[1]).abs() < 1e-6);
        assert_eq!(row["start_utm"], place::utm(leg.start).expect("a grid"));
        if let Some(change) = changes.iter().find(|c| c.letter() == row["change"]) {
            assert_eq!(row["start_utm"], change.utm.clone().expect("a grid"));
        }
        assert_eq!(row["rope_at_hand_m"], if leg.roped { "60.000" } else { "" });
        let gravest = leg.findings.iter().map(|f| f.level()).min();
        assert_eq!(
            row["gravest_level"],
            gravest.map_or("", schrund::fault::Level::as_str)
        );
        let spans = row["verdict_at_m"].split(' ').map(|span| {
            let (from, to) = span.split_once('-').expect("from and to");
            [from, to].map(|m| m.parse::<f64>().expect("metres"))
        });
        let spans: Vec<[f64; 2]> = spans.collect();
        let length_m: f64 = spans.iter().map(|[from, to]| to - from).sum();
        assert!((length_m - number("verdict_length_m")).abs() < 0.01);
        let pieces = leg.pieces();
        let pieces: Vec<_> = pieces.iter().filter(|p| p.verdict == leg.verdict).collect();
        assert_eq!(spans.len(), pieces.len());
        for ([from, to], piece) in spans.iter().zip(pieces) {
            assert!((from - piece.from_m).abs() < 1e-3 && (to - piece.to_m).abs() < 1e-3);
        }
    }
    let partly = |row: &BTreeMap<String, String>| row["verdict_length_m"] != row["length_m"];
    assert!(
        rows.iter().any(partly),
        "a word that holds on a part of its leg"
    );
}
