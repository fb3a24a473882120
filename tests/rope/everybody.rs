//! Everybody's fall is told over whichever width the gap has, not over the one over which the worst fall is held worst.

use schrund::{
    physics::{
        hold_dynamic::Followed,
        holding::{BrakeKnots, HoldingAnswer, Team},
    },
    plan::{
        fall::{Arrest, Held},
        leg::{Leg, TeamSetup},
    },
};

use crate::fixture::trip::{Trip, rules};

fn held(answer: &HoldingAnswer) -> Held {
    match answer {
        HoldingAnswer::HeldInAll => Held::All,
        HoldingAnswer::DependsOn(_) => Held::Depends,
        HoldingAnswer::HeldInNone => Held::None,
    }
}

fn team(setup: &TeamSetup, arrest: &Arrest, gap_m: f64) -> Team {
    let knots = BrakeKnots {
        count_per_side: u32::try_from(setup.knots.each_end).unwrap(),
        first_m: setup.knots.first_m,
        step_m: setup.knots.step_m,
    };
    Team {
        masses_kg: setup.persons.iter().map(|p| p.mass_kg).collect(),
        spacing_m: setup.spacing_m,
        gap_m,
        knots: arrest.knots_counted.then_some(knots),
        snow: arrest.snow,
        on_skis: false,
        down_deg: arrest.down_deg,
        rope_ea_n: rules().nature.gear.rope.usual.modulus_n().unwrap(),
    }
}

/// Half metres up to the greatest, then whole metres below it.
fn widths_m(leg: &Leg) -> Vec<f64> {
    let greatest_m = (leg.effective_gap_m.unwrap() * 2.0 - 1e-9).ceil() / 2.0;
    let below = (0..60_u32)
        .map(f64::from)
        .filter(|m| *m < greatest_m - 1e-9);
    below.chain([greatest_m]).collect()
}

/// Trips on which somebody's fall is held worse over another width than the one over which the worst fall is held worst, and
/// plain ones beside them: masses, gap, slope down the line, snow.
const TRIPS: [(&[f64], u32, f64, &str); 8] = [
    (&[110.0, 110.0, 65.0], 24, 0.364, "firm"),
    (&[55.0, 95.0, 65.0], 9, 0.14, "refrozen"),
    (&[110.0, 85.0, 95.0], 18, 0.07, "refrozen"),
    (&[95.0, 85.0, 75.0, 95.0], 4, 0.3, "settled"),
    (&[80.0, 80.0, 80.0], 11, 0.12, "settled"),
    (&[70.0, 95.0, 60.0, 85.0], 17, 0.0, "soft"),
    (&[95.0, 85.0, 75.0, 95.0], 4, -0.3, "settled"),
    (&[80.0, 80.0, 80.0], 11, -0.12, "settled"),
];

#[test]
fn nobodys_fall_is_told_milder_than_over_any_width() {
    let (rules, mut followed, mut milder_at_one_width) = (rules(), Followed::default(), 0);
    for (masses_kg, gap_m, slope, snow) in TRIPS {
        let zone = format!("{{\"gap_m\":{gap_m},\"snow_depth_m\":2}}");
        let trip = Trip::straight(&[&zone]).party(masses_kg).ropes(&[150.0]);
        let plan = trip
            .rules(&format!("snow = \"{snow}\""))
            .falling(slope)
            .plan();
        let leg = plan.legs.iter().find(|leg| leg.roped).unwrap();
        let setup = &leg.teams[0];
        let arrest = setup.arrest.as_ref().unwrap();
        let mut worst = vec![Held::All; masses_kg.len()];
        for width_m in widths_m(leg) {
            let team = team(setup, arrest, width_m);
            let there = team.verdicts(&rules.nature.assumed, &mut followed).unwrap();
            let one_width = (width_m - arrest.gap_m).abs() < 1e-9;
            for (who, faller) in there.fallers.iter().enumerate() {
                worst[who] = worst[who].max(held(&faller.verdict));
                let milder = held(&faller.verdict) < arrest.everybody[who];
                milder_at_one_width += usize::from(one_width && milder);
            }
        }
        assert_eq!(
            arrest.everybody, worst,
            "{masses_kg:?}, {gap_m} m, {slope}, {snow}"
        );
        assert_eq!(arrest.everybody.iter().max(), Some(&arrest.verdict));
    }
    assert!(
        milder_at_one_width > 0,
        "one width alone would have told somebody's fall too mildly"
    );
}
