//! Gaps met askew, and lines that turn back on themselves.

use crate::fixture::{
    planned::{codes, findings, only_roped},
    trip::{Spot, Trip},
};

fn struck(strike_deg: u32) -> String {
    format!(
        "{{\"gap_m\":8,\"snow_depth_m\":2,\"strike_deg\":{strike_deg},\"strike_uncertainty_deg\":0}}"
    )
}

#[test]
fn a_greater_angle_for_running_along_never_makes_a_gap_count_less() {
    for strike_deg in (0..=90).step_by(10) {
        let trip = Trip::straight(&[&struck(strike_deg)]);
        let mut last = (0.0, false);
        for along_deg in [1, 10, 20, 30, 40, 60, 90] {
            let plan = trip
                .clone()
                .rules(&format!("[assume]\nalong_deg = {along_deg}"))
                .plan();
            let leg = only_roped(&plan);
            let met = (leg.effective_gap_m.unwrap(), leg.along);
            let told = format!("strike {strike_deg}°: {last:?}, then {met:?} at {along_deg}°");
            assert!(met.0 >= last.0 && met.1 >= last.1, "{told}");
            last = met;
        }
        assert!(last.0 >= 8.0, "never less than its width");
    }
}

#[test]
fn out_and_back_over_crevasses_that_lie_square_meets_them_squarely() {
    // In one edge each way, and in short ones as a receiver writes them.
    let whole: Vec<Spot> = vec![(0.0, -900.0), (0.0, 100.0)];
    let short: Vec<Spot> = (0..=100)
        .map(|i| (0.0, f64::from(i) * 10.0 - 900.0))
        .collect();
    for out in [whole, short] {
        let line: Vec<Spot> = out
            .iter()
            .chain(out.iter().rev().skip(1))
            .copied()
            .collect();
        for people in [2, 3, 5] {
            let plan = Trip::along(&line).people(people).middle(&struck(90)).plan();
            let leg = only_roped(&plan);
            assert!(!leg.along, "{people} people");
            let effective_m = leg.effective_gap_m.unwrap();
            assert!((effective_m - 8.0).abs() < 1e-6, "{effective_m}");
            let found = codes(findings(&plan));
            assert!(!found.contains(&"along-the-crevasses"), "{found:?}");
        }
        let askew = Trip::along(&line).middle(&struck(20)).plan();
        assert!(only_roped(&askew).along, "the line itself runs along");
    }
}
